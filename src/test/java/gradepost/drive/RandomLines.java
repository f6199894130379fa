package gradepost.drive;

import gradepost.drive.RandomLine.Bend;
import gradepost.drive.RandomLine.Gap;
import gradepost.drive.RandomLine.Halt;
import gradepost.drive.RandomLine.Slack;
import gradepost.drive.RandomLine.Slope;
import gradepost.policy.Policy;
import gradepost.route.place.Direction;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Makes up lines that a railway could have, each from a seed: 3 to 15 km, gradients to 1 in 50 (1
 * in 100 at platforms), curves, two to six stops, restrictions of all lengths, rail gaps where a
 * train does not come to a stand in them, in both systems of units.
 */
public final class RandomLines {
  private static final double STEEPEST = 20;
  private static final double STEEPEST_AT_PLATFORM = 10;

  /** The makings of a train: type of stock and the policy that it is driven by. */
  private record Depot(UnitStyle units, Stock stock, Policy policy) {}

  private static final List<Depot> DEPOTS = depots();

  private final Random random;
  private final Depot depot;
  private final double grid;

  private RandomLines(long seed) {
    random = new Random(seed * 0x9E3779B97F4A7C15L);
    random.nextLong();
    depot = DEPOTS.get((int) (seed % DEPOTS.size()));
    grid = depot.units().placeStepM();
  }

  private static List<Depot> depots() {
    List<Assignment> demo = DemoPlans.assignments();
    Assignment miles =
        demo.stream().filter(a -> a.route().units() == UnitStyle.MILES).findFirst().orElseThrow();
    Assignment metric =
        demo.stream().filter(a -> a.route().units() == UnitStyle.METRIC).findFirst().orElseThrow();
    return List.of(
        new Depot(UnitStyle.MILES, Mill.stock(), Mill.policy()),
        new Depot(UnitStyle.MILES, miles.stock(), miles.policy()),
        new Depot(UnitStyle.METRIC, metric.stock(), metric.policy()),
        new Depot(UnitStyle.METRIC, Mill.stock(), metric.policy()));
  }

  /** The line of a seed. */
  public static RandomLine of(long seed) {
    return new RandomLines(seed).line();
  }

  private RandomLine line() {
    Formation formation = formation(2 + random.nextInt(7));
    double length = onGrid(between(3000, 15000));
    int stops = 2 + random.nextInt(5);
    Direction direction = random.nextBoolean() ? Direction.FORWARD : Direction.BACKWARD;
    List<Halt> halts = halts(length, stops + 1, formation.lengthM(), direction);
    List<Slope> slopes = slopes(length, halts);
    double line = speed(0.6 + 0.4 * random.nextDouble());
    List<Slack> slacks = new ArrayList<>();
    for (int i = random.nextInt(6); i > 0; i--) {
      double from = onGrid(between(0, length - 500));
      double to = Math.min(length, onGrid(from + 40 + between(0, 35) * between(0, 35)) + grid);
      slacks.add(new Slack(from, to, speed(0.2 + 0.6 * random.nextDouble())));
    }
    return new RandomLine(
        depot.units(),
        length,
        random.nextInt(3) == 0 ? onGrid(between(0.2, 0.8) * length) : length,
        line,
        slopes,
        bends(length),
        slacks,
        gaps(length, halts, slopes, slacks),
        halts,
        landmarks(length),
        depot.stock(),
        depot.policy(),
        formation,
        random.nextInt(4) == 0 ? LoadCase.TARE : LoadCase.SEATED,
        direction);
  }

  /** Motor cars at the ends and in the middle, trailers between. */
  private Formation formation(int cars) {
    Vehicle motor =
        depot.stock().vehicles().stream().filter(Vehicle::motored).findFirst().orElseThrow();
    Vehicle trailer =
        depot.stock().vehicles().stream().filter(v -> !v.motored()).findFirst().orElseThrow();
    String order =
        switch (cars) {
          case 2 -> "MT";
          case 3 -> "MTM";
          case 4 -> "MTTM";
          case 5 -> "MTMTM";
          case 6 -> "MTMMTM";
          case 7 -> "MTTMMTM";
          default -> "MTTMMTTM";
        };
    List<Vehicle> vehicles = new ArrayList<>();
    for (int i = 0; i < order.length(); i++) {
      char c = order.charAt(i);
      vehicles.add(c == 'M' ? motor : trailer);
    }
    return new Formation(cars + "-car", vehicles);
  }

