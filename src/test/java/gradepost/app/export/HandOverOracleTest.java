package gradepost.app.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.Examples;
import gradepost.app.HandOverTrain;
import gradepost.drive.DemoPlans;
import gradepost.drive.Planner;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Validation: whoever has only the hand-over file and a solver of his own comes to the same places.
 * Source: the same equations written anew ({@link HandOverTrain}) and integrated by Hipparchus,
 * Dormand–Prince 8(5,3), 1e-10. Tolerance 0.1 m, what the model promises of every published place.
 */
@Tag("slow")
class HandOverOracleTest {
  private static final double TOLERANCE_M = 0.1;

  private final List<String> wrong = new ArrayList<>();
  private int brakings;
  private int rungs;
  private int answers;
  private int needs;
  private double worstBrakingM;
  private double worstRungM;

  @Test
  void everyBrakingAndEveryLatestPointComesOutOfTheFileAlone() throws IOException {
    for (Assignment assignment : DemoPlans.tried()) {
      Plan plan = DemoPlans.plan(assignment);
      compare(plan, file(plan));
    }
    report();
    assertThat(wrong).isEmpty();
    int papers = DemoPlans.tried().size();
    assertThat(brakings).isGreaterThan(4 * papers);
    assertThat(rungs).isGreaterThan(50 * papers);
    assertThat(answers).isGreaterThan(25 * papers);
    assertThat(needs).isGreaterThan(papers);
  }

  /**
   * The same where brakes are isolated, and less force and more speed are counted on than in the
   * other policies: what the file says of the train on the safe side is what was typed, and the
   * last places are that train's.
   */
  @Test
  void aPolicyThatLeansFurtherIsInTheTrainAndInEveryLastPlace() throws IOException {
    for (Assignment assignment : DemoPlans.leaning().subList(0, Examples.of(1, 2))) {
      Plan plan = Planner.plan(assignment);
      JsonNode file = file(plan);
      int cars = assignment.formation().cars();
      assertThat(cars).isIn(4, 8);
      leans(file, cars == 4 ? List.of(0) : List.of(0, 3), cars / 4 * 2 * (1.15 + 1.0));
      compare(plan, file);
    }
    report();
    assertThat(wrong).isEmpty();
    assertThat(rungs).isGreaterThan(Examples.of(100, 200));
    assertThat(answers).isGreaterThan(Examples.of(50, 100));
  }

  /** Stock with distributors goes from its file through the plan to the same places. */
  @Test
  void twoPipeStockWithDistributorsComesOutOfTheFileAlone() throws IOException {
    Plan plan = Planner.plan(DemoPlans.twoPipe().get(0));
    assertThat(plan.failures()).isEmpty();
    JsonNode file = file(plan);
    assertThat(file.at("/train/brakeSystems/0/pipe/kind").textValue()).isEqualTo("Distributor");
    compare(plan, file);
    report();
    assertThat(wrong).isEmpty();
    assertThat(brakings).isGreaterThan(6);
    assertThat(rungs).isGreaterThan(30);
  }

  /**
   * @param isolated the first, and of eight vehicles the fourth too: motor cars, which brake 1.15
   *     times as hard as a trailer
   * @param weights of all brakes together
   */
  private static void leans(JsonNode file, List<Integer> isolated, double weights) {
    assertThat(file.at("/policy/safeSide/overspeed/metresPerSecond").doubleValue())
        .isCloseTo(5 * 0.44704, within(1e-9));
    for (JsonNode system : file.at("/train/brakeSystems")) {
      String brake = system.get("shortName").textValue();
      double[] whole = gains(file, "planned", brake);
      double[] leaning = gains(file, "safeSide", brake);
      double all = Arrays.stream(whole).sum();
      double left = (weights - 1.15 * isolated.size()) / weights;
      assertThat(Arrays.stream(leaning).sum()).isCloseTo(0.8 * left * all, within(1e-9 * all));
      for (int i = 0; i < whole.length; i++) {
        double counted = isolated.contains(i) ? 0 : 0.8 * whole[i];
        assertThat(leaning[i]).as("%s %d", brake, i).isCloseTo(counted, within(1e-9 * all));
      }
    }
  }

  private static double[] gains(JsonNode file, String train, String brake) {
    JsonNode list = file.at("/train/" + train + "/brakes/" + brake + "/gainNPerPa");
    double[] gains = new double[list.size()];
    for (int i = 0; i < gains.length; i++) {
      gains[i] = list.get(i).doubleValue();
    }
    return gains;
  }

  private static JsonNode file(Plan plan) throws IOException {
    return new ObjectMapper().readTree(HandOver.of(plan, "0".repeat(64)));
  }

