package gradepost.ride;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.drive.DemoPlans;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.policy.RideRules;
import gradepost.ride.Driven.Moment;
import gradepost.ride.ForbiddenMovement.Why;
import gradepost.ride.RideResult.Aspect;
import gradepost.ride.RideResult.OfApproach;
import gradepost.ride.RideResult.Outcome;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: whatever the wheel of the recorder is worn to and however it slips, a run that is
 * driven as briefed has no fault, and one with faults has those and no others.
 */
@Tag("slow")
class RecorderTest {
  private static final int EXPORTS =
      Integer.getInteger("gradepost.exports", Examples.of(300, 1000));
  private static final double LATE_M = 60 * 0.9144;
  private static final double OVER_MPS = Driven.mph(3);
  private static final List<Plan> PLANS = new ArrayList<>();

  @BeforeAll
  static void plan() {
    for (int i = 0; i < DemoPlans.tried().size(); i += 2) {
      PLANS.add(DemoPlans.plan(DemoPlans.tried().get(i)));
    }
  }

  private static RideRules rules(Plan plan) {
    return plan.assignment().policy().signOff().orElseThrow().ride();
  }

  private static RideResult judge(Plan plan, Driven run, long seed) {
    Random random = new Random(seed);
    Driven.Recorder recorder =
        new Driven.Recorder(
            0.97 + 0.06 * random.nextDouble(),
            0.05 * random.nextDouble(),
            1 + random.nextInt(10),
            0.2 * random.nextDouble(),
            random.nextBoolean());
    Ride.Recorded export = recorder.export(run, random);
    boolean clock = random.nextInt(5) > 0;
    return new RideJudge(plan, rules(plan)).judge(clock ? export : withoutClock(export));
  }

  private static Ride.Recorded withoutClock(Ride.Recorded export) {
    return new Ride.Recorded(
        export.samples().stream()
            .map(
                s ->
                    new Ride.Sample(
                        Optional.empty(),
                        s.countedM(),
                        s.speedMps(),
                        s.pressurePa(),
                        s.notch(),
                        s.passedM(),
                        s.magnet()))
            .toList());
  }

  /** What is wrong with a ride, a line each. */
  private static List<String> wrong(RideResult result) {
    List<String> out = new ArrayList<>();
    for (OfApproach a : result.approaches()) {
      for (Aspect aspect : Aspect.values()) {
        if (a.outside(aspect)) {
          out.add(a.approach().number() + " " + aspect + " " + a.observed());
        }
      }
      a.observed().excesses().stream()
          .filter(e -> !result.counts(e))
          .forEach(e -> out.add(a.approach().number() + " slight " + e));
      a.observed().movements().forEach(m -> out.add(a.approach().number() + " " + m));
    }
    return out;
  }

  @Test
  void aRunAsBriefedHasEveryPointThatIsObserved() {
    for (Plan plan : PLANS) {
      Driven run = Driven.asPlanned(plan);
      for (int seed = 0; seed < EXPORTS / (2 * PLANS.size()); seed++) {
        RideResult result = judge(plan, run, seed);
        assertThat(wrong(result)).as("seed %d", seed).isEmpty();
        assertThat(result.points()).isEqualTo(result.observed());
        assertThat(result.outcome()).isEqualTo(Outcome.PASSED);
      }
    }
  }

  /** Late by 60 yd, 3 mph over for 4 s, a notch back, power with the brake on. */
  @Test
  void faultsAreFoundAndNoOthers() {
    for (Plan plan : PLANS) {
      Approach late = lateOn(plan);
      Moment over = overAt(plan, late);
      Moment back = backAt(plan, late);
      Moment braked = brakedAt(plan, late);
      Driven run =
          Driven.asPlanned(plan)
              .over(over.atM(), OVER_MPS, 4)
              .handle(back.atM(), 3, back.notch() - 1)
              .handle(braked.atM(), 3, 0)
              .late(late, LATE_M);
      for (int seed = 0; seed < EXPORTS / (2 * PLANS.size()); seed++) {
        RideResult result = judge(plan, run, seed);
        List<String> found = new ArrayList<>();
        for (OfApproach a : result.approaches()) {
          if (a.outside(Aspect.POINT)) {
            found.add("late " + a.approach().number());
            assertThat(
                    a.observed().brakedAtM().orElseThrow().value()
                        - a.approach().brakingPointM().orElseThrow())
                .as("seed %d", seed)
                .isBetween(LATE_M - 25, LATE_M + 25);
          }
          a.observed().excesses().stream().filter(result::counts).forEach(e -> found.add("over"));
          a.observed().movements().forEach(m -> found.add(m.why().name()));
        }
        boolean mayGoBack = plan.assignment().stock().traction().notchingDown();
        List<String> planted =
            new ArrayList<>(List.of("late " + late.number(), "over", Why.BRAKE_ON.name()));
        if (!mayGoBack) {
          planted.add(Why.DOWN.name());
        }
        assertThat(found)
            .as("seed %d: %s", seed, wrong(result))
            .containsExactlyInAnyOrderElementsOf(planted);
      }
    }
  }

  /** A stop, so that the brake has to be as late as it is told. */
  private static Approach lateOn(Plan plan) {
    return plan.approaches().stream()
        .filter(a -> a.target().isStop() && a.brakingPointM().isPresent())
        .filter(a -> a.target().atM() - a.brakingPointM().get() > 6 * LATE_M)
        .findFirst()
        .orElseThrow();
  }

  /** Faults that lie apart are told apart. */
  private static boolean apart(Moment m, Approach late) {
    return m.atM() < late.brakingPointM().orElseThrow() - 600 || m.atM() > late.target().atM();
  }

  /** Far from every stand: what is faster there still stands where it did. */
  private static boolean rolls(Plan plan, Moment m) {
    return plan.trace().points().stream()
        .noneMatch(p -> p.speedMps() == 0 && Math.abs(p.atM() - m.atM()) < 350);
  }

  private static Moment overAt(Plan plan, Approach late) {
    for (Moment m : Driven.asPlanned(plan).moments()) {
      CeilingStep step =
          plan.ceiling().stream().filter(s -> s.toM() > m.atM()).findFirst().orElseThrow();
      boolean room = step.fromM() + 100 < m.atM() && m.atM() + 300 < step.toM();
      boolean free = m.pressurePa() == 0;
      if (room
          && free
          && apart(m, late)
          && rolls(plan, m)
          && m.speedMps() > step.speedMps() - Driven.mph(9)
          && m.speedMps() > 10) {
        return m;
      }
    }
    throw new AssertionError("the run comes nowhere near the permissible speed");
  }

  private static Moment backAt(Plan plan, Approach late) {
    List<Moment> all = Driven.asPlanned(plan).moments();
    for (int i = 0; i + 100 < all.size(); i++) {
      int notch = all.get(i).notch();
      if (notch >= 2
          && apart(all.get(i), late)
          && all.get(i + 100).notch() == notch
          && all.get(i).speedMps() > 5) {
        return all.get(i + 50);
      }
    }
    throw new AssertionError("no notch is kept for ten seconds");
  }

  private static Moment brakedAt(Plan plan, Approach late) {
    List<Moment> all = Driven.asPlanned(plan).moments();
    for (int i = all.size() / 2; i + 100 < all.size(); i++) {
      Moment m = all.get(i);
      boolean held = m.pressurePa() > 60_000 && all.get(i + 80).pressurePa() >= m.pressurePa();
      if (held && apart(m, late) && all.get(i + 80).speedMps() > 2) {
        return all.get(i + 10);
      }
    }
    throw new AssertionError("no brake is held for eight seconds");
  }
}
