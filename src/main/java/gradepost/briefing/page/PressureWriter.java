package gradepost.briefing.page;

import gradepost.briefing.chart.PressureChart;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.Telling;
import gradepost.plan.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Brake pressure against time for the first stop that has a brake application: for its last one.
 */
final class PressureWriter {
  /** So long after the train stands the chart ends. */
  private static final double HELD_S = 4;

  private final Plan plan;
  private final Words words;

  PressureWriter(Plan plan, Words words) {
    this.plan = plan;
    this.words = words;
  }

  Optional<PressureChart> chart(String part) {
    return plan.approaches().stream()
        .filter(a -> a.target().isStop() && a.brakingPointM().isPresent())
        .findFirst()
        .flatMap(a -> of(part, a));
  }

  /** At the stand the pressure is held, as is drawn for a while. */
  private static void hold(List<Trace.Point> points) {
    int stands = points.size() - 1;
    while (stands > 1 && points.get(stands - 1).speedMps() == 0) {
      stands--;
    }
    Trace.Point before = points.get(stands - 1);
    Trace.Point at = points.get(stands);
    points.subList(stands, points.size()).clear();
    for (double later : new double[] {0, HELD_S}) {
      points.add(new Trace.Point(at.timeS() + later, at.atM(), 0, before.pressurePa(), -1));
    }
  }

  private Optional<PressureChart> of(String part, Approach approach) {
    double from = approach.applications().get(approach.applications().size() - 1).brakingPointM();
    List<Trace.Point> points =
        new ArrayList<>(plan.trace().between(from, approach.endM() + 0.01).points());
    if (points.size() < 2) {
      return Optional.empty();
    }
    hold(points);
    double start = points.get(0).timeS();
    double unit = words.units().pressureStepPa() * (words.units().pressureStepPa() > 8000 ? 10 : 1);
    List<PressureChart.Note> notes = new ArrayList<>();
    ActionWords orders = new ActionWords(words, plan.assignment().stock());
    double most = 0;
    for (Trace.Point p : points) {
      most = Math.max(most, p.pressurePa() / unit);
    }
    for (Action a : approach.actions()) {
      Optional<Command.Brake> brake = a.command().brake();
      if (a.atM() >= from - 0.5 && brake.isPresent()) {
        double askedPa = brake.get().pressurePa();
        notes.add(
            new PressureChart.Note(
                a.timeS() - start,
                askedPa / unit,
                words.text(
                    "do.with-pressure",
                    orders.todo(Telling.command(words.grid(), a.command())),
                    words.pressure(askedPa))));
      }
    }
    Trace.Point last = points.get(points.size() - 1);
    notes.add(
        new PressureChart.Note(
            last.timeS() - start - HELD_S, last.pressurePa() / unit, words.text("do.stand")));
    double step = most > 10 ? 10 : 1;
    return Optional.of(
        new PressureChart(
            part + "-technique",
            words.text("chart.technique", approach.target().name()),
            words.text(
                "chart.technique.says",
                approach.target().name(),
                notes.stream()
                    .map(PressureChart.Note::text)
                    .reduce((x, y) -> x + ", " + y)
                    .orElse(words.text("dash"))),
            words.units().pressureUnit(),
            words.text("time.unit"),
            Math.ceil((most + step / 2) / step) * step,
            step,
            points.stream().mapToDouble(p -> p.timeS() - start).toArray(),
            points.stream().mapToDouble(p -> p.pressurePa() / unit).toArray(),
            notes));
  }
}
