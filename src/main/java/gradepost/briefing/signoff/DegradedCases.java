package gradepost.briefing.signoff;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.DegradedRules;
import gradepost.route.RailGap;
import gradepost.route.Structure;
import gradepost.task.Assignment;
import gradepost.task.Call;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The degraded cases that are talked through on this line, and what the data say to each. */
final class DegradedCases {
  /**
   * A case.
   *
   * @param asks what is talked through
   * @param key sentences that an assessor looks for; empty where the data have no answer
   */
  record Case(String asks, List<String> key) {
    Case {
      key = List.copyOf(key);
    }
  }

  private static final String TEXT = "degraded.";
  private final BriefingFacts taught;
  private final Optional<DegradedRules> degraded;
  private final Assignment assignment;

  DegradedCases(BriefingFacts taught, Optional<DegradedRules> degraded) {
    this.taught = taught;
    this.degraded = degraded;
    this.assignment = taught.assignment();
  }

  /** In the order of the paper: those of every line, then those of this one. */
  List<Case> all() {
    List<Case> out = new ArrayList<>();
    BrakeKeys brakes = new BrakeKeys(taught, degraded);
    LineKeys line = new LineKeys(taught);
    String service = assignment.stock().service().shortName();
    List<String> everywhere = everywhere(service);
    for (int i = 0; i < everywhere.size(); i++) {
      List<String> key =
          switch (i + 1) {
            case 1 -> brakes.leastMargin();
            case 2 -> brakes.serviceOut();
            case 3 -> brakes.isolated();
            case 4 -> line.steepestRise();
            case 10 -> line.oneDirection();
            case 13 -> line.singleLines();
            default -> List.<String>of();
          };
      out.add(new Case(everywhere.get(i), key));
    }
    ofThisLine(out, brakes, line);
    return List.copyOf(out);
  }

  /** The texts {@code degraded.1}, {@code degraded.2} … as far as there are any. */
  private List<String> everywhere(String service) {
    List<String> out = new ArrayList<>();
    for (int i = 1; taught.hasText(TEXT + i); i++) {
      out.add(taught.text(TEXT + i, service));
    }
    return out;
  }

  private void ofThisLine(List<Case> out, BrakeKeys brakes, LineKeys line) {
    if (!assignment.policy().terminal().isEmpty() && last().platform().bufferStops().isPresent()) {
      out.add(new Case(taught.text(TEXT + "terminal"), brakes.buffers(last())));
    }
    double train = assignment.formation().lengthM();
    for (Call call : assignment.calls()) {
      if (taught.length(call.platform().extent()) < train) {
        out.add(called("short-platform", call.station().name(), line.shortPlatform(call)));
      }
    }
    structures(out, line, Structure.Kind.LEVEL_CROSSING, "crossing");
    structures(out, line, Structure.Kind.SWING_BRIDGE, "swing-bridge");
    for (RailGap gap : assignment.route().railGaps()) {
      if (taught.applies(gap.applies())) {
        out.add(called("gap", gap.name(), line.gap(gap)));
      }
    }
    assignment.route().lowAdhesion().stream()
        .filter(s -> taught.applies(s.applies()))
        .forEach(s -> out.add(called("low-adhesion", s.name(), brakes.poorRail(s))));
  }

  private Call last() {
    return assignment.calls().get(assignment.calls().size() - 1);
  }

  private void structures(List<Case> out, LineKeys line, Structure.Kind kind, String key) {
    assignment.route().structures().stream()
        .filter(s -> s.kind() == kind)
        .forEach(s -> out.add(called(key, s.name(), line.protectedThing(s))));
  }

  private Case called(String key, String name, List<String> answer) {
    return new Case(taught.text(TEXT + key, name), answer);
  }
}
