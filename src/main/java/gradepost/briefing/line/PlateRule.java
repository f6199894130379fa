package gradepost.briefing.line;

import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.told.InstructionSheet;
import java.util.List;

/**
 * Which approaches are a page of their own: stops, where the brake is worked, where something is
 * found amiss, and on a poor or check-railed stretch.
 */
public final class PlateRule {
  private final Plan plan;
  private final Lineside lineside;
  private final List<InstructionSheet> sheets;

  /** For one plan. */
  public PlateRule(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.lineside = lineside;
    this.sheets = plan.told().sheets();
  }

  /** Whether this approach is one. */
  public boolean holds(Approach approach) {
    return sheets.stream().anyMatch(s -> s.number() == approach.number() && holds(approach, s));
  }

  /**
   * Where the approach with this number is told: its page, or the lower speeds.
   *
   * @param part identity of the part of the briefing
   */
  public String anchor(String part, int number) {
    return plan.approaches().stream().filter(a -> a.number() == number).anyMatch(this::holds)
        ? part + "-a" + number
        : part + "-lower";
  }

  /** The same, where its sheet is at hand. */
  public boolean holds(Approach approach, InstructionSheet sheet) {
    double to = approach.target().atM();
    double from = lineside.words().grid().metres(sheet.from(), to);
    return sheet.passing().isEmpty()
        || !sheet.applications().isEmpty()
        || !sheet.findings().isEmpty()
        || sheet.steps().stream().anyMatch(s -> s.order().does().brake().isPresent())
        || lineside.bends().stream()
            .filter(b -> b.toM() > from && b.fromM() < to)
            .anyMatch(b -> b.checkLeft() || b.checkRight())
        || lineside.lowAdhesion().stream().anyMatch(o -> o.toM() > from && o.fromM() < to);
  }
}
