package gradepost.ride;

import gradepost.policy.RecorderRules;
import gradepost.ride.Ride.Sample;
import gradepost.ride.RoadTie.Mark;
import gradepost.ride.RoadTie.Pair;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Lays a recorder's count on the road. Every stand at a stop is laid on its mark, every place that
 * was noted as passed on its own, and every magnet of a signal that can be one only; between two of
 * them distance is stretched evenly. The speed of a leg is corrected by the scale of that leg and
 * by nothing else; how far that scale is from the usual one is how far the speed may be wrong. How
 * far a place may still be wrong comes from what the wheel may have slipped on either side of it.
 */
public final class Tying {
  /** A train is told of a magnet a little behind it. */
  private static final double MAGNET_M = 15;

  /** A gap is a fix where a place is known so much better by it, as a share. */
  private static final double SHARPER = 0.8;

  /** What is known: so much counted, at this place, within so many metres. */
  private record Knot(int line, double countedM, double atM, double withinM) {}

  /** How well the stands fit the stops of a run. */
  public record Fit(int stops, double unlike) {}

  private final RecorderRules rules;
  private final List<Sample> samples;
  private final List<Mark> marks;
  private final WheelCount wheel;
  private final List<int[]> stands;
  private final List<Pair> pairs;
  private final List<Leg> legs = new ArrayList<>();
  private final List<Double> magnets;
  private final DeadGaps deadGaps;
  private int unfit;

  /** For the stops of a run. */
  public Tying(Assignment assignment, Ride.Recorded ride, RecorderRules rules) {
    this(assignment, ride.samples(), rules, new WheelCount(ride.samples(), rules));
  }

  private Tying(
      Assignment assignment, List<Sample> samples, RecorderRules rules, WheelCount wheel) {
    this.rules = rules;
    this.samples = samples;
    this.marks = marks(assignment);
    this.magnets = magnets(assignment);
    this.deadGaps = new DeadGaps(assignment);
    this.wheel = wheel;
    stands = wheel.stands();
    double[] counted = new double[stands.size()];
    double[] slips = new double[stands.size()];
    for (int i = 0; i < counted.length; i++) {
      counted[i] = wheel.countedM(stands.get(i)[1]);
      slips[i] = wheel.slipsM[stands.get(i)[1]];
    }
    pairs = counted.length == 0 ? List.of() : new RoadTie(marks, counted, slips, rules).pairs();
    for (int i = 1; i < pairs.size(); i++) {
      legs.add(leg(pairs.get(i - 1), pairs.get(i)));
    }
  }

  /** What was counted, tied to the stops of another run. */
  public Tying to(Assignment other) {
    return new Tying(other, samples, rules, wheel);
  }

  private static List<Mark> marks(Assignment assignment) {
    List<Mark> out = new ArrayList<>();
    for (Call call : assignment.calls()) {
      out.add(new Mark(call.station().name(), Stops.markM(assignment, call)));
    }
    return out;
  }

  private static List<Double> magnets(Assignment assignment) {
    return assignment.route().signals().stream()
        .filter(s -> s.direction() == assignment.direction())
        .filter(s -> assignment.lines().contains(s.line()))
        .flatMap(s -> s.aws().stream())
        .map(assignment.path()::metresAt)
        .toList();
  }

  /** At how many stops the train stood, and how unlike the scales of the legs between are. */
  public Fit fit() {
    return new Fit(pairs.size(), RoadTie.unlike(legs));
  }

  private int lineOf(Pair pair) {
    return stands.get(pair.stand())[1];
  }

  private Leg leg(Pair from, Pair to) {
    Mark a = marks.get(from.mark());
    Mark b = marks.get(to.mark());
    double counted = wheel.countedM(lineOf(to)) - wheel.countedM(lineOf(from));
    double slips = wheel.slipsM[lineOf(to)] - wheel.slipsM[lineOf(from)];
    double off = Math.abs((b.atM() - a.atM()) / counted - 1);
    boolean trusted = off - rules.slip() * slips / counted <= rules.scaleWithin();
    return new Leg(a.station(), b.station(), a.atM(), b.atM(), counted, slips, trusted);
  }

  /**
   * The run on the road, up to the last stop of it; empty where the train stood at fewer than two
   * of the marks, so that nothing ties it.
   *
   * @param lengthM of the path
   */
  public Optional<TiedRun> run(double lengthM) {
    return legs.isEmpty() ? Optional.empty() : Optional.of(tied(lengthM));
  }