  private void report() {
    System.out.printf(
        "hand-over: %d brakings within %.4f m, %d latest points within %.4f m of another solver%n",
        brakings, worstBrakingM, rungs, worstRungM);
  }

  private void compare(Plan plan, JsonNode file) {
    String name =
        file.at("/assignment/direction").textValue()
            + " "
            + file.at("/assignment/formation").textValue();
    for (JsonNode approach : file.get("approaches")) {
      String of = name + ", " + approach.at("/target/name").textValue();
      for (JsonNode application : approach.get("applications")) {
        braking(file, application, approach.get("number").intValue(), of);
        ladder(file, application.get("target"), application.get("cases"), of);
        ladder(file, approach.get("target"), application.get("toStand"), of + " to stand");
      }
      JsonNode faster = approach.at("/ifFaster/application");
      if (faster.isObject()) {
        ladder(file, faster.get("target"), faster.get("cases"), of + " if faster");
        faster(file, faster, approach.at("/ifFaster/actions"), of + " if faster");
      }
    }
    assertThat(file.get("signals")).hasSize(plan.signals().size());
    for (JsonNode signal : file.get("signals")) {
      for (JsonNode need : signal.get("needs")) {
        need(file, signal, need, name + ", " + signal.get("signal").textValue());
      }
    }
  }

  /** Carries out the planned brake actions from where the cylinders were last empty. */
  private void braking(JsonNode file, JsonNode application, int number, String of) {
    JsonNode actions = file.at("/plan/actions");
    double from = application.get("brakingPointM").doubleValue();
    int first = 0;
    while (!belongs(actions.get(first), number, from)) {
      first++;
    }
    int start = first;
    while (!(braking(actions.get(start)) && emptyAt(file, actions.get(start)))) {
      start--;
    }
    HandOverTrain train =
        new HandOverTrain(file, "planned", brakeOf(file, "SERVICE"), file.at("/policy/adhesion/0"));
    JsonNode begin = actions.get(start);
    train.place(
        begin.get("timeS").doubleValue(),
        begin.get("atM").doubleValue(),
        begin.get("speedMps").doubleValue());
    boolean done = false;
    double last = train.timeS();
    for (int i = start; !done; i++) {
      JsonNode action = actions.get(i);
      if (i > start) {
        await(train, action.get("trigger"), last);
        compare(
            of + " action " + action.get("command"), train.atM(), action.get("atM").doubleValue());
      }
      last = train.timeS();
      String command = action.at("/command/kind").textValue();
      switch (command) {
        case "Brake" -> train.brake(action.at("/command/pressurePa").doubleValue());
        case "Release" -> {
          train.brake(0);
          done = i >= first;
        }
        case "Stand" -> done = true;
        default -> throw new AssertionError(of + ": " + action);
      }
    }
    if (train.speedMps() > 0.01) {
      train.runFor(train.releaseS());
    }
    compare(of + " end", train.atM(), application.get("endM").doubleValue());
    brakings++;
  }

  /** The braking of a train that is as fast as it may be, from its point to the end. */
  private void faster(JsonNode file, JsonNode application, JsonNode actions, String of) {
    HandOverTrain train =
        new HandOverTrain(file, "planned", brakeOf(file, "SERVICE"), file.at("/policy/adhesion/0"));
    train.place(
        actions.get(0).get("timeS").doubleValue(),
        application.get("brakingPointM").doubleValue(),
        application.get("brakingSpeedMps").doubleValue());
    double last = train.timeS();
    boolean let = false;
    for (JsonNode action : actions) {
      if (!action.at("/trigger/kind").textValue().equals("AtPlace")) {
        await(train, action.get("trigger"), last);
      }
      compare(of + " " + action.get("command"), train.atM(), action.get("atM").doubleValue());
      last = train.timeS();
      let = !braking(action);
      train.brake(let ? 0 : action.at("/command/pressurePa").doubleValue());
    }
    if (let) {
      train.runFor(train.releaseS());
      compare(of + " end", train.atM(), application.get("endM").doubleValue());
    }
    brakings++;
  }

  private static boolean braking(JsonNode action) {
    return action.at("/command/kind").textValue().equals("Brake");
  }

  /** A brake may be on already at the braking point: then only its release belongs there. */
  private static boolean belongs(JsonNode action, int number, double fromM) {
    boolean brakes = braking(action) || action.at("/command/kind").textValue().equals("Release");
    return brakes
        && action.get("approach").intValue() == number
        && action.get("atM").doubleValue() > fromM - 0.001;
  }

