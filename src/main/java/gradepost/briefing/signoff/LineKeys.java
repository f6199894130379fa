package gradepost.briefing.signoff;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.SignalBraking;
import gradepost.route.RailGap;
import gradepost.route.RunningLine;
import gradepost.route.Signal;
import gradepost.route.Structure;
import gradepost.route.place.Extent;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import gradepost.task.Call;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What an assessor looks for where the line is not as planned: signals, tokens, crossings, gaps.
 */
final class LineKeys {
  private final BriefingFacts taught;
  private final Assignment assignment;

  LineKeys(BriefingFacts taught) {
    this.taught = taught;
    this.assignment = taught.assignment();
  }

  private String text(String key, Object... holes) {
    return taught.text("degraded-key." + key, holes);
  }

  /** Where a start may fail, and which signals can hold a train there. */
  List<String> steepestRise() {
    return taught.slopes().stream()
        .filter(s -> s.permille() > 0)
        .max(Comparator.comparingDouble(s -> s.permille()))
        .map(
            s -> {
              String held =
                  stopSignals().stream()
                      .filter(x -> x.atM() > s.fromM() && x.atM() <= s.toM())
                      .map(x -> x.what().id())
                      .collect(Collectors.joining(", "));
              return List.of(
                  text(
                      "steepest",
                      taught.gradient(s.permille()),
                      taught.place(s.fromM()),
                      taught.placePast(s.toM())),
                  held.isEmpty() ? text("held-nowhere") : text("held-on", held));
            })
        .orElse(List.of());
  }

  private List<BriefingFacts.At<Signal>> stopSignals() {
    return taught.signals().stream().filter(s -> s.what().kind().stops()).toList();
  }

  private List<RunningLine> lines(boolean single) {
    return assignment.route().lines().stream()
        .filter(l -> assignment.lines().contains(l.name()))
        .filter(l -> l.directions().size() > 1 == single)
        .toList();
  }

  /** Lines on which no signal is for a move the other way about, and crossings on them. */
  List<String> oneDirection() {
    List<String> out = new ArrayList<>();
    for (RunningLine line : lines(false)) {
      String crossings =
          assignment.route().structures().stream()
              .filter(s -> s.kind() == Structure.Kind.LEVEL_CROSSING)
              .filter(s -> on(line, taught.begins(s.extent())))
              .map(Structure::name)
              .collect(Collectors.joining(", "));
      String way =
          line.directions().stream().map(assignment.route()::nameOf).findFirst().orElse("");
      out.add(
          crossings.isEmpty()
              ? text("sole-side-none", line.name(), way)
              : text("sole-side", line.name(), way, crossings));
    }
    return out;
  }

  /** A line without extents is there all the way. */
  private boolean on(RunningLine line, double atM) {
    return line.extents().isEmpty()
        || line.extents().stream()
            .anyMatch(
                e -> {
                  double from = taught.begins(e);
                  return atM >= from && atM <= from + taught.length(e);
                });
  }

  /** Where a train stops that has no token for a line signalled in both directions. */
  List<String> singleLines() {
    List<String> out = new ArrayList<>();
    for (RunningLine line : lines(true)) {
      for (Extent extent : line.extents()) {
        double from = taught.begins(extent);
        taught
            .protecting(from)
            .ifPresent(
                s ->
                    out.add(
                        text(
                            "single",
                            line.name(),
                            taught.place(from),
                            s.what().id(),
                            taught.place(s.atM()))));
      }
    }
    return out;
  }

  /** The signal that can stop a train before it, what warns of that, and where to brake then. */
  List<String> protectedThing(Structure structure) {
    double at = taught.begins(structure.extent());
    Optional<BriefingFacts.At<Signal>> signal = taught.protecting(at);
    if (signal.isEmpty()) {
      return List.of(text("no-signal", taught.place(at)));
    }
    Signal last = signal.get().what();
    List<String> out = new ArrayList<>();
    out.add(text("protected", taught.place(at), last.id(), taught.place(signal.get().atM())));
    taught.plan().signals().stream()
        .filter(b -> b.signal().equals(last))
        .findFirst()
        .ifPresent(b -> braking(out, b));
    return out;
  }

  private void braking(List<String> out, SignalBraking braking) {
    if (braking.caution().isEmpty()) {
      out.add(text("no-caution"));
      return;
    }
    out.add(text("warned", braking.caution().orElseThrow().id(), taught.place(braking.warnedM())));
    String speed = taught.speed(braking.plannedMps());
    out.add(
        braking
            .brakingM()
            .map(at -> text("brake", speed, taught.place(at)))
            .orElseGet(() -> text("brake-fully", speed)));
  }

  /** How much of the train is beyond the platform, and what the data say of its doors. */
  List<String> shortPlatform(Call call) {
    List<String> out = new ArrayList<>();
    double beyond = assignment.formation().lengthM() - taught.length(call.platform().extent());
    out.add(text("short-platform", taught.overrun(beyond)));
    if (!call.platform().doorInstruction().isBlank()) {
      out.add(call.platform().doorInstruction());
    }
    return out;
  }

  /** Where the current is off, and where the front is while no motored vehicle has any. */
  List<String> gap(RailGap gap) {
    double from = taught.begins(gap.extent());
    double length = taught.length(gap.extent());
    List<String> out = new ArrayList<>();
    out.add(
        text("gap", taught.place(from), taught.placePast(from + length), taught.overrun(length)));
    motored()
        .ifPresent(
            m ->
                out.add(
                    m.lastM() - m.firstM() > length
                        ? text("gap-bridged", taught.room(m.lastM() - m.firstM()))
                        : text(
                            "gap-dead",
                            taught.place(from + m.lastM()),
                            taught.placePast(from + length + m.firstM()))));
    return out;
  }

  /** From the front of the train to the first motored vehicle, and to the end of the last one. */
  private record Motored(double firstM, double lastM) {}

  private Optional<Motored> motored() {
    double first = Double.NaN;
    double last = 0;
    double at = 0;
    for (Vehicle vehicle : assignment.formation().vehicles()) {
      if (vehicle.motored()) {
        first = Double.isNaN(first) ? at : first;
        last = at + vehicle.length().metres();
      }
      at += vehicle.length().metres();
    }
    return Double.isNaN(first) ? Optional.empty() : Optional.of(new Motored(first, last));
  }
}
