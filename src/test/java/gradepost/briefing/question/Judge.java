package gradepost.briefing.question;

import static gradepost.briefing.question.Ground.near;

import gradepost.briefing.Messages;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.fallback.Latest;
import gradepost.route.Path;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Stock;
import gradepost.task.Assignment;
import gradepost.units.QuantityKind;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Says of any answer whether it is true, from the data themselves: it reads the answer's text back
 * and knows nothing of how the question was made. What is about the line alone, {@link Ground}
 * says.
 */
final class Judge {
  private final Plan plan;
  private final Assignment assignment;
  private final Path path;
  private final List<TemporaryRestriction> notices;
  private final Ground ground;
  private final BriefingFacts taught;
  private final List<Plan> others;

  /**
   * @param others plans of the same direction with other formations
   */
  Judge(Plan plan, List<TemporaryRestriction> notices, List<Plan> others) {
    this.others = others;
    this.plan = plan;
    this.assignment = plan.assignment();
    this.path = assignment.path();
    this.notices = notices;
    this.ground = new Ground(plan);
    this.taught = new BriefingFacts(plan, Messages.english());
  }

  boolean holds(Asked asked, String answer) {
    Item item = asked.item();
    return switch (item.subject()) {
      case PERMISSIBLE_SPEED -> near(ground.speed(answer), ground.ceiling(item.atM()), 0.01);
      case REAR_CLEAR -> ground.rises(item, ground.place(answer));
      case ORDER_OF_CUES -> ground.inOrder(answer);
      case GRADIENT -> ground.gradient(item.atM(), answer);
      case CURVE -> ground.curve(item.ask(), answer);
      case STOP_MARK -> ground.stopMark(item, ground.place(answer));
      case BRAKING_POINT -> brakingPoint(approach(item), ground.place(answer));
      case LANDMARK -> lastLandmark(asked, answer);
      case FIRST_PRESSURE -> firstPressure(approach(item), answer);
      case FAILURE_ANSWER -> failure(item.ask(), answer);
      case LAST_PLACE -> atOrBefore(ground.place(answer), lastPlace(approach(item)), ground.step());
      case SIGNAL_ROUTE -> ground.leads(item, answer);
      case BOARD -> ground.board(item, answer);
      case CHANGED -> changed(item, answer);
      case BRAKE_TEST -> gauges(item, answer);
      case HANDLES -> neverPermitted(answer);
      case PLATFORM_SIDE -> ground.platformSide(item.ask(), answer);
      case NEXT_SIGNAL -> ground.nextSignal(item.of(), answer);
      case SHORT_PLATFORM -> ground.shorter(answer) != item.ask().contains("whole train");
      case CHECKED -> checked(answer);
      case POOR_RAIL -> poor(approach(answer)) != item.ask().contains("keeps clear");
      case HELD_SPEED -> held(item, answer);
      case PROTECTING_SIGNAL -> ground.lastStopSignal(asked, answer);
      case PASSED_BEFORE -> passedLast(asked, answer);
      case SIGNAL_KIND -> ground.signalIs(item.ask(), answer);
      case OTHER_FORMATION -> otherEarlier(item.ask(), answer);
    };
  }

  /**
   * Where the first brake action goes on that is no check and no test; it may not be later than
   * computed.
   */
  private boolean brakingPoint(Approach a, double atM) {
    double point =
        a.actions().stream()
            .filter(x -> x.command() instanceof Command.Brake)
            .filter(x -> ((Command.Brake) x.command()).stage() != Command.Stage.CHECK)
            .filter(x -> ((Command.Brake) x.command()).stage() != Command.Stage.TEST)
            .mapToDouble(x -> x.atM())
            .min()
            .orElseThrow();
    return point <= a.first().orElseThrow().exactBrakingPointM() + 0.01
        && near(atM, point, 1.5 * ground.step());
  }

  private static boolean atOrBefore(double at, double exact, double within) {
    return at <= exact + 0.5 && at > exact - within;
  }

  private Approach approach(Item item) {
    return approach(item.of());
  }

  /** By its title; a second one of the same title bears its place behind it. */
  private Approach approach(String name) {
    return plan.approaches().stream()
        .filter(
            a ->
                name.equals(taught.title(a))
                    || name.equals(taught.title(a) + ", " + taught.place(a.target().atM())))
        .findFirst()
        .orElseThrow();
  }

  private boolean checked(String name) {
    return approach(name).actions().stream()
        .anyMatch(
            x ->
                x.command() instanceof Command.Brake brake && brake.stage() == Command.Stage.CHECK);
  }

  /** From the braking point to the target any part of the train meets a listed site. */
  private boolean poor(Approach a) {
    double train = assignment.formation().lengthM();
    double from = a.brakingPointM().orElseThrow() - train;
    return assignment.route().lowAdhesion().stream()
        .filter(s -> s.applies().to(assignment.direction(), assignment.lines()))
        .anyMatch(
            s ->
                Math.min(path.metresAt(s.extent().from()), path.metresAt(s.extent().to()))
                        < a.target().atM()
                    && Math.max(path.metresAt(s.extent().from()), path.metresAt(s.extent().to()))
                        > from);
  }

  private boolean lastLandmark(Asked asked, String answer) {
    double point = approach(asked.item()).brakingPointM().orElseThrow();
    double at = ground.whereIs(answer);
    return at <= point + 0.01
        && asked.choices().stream()
            .mapToDouble(ground::whereIs)
            .noneMatch(x -> x <= point + 0.01 && x > at);
  }

