package gradepost.drive.grid;

import gradepost.drive.brake.Slack;
import gradepost.route.Landmark;
import gradepost.route.Path;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.told.print.PrintGrid;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Turns computed places into places that can be printed and found. */
public final class Places {
  /** A landmark is not taken if it lengthens the braking by more than this share. */
  private static final double LANDMARK_SHARE = 0.2;

  private final Assignment assignment;
  private final Path path;
  private final PrintGrid grid;
  private final List<Landmark> landmarks;

  /** Of one run; the landmarks are those that stand in its direction. */
  public Places(Assignment assignment) {
    this.assignment = assignment;
    this.path = assignment.path();
    this.grid = new PrintGrid(path);
    this.landmarks =
        assignment.route().landmarks().stream()
            .filter(l -> Ceiling.stands(assignment, l.applies()))
            .sorted(Comparator.comparingDouble(l -> path.metresAt(l.location())))
            .toList();
  }

  /**
   * The place to print for {@code exactM}, at or before it: a landmark within the policy's reach,
   * else a mileage, and close to the target so many yards or metres before it.
   */
  public double printed(double exactM, Target target, double notBeforeM) {
    if (grid.isNear(target.atM() - exactM)) {
      return Math.max(notBeforeM, onGrid(exactM, target));
    }
    double reach =
        Math.min(
            assignment.policy().run().landmarkReach().metres(),
            LANDMARK_SHARE * (target.atM() - exactM));
    double earliest = Math.max(notBeforeM, exactM - reach);
    return lastLandmark(exactM)
        .map(this::placeOf)
        .filter(at -> at >= earliest)
        .orElseGet(() -> Math.max(notBeforeM, path.printedAtOrBefore(exactM)));
  }

  /** Those that stand for this train, in order of travel. */
  public List<Landmark> all() {
    return landmarks;
  }

  /** Without landmarks: a mileage, or close to the target so many yards or metres before it. */
  public double onGrid(double exactM, Target target) {
    return grid.plannable(exactM, target.atM(), target.toldFromM());
  }

  /** To the whole yard or metre before the target, where nothing coarser will do. */
  public double toTheUnit(double exactM, Target target) {
    return grid.plannableToTheUnit(exactM, target.toldFromM());
  }

  /** The last landmark at or before a place. */
  public Optional<Landmark> lastLandmark(double atM) {
    Landmark last = null;
    for (Landmark landmark : landmarks) {
      if (placeOf(landmark) > atM + Slack.PLACE_M) {
        break;
      }
      last = landmark;
    }
    return Optional.ofNullable(last);
  }

  /** Where a landmark stands, metres run. */
  public double placeOf(Landmark landmark) {
    return path.metresAt(landmark.location());
  }
}
