package gradepost.app.export;

import static gradepost.app.export.HandOverFigures.command;
import static gradepost.app.export.HandOverFigures.number;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.HandOverTrain;
import gradepost.drive.DemoPlans;
import gradepost.drive.HeldLines;
import gradepost.plan.Plan;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Validation: the whole run, its running brake tests, its signals at danger and its gaps come out
 * of the file alone, by another solver ({@link HandOverTrain}).
 */
@Tag("slow")
class WholeRunOracleTest {
  /** Over a leg of miles the errors of two solvers add up. */
  private static final double SOLVERS_M = 0.5;

  private static final double SOLVERS_MPS = 0.01;
  private static final double SOLVERS_S = 0.1;
  private static final double NEVER = 1e9;

  private final List<String> wrong = new ArrayList<>();
  private int actions;
  private int tests;
  private int cautions;
  private int gaps;
  private int holds;

  @Test
  void theFrozenValleyAndTheCoast() throws IOException {
    for (int i : new int[] {0, 3, 5}) {
      look(DemoPlans.plan(i), "pack " + i);
    }
    done();
    assertThat(actions).isGreaterThan(200);
    assertThat(tests).isGreaterThan(1);
    assertThat(cautions).isGreaterThan(4);
    assertThat(gaps).isGreaterThan(4);
  }

  @Test
  void aSpeedThatIsHeldIsHeldAsTheFileSays() throws IOException {
    for (Plan plan : HeldLines.plans()) {
      look(plan, "held");
    }
    done();
    assertThat(holds).isGreaterThan(1);
  }

  private void done() {
    System.out.printf(
        "whole run: %d actions, %d holds, %d brake tests, %d cautions, %d gaps by another solver%n",
        actions, holds, tests, cautions, gaps);
    assertThat(wrong).isEmpty();
  }

  private void look(Plan plan, String name) throws IOException {
    JsonNode file = new ObjectMapper().readTree(HandOver.of(plan, "0".repeat(64)));
    run(file, file.at("/plan/actions"), file.get("plan"), "runningTimeS", name);
    JsonNode fastest = file.at("/plan/fastest");
    run(file, fastest.get("actions"), fastest, "timeS", name + " as fast as may be");
    for (JsonNode test : file.get("brakeTests")) {
      test(file, test, name + " brake test");
    }
    for (JsonNode signal : file.get("signals")) {
      signal(file, signal, name + " " + signal.get("signal").textValue());
    }
    for (JsonNode gap : file.get("gaps")) {
      gap(file, gap, name + " " + gap.get("name").textValue());
    }
  }

  private void same(String what, double is, double should, double within) {
    if (!(Math.abs(is - should) <= within)) {
      wrong.add(String.format(Locale.ROOT, "%s: %.3f, not %.3f", what, is, should));
    }
  }

  private static HandOverTrain train(JsonNode file) {
    for (JsonNode system : file.at("/train/brakeSystems")) {
      if (system.get("role").textValue().equals("SERVICE")) {
        String brake = system.get("shortName").textValue();
        return new HandOverTrain(file, "planned", brake, file.at("/policy/adhesion/0"));
      }
    }
    throw new AssertionError("no service brake");
  }

  // The run

  /** Over the legs one after the other; each begins at a stand where the last action was. */
  private void run(JsonNode file, JsonNode all, JsonNode cost, String time, String name) {
    HandOverTrain train = train(file);
    double totalS = 0;
    double beganS = 0;
    double lastS = 0;
    int movements = 0;
    for (int i = 0; i < all.size(); i++) {
      JsonNode action = all.get(i);
      JsonNode by = action.get("trigger");
      String what = name + " action " + i + " " + command(action);
      switch (by.get("kind").textValue()) {
        case "Start" -> {
          totalS += train.timeS() - beganS;
          beganS = number(action, "timeS");
          train.place(beganS, number(action, "atM"), 0);
        }
        case "AtPlace" -> train.runToPlace(number(by, "atM"));
        case "SpeedUpTo" -> train.runUpToSpeed(number(by, "speedMps"));
        case "SpeedDownTo" -> train.runToSpeed(number(by, "speedMps"));
        case "After" -> train.runFor(lastS + number(by, "seconds") - train.timeS());
        case "Standstill" -> train.runToSpeed(0);
        default -> throw new AssertionError(by);
      }
      same(what + " at", train.atM(), number(action, "atM"), SOLVERS_M);
      same(what + " speed", train.speedMps(), number(action, "speedMps"), SOLVERS_MPS);
      same(what + " time", train.timeS(), number(action, "timeS"), SOLVERS_S);
      lastS = train.timeS();
      actions++;
      movements += command(action).equals("Stand") ? 0 : 1;
      switch (command(action)) {
        case "Power" -> train.power(action.at("/command/notch").intValue());
        case "ShutOff" -> train.power(-1);
        case "Brake" -> train.brake(action.at("/command/pressurePa").doubleValue());
        case "Release" -> train.brake(0);
        case "Hold" -> hold(file, train, action.get("command"), poweredOn(all, i));
        default -> {}
      }
    }
    totalS += train.timeS() - beganS;
    same(name + " energy", train.workJ() / number(cost, "energyJ"), 1, 1e-3);
    same(name + " time", totalS, number(cost, time), SOLVERS_S);
    same(name + " movements", movements, cost.get("handleMovements").intValue(), 0);
  }

