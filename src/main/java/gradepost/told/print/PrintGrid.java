package gradepost.told.print;

import gradepost.route.Path;
import gradepost.route.place.Location;
import gradepost.units.Mileage;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.Locale;

/**
 * The grid on which everything that is told about one path is printed, and the only class that
 * rounds what is told. What the driver comes to leans towards him, what he must have reached away
 * from him; room is rounded down and overrun up; a speed that he is to have is rounded down, one
 * that he may have at the worst up.
 */
public final class PrintGrid {
  /** Nearer to its target than this, a place is told by the distance before it. */
  public static final double NEAR_M = 100;

  /** Nearer still, by the single yard or metre: five of them are as much as a stop may miss. */
  private static final double FINE_M = 40;

  private static final long COARSE_UNITS = 5;

  /** Arithmetic leaves less than this of a place, metres, or of a number of units. */
  private static final double HAIR = 1e-6;

  /** At the target itself a distance before it says nothing. */
  private static final double AT_TARGET_M = 0.5;

  private final Path path;
  private final UnitStyle units;

  public PrintGrid(Path path) {
    this.path = path;
    this.units = path.units();
  }

  /** The world of units in which everything is told. */
  public UnitStyle units() {
    return units;
  }

  // Places

  /** A place that the driver comes to: the last one on the grid at or before it. */
  public PrintedPlace.Mileage place(double atM) {
    return mileage(path.printedAtOrBefore(inside(atM)), false);
  }

  /** A place that the train must have reached: the first one on the grid at or after it. */
  public PrintedPlace placePast(double atM) {
    return mileage(path.printedAtOrAfter(inside(atM)), true);
  }

  /**
   * A place on the way to a target, at or before it: so far before the target where that is near or
   * where the place was planned so, else on the grid.
   */
  public PrintedPlace placeTo(double atM, double targetM) {
    double ahead = targetM - atM;
    if (ahead < AT_TARGET_M || !toldFromTarget(atM, ahead)) {
      return place(atM);
    }
    return new PrintedPlace.Before(lengthUp(ahead));
  }

  private boolean toldFromTarget(double atM, double aheadM) {
    return isNear(aheadM) || (!onGrid(atM) && wholeUnits(aheadM));
  }

  /**
   * A landmark that a driver goes by, with the mileage before it; close to the target so far before
   * that, as any place there.
   */
  public PrintedPlace landmark(String name, double atM, double targetM) {
    return placeTo(atM, targetM)
        .match(
            mileage -> new PrintedPlace.Landmark(name, mileage),
            landmark -> landmark,
            before -> before);
  }

  /**
   * What a place means: distance run of the front, metres.
   *
   * @throws IllegalArgumentException for a landmark that the route has not there
   */
  public double metres(PrintedPlace place, double targetM) {
    return place.match(this::metres, this::metres, before -> targetM - before.ahead().metres());
  }

  private double metres(PrintedPlace.Landmark landmark) {
    return path.route().landmarks().stream()
        .filter(l -> l.name().equals(landmark.name()))
        .mapToDouble(l -> path.metresAt(l.location()))
        .filter(at -> place(at).equals(landmark.at()))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no such landmark: " + landmark));
  }

  private double metres(PrintedPlace.Mileage place) {
    var section =
        path.sections().stream()
            .filter(s -> s.name().equals(place.section()))
            .findFirst()
            .orElseThrow();
    double low = Math.min(section.from().metres(), section.to().metres());
    double high = Math.max(section.from().metres(), section.to().metres());
    double mileage = Math.min(Math.max(place.steps() * units.placeStepM(), low), high);
    return path.metresAt(new Location(place.section(), new Mileage(mileage)));
  }

  /** "5m 28ch", "12.46 km (Harbour)"; the landmark itself is named beside it. */
  public String text(PrintedPlace.Landmark place) {
    return text(place.at());
  }

  /** "5m 28ch", "12.46 km (Harbour)". */
  public String text(PrintedPlace.Mileage place) {
    String text = units.mileage(new Mileage(place.steps() * units.placeStepM()));
    return place.named() ? text + " (" + place.section() + ")" : text;
  }

  /**
   * The ends of a section need not be on the grid: what is printed for them leans as the place
   * does, and stands for the end itself.
   */
  private PrintedPlace.Mileage mileage(double gridM, boolean past) {
    Location at = path.locationAt(gridM);
    boolean named = path.sections().stream().filter(s -> s.holds(at.mileage())).count() > 1;
    double steps = at.mileage().metres() / units.placeStepM();
    boolean onGrid = Math.abs(steps - Math.rint(steps)) < HAIR;
    boolean up = path.mileageRisesAt(gridM) == past;
    double printed = onGrid ? Math.rint(steps) : up ? Math.ceil(steps) : Math.floor(steps);
    return new PrintedPlace.Mileage(at.section(), (long) printed, named);
  }

