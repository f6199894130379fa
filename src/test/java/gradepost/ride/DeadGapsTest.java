package gradepost.ride;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.policy.RideRules;
import gradepost.ride.Ride.Sample;
import gradepost.route.Stretch;
import gradepost.stock.Formation;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: where the line voltage is recorded, a gap in the conductor rail ties the train to the
 * road, and never more closely than it can be known.
 */
@Tag("slow")
class DeadGapsTest {
  private static final Plan PLAN = DemoPlans.plan(0);
  private static final Driven RUN = Driven.asPlanned(PLAN);
  private static final int SEEDS = 24;

  /** Lines a second: each line is one moment of the run. */
  private static final double HZ = 10;

  private static RideRules rules() {
    return PLAN.assignment().policy().signOff().orElseThrow().ride();
  }

  /** The motored vehicles of the 4-car are its first and its last. */
  private static Formation fourCar() {
    return PLAN.assignment().formation();
  }

  /** One motored vehicle, as in a two-car unit; as long as the other, for it stops at its marks. */
  private static Formation oneMotor() {
    Vehicle motor = fourCar().vehicles().get(0);
    Vehicle trailer = fourCar().vehicles().get(1);
    return new Formation("4-car", List.of(motor, trailer, trailer, trailer));
  }

  private static Assignment with(Formation formation) {
    Assignment a = PLAN.assignment();
    return new Assignment(
        a.route(),
        a.direction(),
        a.lines(),
        a.junctionRoutes(),
        a.calls(),
        a.stock(),
        formation,
        a.load(),
        a.policy(),
        a.restrictions());
  }

  /** How far behind the front the collectors are that feed the recorder. */
  private static List<Double> collectors(Formation formation, Random random) {
    List<Double> out = new ArrayList<>();
    double at = 0;
    int only = random.nextInt(3);
    for (Vehicle vehicle : formation.vehicles()) {
      double length = vehicle.length().metres();
      boolean feeds = only == 2 || (only == 0) == (at == 0) || formation.motoredVehicles() == 1;
      if (vehicle.motored() && feeds) {
        out.add(at + random.nextDouble() * length / 2);
        out.add(at + length / 2 + random.nextDouble() * length / 2);
      }
      at += length;
    }
    return out;
  }

  private static List<Stretch> gaps() {
    return PLAN.assignment().route().railGaps().stream()
        .map(g -> PLAN.assignment().path().span(g.extent()))
        .toList();
  }

  private static boolean live(double frontM, List<Double> collectors) {
    return collectors.stream()
        .anyMatch(c -> gaps().stream().noneMatch(g -> g.offM(frontM - c) == 0));
  }

  private static List<Sample> export(double scale, double slip, List<Double> collectors) {
    List<Sample> plain =
        new Driven.Recorder(scale, slip, HZ, 0, false).export(RUN, new Random(0)).samples();
    List<Sample> out = new ArrayList<>();
    for (int i = 0; i < plain.size(); i++) {
      Sample s = plain.get(i);
      boolean current = live(RUN.moments().get(i).atM(), collectors);
      out.add(
          new Sample(
              s.timeS(),
              s.countedM(),
              s.speedMps(),
              s.pressurePa(),
              s.notch(),
              s.passedM(),
              s.magnet(),
              Optional.of(current)));
    }
    return out;
  }

  private static List<Sample> withoutVoltage(List<Sample> samples) {
    return samples.stream()
        .map(
            s ->
                new Sample(
                    s.timeS(),
                    s.countedM(),
                    s.speedMps(),
                    s.pressurePa(),
                    s.notch(),
                    s.passedM(),
                    s.magnet()))
        .toList();
  }

  private static TiedRun tied(Formation formation, List<Sample> samples) {
    return new Tying(with(formation), new Ride.Recorded(samples), rules().recorder())
        .run(PLAN.assignment().path().lengthM())
        .orElseThrow();
  }

