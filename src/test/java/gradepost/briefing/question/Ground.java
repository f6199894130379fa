package gradepost.briefing.question;

import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Plan;
import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Mileage;
import gradepost.units.QuantityKind;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What stands along the line, and whether an answer about it is true. */
final class Ground {
  private final Plan plan;
  private final Assignment assignment;
  private final Path path;

  Ground(Plan plan) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.path = assignment.path();
  }

  double step() {
    return path.units().placeStepM();
  }

  static boolean near(double a, double b, double by) {
    return Math.abs(a - b) <= by;
  }

  double speed(String text) {
    return QuantityKind.SPEED.require(text).metresPerSecond();
  }

  double place(String text) {
    Matcher named = Pattern.compile("(.*?) \\((.*)\\)").matcher(text);
    String plain = named.matches() ? named.group(1) : text;
    Mileage mileage = QuantityKind.MILEAGE.require(plain);
    List<Location> on =
        path.sections().stream()
            .filter(s -> !named.matches() || s.name().equals(named.group(2)))
            .filter(s -> s.holds(mileage))
            .map(s -> new Location(s.name(), mileage))
            .toList();
    if (on.size() != 1) {
      throw new AssertionError(text + " is on " + on.size() + " sections");
    }
    return path.metresAt(on.get(0));
  }

  private double start(Extent e) {
    return Math.min(path.metresAt(e.from()), path.metresAt(e.to()));
  }

  private double end(Extent e) {
    return Math.max(path.metresAt(e.from()), path.metresAt(e.to()));
  }

  double ceiling(double atM) {
    double lowest = assignment.stock().maximum().metresPerSecond();
    double train = assignment.formation().lengthM();
    List<String> classes = assignment.stock().trainClasses();
    for (PermanentRestriction r : assignment.route().restrictions()) {
      if (r.applies().to(assignment.direction(), assignment.lines())
          && atM >= start(r.extent())
          && atM < end(r.extent()) + train) {
        lowest = Math.min(lowest, r.speedFor(classes).metresPerSecond());
      }
    }
    for (TemporaryRestriction r : assignment.restrictions()) {
      if (r.applies().to(assignment.direction(), assignment.lines())
          && atM >= start(r.extent())
          && atM < end(r.extent()) + train) {
        lowest = Math.min(lowest, r.speedFor(classes).metresPerSecond());
      }
    }
    for (var j : assignment.route().junctions()) {
      if (j.applies().to(assignment.direction(), assignment.lines())
          && atM >= start(j.extent())
          && atM < end(j.extent()) + train) {
        var taken = assignment.junctionRoutes().getOrDefault(j.name(), j.routes().get(0));
        lowest = Math.min(lowest, taken.speed().metresPerSecond());
      }
    }
    Target last = plan.approaches().get(plan.approaches().size() - 1).target();
    if (last instanceof Target.Stop stop && stop.terminal()) {
      for (var step : assignment.policy().terminal()) {
        if (atM >= stop.atM() - step.beforeMark().metres()) {
          lowest = Math.min(lowest, step.speed().metresPerSecond());
        }
      }
    }
    return lowest;
  }

  /** Whether the speed asked about rises at the last step of the grid up to there. */
  boolean rises(Item item, double atM) {
    Matcher m =
        Pattern.compile("(\\S+ \\S+) is in force .* and (\\S+ \\S+) may be used.*")
            .matcher(item.ask());
    return m.matches()
        && near(ceiling(atM + 0.01), speed(m.group(2)), 0.01)
        && near(ceiling(atM - step()), speed(m.group(1)), 0.01);
  }

  double whereIs(String name) {
    var route = assignment.route();
    Stream<Double> all =
        Stream.of(
                route.landmarks().stream()
                    .filter(l -> l.applies().to(assignment.direction(), assignment.lines()))
                    .filter(l -> l.name().equals(name))
                    .map(l -> path.metresAt(l.location())),
                route.signals().stream()
                    .filter(s -> name.equals("signal " + s.id()))
                    .map(s -> path.metresAt(s.location())),
                route.structures().stream()
                    .filter(s -> s.name().equals(name))
                    .map(s -> start(s.extent())),
                route.junctions().stream()
                    .filter(j -> j.name().equals(name))
                    .map(j -> start(j.extent())),
                route.stations().stream()
                    .flatMap(
                        s ->
                            s.platforms().stream()
                                .filter(p -> name.equals(s.name() + " " + p.number()))
                                .map(p -> start(p.extent()))))
            .flatMap(s -> s);
    List<Double> places = all.toList();
    double first = places.stream().mapToDouble(x -> x).min().orElseThrow();
    if (places.stream().anyMatch(x -> Math.abs(x - first) > 30)) {
      throw new AssertionError(name + " is in two places: " + places);
    }
    return first;
  }

  boolean inOrder(String answer) {
    double last = -1;
    for (String name : answer.split(" – ", -1)) {
      double at = whereIs(name);
      if (at <= last) {
        return false;
      }
      last = at;
    }
    return true;
  }

  /** Printed to the steeper side: whole units of 1 in N, tenths of a per mille. */
  boolean gradient(double atM, String answer) {
    double said = QuantityKind.GRADIENT.require(answer).permille();
    var piece =
        assignment.route().gradients().stream()
            .filter(g -> start(g.extent()) < atM && atM < end(g.extent()))
            .findFirst()
            .orElseThrow();
    double is =
        piece.gradient().permille() * (assignment.direction() == Direction.FORWARD ? 1 : -1);
    return near(said, is, Math.max(0.06, 0.02 * Math.abs(is)))
        && Math.signum(said) == Math.signum(is);
  }

  /** A curve is named by what it is and where it begins. */
  boolean curve(String ask, String answer) {
    double at = place(answer.substring(answer.lastIndexOf(" at ") + 4));
    Curve c =
        assignment.route().curves().stream()
            .filter(x -> near(start(x.extent()), at, step()))
            .findFirst()
            .orElseThrow(() -> new AssertionError(answer));
    boolean forward = assignment.direction() == Direction.FORWARD;
    String hand = (c.hand() == Hand.LEFT) == forward ? "left" : "right";
    if (ask.contains("check rail")) {
      return ask.contains("no check rail") == (c.checkRail() == CheckRail.NONE);
    }
    return ask.contains(" to the " + hand);
  }

  boolean platformSide(String ask, String answer) {
    boolean forward = assignment.direction() == Direction.FORWARD;
    return assignment.calls().stream()
        .filter(c -> c.station().name().equals(answer))
        .allMatch(
            c -> ask.contains((c.platform().side() == Hand.LEFT) == forward ? "left" : "right"));
  }

  boolean shorter(String station) {
    return assignment.calls().stream()
        .filter(c -> c.station().name().equals(station))
        .anyMatch(
            c ->
                end(c.platform().extent()) - start(c.platform().extent())
                    < assignment.formation().lengthM());
  }

  /** Of the signals that this direction reads, the first behind another. */
  boolean nextSignal(String id, String answer) {
    List<String> ids =
        assignment.route().signals().stream()
            .filter(s -> s.direction() == assignment.direction())
            .filter(s -> assignment.lines().contains(s.line()))
            .sorted(java.util.Comparator.comparingDouble(s -> path.metresAt(s.location())))
            .map(s -> s.id())
            .toList();
    return ids.indexOf(answer) == ids.indexOf(id) + 1;
  }

  /** Where what a question has in it begins: the longest name that it has. */
  double namedIn(String ask) {
    var route = assignment.route();
    Map<String, Double> begins = new HashMap<>();
    route.structures().forEach(s -> begins.put(s.name(), start(s.extent())));
    route.railGaps().forEach(g -> begins.put(g.name(), start(g.extent())));
    route.junctions().forEach(j -> begins.put(j.name(), start(j.extent())));
    route
        .lines()
        .forEach(l -> l.extents().forEach(e -> begins.merge(l.name(), start(e), Math::min)));
    return begins.entrySet().stream()
        .filter(e -> ask.contains(" " + e.getKey()))
        .max(java.util.Comparator.comparingInt(e -> e.getKey().length()))
        .orElseThrow(() -> new AssertionError(ask))
        .getValue();
  }

  /** No other signal of this train that can show danger is nearer before the thing. */
  boolean lastStopSignal(Asked asked, String answer) {
    double thing = namedIn(asked.item().ask());
    return assignment.route().signals().stream()
        .filter(s -> s.direction() == assignment.direction())
        .filter(s -> assignment.lines().contains(s.line()))
        .filter(s -> s.kind().stops())
        .filter(s -> path.metresAt(s.location()) <= thing + 0.01)
        .max(java.util.Comparator.comparingDouble(s -> path.metresAt(s.location())))
        .map(s -> s.id().equals(answer))
        .orElse(false);
  }

  /** By what the route has of the signal with this plate. */
  boolean signalIs(String ask, String id) {
    var signal =
        assignment.route().signals().stream()
            .filter(s -> s.id().equals(id))
            .findFirst()
            .orElseThrow();
    if (ask.contains("say this")) {
      return !signal.note().isBlank() && ask.endsWith(": " + signal.note() + "?");
    }
    return ask.contains("never") != signal.kind().stops();
  }

  boolean stopMark(Item item, double atM) {
    return assignment.calls().stream()
        .filter(c -> c.station().name().equals(item.of()))
        .flatMap(c -> c.platform().stopMarks().stream())
        .filter(m -> m.direction() == assignment.direction())
        .filter(m -> m.cars() == assignment.formation().cars())
        .anyMatch(m -> near(path.metresAt(m.location()), atM, step()));
  }

  boolean leads(Item item, String answer) {
    String[] of = item.of().split("/", -1);
    return assignment.route().signals().stream()
        .filter(s -> s.id().equals(of[0]))
        .flatMap(s -> s.routes().stream())
        .filter(r -> r.indication().equals(of[1]))
        .allMatch(
            r ->
                answer.equals(
                    r.leadsTo()
                        + r.speed()
                            .map(
                                v ->
                                    ", "
                                        + Math.round(
                                            v.metresPerSecond() / path.units().speedUnitMps())
                                        + " "
                                        + path.units().speedUnit())
                            .orElse("")));
  }

  boolean board(Item item, String answer) {
    PermanentRestriction r =
        assignment.route().restrictions().stream()
            .filter(x -> x.name().equals(item.of()))
            .findFirst()
            .orElseThrow();
    double unit = path.units().speedUnitMps();
    String shown =
        Math.round(r.speed().metresPerSecond() / unit)
            + r.differentials().stream()
                .map(
                    d ->
                        " ("
                            + d.trainClass()
                            + " "
                            + Math.round(d.speed().metresPerSecond() / unit)
                            + ")")
                .collect(Collectors.joining());
    return answer.equals(shown);
  }
}
