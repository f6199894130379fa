package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.page.TrainWriter;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.stock.BrakePercentage;
import gradepost.stock.Formation;
import gradepost.stock.RotatingMass;
import gradepost.stock.Stock;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import gradepost.units.Length;
import gradepost.units.Mass;
import gradepost.units.Pressure;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The train page says how the figures of the stock file are counted. */
class TrainSheetTest {
  private static final Plan SAMPLE = SamplePlan.of(UnitStyle.METRIC);
  private static final Pressure FULL = Pressure.ofBar(3.8);

  @Test
  void ofAHighPercentageItSaysWhatServiceBrakingCounts() {
    assertThat(fact(percentage(150), "Braked weight percentage"))
        .contains("150; counts as 135 in service braking");
    assertThat(fact(percentage(110), "Braked weight percentage")).contains("110");
    assertThat(fact(SAMPLE, "Braked weight percentage")).isEmpty();
  }

  /** By hand: 4 % of 40 t and 2.4 t are 4 t. */
  @Test
  void itSaysWhetherRotatingMassIsAShareOfTareOrAMass() {
    Formation two =
        new Formation(
            "2-car",
            List.of(
                vehicle("A", new RotatingMass.ShareOfTare(0.04)),
                vehicle("B", new RotatingMass.Stated(Mass.ofTonnes(2.4)))));
    assertThat(fact(with(SAMPLE.assignment().stock(), two), "Rotating mass"))
        .contains("4 t at every load: A 4 % of tare, B 2.4 t");
  }

  private static Vehicle vehicle(String type, RotatingMass rotating) {
    return new Vehicle(
        type,
        new Length(20),
        Mass.ofTonnes(40),
        Mass.ofTonnes(45),
        Mass.ofTonnes(50),
        4,
        0.5,
        rotating,
        1,
        Optional.empty());
  }

  private static Plan percentage(double lambda) {
    Stock s = SAMPLE.assignment().stock();
    BrakePercentage percentage = new BrakePercentage(lambda);
    Stock stock =
        new Stock(
            s.name(),
            s.description(),
            s.trainClasses(),
            s.maximum(),
            s.vehicles(),
            s.formations(),
            s.resistance(),
            s.curves(),
            s.checkRailDragNPerKn(),
            s.traction(),
            percentage.inService().force(FULL),
            List.of(percentage.service(FULL), percentage.emergency(FULL)),
            s.handleRules());
    return with(stock, SAMPLE.assignment().formation());
  }

  private static Plan with(Stock stock, Formation formation) {
    Assignment a = SAMPLE.assignment();
    return new Plan(
        new Assignment(
            a.route(),
            a.direction(),
            a.lines(),
            a.junctionRoutes(),
            a.calls(),
            stock,
            formation,
            a.load(),
            a.policy(),
            a.restrictions()),
        SAMPLE.ceiling(),
        SAMPLE.approaches(),
        SAMPLE.actions(),
        SAMPLE.trace(),
        SAMPLE.runningTimeS(),
        SAMPLE.energyJ(),
        SAMPLE.handleMovements(),
        SAMPLE.fastest(),
        SAMPLE.failures(),
        SAMPLE.signals(),
        SAMPLE.brakeTests(),
        SAMPLE.figures());
  }

  private static Optional<String> fact(Plan plan, String label) {
    Words words = new Words(Messages.english(), plan.assignment().path());
    return new TrainWriter(plan, words)
        .page("p").facts().stream()
            .filter(f -> f.label().equals(label))
            .map(Fact::value)
            .findFirst();
  }
}
