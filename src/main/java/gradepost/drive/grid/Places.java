package gradepost.drive.grid;

import gradepost.drive.brake.Slack;
import gradepost.route.Landmark;
import gradepost.route.Path;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Turns computed places into places that can be printed and found. */
public final class Places {
  /** Nearer to its target than this, a place is given by the distance before it. */
  public static final double BEFORE_TARGET_M = 100;

  /** Nearer still, by the single yard or metre: five of them are as much as a stop may miss. */
  private static final double TO_THE_UNIT_M = 40;

  /** A landmark is not taken if it lengthens the braking by more than this share. */
  private static final double LANDMARK_SHARE = 0.2;

  private final Assignment assignment;
  private final Path path;
  private final List<Landmark> landmarks;

  /** Of one run; the landmarks are those that stand in its direction. */
  public Places(Assignment assignment) {
    this.assignment = assignment;
    this.path = assignment.path();
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
  public double printed(double exactM, double targetM, double notBeforeM) {
    double ahead = targetM - exactM;
    if (near(ahead)) {
      return Math.max(notBeforeM, onGrid(exactM, targetM));
    }
    double reach =
        Math.min(assignment.policy().run().landmarkReach().metres(), LANDMARK_SHARE * ahead);
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

  private boolean near(double aheadM) {
    return aheadM < BEFORE_TARGET_M;
  }

  /** Without landmarks: a mileage, or close to the target so many yards or metres before it. */
  public double onGrid(double exactM, double targetM) {
    double ahead = targetM - exactM;
    if (!near(ahead)) {
      return path.printedAtOrBefore(exactM);
    }
    double step = path.units().lengthUnitM() * (ahead < TO_THE_UNIT_M ? 1 : 5);
    return targetM - Math.ceil(ahead / step - Slack.UNITS) * step;
  }

  /** To the whole yard or metre before the target, where nothing coarser will do. */
  public double toTheUnit(double exactM, double targetM) {
    double unit = path.units().lengthUnitM();
    return targetM - Math.ceil((targetM - exactM) / unit - Slack.UNITS) * unit;
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
