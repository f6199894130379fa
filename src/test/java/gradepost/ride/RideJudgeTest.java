package gradepost.ride;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.policy.RideFault;
import gradepost.policy.RideRules;
import gradepost.ride.Driven.Moment;
import gradepost.ride.Ride.Observed;
import gradepost.ride.Ride.Sample;
import gradepost.ride.RideResult.Aspect;
import gradepost.ride.RideResult.Outcome;
import gradepost.source.Frozen;
import gradepost.source.pack.PackFile;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: what is seen of a run is what was done on it. */
@Tag("slow")
class RideJudgeTest {
  private static final List<Plan> PLANS = new ArrayList<>();

  @BeforeAll
  static void plan() {
    PLANS.add(DemoPlans.plan(0));
    PLANS.add(DemoPlans.plan(4));
  }

  private static RideRules rules(Plan plan) {
    return plan.assignment().policy().signOff().orElseThrow().ride();
  }

  private static RideResult judge(Plan plan, UnaryOperator<Moment> change) {
    Driven run = Driven.asPlanned(plan).with(change);
    return new RideJudge(plan, rules(plan))
        .judge(Driven.Recorder.exact().export(run, new Random(0)));
  }

  @Test
  void thePlanDrivenAsItIsHasEveryPoint() {
    for (Plan plan : PLANS) {
      RideResult result = judge(plan, s -> s);
      for (RideResult.OfApproach a : result.approaches()) {
        assertThat(a.marks())
            .as("approach %d: %s", a.approach().number(), a.observed())
            .allSatisfy(
                m ->
                    assertThat(m.good().orElse(m.aspect() == Aspect.STOP))
                        .as(m.aspect().name())
                        .isTrue());
      }
      assertThat(result.points()).isEqualTo(result.observed());
      assertThat(result.outcome()).isEqualTo(Outcome.PASSED);
      assertThat(result.faults()).isEmpty();
      for (RideResult.OfApproach a : result.approaches()) {
        a.approach()
            .brakingPointM()
            .ifPresent(p -> assertThat(braked(a.observed())).isBetween(p - 3, p + 3));
      }
    }
  }

  @Test
  void brakesThatAreAllLateAreSeenSo() {
    Plan plan = PLANS.get(0);
    double late = rules(plan).late().metres() + 30;
    Driven run = Driven.asPlanned(plan);
    for (Approach a : plan.approaches()) {
      if (longEnough(a, late)) {
        run = run.late(a, late);
      }
    }
    RideResult result =
        new RideJudge(plan, rules(plan)).judge(Driven.Recorder.exact().export(run, new Random(0)));
    int seen = 0;
    for (RideResult.OfApproach a : result.approaches()) {
      if (longEnough(a.approach(), late)) {
        seen++;
        assertThat(a.outside(Aspect.POINT)).as("approach " + a.approach().number()).isTrue();
      }
    }
    assertThat(seen).isGreaterThan(3);
    assertThat(result.points()).isLessThanOrEqualTo(result.observed() - seen);
  }

  private static boolean longEnough(Approach a, double late) {
    return a.target().isStop()
        && a.brakingPointM().filter(p -> a.target().atM() - p > 5 * late).isPresent();
  }

  /** What an assessor saw is taken as it is. */
  @Test
  void aStopPastItsMarkThatWasSeenIsAFault() {
    Plan plan = PLANS.get(0);
    Approach stop =
        plan.approaches().stream().filter(a -> a.target().isStop()).findFirst().orElseThrow();
    double past = rules(plan).stopPast().metres();
    assertThat(stopped(plan, stop, -past).faults()).isEmpty();
    assertThat(stopped(plan, stop, -past - 0.1).faults()).contains(RideFault.PAST_THE_MARK);
  }

