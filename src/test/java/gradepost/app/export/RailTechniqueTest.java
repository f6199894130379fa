package gradepost.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.Examples;
import gradepost.app.HandOverTrain;
import gradepost.drive.DemoPlans;
import gradepost.drive.FrozenPlans;
import gradepost.drive.MadeUp;
import gradepost.route.Path;
import gradepost.task.Assignment;
import gradepost.units.QuantityKind;
import gradepost.units.Rounding;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Validation: in every state of the rail the braking that is told, done from the place and with the
 * figures as they are printed, by another solver on the file alone, never runs past the mark or
 * over the speed of the board, and stands within the tolerance of a stop. Where the approach has an
 * application before, it begins with what that leaves on the same rail.
 */
@Tag("slow")
class RailTechniqueTest {
  /** What two solvers may differ by. */
  private static final double SOLVERS_M = 0.02;

  private static final double SOLVERS_MPS = 0.01;

  /** A trace is straight between its points. */
  private static final double TRACE_MPS = 0.05;

  private static final int MADE_UP = Integer.getInteger("gradepost.rails", Examples.of(3, 10));

  private final List<String> wrong = new ArrayList<>();
  private int driven;
  private int chained;
  private int none;
  private double shortest = Double.POSITIVE_INFINITY;
  private double longest;

  @Test
  void onTheKeptValleyPacks() throws IOException {
    for (Assignment assignment : FrozenPlans.assignments()) {
      look(assignment, "valley " + assignment.formation().name() + " " + assignment.direction());
    }
    done("valley");
    assertThat(driven).isGreaterThan(60);
  }

  @Test
  void onTheLineByTheSea() throws IOException {
    List<Assignment> demo = DemoPlans.assignments();
    for (Assignment assignment : List.of(demo.get(demo.size() - 4), demo.get(demo.size() - 1))) {
      look(assignment, "sea " + assignment.formation().name() + " " + assignment.direction());
    }
    done("sea");
    assertThat(driven).isGreaterThan(40);
  }

  @Test
  void onLinesMadeUp() throws IOException {
    for (long seed = 1; seed <= MADE_UP; seed++) {
      look(MadeUp.random(seed), "seed " + seed);
    }
    done("made up");
    assertThat(driven).isGreaterThan(5 * MADE_UP);
  }

  private void done(String which) {
    System.out.printf(
        Locale.ROOT,
        "%s: %d brakings on other rails, %d after another, %d without a point; short by %.3f to"
            + " %.3f m of a mark%n",
        which,
        driven,
        chained,
        none,
        shortest,
        longest);
    assertThat(wrong).isEmpty();
  }

  private void look(Assignment assignment, String name) throws IOException {
    JsonNode file =
        new ObjectMapper().readTree(HandOver.of(DemoPlans.plan(assignment), "0".repeat(64)));
    for (JsonNode approach : file.get("approaches")) {
      String of = name + ", " + approach.at("/target/name").textValue();
      for (int rail = 1; rail < file.at("/policy/adhesion").size(); rail++) {
        drive(assignment.path(), file, approach, rail, of);
      }
      JsonNode faster = approach.at("/ifFaster/application");
      if (faster.isObject()) {
        for (int rail = 1; rail < faster.get("cases").size(); rail++) {
          JsonNode actions = faster.get("cases").get(rail).get("actions");
          if (actions.isEmpty()) {
            none++;
          } else {
            HandOverTrain train = train(file, rail);
            begin(train, actions.get(0));
            whole(assignment.path(), file, train, approach, faster, rail, of + " if faster");
          }
        }
      }
    }
  }

