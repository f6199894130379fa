package gradepost.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.DemoPlans;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.policy.RideRules;
import gradepost.ride.Ride.Sample;
import gradepost.ride.RideResult.Aspect;
import gradepost.ride.RideResult.OfApproach;
import gradepost.ride.Stretches.Stretch;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How an export is laid on the road, and what of it counts as observed. */
@Tag("slow")
class TiedRunTest {
  private static Plan plan = DemoPlans.plan(0);
  private static List<Sample> exact = List.of();

  @BeforeAll
  static void drive() {
    exact = export(1, 0);
  }

  private static List<Sample> export(double scale, double slip) {
    return new Driven.Recorder(scale, slip, 2, 0, false)
        .export(Driven.asPlanned(plan), new Random(0))
        .samples();
  }

  private static RideRules rules() {
    return plan.assignment().policy().signOff().orElseThrow().ride();
  }

  private static TiedRun tied(List<Sample> samples) {
    return new Tying(plan.assignment(), new Ride.Recorded(samples), rules().recorder())
        .run(plan.assignment().path().lengthM())
        .orElseThrow();
  }

  private static RideResult judged(List<Sample> samples) {
    return new RideJudge(plan, rules()).judge(new Ride.Recorded(samples));
  }

  private static Sample fast(Sample s, double mps) {
    return new Sample(
        s.timeS(), s.countedM(), mps, s.pressurePa(), s.notch(), s.passedM(), s.magnet());
  }

  private static Sample counted(Sample s, double metres) {
    return new Sample(
        s.timeS(), metres, s.speedMps(), s.pressurePa(), s.notch(), s.passedM(), s.magnet());
  }

  /** By hand: a wheel that counts 2 % too much has a metre of 1/1.02 on the road. */
  @Test
  void theScaleOfEachLegIsThatOfTheWheel() {
    TiedRun run = tied(export(1.02, 0));
    assertThat(run.legs()).hasSize(plan.assignment().calls().size() - 1);
    // A train stands a few metres short of its mark: so much of a leg is not the wheel's.
    assertThat(run.legs())
        .allSatisfy(l -> assertThat(l.scale()).isCloseTo(1 / 1.02, within(0.006)));
    assertThat(run.lastM()).isCloseTo(run.legs().get(run.legs().size() - 1).toM(), within(1e-6));
  }

  @Test
  void aStartBehindTheMarkIsNoFault() {
    List<Sample> later = exact.stream().map(s -> counted(s, s.countedM() + 12)).toList();
    assertThat(tied(later).atM(0)).isEqualTo(tied(exact).atM(0));
  }

  /** A stand at a signal between two stops is at no stop mark. */
  @Test
  void aStandAtASignalIsNotTakenForAStop() {
    List<Sample> held = new ArrayList<>();
    double at = tied(exact).legs().get(0).countedM() * 0.4;
    boolean stood = false;
    double lateS = 0;
    for (Sample s : exact) {
      if (!stood && s.countedM() > at) {
        stood = true;
        for (int i = 0; i < 40; i++) {
          held.add(later(fast(counted(s, s.countedM()), 0), i * 0.5));
        }
        lateS = 20;
      }
      held.add(later(s, lateS));
    }
    assertThat(tied(held).legs())
        .usingRecursiveFieldByFieldElementComparatorIgnoringFields("slipsM")
        .isEqualTo(tied(exact).legs());
  }

  private static Sample later(Sample s, double byS) {
    return new Sample(
        s.timeS().map(t -> t + byS),
        s.countedM(),
        s.speedMps(),
        s.pressurePa(),
        s.notch(),
        s.passedM(),
        s.magnet());
  }

  @Test
  void oneWrongLineFailsNobody() {
    List<Sample> wrong = new ArrayList<>(exact);
    for (int i = 1; i < wrong.size(); i++) {
      if (wrong.get(i).speedMps() > 10) {
        wrong.set(i, fast(wrong.get(i), 40));
        break;
      }
    }
    RideResult result = judged(wrong);
    assertThat(result.points()).isEqualTo(result.observed());
    assertThat(result.run().orElseThrow().glitches()).isEqualTo(1);
    assertThat(judged(exact).run().orElseThrow().glitches()).isZero();
  }