  private static RideResult stopped(Plan plan, Approach a, double errorM) {
    Observed o =
        new Observed(
            a.number(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(errorM),
            Optional.empty(),
            Optional.empty());
    return new RideJudge(plan, rules(plan)).judge(new Ride.Typed(List.of(o)));
  }

  private static double braked(Observed o) {
    return o.brakedAtM().orElseThrow().value();
  }

  /** A check that is on already where the braking begins is not taken for the braking. */
  @Test
  void aCheckThatIsOnIsNotTheBrakeForTheTarget() {
    int checked = 0;
    List<Plan> plans = new ArrayList<>(PLANS);
    PackFile steep = Frozen.steep();
    plans.add(
        DemoPlans.plan(steep.assignment(steep.directions().get(0), steep.formations().get(1))));
    for (Plan plan : plans) {
      double late = rules(plan).late().metres();
      for (int i = 0; i + 1 < plan.approaches().size(); i++) {
        Approach a = plan.approaches().get(i);
        double point = a.brakingPointM().orElse(0.0);
        Optional<Command.Brake> before =
            a.actions().stream()
                .filter(x -> x.atM() < point - 1)
                .reduce((x, y) -> y)
                .flatMap(x -> x.command().brake())
                .filter(Command.Brake::checks);
        if (before.isEmpty()) {
          continue;
        }
        checked++;
        double check = before.orElseThrow().pressurePa();
        // A check before it may have been a stronger one.
        double from = a.fromM() - 100;
        // The brake for the target may come off behind it.
        double off = a.actions().get(a.actions().size() - 1).atM() + 100;
        double end = Math.max(off, plan.approaches().get(i + 1).fromM());
        Observed never = judge(plan, s -> held(s, check, from, end)).approaches().get(i).observed();
        assertThat(never.brakedAtM()).as("approach " + a.number()).isEmpty();
        RideResult.OfApproach tooLate =
            judge(plan, s -> held(s, check, from, point + 5 * late)).approaches().get(i);
        assertThat(tooLate.outside(Aspect.POINT)).as("approach " + a.number()).isTrue();
        assertThat(braked(tooLate.observed())).isGreaterThan(point + late);
      }
    }
    assertThat(checked).isPositive();
  }

  /** No more on the gauge than this between two places. */
  private static Moment held(Moment s, double mostPa, double fromM, double toM) {
    boolean here = s.atM() > fromM && s.atM() < toM;
    return here
        ? new Moment(s.atM(), s.speedMps(), Math.min(s.pressurePa(), mostPa), s.notch())
        : s;
  }

  /** Up a terminal platform it is the first brake that is scored, not the last dab of it. */
  @Test
  void atATerminalTheFirstApplicationIsScored() {
    int terminals = 0;
    for (Plan plan : PLANS) {
      Approach last = plan.approaches().get(plan.approaches().size() - 1);
      if (last.applications().size() < 2) {
        continue;
      }
      terminals++;
      double first = last.applications().get(0).brakingPointM();
      double second = last.applications().get(1).brakingPointM();
      double late = rules(plan).late().metres();
      RideResult.OfApproach asBriefed = last(judge(plan, s -> s));
      assertThat(braked(asBriefed.observed())).isBetween(first - 3, first + 3);
      assertThat(asBriefed.briefedPressurePa())
          .contains(
              last.actions().stream()
                  .filter(x -> x.command() instanceof Command.Brake)
                  .map(x -> ((Command.Brake) x.command()).pressurePa())
                  .findFirst()
                  .orElseThrow());
      // Nothing on the gauge up to where the brake is twice as late as it may be.
      RideResult.OfApproach tooLate =
          last(
              judge(
                  plan,
                  s ->
                      s.atM() > last.fromM() && s.atM() < first + 2 * late
                          ? new Moment(s.atM(), s.speedMps(), 0, s.notch())
                          : s));
      assertThat(second).isGreaterThan(first + 4 * late);
      assertThat(tooLate.outside(Aspect.POINT)).isTrue();
    }
    assertThat(terminals).isPositive();
  }

  private static RideResult.OfApproach last(RideResult result) {
    return result.approaches().get(result.approaches().size() - 1);
  }

  /** The front is past the board where the speed rises, the rear is not. */
  @Test
  void theRearOfTheTrainOverTheSpeedIsOverspeed() {
    Plan plan = PLANS.get(0);
    List<CeilingStep> steps = plan.ceiling();
    int i = 0;
    while (steps.get(i + 1).speedMps() <= steps.get(i).speedMps()) {
      i++;
    }
    CeilingStep low = steps.get(i);
    double tooFast = low.speedMps() + 3;
    double train = plan.assignment().formation().lengthM();
    RideResult result =
        judge(
            plan,
            s ->
                s.atM() > low.toM() - train / 2 && s.atM() < low.toM()
                    ? new Moment(s.atM(), tooFast, s.pressurePa(), s.notch())
                    : s);
    List<RideResult.OfApproach> over =
        result.approaches().stream().filter(a -> a.outside(Aspect.PERMISSIBLE)).toList();
    assertThat(over).hasSize(1);
    assertThat(over.get(0).observed().over().orElseThrow()).isBetween(2.99, 3.01);
    assertThat(result.outcome()).isEqualTo(Outcome.FAILED_BY_FAULT);
  }

  @Test
  void notchingDownIsSeenWhereTheStockForbidsIt() {
    Plan plan = PLANS.get(0);
    assertThat(plan.assignment().stock().traction().notchingDown()).isFalse();
    List<Integer> seen = new ArrayList<>();
    RideResult result =
        judge(
            plan,
            s -> {
              int notch = s.notch();
              boolean once = notch == 3 && seen.size() < 2;
              if (notch == 3) {
                seen.add(notch);
              }
              return once && seen.size() == 2
                  ? new Moment(s.atM(), s.speedMps(), s.pressurePa(), 2)
                  : s;
            });
    int movements =
        result.approaches().stream().mapToInt(a -> a.observed().forbidden().orElse(0)).sum();
    assertThat(movements).isEqualTo(1);
    assertThat(result.faults()).containsExactly(RideFault.FORBIDDEN_MOVEMENT);
  }

  @Test
  void withoutPressureNothingIsSaidOfBraking() {
    Plan plan = PLANS.get(1);
    List<Sample> bare =
        Driven.Recorder.exact().export(Driven.asPlanned(plan), new Random(0)).samples().stream()
            .map(RideJudgeTest::bare)
            .toList();
    RideResult result = new RideJudge(plan, rules(plan)).judge(new Ride.Recorded(bare));
    assertThat(result.approaches())
        .allSatisfy(a -> assertThat(a.observed().brakedAtM()).isEmpty())
        .allSatisfy(a -> assertThat(a.observed().forbidden()).isEmpty());
    assertThat(result.outcome()).isEqualTo(Outcome.NO_RESULT);
  }

  private static Sample bare(Sample s) {
    return new Sample(
        s.timeS(),
        s.countedM(),
        s.speedMps(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        false);
  }

  @Test
  void pointsAreCountedAtTheBoundsAndNotBeyond() {
    Plan plan = PLANS.get(0);
    RideRules rules = rules(plan);
    Approach stop =
        plan.approaches().stream()
            .filter(a -> a.target() instanceof Target.Stop && a.brakingPointM().isPresent())
            .findFirst()
            .orElseThrow();
    double point = stop.brakingPointM().orElseThrow();
    double early = rules.early().metres();
    double late = rules.late().metres();
    double stopShort = rules.stopShort().metres();
    assertThat(typed(plan, stop, point - early, stopShort)).isEqualTo(2);
    assertThat(typed(plan, stop, point + late, 0)).isEqualTo(2);
    assertThat(typed(plan, stop, point - early - 0.1, stopShort)).isEqualTo(1);
    assertThat(typed(plan, stop, point + late + 0.1, stopShort + 0.1)).isZero();
  }

  private static int typed(Plan plan, Approach a, double braked, double stopError) {
    Observed o =
        new Observed(
            a.number(),
            Optional.of(braked),
            Optional.empty(),
            Optional.empty(),
            Optional.of(stopError),
            Optional.empty(),
            Optional.empty());
    RideResult result = new RideJudge(plan, rules(plan)).judge(new Ride.Typed(List.of(o)));
    assertThat(result.observed()).isEqualTo(2);
    assertThat(result.outcome()).isEqualTo(Outcome.NO_RESULT);
    return result.points();
  }
}
