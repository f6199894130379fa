package gradepost.app.export;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** What a driver tells a place by, from a hand-over file alone: its lineside and its trace. */
final class HandOverCues {
  private static final double AT_M = 0.5;

  /** One thing by the line. */
  record Thing(double atM, String kind, String name, boolean seen, boolean lit) {}

  /** A thing as it is told of: how far past it, and the seconds from there where they count. */
  record Told(Thing thing, Optional<Long> past, Optional<Long> count) {}

  /** By day, and at night and in fog. */
  record Seen(Optional<Told> day, Optional<Told> night) {
    static final Seen NOTHING = new Seen(Optional.empty(), Optional.empty());
  }

  private final List<Thing> things = new ArrayList<>();
  private final List<double[]> trace = new ArrayList<>();
  private final List<Double> stoodM = new ArrayList<>();
  private final HandOverGrid grid;
  private final double reachM;
  private final double alikeM;
  private final double withinS;

  HandOverCues(JsonNode file, HandOverGrid grid) {
    this.grid = grid;
    for (JsonNode t : file.get("lineside")) {
      things.add(
          new Thing(
              t.get("atM").doubleValue(),
              t.get("kind").textValue(),
              t.get("name").textValue(),
              t.get("seen").booleanValue(),
              t.get("lit").booleanValue()));
    }
    for (JsonNode p : file.at("/plan/trace/points")) {
      trace.add(
          new double[] {
            p.get("atM").doubleValue(),
            p.get("timeS").doubleValue(),
            p.get("speedMps").doubleValue()
          });
    }
    for (JsonNode approach : file.get("approaches")) {
      if (approach.at("/target/kind").textValue().equals("Stop")) {
        stoodM.add(approach.get("endM").doubleValue());
      }
    }
    reachM = file.at("/policy/run/landmarkReach/metres").doubleValue();
    alikeM = file.at("/policy/practice/line/alikeWithin/metres").doubleValue();
    withinS = file.at("/policy/practice/line/cueWithin/seconds").doubleValue();
  }

  private int firstAtOrAfter(int column, double value) {
    int i = 0;
    while (i < trace.size() && trace.get(i)[column] < value) {
      i++;
    }
    return i;
  }

  double timeAt(double atM) {
    return between(0, atM, 1);
  }

  private double between(int by, double value, int wanted) {
    int i = firstAtOrAfter(by, value);
    if (i == 0 || i == trace.size()) {
      return trace.get(Math.min(i, trace.size() - 1))[wanted];
    }
    double[] a = trace.get(i - 1);
    double[] b = trace.get(i);
    return a[wanted] + (value - a[by]) / (b[by] - a[by]) * (b[wanted] - a[wanted]);
  }

  /** Between two points of the trace the square of the speed is straight. */
  double speedAt(double atM) {
    int i = firstAtOrAfter(0, atM);
    if (i == 0 || i == trace.size()) {
      return trace.get(Math.min(i, trace.size() - 1))[2];
    }
    double[] a = trace.get(i - 1);
    double[] b = trace.get(i);
    double share = (atM - a[0]) / (b[0] - a[0]);
    return Math.sqrt(a[2] * a[2] + share * (b[2] * b[2] - a[2] * a[2]));
  }

  /** What tells a place where nothing is counted. */
  Seen at(double atM) {
    Optional<Thing> day = last(atM - reachM, atM, Thing::seen);
    Optional<Thing> night =
        day.filter(t -> !t.lit()).flatMap(t -> last(atM - reachM, atM, Thing::lit));
    return new Seen(day.map(t -> told(t, atM)), night.map(t -> told(t, atM)));
  }

  Seen near(double atM) {
    return new Seen(
        last(atM - reachM, atM, Thing::seen).map(t -> told(t, atM)),
        last(atM - reachM, atM, Thing::lit).map(t -> told(t, atM)));
  }

  /** What to count from: no longer than the policy says, and not from before the last stand. */
  Seen counted(double atM) {
    double stood = stoodM.stream().filter(m -> m < atM).mapToDouble(m -> m).max().orElse(0);
    double fromM = Math.max(stood, between(1, timeAt(atM) - withinS, 0));
    return new Seen(
        cue(fromM, atM, t -> true).map(t -> counted(t, atM)),
        cue(fromM, atM, Thing::lit).map(t -> counted(t, atM)));
  }

  private Optional<Thing> cue(double fromM, double atM, Predicate<Thing> which) {
    return last(fromM, atM, which.and(this::alone)).or(() -> last(fromM, atM, which));
  }

  private boolean alone(Thing thing) {
    return things.stream()
        .filter(t -> t.name().equals(thing.name()) && t.kind().equals(thing.kind()))
        .allMatch(t -> t.equals(thing) || Math.abs(t.atM() - thing.atM()) >= alikeM);
  }

  private Optional<Thing> last(double fromM, double atM, Predicate<Thing> which) {
    List<Thing> near =
        things.stream()
            .filter(t -> t.atM() <= atM + AT_M && t.atM() >= fromM)
            .filter(which)
            .toList();
    if (near.isEmpty()) {
      return Optional.empty();
    }
    Thing last = near.get(near.size() - 1);
    return near.stream()
        .filter(t -> t.lit() && Math.abs(t.atM() - last.atM()) < AT_M)
        .findFirst()
        .or(() -> Optional.of(last));
  }

  private Told told(Thing thing, double atM) {
    double by = atM - thing.atM();
    boolean far = by >= 5 * grid.lengthUnitM();
    return new Told(thing, far ? Optional.of(grid.room(by)) : Optional.empty(), Optional.empty());
  }

  private Told counted(Thing thing, double atM) {
    double seconds = timeAt(atM) - timeAt(thing.atM());
    return seconds < 1
        ? told(thing, atM)
        : new Told(thing, Optional.empty(), Optional.of(HandOverGrid.down(seconds)));
  }
}
