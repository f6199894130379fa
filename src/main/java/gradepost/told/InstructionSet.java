package gradepost.told;

import java.util.List;

/** What a driver is told about one run, sheet by sheet in order of travel. */
public record InstructionSet(List<InstructionSheet> sheets) {
  public InstructionSet {
    sheets = List.copyOf(sheets);
  }
}
