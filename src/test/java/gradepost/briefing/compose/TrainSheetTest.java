package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Briefing;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.Reference;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.Table;
import gradepost.briefing.TrainPage;
import gradepost.briefing.page.TrainWriter;
import gradepost.briefing.reissue.ChangeMarks;
import gradepost.briefing.reissue.Sheets;
import gradepost.briefing.word.Words;
import gradepost.drive.Changed;
import gradepost.plan.Plan;
import gradepost.render.Papers;
import gradepost.stock.BrakeCare;
import gradepost.stock.BrakePercentage;
import gradepost.stock.FailureSign;
import gradepost.stock.Formation;
import gradepost.stock.GaugeReading;
import gradepost.stock.LeavingTest;
import gradepost.stock.RotatingMass;
import gradepost.stock.Stock;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import gradepost.units.Length;
import gradepost.units.Mass;
import gradepost.units.Pressure;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The train page says how the figures of the stock file are counted. */
class TrainSheetTest {
  private static final Plan SAMPLE = SamplePlan.of(UnitStyle.METRIC);
  private static final Pressure FULL = Pressure.ofBar(3.8);

  @Test
  void ofAHighPercentageItSaysWhatServiceBrakingCounts() {
    assertThat(fact(percentage(150), "Braked weight percentage"))
        .contains("150; 135 in service braking");
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

  private static final BrakeCare CARE =
      new BrakeCare(
          List.of(
              new LeavingTest(
                  "continuity",
                  "Auto",
                  List.of(
                      step("Apply full service.", GaugeReading.Gauge.REAR_CYLINDER, 3.2, 3.4),
                      new LeavingTest.Step("Release.", Optional.empty())))),
          List.of(
              new FailureSign("EP", FailureSign.By.LAMP, "The lamp goes out.", Optional.empty()),
              new FailureSign(
                  "EP",
                  FailureSign.By.GAUGE,
                  "The gauge stays down.",
                  step("", GaugeReading.Gauge.LEADING_PIPE, 4.7, 4.8).shows())));

  private static LeavingTest.Step step(
      String action, GaugeReading.Gauge gauge, double fromBar, double toBar) {
    return new LeavingTest.Step(
        action,
        Optional.of(new GaugeReading(gauge, Pressure.ofBar(fromBar), Pressure.ofBar(toBar))));
  }

  private static Plan caring(BrakeCare care) {
    Stock stock = Changed.in(SAMPLE.assignment().stock(), "care", care);
    return with(stock, SAMPLE.assignment().formation());
  }

  private static List<List<String>> rows(Plan plan, int table) {
    return page(plan).leaving().get(table).rows().stream().map(Table.Row::cells).toList();
  }

  @Test
  void theTestsBeforeLeavingAndTheSignsStandInTheirOrder() {
    Plan plan = caring(CARE);
    assertThat(rows(plan, 0))
        .containsExactly(
            List.of(
                "continuity (Auto)",
                "1",
                "Apply full service.",
                "rearmost cab, brake cylinder: 3.2 bar to 3.4 bar"),
            List.of("as above", "2", "Release.", "–"));
    assertThat(rows(plan, 1))
        .containsExactly(
            List.of("EP", "lamp", "The lamp goes out.", "–"),
            List.of(
                "EP",
                "gauge",
                "The gauge stays down.",
                "leading cab, brake pipe: 4.7 bar to 4.8 bar"));
    assertThat(page(plan).leavingRules())
        .containsExactly(
            "Tests of EP: NOT SUPPLIED. Follow the operator’s instructions.",
            "Emergency stays applied until the train stands.",
            "This page does not permit you to leave. The operator’s rules and a competent person"
                + " decide.");
    assertThat(notSupplied(plan))
        .contains(
            "Tests before leaving: none in the data for EP. Follow the operator’s instructions.")
        .noneMatch(text -> text.startsWith("Signs that a brake has failed"));
  }

  @Test
  void whereNothingIsSuppliedThePageSaysSo() {
    TrainPage page = page(SAMPLE);
    assertThat(page.leaving())
        .allSatisfy(
            table -> {
              assertThat(table.rows()).isEmpty();
              assertThat(table.whenEmpty())
                  .isEqualTo("NOT SUPPLIED: follow the operator’s instructions.");
            });
    assertThat(page.leavingRules())
        .containsExactly(
            "Emergency stays applied until the train stands.",
            "This page does not permit you to leave. The operator’s rules and a competent person"
                + " decide.");
    assertThat(notSupplied(SAMPLE))
        .contains(
            "Tests before leaving: none in the data for EP, Auto. Follow the operator’s"
                + " instructions.",
            "Signs that a brake has failed: none in the data for EP. Follow the operator’s"
                + " instructions.");
  }

  /** Equal on paper is equal as a sheet: a step of the gauge makes it another, a hair does not. */
  @Test
  void anotherPressureOnTheGaugeIsAnotherSheet() {
    assertThat(sheet(range(3.2, 3.4))).isEqualTo(sheet(range(3.199, 3.401)));
    assertThat(sheet(range(3.2, 3.4))).isNotEqualTo(sheet(range(3.2, 3.3)));
    assertThat(sheet(range(3.2, 3.4))).isNotEqualTo(sheet(range(3.1, 3.4)));
    assertThat(sheet(range(3.2, 3.4))).isNotEqualTo(sheet(BrakeCare.NOT_SUPPLIED));
    assertThat(sheet(CARE))
        .isNotEqualTo(
            sheet(
                new BrakeCare(
                    CARE.beforeLeaving(), List.of(CARE.signs().get(1), CARE.signs().get(0)))));
  }

  private static BrakeCare range(double fromBar, double toBar) {
    return new BrakeCare(
        List.of(
            new LeavingTest(
                "continuity",
                "Auto",
                List.of(step("Apply.", GaugeReading.Gauge.REAR_CYLINDER, fromBar, toBar)))),
        List.of());
  }

  /** A bar stands beside the steps that the issue before had not, and beside no other. */
  @Test
  void aChangedStepIsMarked() {
    Reference marked =
        ChangeMarks.marked(
            looked(caring(CARE)),
            looked(caring(new BrakeCare(CARE.beforeLeaving(), List.of()))),
            Map.of());
    assertThat(rows(marked, "leaving")).isNotEmpty().noneMatch(Table.Row::changed);
    assertThat(rows(marked, "signs")).isNotEmpty().allMatch(Table.Row::changed);
  }

  private static List<Table.Row> rows(Reference reference, String table) {
    return reference.sheets().stream()
        .flatMap(ReferenceSheet::tables)
        .filter(t -> t.name().equals(table))
        .flatMap(t -> t.rows().stream())
        .toList();
  }

  private static Reference looked(Plan plan) {
    return Papers.reference(plan, composed(plan));
  }

  private static String sheet(BrakeCare care) {
    return new Sheets(Messages.english())
        .of(looked(caring(care))).stream()
            .filter(s -> s.key().equals("reading"))
            .map(Sheets.Sheet::text)
            .findFirst()
            .orElseThrow();
  }

  private static Briefing composed(Plan plan) {
    return new Composer(Messages.english())
        .compose("", List.of(plan), SampleIssue.issue(), List.of());
  }

  private static List<String> notSupplied(Plan plan) {
    return composed(plan).parts().get(0).notSupplied();
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

  private static TrainPage page(Plan plan) {
    return new TrainWriter(plan, new Words(Messages.english(), plan.assignment().path())).page("p");
  }

  private static Optional<String> fact(Plan plan, String label) {
    return page(plan).facts().stream()
        .filter(f -> f.label().equals(label))
        .map(Fact::value)
        .findFirst();
  }
}