  /** Whether power is told where a hold ends, so that it need not come off. */
  private static boolean poweredOn(JsonNode all, int i) {
    JsonNode next = all.get(i + 1);
    double untilM = all.get(i).at("/command/untilM").doubleValue();
    return next != null
        && command(next).equals("Power")
        && Math.abs(next.at("/trigger/atM").asDouble(NEVER) - untilM) < 1e-3;
  }

  /** Power up to the notch at the lower speed and off at the upper one; or the brake, and off. */
  private void hold(JsonNode file, HandOverTrain train, JsonNode hold, boolean on) {
    holds++;
    JsonNode by = hold.get("by");
    double perNotchS = file.at("/train/timePerNotchS").doubleValue();
    double untilM = number(hold, "untilM");
    double lower = number(hold, "lowerMps");
    double upper = number(hold, "upperMps");
    int notch = -1;
    boolean applied = false;
    double sinceS = train.timeS();
    while (train.atM() < untilM - 1e-6) {
      boolean power = by.has("notch");
      boolean off = power ? notch < 0 : !applied;
      boolean acts =
          power == off ? train.speedMps() <= lower + 1e-6 : train.speedMps() >= upper - 1e-6;
      boolean up = power && notch >= 0 && notch < by.get("notch").intValue();
      boolean due = up && train.timeS() >= sinceS + perNotchS - 1e-9;
      if (acts && power) {
        notch = off ? 0 : -1;
        train.power(notch);
        sinceS = train.timeS();
      } else if (acts) {
        applied = !applied;
        train.brake(applied ? number(by, "pressurePa") : 0);
      } else if (due) {
        train.power(++notch);
        sinceS = train.timeS();
      } else {
        boolean rising = power != off;
        train.runToFirst(
            untilM,
            rising ? -NEVER : lower,
            rising ? upper : NEVER,
            up ? sinceS + perNotchS : train.timeS() + 3000);
      }
    }
    if (!on) {
      train.power(-1);
      train.brake(0);
    }
  }

  // What is told of places

  private static double mps(HandOverCues cues, double atM) {
    return cues.speedAt(atM);
  }

  private void test(JsonNode file, JsonNode test, String what) {
    HandOverCues cues = new HandOverCues(file, new HandOverGrid(file));
    double atM = number(test, "atM");
    boolean made = !test.has("noRoom");
    same(what + " planned", mps(cues, atM), number(test, "plannedMps"), 0.05);
    same(
        what + " pressure",
        number(test, "pressurePa"),
        file.at("/policy/stopping/first/pascals").doubleValue(),
        file.at("/units/pressurePa").doubleValue());
    same(
        what + " held",
        number(test, "heldS"),
        file.at("/policy/practice/line/testHeld/seconds").doubleValue(),
        0);
    HandOverTrain train = train(file);
    train.place(0, atM, made ? number(test, "plannedMps") : number(test, "testMps"));
    train.brake(number(test, "pressurePa"));
    train.runFor(number(test, "heldS"));
    same(what + " after", train.speedMps(), number(test, "speedAfterMps"), SOLVERS_MPS);
    same(what + " deceleration", -train.accelerationMps2(), number(test, "decelerationMps2"), 0.01);
    double emptyS = train.releaseS();
    train.brake(0);
    train.runFor(emptyS);
    // The file looks once a second whether it is off.
    same(
        what + " off",
        Math.max(0, number(test, "endM") - train.atM() - 0.5 * train.speedMps()),
        0,
        0.6 * train.speedMps());
    tests++;
  }

