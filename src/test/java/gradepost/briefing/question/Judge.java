package gradepost.briefing.question;

import gradepost.drive.Approach;
import gradepost.drive.Assignment;
import gradepost.drive.CaseResult;
import gradepost.drive.Command;
import gradepost.drive.Latest;
import gradepost.drive.Plan;
import gradepost.drive.Target;
import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.Direction;
import gradepost.route.Extent;
import gradepost.route.Hand;
import gradepost.route.Location;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.route.TemporaryRestriction;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Stock;
import gradepost.units.Mileage;
import gradepost.units.QuantityKind;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Says of any answer whether it is true, from the data themselves: it reads the answer's text back
 * and knows nothing of how the question was made.
 */
final class Judge {
  private final Plan plan;
  private final Assignment assignment;
  private final Path path;
  private final List<TemporaryRestriction> notices;

  Judge(Plan plan, List<TemporaryRestriction> notices) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.path = assignment.path();
    this.notices = notices;
  }

  boolean holds(Asked asked, String answer) {
    Item item = asked.item();
    return switch (item.subject()) {
      case PERMISSIBLE_SPEED -> near(speed(answer), ceiling(item.atM()), 0.01);
      case REAR_CLEAR -> rises(item, place(answer));
      case ORDER_OF_CUES -> inOrder(answer);
      case GRADIENT -> gradient(item.atM(), answer);
      case CURVE -> curve(item.atM(), answer);
      case STOP_MARK -> stopMark(item, place(answer));
      case BRAKING_POINT -> brakingPoint(approach(item), place(answer));
      case LANDMARK -> lastLandmark(asked, answer);
      case FIRST_PRESSURE -> firstPressure(approach(item), answer);
      case FAILURE_ANSWER -> failure(approach(item), answer);
      case LAST_PLACE -> atOrBefore(place(answer), lastPlace(approach(item)), step());
      case SIGNAL_ROUTE -> leads(item, answer);
      case BOARD -> board(item, answer);
      case CHANGED -> changed(item, answer);
      case BRAKE_TEST -> gauges(item, answer);
      case HANDLES -> neverPermitted(answer);
    };
  }

  private double step() {
    return path.units().placeStepM();
  }

  /** Where the first brake action goes on that is no check; it may not be later than computed. */
  private boolean brakingPoint(Approach a, double atM) {
    double point =
        a.actions().stream()
            .filter(x -> x.command() instanceof Command.Brake)
            .filter(x -> ((Command.Brake) x.command()).stage() != Command.Stage.CHECK)
            .mapToDouble(x -> x.atM())
            .min()
            .orElseThrow();
    return point <= a.exactBrakingPointM().orElseThrow() + 0.01 && near(atM, point, 1.5 * step());
  }

  private static boolean near(double a, double b, double by) {
    return Math.abs(a - b) <= by;
  }

  private static boolean atOrBefore(double at, double exact, double within) {
    return at <= exact + 0.5 && at > exact - within;
  }

  private double speed(String text) {
    return QuantityKind.SPEED.require(text).metresPerSecond();
  }

  private double place(String text) {
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

  private double ceiling(double atM) {
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
  private boolean rises(Item item, double atM) {
    Matcher m =
        Pattern.compile("(\\S+ \\S+) stands .* and (\\S+ \\S+) may be used.*").matcher(item.ask());
    return m.matches()
        && near(ceiling(atM + 0.01), speed(m.group(2)), 0.01)
        && near(ceiling(atM - step()), speed(m.group(1)), 0.01);
  }

  private double whereIs(String name) {
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

  private boolean inOrder(String answer) {
    double last = -1;
    for (String name : answer.split(" – ")) {
      double at = whereIs(name);
      if (at <= last) {
        return false;
      }
      last = at;
    }
    return true;
  }

  /** Printed to the steeper side: whole units of 1 in N, tenths of a per mille. */
  private boolean gradient(double atM, String answer) {
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

  private boolean curve(double atM, String answer) {
    Curve c =
        assignment.route().curves().stream()
            .filter(x -> start(x.extent()) <= atM && atM < end(x.extent()))
            .findFirst()
            .orElseThrow();
    boolean forward = assignment.direction() == Direction.FORWARD;
    String hand = (c.hand() == Hand.LEFT) == forward ? "left" : "right";
    String other = hand.equals("left") ? "right" : "left";
    String expected =
        "to the "
            + hand
            + (c.checkRail() == CheckRail.NONE
                ? "; no check rail"
                : "; check rail on the " + (c.checkRail() == CheckRail.LOW_RAIL ? hand : other));
    return answer.equals(expected);
  }

  private boolean stopMark(Item item, double atM) {
    return assignment.calls().stream()
        .filter(c -> c.station().name().equals(item.of()))
        .flatMap(c -> c.platform().stopMarks().stream())
        .filter(m -> m.direction() == assignment.direction())
        .filter(m -> m.cars() == assignment.formation().cars())
        .anyMatch(m -> near(path.metresAt(m.location()), atM, step()));
  }

  private Approach approach(Item item) {
    return plan.approaches().stream()
        .filter(a -> item.of().startsWith(a.number() + " ·"))
        .findFirst()
        .orElseThrow();
  }

  private boolean lastLandmark(Asked asked, String answer) {
    double point = approach(asked.item()).brakingPointM().orElseThrow();
    double at = whereIs(answer);
    return at <= point + 0.01
        && asked.choices().stream()
            .mapToDouble(this::whereIs)
            .noneMatch(x -> x <= point + 0.01 && x > at);
  }

  /** What the plan's own list of actions asks for where the brake goes on. */
  private boolean firstPressure(Approach a, String answer) {
    double asked =
        plan.actions().stream()
            .filter(x -> x.approach() == a.number())
            .filter(x -> near(x.atM(), a.brakingPointM().orElseThrow(), 1))
            .filter(x -> x.command() instanceof Command.Brake)
            .mapToDouble(x -> ((Command.Brake) x.command()).pressurePa())
            .min()
            .orElseThrow();
    double grid = path.units().pressureStepPa();
    return near(QuantityKind.PRESSURE.require(answer).pascals(), asked, 1.5 * grid);
  }

  private boolean failure(Approach a, String answer) {
    Matcher m =
        Pattern.compile("it (does it with|runs past by up to) (\\d+ \\S+).*").matcher(answer);
    if (!m.matches()) {
      throw new AssertionError(answer);
    }
    double metres = QuantityKind.LENGTH.require(m.group(2)).metres();
    double is = a.cases().get(0).answers().get(0).shortM();
    return near(m.group(1).startsWith("does") ? metres : -metres, is, 3);
  }

  private double lastPlace(Approach a) {
    CaseResult c = a.cases().get(0);
    return c.ladder().stream()
        .filter(r -> r.brake().role() == BrakeSystem.Role.FALLBACK)
        .map(r -> ((Latest.Point) r.latest()).exactM())
        .findFirst()
        .orElseThrow();
  }

  private boolean leads(Item item, String answer) {
    String[] of = item.of().split("/");
    return assignment.route().signals().stream()
        .filter(s -> s.id().equals(of[0]))
        .flatMap(s -> s.routes().stream())
        .filter(r -> r.indication().equals(of[1]))
        .allMatch(
            r ->
                answer.equals(
                    r.leadsTo()
                        + ", "
                        + r.speed()
                            .map(
                                v ->
                                    Math.round(v.metresPerSecond() / path.units().speedUnitMps())
                                        + " "
                                        + path.units().speedUnit())
                            .orElse("no lower speed")));
  }

  private boolean board(Item item, String answer) {
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

  private boolean changed(Item item, String answer) {
    if (item.of().isEmpty()) {
      long standing =
          assignment.restrictions().stream()
              .filter(r -> r.applies().to(assignment.direction(), assignment.lines()))
              .count();
      return answer.equals(Long.toString(standing));
    }
    return notices.stream()
        .filter(n -> n.reference().equals(item.of()))
        .allMatch(n -> answer.equals(n.status().name().toLowerCase(Locale.ROOT).replace('_', ' ')));
  }

  private boolean gauges(Item item, String answer) {
    Matcher m = Pattern.compile("pipe (.*), cylinder (.*)").matcher(answer);
    if (!m.matches()) {
      throw new AssertionError(answer);
    }
    double pipe = QuantityKind.PRESSURE.require(m.group(1)).pascals();
    double cylinder = QuantityKind.PRESSURE.require(m.group(2)).pascals();
    BrakeSystem piped =
        assignment.stock().brakes().stream()
            .filter(b -> b.pipe().isPresent())
            .findFirst()
            .orElseThrow();
    double charged = piped.pipe().orElseThrow().pipe().pascals();
    double grid = path.units().pressureStepPa();
    if (Double.isNaN(item.atM())) {
      double full = assignment.stock().service().full().pascals();
      return near(pipe, charged, grid) && near(cylinder, full, grid);
    }
    double reduction = charged - pipe;
    Matcher asked = Pattern.compile(".*reduced by (.*) from .*").matcher(item.ask());
    return asked.matches()
        && near(QuantityKind.PRESSURE.require(asked.group(1)).pascals(), reduction, grid)
        && near(piped.pipe().orElseThrow().cylinderPa(reduction), cylinder, 0.9 * grid);
  }

  private boolean neverPermitted(String answer) {
    Stock stock = assignment.stock();
    List<String> notches = stock.traction().notches().stream().map(n -> n.name()).toList();
    Matcher power =
        Pattern.compile("power from (.*?) (straight to|back to|to) (.*)").matcher(answer);
    if (power.matches()) {
      int from = notches.indexOf(power.group(1));
      int to = notches.indexOf(power.group(3));
      return power.group(3).equals("off")
          ? false
          : to > from + 1 || to < from && !stock.traction().notchingDown();
    }
    for (BrakeSystem b : stock.brakes()) {
      if (answer.equals(b.shortName() + " brake eased a little and held")) {
        return !b.gradualRelease();
      } else if (answer.equals(b.shortName() + " brake released fully")) {
        return false;
      }
    }
    return answer.equals("power taken while the brake is applied");
  }
}
