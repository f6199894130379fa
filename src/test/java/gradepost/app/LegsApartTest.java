package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.compose.Composer;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.source.pack.PackFile;
import gradepost.told.InstructionSheet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: a leg is from mark to mark. What is new on one of them changes nothing that is told of
 * another, not by a yard and not by a second.
 */
@Tag("slow")
class LegsApartTest extends Changes {
  private static final String WHAT =
      "status: in force, from: 12m 60ch, to: 12m 50ch, lines: [Single], reference: T 26/200,"
          + " speed: 30 mph, normal-speed: 60 mph, reason: wet bed, boards: []";

  @Test
  void aRestrictionOnOneLegLeavesTheOthersAsTheyAre() throws Exception {
    PackFile before = valley();
    PackFile after = with(before, WHAT);
    for (int direction = 0; direction < 2; direction++) {
      Plan was = plan(before, direction);
      Plan is = plan(after, direction);
      double atM = restrictedM(is);
      String own =
          is.approaches().stream()
              .map(Approach::target)
              .filter(t -> t.isStop() && t.atM() > atM)
              .findFirst()
              .orElseThrow()
              .name();
      Map<String, List<InstructionSheet>> then = byLeg(was);
      Map<String, List<InstructionSheet>> now = byLeg(is);
      assertThat(now.get(own)).isNotEqualTo(then.get(own));
      now.remove(own);
      then.remove(own);
      assertThat(now).hasSizeGreaterThan(5).isEqualTo(then);
      assertThat(stops(is, own)).isEqualTo(stops(was, own));
    }
  }

  private static double restrictedM(Plan plan) {
    var r =
        plan.assignment().restrictions().stream()
            .filter(x -> x.reference().equals("T 26/200"))
            .findFirst()
            .orElseThrow();
    return plan.assignment().path().span(r.extent()).fromM();
  }

  /** What is told of each leg, by the stop that it leads to; numbers of approaches apart. */
  private static Map<String, List<InstructionSheet>> byLeg(Plan plan) {
    Map<String, List<InstructionSheet>> out = new HashMap<>();
    List<InstructionSheet> sheets = plan.told().sheets();
    int from = 0;
    for (int i = 0; i < sheets.size(); i++) {
      if (plan.approaches().get(i).target().isStop()) {
        out.put(
            plan.approaches().get(i).target().name(),
            sheets.subList(from, i + 1).stream().map(LegsApartTest::bare).toList());
        from = i + 1;
      }
    }
    return out;
  }

  /** Without its number, and without how many movements fall into a mile, which may span a stop. */
  private static InstructionSheet bare(InstructionSheet s) {
    return new InstructionSheet(
        1,
        s.target(),
        s.from(),
        s.speed(),
        s.steps(),
        s.applications(),
        s.passing(),
        s.faster(),
        s.spread(),
        s.findings().stream().filter(f -> !f.key().equals("finding.many-movements")).toList());
  }

  /** How long every other leg takes, as it is printed. */
  private static List<String> stops(Plan plan, String own) {
    Briefing paper =
        new Composer(Messages.english()).compose("", List.of(plan), SampleIssue.issue(), List.of());
    return paper.parts().get(0).line().stream()
        .flatMap(l -> l.rows().stream())
        .map(LineSheet.Row::what)
        .map(w -> w.stream().collect(Collectors.joining(" ")))
        .filter(w -> w.contains(", after ") && !w.contains(own))
        .toList();
  }
}