  /** Of the four the last one before the thing that is asked about. */
  private boolean passedLast(Asked asked, String answer) {
    double thing = begins(asked.item().ask());
    double at = ground.whereIs(answer);
    return at <= thing + 0.01
        && asked.choices().stream()
            .mapToDouble(ground::whereIs)
            .noneMatch(x -> x <= thing + 0.01 && x > at);
  }

  private double begins(String ask) {
    Matcher test = Pattern.compile("You make a running brake test after (.*?)\\. .*").matcher(ask);
    if (!test.matches()) {
      return ground.namedIn(ask);
    }
    double station =
        assignment.calls().stream()
            .filter(c -> c.station().name().equals(test.group(1)))
            .mapToDouble(c -> path.span(c.platform().extent()).fromM())
            .findFirst()
            .orElseThrow();
    return assignment.route().brakeTests().stream()
        .filter(t -> t.direction() == assignment.direction())
        .mapToDouble(t -> path.metresAt(t.location()))
        .filter(at -> at >= station)
        .min()
        .orElseThrow();
  }

  private boolean otherEarlier(String ask, String answer) {
    Plan other =
        others.stream()
            .filter(p -> ask.contains(" " + p.assignment().formation().name() + " than"))
            .findFirst()
            .orElseThrow();
    double own = approach(answer).brakingPointM().orElseThrow();
    double point =
        other.approaches().stream()
            .filter(a -> taught.title(a).equals(answer))
            .mapToDouble(a -> a.brakingPointM().orElseThrow())
            .findFirst()
            .orElseThrow();
    return ask.contains("no earlier") ? point >= own : own - point > 1.9 * ground.step();
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

  private boolean failure(String ask, String answer) {
    Matcher m = Pattern.compile(".* later, on (.*) rail\\. .* (too late|in time)\\?").matcher(ask);
    if (!m.matches()) {
      throw new AssertionError(ask);
    }
    Application first = approach(answer).first().orElseThrow();
    double is =
        first.cases().stream()
            .filter(c -> c.adhesion().name().equals(m.group(1)))
            .findFirst()
            .orElseThrow()
            .answers()
            .get(0)
            .met()
            .endsShortM()
            .orElseThrow();
    return m.group(2).equals("in time") == is >= 0;
  }

  private double lastPlace(Approach a) {
    CaseResult c = fallbacks(a);
    return c.ladder().stream()
        .filter(r -> r.brake().role() == BrakeSystem.Role.FALLBACK)
        .map(r -> ((Latest.Point) r.latest()).exactM())
        .findFirst()
        .orElseThrow();
  }

  /** Up a terminal platform what counts is whether it still stands at the mark. */
  private static CaseResult fallbacks(Approach a) {
    Application first = a.first().orElseThrow();
    boolean stops = first.target().equals(a.target());
    return (stops ? first.cases() : first.toStand()).get(0);
  }

  private boolean changed(Item item, String answer) {
    Matcher m =
        Pattern.compile("Which of these notices is (.*) in this issue\\?").matcher(item.ask());
    if (!m.matches()) {
      throw new AssertionError(item.ask());
    }
    return notices.stream()
        .filter(n -> n.reference().equals(answer))
        .anyMatch(
            n -> m.group(1).equals(n.status().name().toLowerCase(Locale.ROOT).replace('_', ' ')));
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

  /** What the plan's own instruction at the place of the question says. */
  private boolean held(Item item, String answer) {
    Matcher m =
        Pattern.compile("between (\\S+ \\S+) and (\\S+ \\S+): (.*), off, as needed")
            .matcher(answer);
    if (!m.matches()) {
      throw new AssertionError(answer);
    }
    Command.Hold hold =
        plan.actions().stream()
            .filter(a -> near(a.atM(), item.atM(), 0.01))
            .flatMap(a -> a.command().hold().stream())
            .findFirst()
            .orElseThrow();
    Matcher brake = Pattern.compile("brake at (.*)").matcher(m.group(3));
    boolean with =
        hold.by()
            .match(
                in -> {
                  String name = assignment.stock().traction().notches().get(in.notch()).name();
                  return m.group(3).equals(name) || m.group(3).equals("notch " + name);
                },
                b ->
                    brake.matches()
                        && near(
                            QuantityKind.PRESSURE.require(brake.group(1)).pascals(),
                            b.pressurePa(),
                            0.5 * path.units().pressureStepPa()));
    return with
        && near(ground.speed(m.group(1)), hold.lowerMps(), 0.01)
        && near(ground.speed(m.group(2)), hold.upperMps(), 0.01);
  }

  private boolean neverPermitted(String answer) {
    Stock stock = assignment.stock();
    List<String> notches =
        stock.traction().notches().stream()
            .map(n -> n.name().matches("\\d+") ? "notch " + n.name() : n.name())
            .toList();
    Matcher power = Pattern.compile("power from (.*) to (.*)").matcher(answer);
    if (power.matches()) {
      int from = notches.indexOf(power.group(1));
      int to = notches.indexOf(power.group(2));
      return to > from + 1 || (to < from && !stock.traction().notchingDown());
    }
    for (BrakeSystem b : stock.brakes()) {
      if (answer.equals(b.shortName() + " brake eased a little and held")) {
        return !b.gradualRelease();
      } else if (answer.equals(b.shortName() + " brake released fully")) {
        return false;
      }
    }
    throw new AssertionError(answer);
  }
}