  private List<Halt> halts(double length, int count, double trainM, Direction direction) {
    double platform = Math.ceil((trainM + 20) / grid) * grid + grid;
    double room = (length - 4 * grid - count * platform) / (count - 1);
    List<Halt> halts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double even = 2 * grid + i * (platform + room);
      double shift = i == 0 || i == count - 1 ? 0 : between(-0.3, 0.3) * Math.max(0, room - 300);
      double from = onGrid(even + shift);
      boolean last = i == (direction == Direction.FORWARD ? count - 1 : 0);
      halts.add(new Halt(from, from + platform, last && random.nextBoolean()));
    }
    return halts;
  }

  private List<Slope> slopes(double length, List<Halt> halts) {
    List<Slope> slopes = new ArrayList<>();
    double at = 0;
    while (at < length) {
      double to = Math.min(length, onGrid(at + between(120, 1300)));
      if (length - to < 3 * grid) {
        to = length;
      }
      double from = at;
      double end = to;
      boolean platform = halts.stream().anyMatch(h -> h.fromM() < end && h.toM() > from);
      double most = platform ? STEEPEST_AT_PLATFORM : STEEPEST;
      double steep = random.nextInt(4) == 0 ? 0 : between(-1, 1) * most;
      slopes.add(new Slope(at, to, Math.rint(steep * 10) / 10));
      at = to;
    }
    return slopes;
  }

  private List<Bend> bends(double length) {
    List<Bend> bends = new ArrayList<>();
    double at = onGrid(between(0, 800));
    while (true) {
      double to = onGrid(at + between(80, 500));
      if (to >= length) {
        return bends;
      }
      double radius = Math.rint(160 + between(0, 40) * between(0, 40));
      bends.add(new Bend(at, to, radius, radius < 200));
      at = onGrid(to + between(40, 1500));
    }
  }

  /** Short ones, away from the start of any run, from climbs and from low speeds. */
  private List<Gap> gaps(double length, List<Halt> halts, List<Slope> slopes, List<Slack> slacks) {
    List<Gap> gaps = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      double from = onGrid(between(300, length - 400));
      double to = onGrid(from + between(20, 80)) + grid;
      boolean platform = halts.stream().anyMatch(h -> h.fromM() - 400 < to && h.toM() + 400 > from);
      boolean climb =
          slopes.stream()
              .anyMatch(
                  s ->
                      s.fromM() < to + 200
                          && s.toM() > from - 200
                          && Math.abs(s.permille()) > STEEPEST_AT_PLATFORM);
      boolean slow =
          slacks.stream()
              .anyMatch(s -> s.speedMps() < 11 && s.fromM() < to + 300 && s.toM() > from - 300);
      if (!platform && !climb && !slow) {
        gaps.add(new Gap(from, to));
      }
    }
    return gaps;
  }

  private List<Double> landmarks(double length) {
    List<Double> landmarks = new ArrayList<>();
    for (double at = between(0, 400); at < length; at += between(50, 700)) {
      landmarks.add(Math.min(onGrid(at), length));
    }
    return landmarks;
  }

  /** A share of the train's own speed, in steps that are signed. */
  private double speed(double share) {
    double step = (depot.units() == UnitStyle.MILES ? 5 : 10) * depot.units().speedUnitMps();
    double own = depot.stock().maximum().metresPerSecond();
    return Math.max(2, Math.rint(share * own / step)) * step;
  }

  private double between(double low, double high) {
    return low + random.nextDouble() * (high - low);
  }

  private double onGrid(double metres) {
    return Math.rint(metres / grid) * grid;
  }
}
