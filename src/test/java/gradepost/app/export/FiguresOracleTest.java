package gradepost.app.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gradepost.app.HandOverTrain;
import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.plan.TrainFigures;
import java.io.IOException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Validation: what the train does by itself comes out of the hand-over, by another solver ({@link
 * HandOverTrain}) on a track that is straight and has one gradient.
 */
@Tag("slow")
class FiguresOracleTest {
  private static final double LONG_M = 1e6;

  /** From the law of the file: standard atmosphere, ISO 2533. */
  private static final double ATMOSPHERE_PA = 101_325;

  private ObjectNode file;
  private TrainFigures figures;

  @BeforeEach
  void handOver() throws IOException {
    Plan plan = DemoPlans.plan(1);
    figures = plan.figures();
    file = (ObjectNode) new ObjectMapper().readTree(HandOver.of(plan, "0".repeat(64)));
    file.putArray("lowAdhesionSites");
    ((ObjectNode) file.get("track")).putArray("curves");
  }

  private HandOverTrain train(String which, String brake, double permille) {
    ArrayNode heights = ((ObjectNode) file.get("track")).putArray("elevation");
    for (double at : new double[] {-LONG_M, LONG_M}) {
      heights.addObject().put("atM", at).put("elevationM", at * permille / 1000);
    }
    return new HandOverTrain(file, which, brake, file.at("/policy/adhesion/0"));
  }

  private String service() {
    return file.at("/train/brakeSystems/0/shortName").textValue();
  }

  /** Neither gaining nor losing; where there is no such speed, it loses at once or always gains. */
  @Test
  void balancingSpeeds() {
    assertThat(figures.balancing()).hasSizeGreaterThan(20);
    for (TrainFigures.Balance balance : figures.balancing()) {
      HandOverTrain train = train("planned", service(), balance.permille());
      double mps = Math.min(balance.speedMps(), 100);
      train.place(0, 0, mps);
      train.power(balance.notch());
      double gains = train.accelerationMps2();
      if (mps == 0) {
        assertThat(gains).as("%s", balance).isLessThanOrEqualTo(1e-9);
      } else if (mps == 100) {
        assertThat(gains).as("%s", balance).isPositive();
      } else {
        assertThat(gains).as("%s", balance).isCloseTo(0, within(1e-6));
      }
    }
  }

  @Test
  void distanceAndTimeToSpeed() {
    double perNotchS = file.at("/train/timePerNotchS").doubleValue();
    assertThat(figures.reaching()).hasSizeGreaterThan(3);
    for (TrainFigures.Reach reach : figures.reaching()) {
      HandOverTrain train = train("planned", service(), 0);
      train.place(0, 0, 0);
      for (int notch = 0; notch <= reach.notch(); notch++) {
        train.power(notch);
        if (notch < reach.notch()) {
          train.runFor(perNotchS);
        }
      }
      train.runUpToSpeed(reach.speedMps());
      assertThat(train.atM()).as("%s", reach).isCloseTo(reach.distanceM(), within(0.2));
      assertThat(train.timeS()).as("%s", reach).isCloseTo(reach.timeS(), within(0.05));
    }
  }

  @Test
  void distanceToAStand() {
    assertThat(figures.stops()).hasSizeGreaterThan(10);
    for (TrainFigures.FullStop stop : figures.stops()) {
      HandOverTrain train = train("safeSide", stop.brake().shortName(), stop.permille());
      train.place(0, 0, stop.fromMps());
      train.brake(train.fullPa());
      train.runToSpeed(0);
      assertThat(train.atM()).as("%s", stop).isCloseTo(stop.distanceM(), within(0.1));
    }
  }

  /** What the gauges show for a reduction, by the law of the pipe in the file. */
  @Test
  void pressuresForAReduction() {
    assertThat(figures.pipe()).isNotEmpty();
    for (TrainFigures.Reduction reading : figures.pipe()) {
      for (JsonNode system : file.at("/train/brakeSystems")) {
        if (system.get("shortName").textValue().equals(reading.brake().shortName())) {
          JsonNode law = system.get("pipe");
          double pipe = law.at("/pipe/pascals").doubleValue();
          double full = system.at("/full/pascals").doubleValue();
          double cylinder = Math.min(full, cylinderPa(law, reading.reductionPa()));
          assertThat(reading.pipePa()).isCloseTo(pipe - reading.reductionPa(), within(1e-6));
          assertThat(reading.cylinderPa()).isCloseTo(cylinder, within(1e-3));
        }
      }
    }
  }

  private static double cylinderPa(JsonNode law, double reductionPa) {
    return switch (law.get("kind").textValue()) {
      case "Ratio" -> law.get("poundsPerPound").doubleValue() * reductionPa;
      case "Boyle" ->
          Math.max(0, law.get("volumeRatio").doubleValue() * reductionPa - ATMOSPHERE_PA);
      case "Distributor" ->
          Math.min(
              law.at("/limit/pascals").doubleValue(), law.get("ratio").doubleValue() * reductionPa);
      default -> throw new AssertionError(law);
    };
  }
}
