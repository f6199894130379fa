package gradepost.briefing.line;

import gradepost.plan.Approach;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedFaster;
import java.util.List;

/**
 * Which approaches are a page of their own: stops, where the brake is worked, and a lower speed
 * where something is found amiss, or on a poor or check-railed stretch. A lower speed that the
 * train cannot exceed has none for that, nor has a running brake test, of which the line tells.
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
    boolean never =
        sheet.faster().filter(f -> f.verdict() == PrintedFaster.Verdict.NEVER).isPresent();
    return sheet.passing().isEmpty()
        || !sheet.applications().isEmpty()
        || sheet.steps().stream().anyMatch(s -> s.order().does().brake().isPresent())
        || approach.findings().stream().anyMatch(f -> isTold(f, never))
        || (!never && (checkRailed(from, to) || poor(from, to)));
  }

  /** Whether a finding is told on a page of the approach. */
  private static boolean isTold(Finding finding, boolean never) {
    return switch (finding.about()) {
      case LOWER_SPEED -> !never;
      case BRAKE_TEST -> false;
      case PLATFORM, BRAKING, HANDLES -> true;
    };
  }

  private boolean checkRailed(double fromM, double toM) {
    return lineside.bends().stream()
        .filter(b -> b.toM() > fromM && b.fromM() < toM)
        .anyMatch(b -> b.checkLeft() || b.checkRight());
  }

  private boolean poor(double fromM, double toM) {
    return lineside.lowAdhesion().stream().anyMatch(o -> o.toM() > fromM && o.fromM() < toM);
  }
}
