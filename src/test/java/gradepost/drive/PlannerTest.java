package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.route.Direction;
import gradepost.route.Path;
import org.junit.jupiter.api.Test;

class PlannerTest {

  @Test
  void theInventedLineIsPlannedBothWaysWithBothTrains() {
    for (Direction direction : Direction.values()) {
      for (String formation : new String[] {"4-car", "8-car"}) {
        Plan plan = Planner.plan(Mill.assignment(direction, formation));
        show(plan);
        assertThat(plan.failures()).isEmpty();
      }
    }
  }

  @Test
  void theDemoRoutesArePlanned() {
    for (Assignment assignment : DemoPlans.assignments()) {
      Plan plan = Planner.plan(assignment);
      show(plan);
    }
  }

  static void show(Plan plan) {
    Path path = plan.assignment().path();
    System.out.printf(
        "%n=== %s %s: %.0f s (fastest %.0f), %.1f MJ, %d movements%n",
        plan.assignment().direction(),
        plan.assignment().formation().name(),
        plan.runningTimeS(),
        plan.fastestTimeS(),
        plan.energyJ() / 1e6,
        plan.handleMovements());
    for (Approach approach : plan.approaches()) {
      System.out.printf(
          "-- %d %s at %s (%.1f), %.0f mph; exact %s printed %s main %.1f psi; end %.2f short%n",
          approach.number(),
          approach.target().name(),
          path.text(approach.target().atM()),
          approach.target().atM(),
          approach.target().speedMps() / 0.44704,
          approach.exactBrakingPointM(),
          approach.brakingPointM(),
          approach.mainPressurePa() / 6894.757,
          approach.target().atM() - approach.endM());
      for (Action action : approach.actions()) {
        System.out.printf(
            "   %7.1f s %8.1f m %-8s %5.1f mph  %s %s%n",
            action.timeS(),
            action.atM(),
            path.text(action.atM()),
            action.speedMps() / 0.44704,
            action.trigger(),
            action.command());
      }
      for (CaseResult result : approach.cases()) {
        System.out.printf(
            "   %s: planned %s protected %s cost %.1f%n",
            result.adhesion().name(),
            result.plannedM(),
            result.protectedM(),
            result.protectedCostS());
        result
            .ladder()
            .forEach(r -> System.out.println("      " + r.brake().shortName() + " " + r.latest()));
        result
            .answers()
            .forEach(
                a ->
                    System.out.printf(
                        "      %s asked at %.0f (%.1f mph): short %.1f, speed at target %.1f mph%n",
                        a.brake().shortName(),
                        a.askedAtM(),
                        a.askedSpeedMps() / 0.44704,
                        a.shortM(),
                        a.speedAtTargetMps() / 0.44704));
      }
      approach.actions().stream()
          .filter(a -> a.command() instanceof Command.Stand)
          .filter(a -> Math.abs(a.atM() - approach.endM()) > 0.05)
          .forEach(a -> System.out.println("DIFFERS " + a.atM() + " planned " + approach.endM()));
      System.out.println("SPREAD " + approach.spread() + " " + approach.cues());
      approach.findings().forEach(f -> System.out.println("   ! " + f));
    }
    plan.signals()
        .forEach(
            x ->
                System.out.printf(
                    "SIG %s at %.0f warned %.0f avail %.0f needs %s begins %s planned %.1f ceiling %.1f%n",
                    x.signal().id(),
                    x.signalM(),
                    x.warnedM(),
                    x.availableM(),
                    x.needs().stream()
                        .map(n -> n.brake().shortName() + " " + Math.round(n.needM()))
                        .toList(),
                    x.brakingM(),
                    x.plannedMps() / 0.44704,
                    x.ceilingMps() / 0.44704));
    plan.brakeTests().forEach(b -> System.out.println("TEST " + b));
    plan.figures()
        .balancing()
        .forEach(
            b ->
                System.out.printf(
                    "BAL %d %.1f %.1f%n", b.notch(), b.permille(), b.speedMps() / 0.44704));
    plan.figures()
        .reaching()
        .forEach(
            b ->
                System.out.printf(
                    "REACH %d %.0f %.0f m %.0f s%n",
                    b.notch(), b.speedMps() / 0.44704, b.distanceM(), b.timeS()));
    plan.figures()
        .stops()
        .forEach(
            b ->
                System.out.printf(
                    "STOP %s %.1f %.0f %.0f%n",
                    b.brake().shortName(), b.permille(), b.fromMps() / 0.44704, b.distanceM()));
    plan.failures().forEach(f -> System.out.println("FAIL " + f));
  }
}
