package gradepost.reissue;

import gradepost.drive.Action;
import gradepost.drive.Application;
import gradepost.drive.Approach;
import gradepost.drive.CaseResult;
import gradepost.drive.Command;
import gradepost.drive.FailureAnswer;
import gradepost.drive.Finding;
import gradepost.drive.Latest;
import gradepost.drive.Met;
import gradepost.drive.Rung;
import gradepost.drive.Target;
import gradepost.drive.Trigger;
import gradepost.route.Path;
import gradepost.units.Rounding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a driver reads of an approach, aspect by aspect. A run that is computed again after another
 * one may differ by a hair where it is the same; on paper it is the same.
 */
final class Print {
  /** Two printed places that are nearer than this are one. */
  static final double GRAIN_M = 0.01;

  /** Nearer to its target than this many steps of the grid, a place is given from it. */
  private static final int NEAR_STEPS = 4;

  private final Path path;
  private double targetM = -1;

  Print(Path path) {
    this.path = path;
  }

  List<String> of(Approach a, ApproachChange.Aspect aspect) {
    targetM = a.target().atM();
    return switch (aspect) {
      case BRAKING_POINT ->
          List.of(
              place(a.brakingPointM()),
              a.first().flatMap(Application::landmark).map(l -> l.name()).orElse(""));
      case SHUT_OFF -> List.of(place(a.shutOffM()));
      case ENTRY_SPEED -> List.of(speed(a.brakingSpeedMps()));
      case PRESSURE ->
          a.applications().stream().map(x -> path.units().pressure(x.mainPressurePa())).toList();
      case FALLBACK ->
          Stream.concat(a.applications().stream(), a.faster().stream())
              .flatMap(x -> fallback(x).stream())
              .toList();
      case ACTIONS -> actions(a);
      case FINDINGS -> a.findings().stream().map(this::finding).toList();
      case TARGET -> target(a.target());
    };
  }

  private String place(Optional<Double> atM) {
    return atM.map(this::place).orElse("-");
  }

  private String place(double atM) {
    double inside = Math.min(Math.max(atM, 0), path.lengthM());
    double ahead = targetM - inside;
    boolean near = ahead >= 0 && ahead < NEAR_STEPS * path.units().placeStepM();
    boolean onGrid = Math.abs(path.printedAtOrBefore(inside) - inside) < 1e-6;
    return near || ahead >= 0 && !onGrid && path.units().wholeLength(ahead)
        ? path.units().length(ahead, Rounding.UP)
        : path.text(path.printedAtOrBefore(inside));
  }

  private String speed(double mps) {
    return path.units().speed(mps + 1e-4, Rounding.DOWN);
  }

  private List<String> fallback(Application a) {
    List<String> out = new ArrayList<>();
    out.add(a.atBuffersMps().map(this::speed).orElse("-"));
    if (a.forStep()) {
      a.cases().get(0).answers().stream().map(this::outcome).forEach(out::add);
    }
    List<CaseResult> told = a.told();
    for (CaseResult c : told) {
      out.add(c.adhesion().name() + place(c.plannedM()) + place(c.protectedM()));
      out.add(path.units().pressure(c.mainPressurePa()) + seconds(c.protectedCostS()));
      if (c != told.get(0)) {
        technique(c).forEach(out::add);
      }
      for (Rung rung : c.ladder()) {
        out.add(rung.brake().name() + latest(rung.latest()));
      }
      c.answers().stream().map(this::outcome).forEach(out::add);
    }
    return out;
  }

  /** How it is braked on a rail that is not the planned one. */
  private Stream<String> technique(CaseResult c) {
    return c.actions().stream().map(x -> command(x.command()) + trigger(x.trigger()));
  }

  private static String seconds(Optional<Double> seconds) {
    return seconds.map(s -> "" + Math.round(s)).orElse("-");
  }

  private String outcome(FailureAnswer answer) {
    return answer.brake().name()
        + answer.holds()
        + met(answer.met())
        + (answer.holds() ? "" : speed(answer.speedAtTargetMps()));
  }