  private TiedRun tied(double lengthM) {
    double usual = RoadTie.middle(legs.stream().mapToDouble(Leg::scale).toArray());
    List<Knot> marked = knots();
    Laid plain = new Laid(marked, usual);
    List<Knot> more = withGaps(marked);
    Laid gapped = more.equals(marked) ? plain : new Laid(more, usual);
    int first = stands.get(pairs.get(0).stand())[0];
    boolean whole = pairs.get(pairs.size() - 1).mark() == marks.size() - 1;
    int end = whole ? lineOf(pairs.get(pairs.size() - 1)) : wheel.size() - 1;
    int n = end - first + 1;
    double[] time = new double[n];
    double[] at = new double[n];
    double[] speed = new double[n];
    double[] withinM = new double[n];
    double[] withinMps = new double[n];
    boolean[] known = new boolean[n];
    boolean[] gap = new boolean[n];
    boolean[] gaps = wheel.gaps();
    double stepM = wheel.stepM() / 2;
    double stepMps = wheel.stepMps() / 2;
    int leg = 0;
    double furthest = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < n; k++) {
      int i = first + k;
      while (leg < legs.size() && i >= lineOf(pairs.get(leg + 1))) {
        leg++;
      }
      boolean closed = leg < legs.size();
      Knot here = sharper(gapped, plain, i);
      double place = here.atM();
      double within = here.withinM();
      furthest = Math.max(furthest, Math.min(place, lengthM));
      double scale = closed ? legs.get(leg).scale() : usual;
      boolean slipsHere = i > 0 && wheel.slipsM[i] > wheel.slipsM[i - 1];
      time[k] = wheel.timeS[i] - wheel.timeS[first];
      at[k] = furthest;
      speed[k] = wheel.speedMps[i] * scale;
      withinM[k] = within + stepM;
      withinMps[k] =
          speed[k]
                  * ((closed ? Math.abs(scale - usual) : spread(usual))
                      + (slipsHere ? rules.slip() : 0))
              + stepMps;
      known[k] = !closed || legs.get(leg).trusted();
      gap[k] = k > 0 && gaps[i];
    }
    return new TiedRun(
        legs,
        unfit,
        wheel.glitches(),
        time,
        at,
        speed,
        withinM,
        withinMps,
        known,
        gap,
        samples.subList(first, end + 1));
  }

  /** A line where both have it, by the one that knows better. */
  private static Knot sharper(Laid gapped, Laid plain, int line) {
    Knot there = plain.at(line);
    Knot tied = gapped == plain ? there : gapped.at(line);
    return tied.withinM() < there.withinM() ? tied : there;
  }

  /** Every line in its order between the knots about it, or behind the last one. */
  private final class Laid {
    private final List<Knot> knots;
    private final double usual;
    private int knot;

    Laid(List<Knot> knots, double usual) {
      this.knots = knots;
      this.usual = usual;
    }

    Knot at(int line) {
      while (knot + 1 < knots.size() && line >= knots.get(knot + 1).line()) {
        knot++;
      }
      Knot from = knots.get(knot);
      double counted = wheel.countedM(line);
      if (knot + 1 < knots.size()) {
        return between(from, knots.get(knot + 1), line, counted);
      }
      double on = counted - from.countedM();
      double slipped = rules.slip() * (wheel.slipsM[line] - wheel.slipsM[from.line()]);
      double within = from.withinM() + slipped + on * spread(usual);
      return new Knot(line, counted, from.atM() + on * usual, within);
    }
  }

  /** Where a line is between two knots, stretched evenly. */
  private Knot between(Knot from, Knot to, int line, double countedM) {
    double share = (countedM - from.countedM()) / (to.countedM() - from.countedM());
    double slipped = rules.slip() * (wheel.slipsM[line] - wheel.slipsM[from.line()]);
    double ahead = rules.slip() * (wheel.slipsM[to.line()] - wheel.slipsM[line]);
    return new Knot(
        line,
        countedM,
        from.atM() + share * (to.atM() - from.atM()),
        (1 - share) * (from.withinM() + slipped) + share * (to.withinM() + ahead));
  }

  /** The most by which the scale of a leg differs from the usual one. */
  private double spread(double usual) {
    return legs.stream().mapToDouble(l -> Math.abs(l.scale() - usual)).max().orElse(0);
  }

  /** The stands at marks, and between them the places that were noted as passed and fit. */
  private List<Knot> knots() {
    List<Knot> out = new ArrayList<>();
    for (int p = 0; p < pairs.size(); p++) {
      int line = lineOf(pairs.get(p));
      out.add(new Knot(line, wheel.countedM(line), marks.get(pairs.get(p).mark()).atM(), 0));
      int to = p + 1 < pairs.size() ? stands.get(pairs.get(p + 1).stand())[0] : wheel.size();
      for (int i = line + 1; i < to; i++) {
        Leg leg = p < legs.size() ? legs.get(p) : null;
        Optional<Double> told = samples.get(i).passedM();
        if (told.isPresent()) {
          passed(i, told.get(), out, leg);
        } else if (samples.get(i).magnet() && !samples.get(i - 1).magnet() && leg != null) {
          int here = i;
          magnet(i, out.get(out.size() - 1), leg).ifPresent(m -> passed(here, m, out, leg));
        }
      }
    }
    return out;
  }

  /** Where the current went off and came again between two knots, where that tells more. */
  private List<Knot> withGaps(List<Knot> knots) {
    List<Knot> out = new ArrayList<>(knots.subList(0, 1));
    for (int k = 1; k < knots.size(); k++) {
      Knot from = knots.get(k - 1);
      Knot to = knots.get(k);
      int off = -1;
      for (int i = from.line() + 1; i < to.line(); i++) {
        boolean had = samples.get(i - 1).current().orElse(false);
        boolean has = samples.get(i).current().orElse(true);
        if (had && !has) {
          off = i;
        } else if (!had && has && off > 0) {
          gap(from, to, off, i, out);
          off = -1;
        }
      }
      out.add(to);
    }
    return out;
  }

  private void gap(Knot from, Knot to, int offLine, int onLine, List<Knot> out) {
    Knot off = edge(from, to, offLine);
    Knot on = edge(from, to, onLine);
    double slips = rules.slip() * (wheel.slipsM[onLine] - wheel.slipsM[offLine]);
    double ran = on.atM() - off.atM();
    if (on.countedM() <= off.countedM()) {
      return;
    }
    double within = slips + rules.scaleWithin() * ran + wheel.stepM();
    deadGaps
        .fix(around(off), around(on), new DeadGaps.Between(ran - within, ran + within))
        .ifPresent(
            fix -> {
              if (sharper(fix.off(), off) || sharper(fix.on(), on)) {
                out.add(told(off, fix.off()));
                out.add(told(on, fix.on()));
              }
            });
  }

  /** What was seen on a line happened between it and the one before. */
  private Knot edge(Knot from, Knot to, int line) {
    double step = (wheel.countedM(line) - wheel.countedM(line - 1)) / 2;
    Knot at = between(from, to, line, wheel.countedM(line) - step);
    return new Knot(line, at.countedM(), at.atM(), at.withinM() + step);
  }

  private static DeadGaps.Between around(Knot knot) {
    return new DeadGaps.Between(knot.atM() - knot.withinM(), knot.atM() + knot.withinM());
  }

  private static boolean sharper(DeadGaps.Between fix, Knot known) {
    return fix.withinM() < SHARPER * known.withinM();
  }

  private static Knot told(Knot known, DeadGaps.Between fix) {
    return new Knot(known.line(), known.countedM(), fix.middleM(), fix.withinM());
  }

  /** The one magnet that a line can be at; empty where it may be another one, or none. */
  private Optional<Double> magnet(int line, Knot before, Leg leg) {
    double counted = wheel.countedM(line) - before.countedM();
    double about = before.atM() + counted * leg.scale();
    double slips = rules.slip() * (wheel.slipsM[line] - wheel.slipsM[before.line()]);
    double step = wheel.countedM(line) - wheel.countedM(line - 1);
    double within = slips + step + before.withinM() + MAGNET_M;
    List<Double> near = magnets.stream().filter(m -> Math.abs(m - about) <= within).toList();
    return near.size() == 1 ? Optional.of(near.get(0)) : Optional.empty();
  }

  private void passed(int line, double at, List<Knot> knots, @Nullable Leg leg) {
    Knot before = knots.get(knots.size() - 1);
    double counted = wheel.countedM(line) - before.countedM();
    double road = at - before.atM();
    double slips = rules.slip() * (wheel.slipsM[line] - wheel.slipsM[before.line()]);
    double step = (wheel.countedM(line) - wheel.countedM(line - 1)) / 2;
    double scale = leg == null ? 1 : leg.scale();
    boolean fits =
        counted > 0
            && Math.abs(road - counted * scale)
                <= slips + 2 * step + before.withinM() + rules.scaleWithin() * counted
            && (leg == null || at < leg.toM());
    if (fits) {
      // It was passed between this line and the one before it.
      knots.add(new Knot(line, wheel.countedM(line) - step, at, step));
    } else {
      unfit++;
    }
  }
}
