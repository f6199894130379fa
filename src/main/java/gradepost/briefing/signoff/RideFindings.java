package gradepost.briefing.signoff;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Approach;
import gradepost.ride.Excess;
import gradepost.ride.ForbiddenMovement;
import gradepost.ride.Leg;
import gradepost.ride.Measured;
import gradepost.ride.Ride;
import gradepost.ride.RideResult;
import gradepost.ride.RideResult.Aspect;
import gradepost.ride.RideResult.OfApproach;
import gradepost.ride.TiedRun;
import gradepost.stock.Notch;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What was found of a ride, in words. */
final class RideFindings {
  private final Course course;
  private final BriefingFacts taught;

  RideFindings(Course course) {
    this.course = course;
    this.taught = course.taught();
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  /** What a point was lost for, approach by approach. */
  List<String> faults(RideResult result) {
    List<String> out = new ArrayList<>();
    for (OfApproach a : result.approaches()) {
      out.addAll(faults(a, result));
    }
    return out;
  }

  /** What a point was lost for on one approach. */
  List<String> faults(OfApproach a, RideResult result) {
    List<String> out = new ArrayList<>();
    String name = taught.title(a.approach());
    Ride.Observed o = a.observed();
    if (a.outside(Aspect.PERMISSIBLE)) {
      List<Excess> excesses = o.excesses().stream().filter(result::counts).toList();
      if (excesses.isEmpty()) {
        out.add(text("found.over", name, over(o.over().orElseThrow())));
      }
      excesses.forEach(e -> out.add(text("found.over-at", name, told(e))));
    }
    if (a.outside(Aspect.STOP)) {
      out.add(text("found.stop", name, stop(o.stopErrorM().orElseThrow())));
    }
    if (a.outside(Aspect.HANDLES)) {
      if (o.movements().isEmpty()) {
        out.add(text("found.handles", name, o.forbidden().orElseThrow()));
      }
      o.movements().forEach(m -> out.add(text("found.handle-at", name, told(m))));
    }
    if (a.outside(Aspect.POINT)) {
      out.add(text("found.point", name, apart(o.brakedAtM(), point(a.approach()))));
    }
    if (a.outside(Aspect.SPEED)) {
      out.add(
          text(
              "found.speed",
              name,
              nearest(o.brakedSpeedMps().orElseThrow().value()),
              taught.speed(a.approach().brakingSpeedMps())));
    }
    if (a.outside(Aspect.PRESSURE)) {
      out.add(
          text(
              "found.pressure",
              name,
              taught.pressure(o.firstPressurePa().orElseThrow()),
              a.briefedPressurePa().map(taught::pressure).orElseThrow()));
    }
    return out;
  }

  private static double point(Approach a) {
    return a.brakingPointM().orElseThrow();
  }

  /** Excesses for which no point was lost. */
  List<String> slight(RideResult result) {
    List<String> out = new ArrayList<>();
    for (OfApproach a : result.approaches()) {
      a.observed().excesses().stream()
          .filter(e -> !result.counts(e))
          .forEach(e -> out.add(text("found.over-at", taught.title(a.approach()), told(e))));
    }
    return out;
  }

  private String told(Excess e) {
    return text(
        "found.excess",
        over(e.mostMps()),
        taught.speed(e.limitMps()),
        taught.place(e.fromM()),
        seconds(e.lastsS()),
        clock(e.atS()));
  }

  private String told(ForbiddenMovement m) {
    return text(
        "found.movement." + m.why().name().toLowerCase(Locale.ROOT),
        notch(m.from()),
        notch(m.to()),
        taught.place(m.atM()),
        clock(m.atS()));
  }

  private String notch(int index) {
    List<Notch> all = taught.plan().assignment().stock().traction().notches();
    return index < 0 ? text("found.off") : all.get(index).name();
  }

  private String nearest(double mps) {
    return Math.round(taught.speedValue(mps)) + " " + taught.units().speedUnit();
  }

  private String over(double mps) {
    return nearestTenth(mps) + " " + taught.units().speedUnit();
  }

  private String nearestTenth(double mps) {
    return String.format(Locale.ROOT, "%.1f", taught.speedValue(mps));
  }

  private static String seconds(double s) {
    return Long.toString(Math.max(1, Math.round(s)));
  }

  /** Minutes and seconds since the start. */
  private static String clock(double s) {
    long whole = Math.round(s);
    return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
  }

  /** The excess of a table's cell. */
  String overCell(double mps) {
    return mps < 0.05 ? text("signoff.report.none") : "+" + nearestTenth(mps);
  }

  /** How far from its point a brake went on, early or late; nothing where that is not known. */
  String apart(Optional<Measured> at, double pointM) {
    return at.map(
            x -> {
              double by = x.value() - pointM;
              if (Math.abs(by) < taught.units().lengthUnitM()) {
                return text("signoff.report.on-point");
              }
              String length = taught.nearestLength(Math.abs(by));
              return text(by < 0 ? "signoff.report.early" : "signoff.report.late", length)
                  + within(x);
            })
        .orElse("");
  }

  /** How far short or past a train stood. */
  String stop(Measured error) {
    String length = taught.nearestLength(Math.abs(error.value()));
    return text(error.value() >= 0 ? "signoff.report.short" : "signoff.report.past", length)
        + within(error);
  }

  /** Nothing for what is known to the printed unit. */
  private String within(Measured value) {
    return value.within() < taught.units().lengthUnitM() ? "" : " ± " + taught.room(value.within());
  }

  /** What the recorder's scale was between the stands. */
  List<List<String>> scales(TiedRun run) {
    List<List<String>> rows = new ArrayList<>();
    for (Leg leg : run.legs()) {
      rows.add(
          List.of(
              leg.from(),
              leg.to(),
              taught.nearestLength(leg.toM() - leg.fromM()),
              taught.nearestLength(leg.countedM()),
              String.format(Locale.ROOT, "%.3f", leg.scale()),
              text(leg.trusted() ? "signoff.scale.used" : "signoff.scale.not-used")));
    }
    return rows;
  }

  /** What was not observed, and why. */
  List<String> unseen(RideResult result) {
    List<String> out = new ArrayList<>();
    result
        .leftOut()
        .forEach(
            (number, why) ->
                result.approaches().stream()
                    .filter(a -> a.approach().number() == number)
                    .forEach(
                        a -> out.add(text("unseen.left-out", taught.title(a.approach()), why))));
    result.run().ifPresent(run -> out.addAll(unseen(run)));
    return out;
  }

  private List<String> unseen(TiedRun run) {
    List<String> out = new ArrayList<>();
    for (double[] gap : run.gaps()) {
      out.add(text("unseen.gap", taught.place(gap[0]), taught.place(gap[1])));
    }
    if (run.glitches() > 0) {
      out.add(text("unseen.glitches", run.glitches()));
    }
    run.legs().stream()
        .filter(l -> !l.trusted())
        .forEach(l -> out.add(text("unseen.scale", l.from(), l.to())));
    if (run.unfit() > 0) {
      out.add(text("unseen.passed", run.unfit()));
    }
    return out;
  }
}
