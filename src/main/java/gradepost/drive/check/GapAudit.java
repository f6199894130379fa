package gradepost.drive.check;

import gradepost.plan.Plan;
import gradepost.plan.SignalBraking;
import gradepost.plan.Trace;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.Path;
import gradepost.route.RailGap;
import gradepost.route.Stretch;
import gradepost.route.audit.AuditText;
import gradepost.route.audit.AuditText.Train;
import gradepost.stock.Vehicle;
import gradepost.task.Call;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.text.Mistake;
import gradepost.units.Length;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;

/**
 * Gaps in the conductor rail that can strand a train. The collectors are on the motored vehicles;
 * between the outermost two of them the train is bridged: while it spans a gap, one of them is on
 * live rail.
 */
public final class GapAudit {
  private final Plan plan;
  private final Path path;
  private final UnitStyle units;
  private final double lowMps;
  private final Train train;

  /**
   * The gaps under a plan.
   *
   * @param train as the findings name it
   */
  public GapAudit(Plan plan, Train train) {
    this.plan = plan;
    this.train = train;
    this.path = plan.assignment().path();
    this.units = path.units();
    this.lowMps = plan.assignment().policy().practice().line().overGap().metresPerSecond();
  }

  /** Told of each gap that is too long, with what is to be said of it. */
  public interface Listener {
    /** A gap that is too long, and what is to be said of it. */
    void found(RailGap gap, Mistake what);
  }

  /** Tells of each gap that is too long, in the order of the route. */
  public void tooLong(Listener listener) {
    Optional<Collectors> collectors = collectors();
    if (collectors.isEmpty() || plan.trace().points().isEmpty()) {
      return;
    }
    for (RailGap gap : plan.assignment().route().railGaps()) {
      if (Ceiling.stands(plan.assignment(), gap.applies())) {
        look(gap, collectors.get(), listener);
      }
    }
  }

  private void look(RailGap gap, Collectors collectors, Listener listener) {
    Stretch dead = path.span(gap.extent());
    double from = dead.fromM();
    double to = dead.toM();
    double bridgedM = collectors.lastM() - collectors.firstM();
    Optional<Mistake> stands = standing(gap, dead, collectors);
    double least = slowestMps(from + collectors.firstM(), to + collectors.lastM());
    if (stands.isPresent()) {
      listener.found(gap, stands.get());
    } else if (to - from > bridgedM && least < lowMps) {
      listener.found(
          gap,
          AuditText.GAP_LONG_SLOWLY.with(
              train,
              gap.name(),
              InUnits.metres(units, to - from),
              InUnits.metres(units, bridgedM),
              InUnits.metresPerSecond(units, lowMps),
              InUnits.metresPerSecond(units, least)));
    }
  }

  /** How far behind the front of the train the foremost collector is, and the rearmost one. */
  private record Collectors(double firstM, double lastM) {

    /** Whether all are between two places, with the front of the train there. */
    boolean within(double fromM, double toM, double frontM) {
      return frontM - firstM <= toM && frontM - lastM >= fromM;
    }
  }

  /** Of this train; empty where no vehicle of it has any. */
  private Optional<Collectors> collectors() {
    double first = -1;
    double last = 0;
    double at = 0;
    for (Vehicle vehicle : plan.assignment().formation().vehicles()) {
      if (vehicle.motored()) {
        first = first < 0 ? at : first;
        last = at + vehicle.length().metres();
      }
      at += vehicle.length().metres();
    }
    return first < 0 ? Optional.empty() : Optional.of(new Collectors(first, last));
  }

  /** While any collector is over the gap; booked stands beside it count through their own rule. */
  private double slowestMps(double fromM, double toM) {
    List<Trace.Point> points = plan.trace().between(fromM, toM).points();
    return points.stream()
        .mapToDouble(Trace.Point::speedMps)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** Where the train stands with every collector in the gap: at a call, or before a stop signal. */
  private Optional<Mistake> standing(RailGap gap, Stretch dead, Collectors collectors) {
    double fromM = dead.fromM();
    double toM = dead.toM();
    InUnits<Length> length = InUnits.metres(units, toM - fromM);
    for (Call call : plan.assignment().calls()) {
      if (collectors.within(fromM, toM, Stops.markM(plan.assignment(), call))) {
        String station = call.station().name();
        return Optional.of(AuditText.GAP_LONG_AT_STATION.with(train, gap.name(), length, station));
      }
    }
    for (SignalBraking signal : plan.signals()) {
      if (collectors.within(fromM, toM, signal.standM())) {
        String id = signal.signal().id();
        return Optional.of(AuditText.GAP_LONG_BEFORE_SIGNAL.with(train, gap.name(), length, id));
      }
    }
    return Optional.empty();
  }
}