  /** Every application of an approach, one after another. */
  private void drive(Path path, JsonNode file, JsonNode approach, int rail, String of) {
    JsonNode applications = approach.get("applications");
    JsonNode end = approach.get("target");
    HandOverTrain train = train(file, rail);
    boolean going = false;
    for (int k = 0; k < applications.size(); k++) {
      JsonNode application = applications.get(k);
      JsonNode result = application.get("cases").get(rail);
      JsonNode actions = result.get("actions");
      if (actions.isEmpty()) {
        none++;
        going = false;
        continue;
      }
      JsonNode first = actions.get(0);
      if (!going) {
        start(file, train, first, rail, of);
      } else if (powered(file, train.atM(), first.get("atM").doubleValue())) {
        begin(train, first);
      } else {
        train.runToPlace(first.get("atM").doubleValue());
        chained++;
        same(of + " begins at", train.speedMps(), first.get("speedMps").doubleValue(), SOLVERS_MPS);
      }
      double nextM = Double.POSITIVE_INFINITY;
      if (k + 1 < applications.size()) {
        JsonNode next = applications.get(k + 1).get("cases").get(rail).get("actions");
        nextM = next.isEmpty() ? nextM : next.get(0).get("atM").doubleValue();
      }
      going = true;
      if (nextM < actions.get(actions.size() - 1).get("atM").doubleValue()) {
        carryOut(path, train, actions, nextM, end);
        driven++;
      } else {
        whole(path, file, train, approach, application, rail, of);
      }
    }
  }

  /** The plan's own run up to the place, with the brake that is on there. */
  private void start(JsonNode file, HandOverTrain train, JsonNode first, int rail, String of) {
    double atM = first.get("atM").doubleValue();
    same(
        of + " speed at the place",
        traced(file, atM),
        first.get("speedMps").doubleValue(),
        TRACE_MPS);
    JsonNode actions = file.at("/plan/actions");
    int i = -1;
    while (i + 1 < actions.size() && actions.get(i + 1).get("atM").doubleValue() < atM - 1e-6) {
      i++;
    }
    if (pressureBehind(file, atM) == 0) {
      begin(train, first);
      return;
    }
    int from = i;
    while (!(actions.get(from).at("/command/kind").textValue().equals("Brake")
        && pressureAt(file, actions.get(from).get("timeS").doubleValue()) == 0)) {
      from--;
    }
    train.rail(file.at("/policy/adhesion/0"));
    begin(train, actions.get(from));
    for (int k = from; k <= i; k++) {
      double at = actions.get(k).get("atM").doubleValue();
      train.runToPlace(at);
      String command = actions.get(k).at("/command/kind").textValue();
      if (command.equals("Brake")) {
        train.brake(actions.get(k).at("/command/pressurePa").doubleValue());
      } else if (command.equals("Release")) {
        train.brake(0);
      }
    }
    train.runToPlace(atM);
    train.rail(file.at("/policy/adhesion/" + rail));
  }

  private void whole(
      Path path,
      JsonNode file,
      HandOverTrain train,
      JsonNode approach,
      JsonNode application,
      int rail,
      String of) {
    JsonNode result = application.get("cases").get(rail);
    JsonNode target = application.get("target");
    String what = of + " on " + result.at("/adhesion/name").textValue() + " rail";
    carryOut(path, train, result.get("actions"), Double.POSITIVE_INFINITY, approach.get("target"));
    driven++;
    double targetM = target.get("atM").doubleValue();
    if (target.get("kind").textValue().equals("Stop")) {
      train.runToSpeed(0);
      double shortM = targetM - train.atM();
      double tolerance = file.at("/policy/margins/stopTolerance/metres").doubleValue();
      shortest = Math.min(shortest, shortM);
      longest = Math.max(longest, shortM);
      if (shortM < -SOLVERS_M || shortM > tolerance + SOLVERS_M) {
        wrong.add(String.format(Locale.ROOT, "%s: %.2f m short of the mark", what, shortM));
      }
    } else if (train.atM() > targetM) {
      wrong.add(what + ": past the board");
    } else {
      HandOverTrain on = train;
      double t = on.timeS();
      on.runToPlace(targetM);
      double over = on.speedMps() - target.get("speedMps").doubleValue();
      if (over > SOLVERS_MPS || on.timeS() < t) {
        wrong.add(String.format(Locale.ROOT, "%s: %.2f m/s over at the board", what, over));
      }
    }
  }

