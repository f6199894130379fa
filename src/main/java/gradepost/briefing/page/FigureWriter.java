package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.plan.TrainFigures;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Notch;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the train does by itself: its notches, how soon it is fast, and how soon it stands. */
final class FigureWriter {
  private final Assignment assignment;
  private final TrainFigures figures;
  private final Words words;

  FigureWriter(Plan plan, Words words) {
    this.assignment = plan.assignment();
    this.figures = plan.figures();
    this.words = words;
  }

  /** Power off and each notch, and the speed at which it no longer gains on each gradient. */
  Table notches(String part) {
    Tables table = new Tables(words, part, "notches");
    List<Double> gradients =
        figures.balancing().stream().map(TrainFigures.Balance::permille).distinct().toList();
    gradients.forEach(g -> table.column(words.gradient(g), "number"));
    List<Notch> notches = assignment.stock().traction().notches();
    double motored = assignment.formation().motoredVehicles();
    for (int i = -1; i < notches.size(); i++) {
      int index = i;
      List<String> cells = new ArrayList<>();
      cells.add(i < 0 ? words.text("notch.off") : notches.get(i).name());
      double newtons = i < 0 ? 0 : notches.get(i).effortN(0) * motored;
      cells.add(Long.toString(Math.round(newtons / 1000)));
      for (double g : gradients) {
        cells.add(
            figures.balancing().stream()
                .filter(b -> b.notch() == index && b.permille() == g)
                .findFirst()
                .map(this::balance)
                .orElse(""));
      }
      table.row(cells.toArray(String[]::new));
    }
    return table.build();
  }

  private String balance(TrainFigures.Balance b) {
    double most = assignment.stock().maximum().metresPerSecond();
    if (b.speedMps() <= 0) {
      return words.text(b.notch() < 0 ? "notch.rolls-to-a-stand" : "notch.does-not-start");
    }
    return b.speedMps() > most
        ? words.text("notch.over-maximum", words.speed(most))
        : words.speed(b.speedMps());
  }

  /** Distance and time from a stand, notch by notch. */
  Table reaching(String part) {
    Tables table = new Tables(words, part, "reaching");
    List<Double> speeds =
        figures.reaching().stream().map(TrainFigures.Reach::speedMps).distinct().sorted().toList();
    speeds.forEach(v -> table.column(words.speed(v), "number"));
    for (int notch :
        figures.reaching().stream().map(TrainFigures.Reach::notch).distinct().toList()) {
      List<String> cells = new ArrayList<>();
      cells.add(assignment.stock().traction().notches().get(notch).name());
      for (double v : speeds) {
        cells.add(
            figures.reaching().stream()
                .filter(r -> r.notch() == notch && r.speedMps() == v)
                .findFirst()
                .map(
                    r ->
                        words.text(
                            "reach.in", words.overrun(r.distanceM()), words.seconds(r.timeS())))
                .orElse(""));
      }
      table.row(cells.toArray(String[]::new));
    }
    return table.build();
  }

  /** Distance to a stand on the safe side, for each brake, from each speed. */
  Table stops(String part) {
    Tables table = new Tables(words, part, "stops");
    List<Double> speeds =
        figures.stops().stream().map(TrainFigures.FullStop::fromMps).distinct().sorted().toList();
    speeds.forEach(v -> table.column(words.speed(v), "number"));
    for (BrakeSystem brake : assignment.stock().brakes()) {
      List<Double> gradients =
          figures.stops().stream()
              .filter(s -> s.brake().equals(brake))
              .map(TrainFigures.FullStop::permille)
              .distinct()
              .sorted()
              .toList();
      for (double g : gradients) {
        List<String> cells = new ArrayList<>();
        cells.add(brake.shortName());
        cells.add(words.gradient(g));
        for (double v : speeds) {
          cells.add(
              figures.stops().stream()
                  .filter(s -> s.brake().equals(brake) && s.permille() == g && s.fromMps() == v)
                  .findFirst()
                  .map(this::stop)
                  .orElse(""));
        }
        table.row(cells.toArray(String[]::new));
      }
    }
    return table.build();
  }

  private String stop(TrainFigures.FullStop s) {
    return Double.isFinite(s.distanceM()) ? words.overrun(s.distanceM()) : words.text("stop.never");
  }

  /** Reductions of the brake pipe and what the gauges then show. */
  Table pipe(String part) {
    Tables table = new Tables(words, part, "pipe");
    List<BrakeSystem> brakes = assignment.stock().brakes();
    Optional<BrakeSystem> piped = brakes.stream().filter(b -> b.pipe().isPresent()).findFirst();
    Optional<String> charged =
        piped.flatMap(BrakeSystem::pipe).map(law -> words.pressure(law.pipe().pascals()));
    charged.ifPresent(
        pipe ->
            table.row(
                piped.orElseThrow().shortName(),
                words.text("pipe.charged"),
                pipe,
                words.pressure(0)));
    figures
        .pipe()
        .forEach(
            r ->
                table.row(
                    r.brake().shortName(),
                    words.pressure(r.reductionPa()),
                    words.pressure(r.pipePa()),
                    words.pressure(r.cylinderPa())));
    BrakeSystem service = assignment.stock().service();
    if (service.pipe().isEmpty()) {
      // A brake that no pipe governs leaves the pipe charged: common practice.
      charged.ifPresent(pipe -> table.row(service.shortName(), "", pipe, asked(service)));
    }
    return table.build();
  }

  /** What its handle can put into the cylinders. */
  private String asked(BrakeSystem brake) {
    return brake
        .control()
        .match(
            any -> words.text("pipe.up-to", words.pressure(brake.full().pascals())),
            steps ->
                steps.pressures().stream()
                    .map(p -> words.pressure(p.pascals()))
                    .collect(Collectors.joining(", ")));
  }
}