  private double inside(double atM) {
    return Math.min(Math.max(atM, 0), path.lengthM());
  }

  private boolean onGrid(double atM) {
    return Math.abs(path.printedAtOrBefore(inside(atM)) - atM) < HAIR;
  }

  private boolean wholeUnits(double metres) {
    double number = metres / units.lengthUnitM();
    return Math.abs(number - Math.rint(number)) < HAIR;
  }

  // Places to plan on

  /** Whether a place so far before its target is told from it. */
  public boolean isNear(double aheadM) {
    return aheadM < NEAR_M;
  }

  /**
   * The last place at or before {@code exactM} that a driver can be told, distance run in metres:
   * on the grid, or close to the target so many yards or metres before {@code toldFromM}.
   *
   * @param toldFromM the target itself, or the stop mark behind it
   */
  public double plannable(double exactM, double targetM, double toldFromM) {
    double ahead = targetM - exactM;
    if (!isNear(ahead)) {
      return path.printedAtOrBefore(exactM);
    }
    return before(toldFromM, toldFromM - exactM, ahead < FINE_M ? 1 : COARSE_UNITS);
  }

  /** The same to the single yard or metre, where nothing coarser will do. */
  public double plannableToTheUnit(double exactM, double toldFromM) {
    return before(toldFromM, toldFromM - exactM, 1);
  }

  private double before(double fromM, double aheadM, long of) {
    double step = units.lengthUnitM() * of;
    return fromM - Math.ceil(aheadM / step - HAIR) * step;
  }

  // Speeds, pressures, lengths, times

  /** A speed to have, or one that is permissible: rounded down. */
  public PrintedSpeed speed(double mps) {
    return new PrintedSpeed(units.speedNumber(mps, Rounding.DOWN), units);
  }

  /** A speed that a train may have at the worst: rounded up. */
  public PrintedSpeed speedAtMost(double mps) {
    return new PrintedSpeed(units.speedNumber(mps, Rounding.UP), units);
  }

  /** A pressure that was planned on the steps of the gauge: the nearest of them. */
  public PrintedPressure pressure(double pascals) {
    return new PrintedPressure(Math.round(pascals / units.pressureStepPa()), units);
  }

  /** A pressure that a gauge must show at least: rounded up. */
  public PrintedPressure pressureAtLeast(double pascals) {
    return new PrintedPressure((long) Math.ceil(pascals / units.pressureStepPa() - HAIR), units);
  }

  /** What a brake has left to give, or a gauge may show at most: rounded down. */
  public PrintedPressure pressureLeft(double pascals) {
    return new PrintedPressure((long) Math.floor(pascals / units.pressureStepPa() + HAIR), units);
  }

  /** Room that there is: rounded down. */
  public PrintedLength room(double metres) {
    return new PrintedLength(Rounding.DOWN.whole(metres / units.lengthUnitM()), units);
  }

  /** A distance by which something is missed or that is needed: rounded up. */
  public PrintedLength lengthUp(double metres) {
    return new PrintedLength(Rounding.UP.whole(metres / units.lengthUnitM()), units);
  }

  /** How far apart two things on the line are, as text: nearest. */
  public String apart(double metres) {
    if (units == UnitStyle.METRIC) {
      return metres < 995
          ? Math.round(metres / 10) * 10 + " m"
          : String.format(Locale.ROOT, "%.2f km", metres / 1000);
    }
    long chains = Math.round(metres / units.placeStepM());
    return chains < 80
        ? chains + " ch"
        : String.format(Locale.ROOT, "%d mi %02d ch", chains / 80, chains % 80);
  }

  /** The radius of a curve, as text: rounded down. */
  public String radius(double metres) {
    if (units == UnitStyle.METRIC) {
      return (long) Math.floor(metres + HAIR) + " m";
    }
    double chains = metres / units.placeStepM();
    return chains < 20
        ? String.format(Locale.ROOT, "%.1f ch", Math.floor(chains * 10 + HAIR) / 10)
            .replace(".0 ch", " ch")
        : (long) Math.floor(chains + HAIR) + " ch";
  }

  /** A time between two things that are told: nearest. */
  public PrintedTime time(double seconds) {
    return new PrintedTime(Math.round(seconds));
  }

  /** A time that is left: rounded down. */
  public PrintedTime timeLeft(double seconds) {
    return new PrintedTime((long) Math.floor(seconds + HAIR));
  }

  /** A time that something costs: rounded up. */
  public PrintedTime timeNeeded(double seconds) {
    return new PrintedTime((long) Math.ceil(seconds - HAIR));
  }

  /** A share of all runs, in whole hundredths: nearest. */
  public long share(double share) {
    return Math.round(100 * share);
  }

  /** A share of all runs that must not look smaller, in whole hundredths: rounded up. */
  public long shareAtMost(double share) {
    return (long) Math.ceil(100 * share - 1e-9);
  }
}