  /** As printed: whole steps of the gauge, whole units of speed, whole seconds, printed places. */
  private void carryOut(
      Path path, HandOverTrain train, JsonNode actions, double endM, JsonNode to) {
    double lastS = train.timeS();
    for (JsonNode action : actions) {
      if (action.get("atM").doubleValue() >= endM) {
        return;
      }
      JsonNode by = action.get("trigger");
      switch (by.get("kind").textValue()) {
        case "AtPlace" ->
            same(
                "printed place",
                printed(path, by.get("atM").doubleValue(), to.get("atM").doubleValue()),
                train.atM(),
                SOLVERS_M);
        case "SpeedDownTo" ->
            train.runToSpeed(
                QuantityKind.SPEED
                    .require(
                        path.units().speed(by.get("speedMps").doubleValue() + 1e-4, Rounding.DOWN))
                    .metresPerSecond());
        case "After" ->
            train.runFor(lastS + Math.round(by.get("seconds").doubleValue()) - train.timeS());
        case "Standstill" -> train.runToSpeed(0);
        default -> throw new AssertionError(by);
      }
      lastS = train.timeS();
      switch (action.at("/command/kind").textValue()) {
        case "Brake" ->
            train.brake(
                QuantityKind.PRESSURE
                    .require(path.units().pressure(action.at("/command/pressurePa").doubleValue()))
                    .pascals());
        case "Release" -> {
          train.brake(0);
          train.runFor(train.releaseS());
        }
        case "ShutOff", "Stand" -> {}
        default -> throw new AssertionError(action);
      }
    }
  }

  /** As the page gives it: near the target or to the yard by the distance, else by the mileage. */
  private static double printed(Path path, double atM, double targetM) {
    double ahead = targetM - atM;
    boolean onGrid = Math.abs(path.printedAtOrBefore(atM) - atM) < 1e-6;
    double units = ahead / path.units().lengthUnitM();
    boolean whole = Math.abs(units - Math.rint(units)) < 1e-6;
    boolean near = ahead <= 105 && !(onGrid && ahead >= 100);
    if (ahead >= 0.5 && (near || (!onGrid && whole))) {
      return targetM
          - QuantityKind.LENGTH.require(path.units().length(ahead - 1e-6, Rounding.UP)).metres();
    }
    return path.printedAtOrBefore(atM);
  }

  private void same(String what, double is, double should, double within) {
    if (Math.abs(is - should) > within) {
      wrong.add(what + ": " + is + ", not " + should);
    }
  }

  private static HandOverTrain train(JsonNode file, int rail) {
    String brake = "";
    for (JsonNode system : file.at("/train/brakeSystems")) {
      brake =
          system.get("role").textValue().equals("SERVICE")
              ? system.get("shortName").textValue()
              : brake;
    }
    return new HandOverTrain(file, "planned", brake, file.at("/policy/adhesion/" + rail));
  }

  private static void begin(HandOverTrain train, JsonNode action) {
    train.place(
        action.get("timeS").doubleValue(),
        action.get("atM").doubleValue(),
        action.get("speedMps").doubleValue());
  }

  private static boolean powered(JsonNode file, double fromM, double toM) {
    for (JsonNode action : file.at("/plan/actions")) {
      double at = action.get("atM").doubleValue();
      if (at > fromM - 50 && at < toM && action.at("/command/kind").textValue().equals("Power")) {
        return true;
      }
    }
    return false;
  }

  private static double traced(JsonNode file, double atM) {
    JsonNode before = file.at("/plan/trace/points/0");
    for (JsonNode point : file.at("/plan/trace/points")) {
      double to = point.get("atM").doubleValue();
      if (to >= atM) {
        double from = before.get("atM").doubleValue();
        double a = Math.pow(before.get("speedMps").doubleValue(), 2);
        double b = Math.pow(point.get("speedMps").doubleValue(), 2);
        return Math.sqrt(a + (to > from ? (atM - from) / (to - from) : 1) * (b - a));
      }
      before = point;
    }
    throw new AssertionError("no run at " + atM);
  }

  /** What the gauge of the planned run shows when it passes a place. */
  private static double pressureBehind(JsonNode file, double atM) {
    double pressure = 0;
    for (JsonNode point : file.at("/plan/trace/points")) {
      if (point.get("atM").doubleValue() > atM + 1e-6) {
        break;
      }
      pressure = point.get("pressurePa").doubleValue();
    }
    return pressure;
  }

  private static double pressureAt(JsonNode file, double timeS) {
    double pressure = 0;
    for (JsonNode point : file.at("/plan/trace/points")) {
      if (point.get("timeS").doubleValue() > timeS + 1e-9) {
        break;
      }
      pressure = point.get("pressurePa").doubleValue();
    }
    return pressure;
  }
}
