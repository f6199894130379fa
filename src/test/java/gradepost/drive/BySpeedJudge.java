package gradepost.drive;

import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.plan.SpeedRow;
import gradepost.task.CeilingStep;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedSpeedRow;
import gradepost.told.print.PrintedPlace;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Looks at what must hold of the braking points by speed of a plan, and counts them. */
final class BySpeedJudge {
  private static final double SAME_M = 1e-6;
  private static final double SAME_MPS = 1e-6;

  final List<String> wrong = new ArrayList<>();
  int rows;
  int tables;
  int planned;
  int poorer;
  int poorPlanned;

  void look(String of, Plan plan) {
    List<InstructionSheet> sheets = plan.told().sheets();
    for (int i = 0; i < sheets.size(); i++) {
      Approach approach = plan.approaches().get(i);
      String name = of + ", " + approach.number() + " " + approach.target().name();
      for (int k = 0; k < approach.applications().size(); k++) {
        look(name, plan, approach.applications().get(k), sheets.get(i).applications().get(k));
      }
      if (approach.faster().isPresent()) {
        PrintedApplication told = sheets.get(i).faster().orElseThrow().application().orElseThrow();
        look(name + " if faster", plan, approach.faster().get(), told);
      }
    }
  }

  private void look(String name, Plan plan, Application a, PrintedApplication told) {
    UnitStyle units = plan.assignment().path().units();
    tables++;
    speeds(name, plan, a, units);
    neverLater(name + " planned rail", a, SpeedRow::planned);
    neverLater(name + " poorest rail", a, SpeedRow::poorest);
    for (SpeedRow row : a.bySpeed()) {
      rows++;
      if (row.planned().isPresent() && row.poorest().isPresent()) {
        double dry = row.planned().get().atM();
        double other = row.poorest().get().atM();
        check(other <= dry + SAME_M, name + ": later on the poorer rail, " + row.speedMps());
        poorer += other < dry - SAME_M ? 1 : 0;
      }
    }
    ofPlan(name, a, told, units);
  }

  private void check(boolean holds, String otherwise) {
    if (!holds) {
      wrong.add(otherwise);
    }
  }

  /**
   * As read from the speedometer: falling, above the target's, and where a train may be so fast.
   */
  private void speeds(String name, Plan plan, Application a, UnitStyle units) {
    long target = number(units, a.target().speedMps());
    long permissible = number(units, ceilingMps(plan, a.brakingPointM()));
    long step = units == UnitStyle.MILES ? 5 : 10;
    long before = Long.MAX_VALUE;
    for (SpeedRow row : a.bySpeed()) {
      long number = number(units, row.speedMps());
      check(number < before, name + ": " + number + " after " + before);
      check(number > target, name + ": " + number + " for " + target);
      before = number;
      boolean asked = number == permissible || (number % step == 0 && number < permissible);
      check(
          row.holdsPlanned() || (asked && 2 * number >= permissible),
          name + ": " + number + " of " + permissible);
      for (Optional<SpeedRow.Point> point : List.of(row.planned(), row.poorest())) {
        point
            .filter(p -> !p.asPlanned())
            .ifPresent(
                p ->
                    check(
                        p.speedMps() <= ceilingMps(plan, p.atM()) + SAME_MPS,
                        name + ": " + number + " where it is not permissible"));
      }
    }
  }

  private static long number(UnitStyle units, double mps) {
    return units.speedNumber(mps, Rounding.DOWN);
  }

  private static double ceilingMps(Plan plan, double atM) {
    double mps = plan.ceiling().get(0).speedMps();
    for (CeilingStep step : plan.ceiling()) {
      mps = step.fromM() <= atM ? step.speedMps() : mps;
    }
    return mps;
  }

  private void neverLater(
      String name, Application a, Function<SpeedRow, Optional<SpeedRow.Point>> column) {
    double fasterM = Double.NEGATIVE_INFINITY;
    for (SpeedRow row : a.bySpeed()) {
      Optional<SpeedRow.Point> point = column.apply(row);
      if (point.isPresent()) {
        check(point.get().atM() >= fasterM - SAME_M, name + ": a faster train later, " + row);
        fasterM = point.get().atM();
      }
    }
  }

  /** The points of the plan are rows as they stand, on the rail of the plan with the same print. */
  private void ofPlan(String name, Application a, PrintedApplication told, UnitStyle units) {
    boolean row = number(units, a.brakingSpeedMps()) > number(units, a.target().speedMps());
    List<SpeedRow.Point> own =
        a.bySpeed().stream()
            .flatMap(r -> r.planned().stream())
            .filter(SpeedRow.Point::asPlanned)
            .toList();
    check(own.size() == (row ? 1 : 0), name + ": " + own.size() + " planned points");
    for (SpeedRow.Point point : own) {
      planned++;
      CaseResult first = a.cases().get(0);
      check(point.atM() == a.brakingPointM(), name + ": planned at " + point.atM());
      check(Math.abs(point.speedMps() - a.brakingSpeedMps()) < 1e-3, name + ": planned speed");
      check(point.actions().equals(first.actions()), name + ": planned technique");
      check(
          point.leavesFallback() == first.protectedM().filter(p -> p == point.atM()).isPresent(),
          name + ": what is left");
    }
    for (SpeedRow other : a.bySpeed()) {
      if (own.isEmpty() && other.planned().isPresent()) {
        check(
            other.planned().get().atM() <= a.brakingPointM() + SAME_M,
            name + ": a faster train later than the plan");
      }
      other
          .poorest()
          .filter(SpeedRow.Point::asPlanned)
          .ifPresent(
              p -> {
                poorPlanned++;
                check(
                    a.cases().stream()
                        .filter(c -> c.adhesion().name().equals(p.rail()))
                        .anyMatch(c -> c.plannedM().filter(at -> at == p.atM()).isPresent()),
                    name + ": not the planned point on " + p.rail());
              });
    }
    told.bySpeed().stream()
        .flatMap(r -> r.planned().stream())
        .map(PrintedSpeedRow.Planned::at)
        .filter(PrintedSpeedRow.Point::asPlanned)
        .forEach(
            p ->
                check(
                    p.place().equals(byPosts(told.point())),
                    name + ": " + p.place() + " for " + told.point()));
  }

  private static PrintedPlace byPosts(PrintedPlace place) {
    return place.match(at -> at, PrintedPlace.Landmark::at, near -> near);
  }
}