  private String met(Met met) {
    return met instanceof Met.Nowhere nowhere
        ? nowhere.reason().name()
        : path.units().length(Math.abs(((Met.At) met).shortM()), Rounding.DOWN);
  }

  private String latest(Latest latest) {
    return latest instanceof Latest.Point point
        ? place(point.printedM())
        : ((Latest.Nowhere) latest).reason().name();
  }

  private List<String> actions(Approach a) {
    List<String> out = new ArrayList<>();
    for (Action action : a.actions()) {
      out.add(
          command(action.command())
              + trigger(action.trigger())
              + place(action.atM())
              + speed(action.speedMps()));
    }
    return out;
  }

  private String command(Command command) {
    if (command instanceof Command.Power power) {
      return "power" + power.notch();
    } else if (command instanceof Command.Brake brake) {
      return brake.stage() + path.units().pressure(brake.pressurePa());
    }
    return command.getClass().getSimpleName();
  }

  private String trigger(Trigger trigger) {
    if (trigger instanceof Trigger.SpeedUpTo up) {
      return "up" + speed(up.speedMps());
    } else if (trigger instanceof Trigger.SpeedDownTo down) {
      return "down" + speed(down.speedMps());
    } else if (trigger instanceof Trigger.After after) {
      return "after" + Math.round(after.seconds());
    }
    return trigger.getClass().getSimpleName();
  }

  private String finding(Finding finding) {
    if (finding instanceof Finding.BoardTooLate late) {
      return "late" + place(late.boardM()) + place(late.plannedM());
    } else if (finding instanceof Finding.StopOutsideTolerance stop) {
      return "outside" + path.units().length(Math.abs(stop.shortM()), Rounding.UP);
    } else if (finding instanceof Finding.OverCeiling over) {
      return "over" + place(over.atM());
    } else if (finding instanceof Finding.Stalls stalls) {
      return "stalls" + place(stalls.atM());
    } else if (finding instanceof Finding.ForbiddenMovement movement) {
      return "forbidden" + place(movement.atM());
    } else if (finding instanceof Finding.NeverComes never) {
      return "never" + place(never.atM());
    } else if (finding instanceof Finding.BrakeTestTooNear test) {
      return "brake test" + place(test.testM()) + place(test.brakingM());
    } else if (finding instanceof Finding.OftenLate late) {
      return "often late"
          + Math.round(100 * late.share())
          + late.earlierM().map(m -> path.units().length(m, Rounding.UP)).orElse("-");
    } else if (finding instanceof Finding.SometimesNotHeld not) {
      return "not held" + Math.ceil(100 * not.share());
    } else if (finding instanceof Finding.NoBrakingPoint none) {
      return "no point" + none.adhesion() + latest(none.service());
    } else if (finding instanceof Finding.AtBuffers buffers) {
      return "buffers" + path.units().speed(buffers.speedMps() - 1e-4, Rounding.UP);
    } else if (finding instanceof Finding.LessToGive less) {
      return "less" + less.brake().name() + less.planned() + (long) less.afterS() + gives(less);
    }
    return finding.toString();
  }

  private String gives(Finding.LessToGive less) {
    double step = path.units().pressureStepPa();
    return path.units().pressure(Math.floor(less.givesPa() / step) * step);
  }

  private List<String> target(Target target) {
    List<String> out = new ArrayList<>(List.of(key(target), place(target.atM())));
    if (target instanceof Target.Reduction reduction) {
      out.add(speed(reduction.speedMps()) + " from " + speed(reduction.fromMps()));
      out.add(place(reduction.warningM()));
    } else if (target instanceof Target.Stop stop) {
      out.add(stop.markText() + place(stop.platformStartM()) + place(stop.buffersM()));
    }
    return out;
  }

  /** What makes two approaches the same one in two issues. */
  static String key(Target target) {
    if (target instanceof Target.Stop stop) {
      return "stop " + stop.name() + " " + stop.call().platform().number();
    }
    Target.Reduction reduction = (Target.Reduction) target;
    return reduction.kind() + " " + reduction.reference();
  }
}
