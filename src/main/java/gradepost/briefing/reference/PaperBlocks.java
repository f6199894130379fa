package gradepost.briefing.reference;

import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.ReferenceSheet.Block;
import gradepost.briefing.Table;
import gradepost.briefing.page.FullWriter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What there is more of the approaches of the papers of a sheet than their plates have room for;
 * how it is read is told once.
 */
final class PaperBlocks {
  private final PackPapers pack;
  private final Set<String> told = new HashSet<>();

  PaperBlocks(PackPapers pack) {
    this.pack = pack;
  }

  /**
   * None where the plates tell all.
   *
   * @param index of the paper in its pack
   */
  List<Block> of(int index) {
    ReferenceWriter.Paper paper = pack.papers().get(index);
    List<Block> out = new ArrayList<>();
    List<FullWriter.More> more =
        new FullWriter(paper.plan(), pack.messages())
            .of("full" + (index + 1), paper.part().approaches());
    pressures(out, more);
    String notes =
        more.stream()
            .flatMap(m -> m.notes().stream())
            .distinct()
            .filter(told::add)
            .collect(Collectors.joining(" "));
    boolean notesTold = false;
    for (FullWriter.More m : more) {
      if (m.findings().isEmpty() && m.tables().isEmpty()) {
        continue;
      }
      out.add(new ReferenceSheet.Heading(pack.text("in-full.of", m.title())));
      if (!notes.isEmpty() && !notesTold) {
        out.add(new ReferenceSheet.Words(notes));
      }
      notesTold = true;
      m.findings().forEach(f -> out.add(new ReferenceSheet.Words(pack.text("in-full.finding", f))));
      PackPapers.grids(out, m.tables());
    }
    return out;
  }

  /** In the order of travel, down the left column, then down the right one. */
  private void pressures(List<Block> out, List<FullWriter.More> more) {
    List<Table> all = more.stream().flatMap(m -> m.pressures().stream()).toList();
    if (all.isEmpty()) {
      return;
    }
    out.add(new ReferenceSheet.Heading(pack.text("pressures.title")));
    once(out, pack.text("pressures.note"));
    out.addAll(Columns.of(all));
  }

  private void once(List<Block> out, String words) {
    if (!words.isEmpty() && told.add(words)) {
      out.add(new ReferenceSheet.Words(words));
    }
  }
}