  /**
   * Its caution, the magnet of that, the speeds there, and that the technique stands short of it.
   */
  private void signal(JsonNode file, JsonNode signal, String what) {
    double signalM = number(signal, "signalM");
    double standM = number(signal, "standM");
    double margin = file.at("/policy/margins/beforeSignal/metres").doubleValue();
    same(what + " stand", standM, signalM - margin, 1e-6);
    same(what + " itself", place(file, "SIGNAL", signal.get("signal").textValue()), signalM, 1e-6);
    double warnedM = number(signal, "warnedM");
    if (signal.has("cautionAt")) {
      String caution = signal.get("cautionAt").textValue();
      double magnet = place(file, "MAGNET", caution);
      double seen = Double.isNaN(magnet) ? place(file, "SIGNAL", caution) : magnet;
      same(what + " warned", warnedM, seen, 1e-6);
    }
    HandOverCues cues = new HandOverCues(file, new HandOverGrid(file));
    same(what + " planned", mps(cues, warnedM), number(signal, "plannedMps"), 1e-6);
    same(what + " permissible", ceiling(file, warnedM), number(signal, "ceilingMps"), 1e-9);
    if (!signal.get("technique").isEmpty()) {
      double shortM = standM - stands(file, signal, 0, what);
      double later =
          standM - stands(file, signal, file.at("/units/placeM").doubleValue() + 1, what);
      cautions++;
      if (shortM < -SOLVERS_M || later > SOLVERS_M) {
        wrong.add(
            String.format(Locale.ROOT, "%s: %.2f m short; later %.2f m", what, shortM, later));
      }
    } else if (signal.has("brakingM")) {
      HandOverTrain train = train(file);
      train.place(0, warnedM, number(signal, "plannedMps"));
      train.runToFirst(standM, 0, NEVER, 3000);
      if (train.atM() >= standM) {
        wrong.add(what + ": no technique, and it does not stand short of it");
      }
    }
  }

  /** Coasting at the planned speed from the warning, then as the file says. */
  private double stands(JsonNode file, JsonNode signal, double laterM, String what) {
    HandOverTrain train = train(file);
    train.place(0, number(signal, "warnedM"), number(signal, "plannedMps"));
    double lastS = 0;
    double first = number(signal, "brakingM") + laterM;
    for (JsonNode action : signal.get("technique")) {
      JsonNode by = action.get("trigger");
      switch (by.get("kind").textValue()) {
        case "AtPlace" -> train.runToFirst(first, 0, NEVER, 3000);
        case "SpeedDownTo" -> train.runToSpeed(number(by, "speedMps"));
        case "After" -> train.runFor(lastS + number(by, "seconds") - train.timeS());
        case "Standstill" -> train.runToSpeed(0);
        default -> throw new AssertionError(by);
      }
      lastS = train.timeS();
      if (laterM == 0) {
        same(what + " " + command(action), train.atM(), number(action, "atM"), SOLVERS_M);
      }
      if (command(action).equals("Brake")) {
        train.brake(action.at("/command/pressurePa").doubleValue());
      }
    }
    train.runToSpeed(0);
    return train.atM();
  }

  private static double place(JsonNode file, String kind, String name) {
    for (JsonNode thing : file.get("lineside")) {
      if (thing.get("kind").textValue().equals(kind)
          && thing.get("name").textValue().equals(name)) {
        return number(thing, "atM");
      }
    }
    return Double.NaN;
  }

  private static double ceiling(JsonNode file, double atM) {
    double mps = Double.NaN;
    for (JsonNode step : file.get("ceiling")) {
      if (number(step, "fromM") <= atM && atM < number(step, "toM")) {
        mps = number(step, "speedMps");
      }
    }
    return mps;
  }

  private static boolean sameMoment(JsonNode point, JsonNode next) {
    return number(point, "timeS") == number(next, "timeS");
  }

  /** Power is off over a gap until the leading motored vehicle is past it. */
  private void gap(JsonNode file, JsonNode gap, String what) {
    double leadM = 0;
    double behindM = 0;
    for (int i = 0; i < file.at("/train/planned/lengthM").size(); i++) {
      behindM += file.at("/train/planned/lengthM").get(i).doubleValue();
      boolean motored = file.at("/train/planned/motoredVehicleKg").get(i).doubleValue() > 0;
      leadM = motored && leadM == 0 ? behindM : leadM;
    }
    double fromM = number(gap, "fromM");
    double overM = number(gap, "toM") + leadM;
    gaps++;
    double lastMps = 0;
    boolean starts = false;
    JsonNode points = file.at("/plan/trace/points");
    for (int i = 0; i < points.size(); i++) {
      JsonNode point = points.get(i);
      double atM = number(point, "atM");
      // Where a handle is moved the trace has the moment twice: before the movement and after it.
      boolean moved = i + 1 < points.size() && sameMoment(point, points.get(i + 1));
      boolean on = point.get("notch").intValue() >= 0 && !moved;
      starts = on && (starts || (lastMps == 0 && atM >= fromM));
      lastMps = number(point, "speedMps");
      boolean over = atM >= fromM && atM < overM - 0.01;
      if (on && !starts && over) {
        wrong.add(String.format(Locale.ROOT, "%s: power at %.1f", what, atM));
        return;
      }
    }
  }
}