  /** What lies in a gap was not observed: no brake that was early, no speed that was high. */
  @Test
  void aGapOverABrakingPointIsNotObserved() {
    Approach over =
        plan.approaches().stream()
            .filter(a -> a.brakingPointM().isPresent() && a.target().isStop())
            .findFirst()
            .orElseThrow();
    double point = over.brakingPointM().orElseThrow();
    TiedRun whole = tied(exact);
    List<Sample> gap = new ArrayList<>();
    for (int i = 0; i < exact.size(); i++) {
      boolean within = i < whole.size() && Math.abs(whole.atM(i) - point) < 250;
      if (!within) {
        gap.add(exact.get(i));
      }
    }
    RideResult result = judged(gap);
    OfApproach at = result.approaches().get(plan.approaches().indexOf(over));
    assertThat(result.run().orElseThrow().gaps()).hasSize(1);
    assertThat(good(at, Aspect.POINT)).isEmpty();
    assertThat(good(at, Aspect.SPEED)).isEmpty();
    assertThat(good(at, Aspect.PERMISSIBLE)).isEmpty();
    assertThat(result.points()).isEqualTo(result.observed());
    assertThat(result.observed()).isLessThan(judged(exact).observed());
  }

  private static Optional<Boolean> good(OfApproach a, Aspect aspect) {
    return a.marks().stream()
        .filter(m -> m.aspect() == aspect)
        .findFirst()
        .flatMap(RideResult.Mark::good);
  }

  /** A leg whose scale no wheel has is told, and nothing on it is scored. */
  @Test
  void aLegOfAnImpossibleScaleIsNotScored() {
    TiedRun whole = tied(exact);
    Leg second = whole.legs().get(1);
    double from = whole.legs().get(0).countedM();
    List<Sample> bent = new ArrayList<>();
    for (Sample s : exact) {
      double on = Math.min(Math.max(0, s.countedM() - from), second.countedM());
      bent.add(counted(s, s.countedM() + 0.08 * on));
    }
    RideResult result = judged(bent);
    assertThat(result.run().orElseThrow().legs().get(1).trusted()).isFalse();
    assertThat(result.points()).isEqualTo(result.observed());
    for (OfApproach a : result.approaches()) {
      boolean there =
          a.approach().fromM() > second.fromM() && a.approach().target().atM() < second.toM() + 1;
      if (there) {
        assertThat(a.marks()).allSatisfy(m -> assertThat(m.good()).isEmpty());
      }
    }
  }

  /** A place that was noted as passed mends what a slipping wheel had bent before it. */
  @Test
  void aPlaceThatWasPassedIsAFix() {
    TiedRun whole = tied(exact);
    int mark = whole.firstAt(whole.legs().get(0).toM() / 2);
    List<Sample> bent = new ArrayList<>();
    for (int i = 0; i < exact.size(); i++) {
      Sample s = exact.get(i);
      // 30 m too many before the place, and 30 too few behind it.
      double off = i < mark ? 30.0 * i / mark : Math.max(0, 30 - 0.5 * (i - mark));
      Optional<Double> passed = i == mark ? Optional.of(whole.atM(i)) : Optional.empty();
      bent.add(
          new Sample(
              s.timeS(),
              s.countedM() + off,
              s.speedMps(),
              s.pressurePa(),
              s.notch(),
              passed,
              false));
    }
    List<Sample> without = withoutFixes(bent);
    double truth = whole.atM(mark);
    assertThat(Math.abs(tied(without).atM(mark) - truth)).isGreaterThan(10);
    assertThat(tied(bent).atM(mark)).isCloseTo(truth, within(12.0));
    assertThat(tied(bent).unfit()).isZero();
  }

  private static List<Sample> withoutFixes(List<Sample> samples) {
    return samples.stream()
        .map(
            s ->
                new Sample(
                    s.timeS(),
                    s.countedM(),
                    s.speedMps(),
                    s.pressurePa(),
                    s.notch(),
                    Optional.empty(),
                    false))
        .toList();
  }

