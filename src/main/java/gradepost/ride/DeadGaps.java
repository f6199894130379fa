package gradepost.ride;

import gradepost.route.RailGap;
import gradepost.route.Stretch;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a train is whose recorder saw the current go off and come again: at a gap in the conductor
 * rail. The current is off from where the rearmost collector that feeds the recorder comes to the
 * gap until the foremost of them is past it. Nobody says which collectors feed it, nor where on its
 * vehicle a collector is: any run of motored vehicles may, and a place is known no better than
 * that.
 */
final class DeadGaps {
  /** A place between two others, distance run of the front. */
  record Between(double fromM, double toM) {
    double middleM() {
      return (fromM + toM) / 2;
    }

    double withinM() {
      return (toM - fromM) / 2;
    }

    Optional<Between> and(Between other) {
      double from = Math.max(fromM, other.fromM);
      double to = Math.min(toM, other.toM);
      return from <= to ? Optional.of(new Between(from, to)) : Optional.empty();
    }

    Between to(double nearerM, double furtherM) {
      return new Between(fromM + nearerM, toM + furtherM);
    }

    private static Between round(List<Between> all) {
      return new Between(
          all.stream().mapToDouble(Between::fromM).min().orElseThrow(),
          all.stream().mapToDouble(Between::toM).max().orElseThrow());
    }
  }

  /** Where the front was when the current went off, and when it came again. */
  record Fix(Between off, Between on) {}

  private final List<Stretch> gaps;

  /** Motored vehicles by how far their ends are behind the front. */
  private final List<Between> motored = new ArrayList<>();

  DeadGaps(Assignment assignment) {
    gaps =
        assignment.route().railGaps().stream()
            .filter(g -> g.applies().to(assignment.direction(), assignment.lines()))
            .map(RailGap::extent)
            .map(assignment.path()::span)
            .toList();
    double at = 0;
    for (Vehicle vehicle : assignment.formation().vehicles()) {
      double end = at + vehicle.length().metres();
      if (vehicle.motored()) {
        motored.add(new Between(at, end));
      }
      at = end;
    }
  }

  /**
   * The places, from what is known of them without the gaps; empty where no gap fits, or more than
   * one.
   *
   * @param off where the front may have been when the current went off
   * @param on where it may have been when it came again
   * @param deadM how far it ran between, at the least and at the most
   */
  Optional<Fix> fix(Between off, Between on, Between deadM) {
    List<Fix> fixes = new ArrayList<>();
    for (Stretch gap : gaps) {
      at(gap, off, on, deadM).ifPresent(fixes::add);
    }
    return fixes.size() == 1 ? Optional.of(fixes.get(0)) : Optional.empty();
  }

  /** By every run of motored vehicles that may feed the recorder. */
  private Optional<Fix> at(Stretch gap, Between off, Between on, Between deadM) {
    Between apart = new Between(gap.lengthM() - deadM.toM(), gap.lengthM() - deadM.fromM());
    List<Between> offs = new ArrayList<>();
    List<Between> ons = new ArrayList<>();
    for (int first = 0; first < motored.size(); first++) {
      for (int last = first; last < motored.size(); last++) {
        Between front = motored.get(first);
        Between rear = motored.get(last);
        Optional<Between> rearmost = rear.and(front.to(apart.fromM(), apart.toM()));
        Optional<Between> foremost = front.and(rear.to(-apart.toM(), -apart.fromM()));
        Optional<Between> went = rearmost.flatMap(r -> r.to(gap.fromM(), gap.fromM()).and(off));
        Optional<Between> came = foremost.flatMap(f -> f.to(gap.toM(), gap.toM()).and(on));
        if (went.isPresent() && came.isPresent() && apart.toM() >= 0) {
          offs.add(went.get());
          ons.add(came.get());
        }
      }
    }
    return offs.isEmpty()
        ? Optional.empty()
        : Optional.of(new Fix(Between.round(offs), Between.round(ons)));
  }
}