  /**
   * Two runs of the same lines: the widest uncertainty where the current went off or came again.
   */
  private static double[] atEdges(Formation formation, List<Sample> samples) {
    TiedRun run = tied(formation, samples);
    TiedRun without = tied(formation, withoutVoltage(samples));
    double[] out = {0, 0};
    int first = 0;
    for (int k = 1; k < run.size(); k++) {
      boolean was = samples.get(first + k - 1).current().orElseThrow();
      if (was != samples.get(first + k).current().orElseThrow()) {
        double trueM = RUN.moments().get(first + k).atM();
        assertThat(Math.abs(run.atM(k) - trueM)).isLessThanOrEqualTo(run.withinM(k) + 1);
        assertThat(run.withinM(k)).isLessThanOrEqualTo(without.withinM(k) + 1e-9);
        out[0] += run.withinM(k);
        out[1] += without.withinM(k);
      }
    }
    return out;
  }

  @Test
  void aGapNeverMakesAPlaceLessCertainNorWrong() {
    Random random = new Random(5);
    for (int seed = 0; seed < SEEDS; seed++) {
      Formation formation = seed % 2 == 0 ? fourCar() : oneMotor();
      double scale = 0.98 + 0.04 * random.nextDouble();
      atEdges(formation, export(scale, 0.05, collectors(formation, random)));
    }
  }

  /** Collectors of one vehicle are close together: where they meet the gap is known well. */
  @Test
  void aShortUnitIsTiedByItsGaps() {
    Random random = new Random(6);
    double[] sum = {0, 0};
    for (int seed = 0; seed < SEEDS / 3; seed++) {
      double[] edges = atEdges(oneMotor(), export(1, 0.05, collectors(oneMotor(), random)));
      sum[0] += edges[0];
      sum[1] += edges[1];
    }
    assertThat(sum[0]).isLessThan(0.6 * sum[1]);
  }

  /** Which vehicles feed the recorder is not said: at both ends of a unit a gap tells less. */
  @Test
  void aLongUnitIsTiedNoWorse() {
    Random random = new Random(8);
    double[] sum = {0, 0};
    for (int seed = 0; seed < SEEDS / 3; seed++) {
      double[] edges = atEdges(fourCar(), export(1, 0.05, collectors(fourCar(), random)));
      sum[0] += edges[0];
      sum[1] += edges[1];
    }
    assertThat(sum[0]).isLessThanOrEqualTo(sum[1]);
  }

  @Test
  void aPerfectDriveKeepsEveryPoint() {
    Random random = new Random(7);
    for (int seed = 0; seed < SEEDS / 3; seed++) {
      double scale = 0.98 + 0.04 * random.nextDouble();
      List<Sample> samples = export(scale, 0.05, collectors(fourCar(), random));
      RideResult result = new RideJudge(PLAN, rules()).judge(new Ride.Recorded(samples));
      assertThat(result.points()).isEqualTo(result.observed());
    }
  }

  /** Off where no gap is: the breaker, and no fix. */
  @Test
  void aBreakerThatOpensElsewhereIsNoFix() {
    List<Sample> samples = new ArrayList<>(export(1, 0.05, List.of(3.0, 16.0)));
    List<Sample> opened = new ArrayList<>();
    for (int i = 0; i < samples.size(); i++) {
      Sample s = samples.get(i);
      double at = RUN.moments().get(i).atM();
      opened.add(
          new Sample(
              s.timeS(),
              s.countedM(),
              s.speedMps(),
              s.pressurePa(),
              s.notch(),
              s.passedM(),
              s.magnet(),
              Optional.of(at < 3000 || at > 3100)));
    }
    TiedRun run = tied(fourCar(), opened);
    TiedRun without = tied(fourCar(), withoutVoltage(opened));
    for (int k = 0; k < run.size(); k++) {
      assertThat(run.atM(k)).isEqualTo(without.atM(k));
    }
  }
}