  /** So does a magnet of a signal, where it can be only the one. */
  @Test
  void aMagnetIsAFix() {
    TiedRun whole = tied(exact);
    double magnet =
        plan.assignment().route().signals().stream()
            .filter(s -> s.direction() == plan.assignment().direction())
            .filter(s -> plan.assignment().lines().contains(s.line()))
            .flatMap(s -> s.aws().stream())
            .mapToDouble(plan.assignment().path()::metresAt)
            .filter(m -> m > whole.legs().get(1).fromM() && m < whole.legs().get(1).toM())
            .findFirst()
            .orElseThrow();
    int at = whole.firstAt(magnet);
    int from = whole.firstAt(whole.legs().get(1).fromM() + 1);
    List<Sample> bent = new ArrayList<>();
    for (int i = 0; i < exact.size(); i++) {
      Sample s = exact.get(i);
      double share = Math.min(1, Math.max(0, (i - from) / (double) (at - from)));
      double back = Math.max(0, 1 - Math.max(0, i - at) / 40.0);
      bent.add(
          new Sample(
              s.timeS(),
              s.countedM() + 18 * share * back,
              s.speedMps(),
              s.pressurePa(),
              s.notch(),
              Optional.empty(),
              i == at));
    }
    List<Sample> without = withoutFixes(bent);
    double error = Math.abs(tied(without).atM(at) - whole.atM(at));
    assertThat(error).isGreaterThan(8);
    assertThat(Math.abs(tied(bent).atM(at) - whole.atM(at))).isLessThan(error / 2 + 5);
  }

  @Test
  void everyMetreBelongsToOneApproach() {
    for (int i = 0; i < DemoPlans.tried().size(); i++) {
      Plan each = DemoPlans.plan(DemoPlans.tried().get(i));
      List<Stretch> all = Stretches.of(each);
      assertThat(all.get(0).fromM()).isZero();
      for (int k = 1; k < all.size(); k++) {
        assertThat(all.get(k).fromM()).isEqualTo(all.get(k - 1).toM());
      }
      for (int k = 0; k < all.size(); k++) {
        Approach a = each.approaches().get(k);
        // Its own board or mark is within it or at its end.
        assertThat(a.target().atM()).isBetween(all.get(k).fromM() - 1e-6, all.get(k).toM() + 1e-6);
      }
    }
  }

  /** Over the speed within a restriction is the restriction's fault, not the next one's. */
  @Test
  void anExcessWithinARestrictionIsItsOwn() {
    int found = 0;
    for (int i = 0; i < plan.approaches().size(); i++) {
      Approach a = plan.approaches().get(i);
      Stretch own = Stretches.of(plan).get(i);
      double from = a.target().atM() + 20;
      if (a.target().isStop() || own.toM() < from + 150) {
        continue;
      }
      found++;
      Driven run = Driven.asPlanned(plan);
      double limit =
          plan.ceiling().stream().filter(s -> s.toM() > from).findFirst().orElseThrow().speedMps();
      RideResult result =
          new RideJudge(plan, rules())
              .judge(
                  Driven.Recorder.exact()
                      .export(
                          run.with(
                              m ->
                                  m.atM() > from && m.atM() < from + 120
                                      ? new Driven.Moment(
                                          m.atM(), limit + 4, m.pressurePa(), m.notch())
                                      : m),
                          new Random(0)));
      assertThat(
              result.approaches().stream()
                  .filter(x -> x.outside(Aspect.PERMISSIBLE))
                  .map(x -> x.approach().number()))
          .containsExactly(a.number());
      Excess excess = result.approaches().get(i).observed().excesses().get(0);
      assertThat(excess.fromM()).isCloseTo(from, within(30.0));
      assertThat(excess.limitMps()).isEqualTo(limit);
      assertThat(excess.mostMps()).isCloseTo(4, within(0.3));
    }
    assertThat(found).isPositive();
  }

  @Test
  void anApproachThatIsLeftOutIsNotJudged() {
    RideResult result =
        new RideJudge(plan, rules())
            .judge(new Ride.Recorded(exact), Map.of(2, "checked at a signal"), Map.of());
    assertThat(result.approaches().get(1).marks()).allSatisfy(m -> assertThat(m.good()).isEmpty());
    assertThat(result.leftOut()).containsEntry(2, "checked at a signal");
  }

  /** How the train stood comes from the assessor's form; the recorder cannot know it so well. */
  @Test
  void aStopThatSomebodySawCounts() {
    int stop =
        plan.approaches().stream()
            .filter(a -> a.target().isStop())
            .findFirst()
            .orElseThrow()
            .number();
    RideResult result =
        new RideJudge(plan, rules())
            .judge(new Ride.Recorded(exact), Map.of(), Map.of(stop, Measured.exactly(-20)));
    assertThat(result.approaches().get(stop - 1).outside(Aspect.STOP)).isTrue();
  }
}
