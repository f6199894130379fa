package gradepost.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.Examples;
import gradepost.app.HandOverTrain;
import gradepost.drive.DemoPlans;
import gradepost.drive.FrozenPlans;
import gradepost.drive.MadeUp;
import gradepost.drive.Planner;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Validation: a train that comes at the speed of a row to its place and does there what the row
 * says, by another solver on the file alone, stands within the tolerance of its mark and never past
 * it, or has the speed of the board before the board. The row says rightly whether the automatic
 * brake would still do.
 */
@Tag("slow")
class BySpeedOracleTest {
  /** What two solvers may differ by. */
  private static final double SOLVERS_M = 0.02;

  private static final double SOLVERS_MPS = 0.01;

  private static final int MADE_UP = Integer.getInteger("gradepost.rails", Examples.of(3, 10));

  private final List<String> wrong = new ArrayList<>();
  private int rows;
  private int poor;
  private int late;
  private int braked;
  private double shortest = Double.POSITIVE_INFINITY;
  private double longest;

  @Test
  void onTheKeptValleyPacks() throws IOException {
    List<Assignment> valley = FrozenPlans.assignments();
    for (Assignment assignment : List.of(valley.get(0), valley.get(3))) {
      look(DemoPlans.plan(assignment), "valley");
    }
    done();
    assertThat(rows).isGreaterThan(200);
    assertThat(poor).isGreaterThan(100);
    assertThat(late).isBetween(rows / 20, rows / 2);
  }

  @Test
  void onTheLineByTheSea() throws IOException {
    look(DemoPlans.plan(4), "sea");
    look(DemoPlans.plan(7), "sea");
    done();
    assertThat(rows).isGreaterThan(100);
  }

  @Test
  void onMadeUpLines() throws IOException {
    for (int seed = 1; seed <= MADE_UP; seed++) {
      look(Planner.plan(MadeUp.random(seed)), "line " + seed);
    }
    done();
    assertThat(rows).isGreaterThan(20 * MADE_UP);
  }

  private void done() {
    System.out.printf(
        "by speed: %d rows driven by another solver, %d begun with a brake on, %.3f to %.3f m short"
            + " of the mark; %d leave no other brake%n",
        rows, braked, shortest, longest, late);
    assertThat(wrong).isEmpty();
  }

  private void look(Plan plan, String name) throws IOException {
    JsonNode file = new ObjectMapper().readTree(HandOver.of(plan, "0".repeat(64)));
    for (JsonNode approach : file.get("approaches")) {
      String of = name + ", " + approach.at("/target/name").textValue();
      for (JsonNode application : approach.get("applications")) {
        look(file, application, of);
      }
      JsonNode faster = approach.at("/ifFaster/application");
      if (faster.isObject()) {
        look(file, faster, of + " if faster");
      }
    }
  }

  private void look(JsonNode file, JsonNode application, String of) {
    for (JsonNode row : application.get("bySpeed")) {
      for (String column : List.of("planned", "poorest")) {
        JsonNode point = row.get(column);
        if (point == null) {
          continue;
        }
        String what = of + ", " + row.get("speedMps") + " " + column;
        if (point.get("brakeOnPa").doubleValue() > 0) {
          braked++;
          continue;
        }
        rows++;
        poor += column.equals("poorest") ? 1 : 0;
        drive(file, application.get("target"), point, what);
        if (!point.get("asPlanned").booleanValue()) {
          fallback(file, application.get("target"), point, what);
        }
      }
    }
  }

  private static JsonNode rail(JsonNode file, JsonNode point) {
    for (JsonNode adhesion : file.at("/policy/adhesion")) {
      if (adhesion.get("name").equals(point.get("rail"))) {
        return adhesion;
      }
    }
    throw new AssertionError(point.get("rail"));
  }

  private static HandOverTrain train(JsonNode file, String which, String role, JsonNode point) {
    for (JsonNode system : file.at("/train/brakeSystems")) {
      if (system.get("role").textValue().equals(role)) {
        return new HandOverTrain(
            file, which, system.get("shortName").textValue(), rail(file, point));
      }
    }
    throw new AssertionError(role);
  }

  private void drive(JsonNode file, JsonNode target, JsonNode point, String what) {
    HandOverTrain train = train(file, "planned", "SERVICE", point);
    train.place(0, point.get("atM").doubleValue(), point.get("speedMps").doubleValue());
    double lastS = 0;
    for (JsonNode action : point.get("actions")) {
      JsonNode by = action.get("trigger");
      switch (by.get("kind").textValue()) {
        case "AtPlace" -> {}
        case "SpeedDownTo" -> train.runToSpeed(by.get("speedMps").doubleValue());
        case "After" -> train.runFor(lastS + by.get("seconds").doubleValue() - train.timeS());
        case "Standstill" -> train.runToSpeed(0);
        default -> throw new AssertionError(by);
      }
      lastS = train.timeS();
      switch (action.at("/command/kind").textValue()) {
        case "Brake" -> train.brake(action.at("/command/pressurePa").doubleValue());
        case "Release" -> {
          train.brake(0);
          train.runFor(train.releaseS());
        }
        case "ShutOff", "Stand" -> {}
        default -> throw new AssertionError(action);
      }
    }
    ends(file, target, train, what);
  }

  private void ends(JsonNode file, JsonNode target, HandOverTrain train, String what) {
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
      train.runToPlace(targetM);
      double over = train.speedMps() - target.get("speedMps").doubleValue();
      if (over > SOLVERS_MPS) {
        wrong.add(String.format(Locale.ROOT, "%s: %.2f m/s over at the board", what, over));
      }
    }
  }

  /** It coasts for the noticing time, then brakes in full, faster than said, on the safe side. */
  private void fallback(JsonNode file, JsonNode target, JsonNode point, String what) {
    HandOverTrain coasts = train(file, "planned", "SERVICE", point);
    coasts.place(0, point.get("atM").doubleValue(), point.get("speedMps").doubleValue());
    coasts.runFor(file.at("/policy/noticing/seconds").doubleValue());
    HandOverTrain train = train(file, "safeSide", "FALLBACK", point);
    double over = file.at("/policy/safeSide/overspeed/metresPerSecond").doubleValue();
    train.place(0, coasts.atM(), coasts.speedMps() + over);
    train.brake(train.fullPa());
    train.runToSpeed(target.at("/speedMps").doubleValue());
    double shortM = target.get("atM").doubleValue() - train.atM();
    boolean leaves = point.get("leavesFallback").booleanValue();
    late += leaves ? 0 : 1;
    if (Math.abs(shortM) > SOLVERS_M && leaves != shortM > 0) {
      wrong.add(String.format(Locale.ROOT, "%s: automatic %.2f m short", what, shortM));
    }
  }
}