  /** Whether the trace shows empty cylinders when an action is carried out. */
  private static boolean emptyAt(JsonNode file, JsonNode action) {
    double time = action.get("timeS").doubleValue();
    double pressure = 0;
    for (JsonNode point : file.at("/plan/trace/points")) {
      if (point.get("timeS").doubleValue() > time + 1e-9) {
        break;
      }
      pressure = point.get("pressurePa").doubleValue();
    }
    return pressure == 0;
  }

  private static void await(HandOverTrain train, JsonNode trigger, double lastS) {
    switch (trigger.get("kind").textValue()) {
      case "AtPlace" -> train.runToPlace(trigger.get("atM").doubleValue());
      case "SpeedDownTo" -> train.runToSpeed(trigger.get("speedMps").doubleValue());
      case "After" -> train.runFor(lastS + trigger.get("seconds").doubleValue() - train.timeS());
      case "Standstill" -> train.runToSpeed(0);
      default -> throw new AssertionError(trigger);
    }
  }

  private void compare(String what, double found, double written) {
    double difference = Math.abs(found - written);
    worstBrakingM = Math.max(worstBrakingM, difference);
    if (difference > TOLERANCE_M) {
      wrong.add(what + ": " + written + " in the file, " + found + " by another solver");
    }
  }

  private static String brakeOf(JsonNode file, String role) {
    for (JsonNode system : file.at("/train/brakeSystems")) {
      if (system.get("role").textValue().equals(role)) {
        return system.get("shortName").textValue();
      }
    }
    throw new AssertionError(role);
  }

  /** From every latest point the safe-side train, braked fully, just meets the target. */
  private void ladder(JsonNode file, JsonNode towards, JsonNode cases, String of) {
    double target = towards.get("atM").doubleValue();
    double speed = towards.at("/speedMps").doubleValue();
    for (JsonNode result : cases) {
      for (JsonNode rung : result.get("ladder")) {
        JsonNode latest = rung.get("latest");
        if (!latest.get("kind").textValue().equals("Point")) {
          continue;
        }
        String brake = rung.at("/brake/shortName").textValue();
        double from = latest.get("exactM").doubleValue();
        HandOverTrain train =
            fullBraking(
                file, brake, result.get("adhesion"), from, latest.get("speedMps").doubleValue());
        train.runToSpeed(speed);
        double difference = train.atM() - target;
        rungs++;
        worstRungM = Math.max(worstRungM, Math.abs(difference));
        if (Math.abs(difference) > TOLERANCE_M) {
          wrong.add(
              String.format(
                  "%s, %s %s: %.3f m past the target",
                  of, result.at("/adhesion/name").textValue(), brake, difference));
        }
      }
      for (JsonNode answer : result.get("answers")) {
        answer(file, answer, result.get("adhesion"), target, speed, of);
      }
    }
  }

  /** What is left when the service brake gives nothing: how far short of the target, or past it. */
  private void answer(
      JsonNode file, JsonNode answer, JsonNode adhesion, double targetM, double mps, String of) {
    String brake = answer.at("/brake/shortName").textValue();
    double from = answer.get("askedAtM").doubleValue();
    HandOverTrain train =
        fullBraking(file, brake, adhesion, from, answer.get("askedSpeedMps").doubleValue());
    train.runToSpeed(mps);
    String what = of + " after " + brake + " asked for";
    if (answer.at("/met/kind").textValue().equals("At")) {
      compare(what, targetM - train.atM(), answer.at("/met/shortM").doubleValue());
    } else if (train.speedMps() < mps + 1e-6 && train.atM() < targetM) {
      wrong.add(what + ": held at " + train.atM() + ", and the file says nowhere");
    }
    answers++;
  }

  /** What one brake needs from the permissible speed to a stand. */
  private void need(JsonNode file, JsonNode signal, JsonNode need, String of) {
    String brake = need.get("brake").textValue();
    double from = signal.get("warnedM").doubleValue();
    JsonNode dry = file.at("/policy/adhesion/0");
    HandOverTrain train =
        fullBraking(file, brake, dry, from, signal.get("ceilingMps").doubleValue());
    train.runToSpeed(0);
    compare(of + " needs of " + brake, train.atM() - from, need.get("needM").doubleValue());
    needs++;
  }

  /** On the safe side: faster than said, with all that this brake has. */
  private static HandOverTrain fullBraking(
      JsonNode file, String brake, JsonNode adhesion, double fromM, double mps) {
    HandOverTrain train = new HandOverTrain(file, "safeSide", brake, adhesion);
    double over = file.at("/policy/safeSide/overspeed/metresPerSecond").doubleValue();
    train.place(0, fromM, mps + over);
    train.brake(train.fullPa());
    return train;
  }
}
