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

  Judge(Plan plan, List<TemporaryRestriction> notices) {
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
      case CURVE -> ground.curve(item.atM(), answer);
      case STOP_MARK -> ground.stopMark(item, ground.place(answer));
      case BRAKING_POINT -> brakingPoint(approach(item), ground.place(answer));
      case LANDMARK -> lastLandmark(asked, answer);
      case FIRST_PRESSURE -> firstPressure(approach(item), answer);
      case FAILURE_ANSWER -> failure(approach(item), answer);
      case LAST_PLACE -> atOrBefore(ground.place(answer), lastPlace(approach(item)), ground.step());
      case SIGNAL_ROUTE -> ground.leads(item, answer);
      case BOARD -> ground.board(item, answer);
      case CHANGED -> changed(item, answer);
      case BRAKE_TEST -> gauges(item, answer);
      case HANDLES -> neverPermitted(answer);
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
    return plan.approaches().stream()
        .filter(a -> item.of().equals(taught.title(a)))
        .findFirst()
        .orElseThrow();
  }

  private boolean lastLandmark(Asked asked, String answer) {
    double point = approach(asked.item()).brakingPointM().orElseThrow();
    double at = ground.whereIs(answer);
    return at <= point + 0.01
        && asked.choices().stream()
            .mapToDouble(ground::whereIs)
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
    Matcher m = Pattern.compile("(in time, with|too late: up to) (\\d+ \\S+).*").matcher(answer);
    if (!m.matches()) {
      throw new AssertionError(answer);
    }
    double metres = QuantityKind.LENGTH.require(m.group(2)).metres();
    double is = fallbacks(a).answers().get(0).met().endsShortM().orElseThrow();
    return near(m.group(1).startsWith("in time") ? metres : -metres, is, 3);
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
    List<String> notches =
        stock.traction().notches().stream()
            .map(n -> n.name().matches("\\d+") ? "notch " + n.name() : n.name())
            .toList();
    Matcher power =
        Pattern.compile("power from (.*?) (straight to|back to|to) (.*)").matcher(answer);
    if (power.matches()) {
      int from = notches.indexOf(power.group(1));
      int to = notches.indexOf(power.group(3));
      return power.group(3).equals("off")
          ? false
          : to > from + 1 || (to < from && !stock.traction().notchingDown());
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
