package gradepost.briefing.page;

import gradepost.briefing.Fact;
import gradepost.briefing.Table;
import gradepost.briefing.TrainPage;
import gradepost.briefing.chart.PressureChart;
import gradepost.briefing.chart.TrainChart;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.stock.BrakeAction;
import gradepost.stock.BrakePercentage;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.PipeLaw;
import gradepost.stock.Stock;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import gradepost.told.TrainSheet;
import gradepost.units.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** The page about the train. */
public final class TrainWriter {
  private final Plan plan;
  private final Assignment assignment;
  private final Words words;

  public TrainWriter(Plan plan, Words words) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.words = words;
  }

  /** The page, for the part of the briefing with this identity. */
  public TrainPage page(String part) {
    Stock stock = assignment.stock();
    Formation formation = assignment.formation();
    List<Fact> facts = new ArrayList<>(new EditionWriter(assignment, words).facts());
    fact(facts, "formation", words.text("train.cars", formation.name(), formation.cars()));
    fact(facts, "length", words.overrun(formation.lengthM()));
    fact(facts, "load", load());
    fact(facts, "rotating", rotating(formation));
    fact(facts, "maximum", words.speed(stock.maximum().metresPerSecond()));
    fact(facts, "classes", words.orDash(String.join(", ", stock.trainClasses())));
    percentage(stock).ifPresent(text -> fact(facts, "percentage", text));
    fact(
        facts,
        "brake",
        words.text(
            "train.brake",
            percentOfG(stock.brakeForce().meanDeceleration().metresPerSecond2()),
            words.speed(stock.brakeForce().statedFrom().metresPerSecond()),
            words.pressure(stock.brakeForce().statedPressure().pascals())));
    List<PressureChart> technique = new ArrayList<>();
    new PressureWriter(plan, words).chart(part).ifPresent(technique::add);
    FigureWriter figures = new FigureWriter(plan, words);
    LeavingWriter leaving = new LeavingWriter(TrainSheet.of(stock, words.grid()), words);
    return new TrainPage(
        stock.description(),
        facts,
        chart(part, formation),
        new StandWriter(plan, words).chart(part),
        List.of(
            figures.notches(part),
            brakes(part),
            figures.pipe(part),
            figures.reaching(part),
            figures.stops(part)),
        technique,
        stock.handleRules(),
        List.of(leaving.tests(part), leaving.signs(part)),
        leaving.rules());
  }

  private void fact(List<Fact> facts, String key, String value) {
    facts.add(new Fact(words.text("train." + key + ".label"), value));
  }

  private String load() {
    return words.text(
        "train.load",
        words.text("load." + TrackStripWriter.lower(assignment.load())),
        tonnes(assignment.formation().massKg(assignment.load())));
  }

  /**
   * The braked weight percentage, where that is all that is known, and what service counts of it.
   */
  private Optional<String> percentage(Stock stock) {
    double counted =
        stock.service().percentage().map(BrakePercentage::lambda).orElse(Double.POSITIVE_INFINITY);
    return stock.brakes().stream()
        .flatMap(b -> b.percentage().stream())
        .map(BrakePercentage::lambda)
        .max(Double::compare)
        .map(
            stated ->
                stated > counted
                    ? words.text("train.percentage.cut", tenthsOf(stated), tenthsOf(counted))
                    : tenthsOf(stated));
  }

  private String rotating(Formation formation) {
    double kilograms =
        formation.vehicles().stream().mapToDouble(v -> v.rotating().of(v.tare()).kilograms()).sum();
    return words.text(
        "train.rotating",
        tenthsOf(kilograms / 1000) + " t",
        formation.vehicles().stream()
            .distinct()
            .map(this::rotating)
            .collect(Collectors.joining(", ")));
  }

  private String rotating(Vehicle vehicle) {
    return vehicle
        .rotating()
        .match(
            share ->
                words.text(
                    "train.rotating.share", vehicle.type(), tenthsOf(share.share() * 100) + " %"),
            stated ->
                words.text(
                    "train.rotating.stated",
                    vehicle.type(),
                    tenthsOf(stated.mass().kilograms() / 1000) + " t"));
  }

  private static String tenthsOf(double value) {
    return String.format(Locale.ROOT, "%.1f", value).replace(".0", "");
  }

  private static String tonnes(double kilograms) {
    return String.format(Locale.ROOT, "%.0f t", kilograms / 1000);
  }

  private static String percentOfG(double deceleration) {
    return String.format(Locale.ROOT, "%.2f m/s²", Math.floor(deceleration * 100 + 1e-6) / 100);
  }

  private TrainChart chart(String part, Formation formation) {
    List<TrainChart.Car> cars = new ArrayList<>();
    for (Vehicle v : formation.vehicles()) {
      cars.add(
          new TrainChart.Car(
              v.type(), v.length().metres(), words.overrun(v.length().metres()), v.motored()));
    }
    String total = words.text("train.total", words.overrun(formation.lengthM()));
    return new TrainChart(
        part + "-train",
        words.text("chart.train", formation.name()),
        words.text(
            "chart.train.says",
            cars.stream()
                .map(
                    c ->
                        words.text(
                            c.motored() ? "chart.train.motored" : "chart.train.car", c.type()))
                .collect(Collectors.joining(", ")),
            total),
        words.text("train.leads"),
        cars,
        total);
  }

  private Table brakes(String part) {
    Tables table = new Tables(words, part, "brakes");
    for (BrakeSystem b : assignment.stock().brakes()) {
      table.row(
          b.shortName(),
          words.text(
              "brake.what", b.name(), words.text("brake." + TrackStripWriter.lower(b.role()))),
          words.pressure(b.full().pascals()),
          answers(b),
          control(b));
    }
    return table.build();
  }

  private String answers(BrakeSystem brake) {
    BrakeAction action = brake.action();
    double dead = action.deadTime(new Length(assignment.formation().lengthM())).seconds();
    String fill = tenths(brake.full().pascals() / brake.application().pascalsPerSecond());
    return action.match(
        wire -> words.text("brake.simultaneous", tenths(dead), fill),
        pipe -> propagated(pipe, dead, fill),
        whole -> words.text("brake.simultaneous", tenths(dead), fill));
  }

  private String propagated(BrakeAction.Propagated pipe, double dead, String fill) {
    double[] valves = assignment.formation().valvesM();
    double first = pipe.along(valves[0]).seconds();
    double last = pipe.along(valves[valves.length - 1]).seconds();
    return words.text("brake.propagated", tenths(dead + first), fill, tenths(last - first));
  }

  /** Seconds, up to the next tenth. */
  private static String tenths(double seconds) {
    return String.format(Locale.ROOT, "%.1f", Math.ceil(seconds * 10 - 1e-6) / 10);
  }

  private String control(BrakeSystem brake) {
    String how =
        brake
            .control()
            .match(
                any ->
                    words.text(
                        brake.role() == BrakeSystem.Role.EMERGENCY
                            ? "brake.no-graduation"
                            : "brake.continuous"),
                steps ->
                    words.text(
                        "brake.steps",
                        steps.pressures().stream()
                            .map(p -> words.pressure(p.pascals()))
                            .collect(Collectors.joining(", "))));
    return how
        + " "
        + words.text(brake.gradualRelease() ? "brake.release-gradual" : "brake.release-full")
        + recharge(brake);
  }

  /** From the pressure that full service leaves in the reservoirs up to that of the pipe. */
  private String recharge(BrakeSystem brake) {
    if (brake.recharge().isEmpty() || brake.pipe().isEmpty()) {
      return "";
    }
    PipeLaw law = brake.pipe().get();
    double pipe = law.pipe().pascals();
    double taken = pipe - law.reservoirAfterPa(pipe, 0, brake.full().pascals());
    double seconds = taken / brake.recharge().get().pascalsPerSecond();
    return " " + words.text("brake.recharge", Long.toString((long) Math.ceil(seconds - 1e-6)));
  }
}
