package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.DemoPlans;
import gradepost.drive.fallback.WhatIf.Asked;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Met;
import gradepost.plan.fallback.Rung;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is tried at the planned speed and place ends as the papers say. */
class WhatIfTest {
  private static final double SAME_M = 1e-6;

  private static List<Plan> plans() {
    return List.of(DemoPlans.plan(0), DemoPlans.plan(4), DemoPlans.plan(9));
  }

  private static double shortM(Met met) {
    return met.match(Met.At::shortM, nowhere -> Double.NEGATIVE_INFINITY);
  }

  private static Asked asked(Plan plan, Application a, CaseResult on, double share) {
    return new Asked(
        a.brakingPointM(),
        a.brakingSpeedMps(),
        a.mainPressurePa(),
        on.adhesion(),
        share,
        plan.assignment().policy().noticing().seconds());
  }

  /** If the service brake gives nothing at the planned point, the others do what is printed. */
  @Test
  void theOtherBrakesDoWhatIsPrinted() {
    int compared = 0;
    for (Plan plan : plans()) {
      WhatIf what = new WhatIf(plan.assignment());
      for (Approach approach : plan.approaches()) {
        for (Application a : approach.applications()) {
          CaseResult on = a.cases().get(0);
          WhatIf.Answer answer = what.of(asked(plan, a, on, 0), a.target());
          for (FailureAnswer printed : on.answers()) {
            WhatIf.Rescue tried = rescue(answer, printed.brake());
            assertThat(tried.askedM()).isCloseTo(printed.askedAtM(), within(SAME_M));
            assertThat(tried.askedMps()).isCloseTo(printed.askedSpeedMps(), within(SAME_M));
            assertThat(shortM(tried.run().met())).isCloseTo(shortM(printed.met()), within(SAME_M));
            assertThat(tried.run().atTargetMps())
                .isCloseTo(printed.speedAtTargetMps(), within(SAME_M));
            compared++;
          }
        }
      }
    }
    assertThat(compared).isGreaterThan(60);
  }

  private static WhatIf.Rescue rescue(WhatIf.Answer answer, BrakeSystem brake) {
    return answer.rescues().stream().filter(r -> r.brake().equals(brake)).findFirst().orElseThrow();
  }

  /** Full service at the printed last place, at the speed there, is just enough. */
  @Test
  void atTheLastPlaceFullServiceIsJustEnough() {
    List<Double> shorts = new ArrayList<>();
    for (Plan plan : plans()) {
      WhatIf what = new WhatIf(plan.assignment());
      for (Approach approach : plan.approaches()) {
        Application a = approach.applications().isEmpty() ? null : approach.applications().get(0);
        if (a == null) {
          continue;
        }
        CaseResult on = a.cases().get(0);
        Optional<Latest.Point> last =
            on.ladder().stream()
                .filter(r -> r.brake().role() == BrakeSystem.Role.SERVICE)
                .findFirst()
                .map(Rung::latest)
                .flatMap(Latest::point);
        if (last.isEmpty()) {
          continue;
        }
        Asked asked =
            new Asked(
                last.get().exactM(),
                last.get().speedMps(),
                a.mainPressurePa(),
                on.adhesion(),
                1,
                0);
        shorts.add(shortM(what.of(asked, a.target()).safe().met()));
      }
    }
    assertThat(shorts).hasSizeGreaterThan(20);
    // The search for the last place ends this near, on the side of the train.
    assertThat(shorts).allSatisfy(m -> assertThat(m).isBetween(-0.05, 1.0));
  }

  /** Later, faster, less gauge, half a brake: each ends further on, on both sides. */
  @Test
  void whatIsWorseEndsFurtherOn() {
    Plan plan = DemoPlans.plan(0);
    Assignment assignment = plan.assignment();
    WhatIf what = new WhatIf(assignment);
    Application a =
        plan.approaches().stream()
            .flatMap(p -> p.applications().stream())
            .filter(x -> x.target().standsThere())
            .findFirst()
            .orElseThrow();
    CaseResult on = a.cases().get(0);
    Asked as = asked(plan, a, on, 1);
    double usual = shortM(what.of(as, a.target()).planned().met());
    List<Asked> worse =
        List.of(
            new Asked(as.atM() + 50, as.speedMps(), as.mainPa(), as.rail(), 1, 0),
            new Asked(as.atM(), as.speedMps() + 2, as.mainPa(), as.rail(), 1, 0),
            new Asked(as.atM(), as.speedMps(), as.mainPa() * 0.8, as.rail(), 1, 0),
            new Asked(as.atM(), as.speedMps(), as.mainPa(), as.rail(), 0.5, 0));
    for (Asked one : worse) {
      WhatIf.Answer answer = what.of(one, a.target());
      assertThat(shortM(answer.planned().met())).as(one.toString()).isLessThan(usual - 5);
      assertThat(answer.planned().points().get(0).atM()).isEqualTo(one.atM());
    }
  }

  /**
   * As with the brakes of a train that is short of them: fewer brake, and so it ends further on.
   */
  @Test
  void isolatedBrakesEndFurtherOn() {
    Plan plan = DemoPlans.plan(0);
    Application a = plan.approaches().get(0).applications().get(0);
    Asked as = asked(plan, a, a.cases().get(0), 1);
    double before = Double.POSITIVE_INFINITY;
    for (List<Integer> isolated : List.of(List.<Integer>of(), List.of(2), List.of(2, 3))) {
      Assignment train = plan.assignment().withIsolated(isolated);
      WhatIf.Answer answer = new WhatIf(train).of(as, a.target());
      double least = shortM(answer.safe().met());
      for (WhatIf.Rescue rescue : answer.rescues()) {
        least = Math.min(least, shortM(rescue.run().met()));
      }
      assertThat(least).as("isolated " + isolated).isLessThan(before - 5);
      before = least;
    }
  }
}
