package gradepost.source.ride;

import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.ride.Ride;
import gradepost.ride.Ride.Observed;
import gradepost.route.LineHoles.Place;
import gradepost.route.Path;
import gradepost.route.place.Location;
import gradepost.source.ride.RideReader.Cell;
import gradepost.units.Mileage;
import gradepost.units.QuantityKind;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An assessor's lines: an approach each, what was not observed left empty. */
final class TypedRide {
  private static final String APPROACH = "approach";
  private static final String BRAKED = "braked at";
  private static final String SPEED = "speed";
  private static final String PRESSURE = "first pressure";
  private static final String STOP = "stop error";
  private static final String OVER = "over";
  private static final String FORBIDDEN = "forbidden movements";
  private static final List<String> KNOWN =
      List.of(APPROACH, "name", BRAKED, SPEED, PRESSURE, STOP, OVER, FORBIDDEN, "note");
  private static final Pattern IN_SECTION = Pattern.compile("(.*\\S) \\((.+)\\)");
  private static final Pattern ERROR = Pattern.compile("(.+?) (short|past)");

  /** A brake may go on so far before the approach's own stretch, and so far past its target. */
  private static final double ABOUT_M = 400;

  private final Plan plan;
  private final Path path;
  private final Reader in;

  TypedRide(Plan plan, Reader in) {
    this.plan = plan;
    this.path = plan.assignment().path();
    this.in = in;
  }

  Optional<Ride> read(List<Cell> headings, List<List<Cell>> rows) {
    Map<String, Integer> columns = RideReader.columns(headings, KNOWN, List.of(APPROACH), in);
    if (in.count() > 0) {
      return Optional.empty();
    }
    Map<Integer, Cell> seen = new HashMap<>();
    List<Observed> out = new ArrayList<>();
    for (List<Cell> row : rows) {
      Cell first = row.get(columns.getOrDefault(APPROACH, 0));
      Optional<Approach> approach = approach(first);
      if (approach.isEmpty()) {
        continue;
      }
      int number = approach.get().number();
      Cell before = seen.putIfAbsent(number, first);
      if (before != null) {
        in.error(first.spot(), RideMistakes.APPROACH_TWICE.with(number, before.spot()));
      }
      out.add(observed(approach.get(), name -> cell(row, columns, name)));
    }
    if (in.count() == 0 && out.stream().allMatch(TypedRide::empty)) {
      in.error(new SourcePosition(in.file(), 1, 1), RideMistakes.NOTHING_FILLED_IN);
    }
    return in.count() > 0 ? Optional.empty() : Optional.of(new Ride.Typed(out));
  }

  private static boolean empty(Observed o) {
    return o.brakedAtM().isEmpty()
        && o.brakedSpeedMps().isEmpty()
        && o.firstPressurePa().isEmpty()
        && o.stopErrorM().isEmpty()
        && o.overMps().isEmpty()
        && o.forbidden().isEmpty();
  }

  private static Optional<Cell> cell(List<Cell> row, Map<String, Integer> columns, String name) {
    return Optional.ofNullable(columns.get(name))
        .map(row::get)
        .filter(c -> !c.text().isBlank() && !c.text().equals("-") && !c.text().equals("–"));
  }

  private Optional<Approach> approach(Cell cell) {
    int last = plan.approaches().size();
    Optional<Approach> found =
        plan.approaches().stream()
            .filter(a -> Integer.toString(a.number()).equals(cell.text()))
            .findFirst();
    if (found.isEmpty()) {
      in.error(
          cell.spot(),
          cell.text().isBlank()
              ? RideMistakes.NO_APPROACH.with(last)
              : RideMistakes.UNKNOWN_APPROACH.with(cell.text(), last));
    }
    return found;
  }

  private Observed observed(Approach a, Function<String, Optional<Cell>> cells) {
    for (String name : List.of(BRAKED, SPEED, PRESSURE)) {
      if (a.brakingPointM().isEmpty()) {
        cells
            .apply(name)
            .ifPresent(c -> in.error(c.spot(), RideMistakes.NEEDS_NO_BRAKE.with(name, a.number())));
      }
    }
    if (!a.target().isStop()) {
      cells
          .apply(STOP)
          .ifPresent(c -> in.error(c.spot(), RideMistakes.IS_NO_STOP.with(STOP, a.number())));
    }
    return new Observed(
        a.number(),
        cells.apply(BRAKED).flatMap(c -> place(c, a)),
        cells
            .apply(SPEED)
            .flatMap(c -> quantity(c, SPEED, QuantityKind.SPEED))
            .map(v -> v.metresPerSecond()),
        cells
            .apply(PRESSURE)
            .flatMap(c -> quantity(c, PRESSURE, QuantityKind.PRESSURE))
            .map(p -> p.pascals()),
        cells.apply(STOP).flatMap(this::stopError),
        cells.apply(OVER).flatMap(this::over),
        cells.apply(FORBIDDEN).flatMap(this::count));
  }

  private <Q> Optional<Q> quantity(Cell cell, String name, QuantityKind<Q> kind) {
    return kind.parse(cell.text())
        .match(
            ok -> Optional.of(ok.value()),
            bad -> {
              in.error(cell.spot(), bad.told(name, kind));
              return Optional.empty();
            });
  }

  /**
   * On this approach's stretch: a mileage that is on two sections is none on two approaches. Its
   * section, which the papers print, may stand behind it.
   */
  private Optional<Double> place(Cell cell, Approach a) {
    Matcher told = IN_SECTION.matcher(cell.text());
    Optional<String> section =
        told.matches() ? Optional.of(told.group(2)).filter(this::isSection) : Optional.empty();
    Cell plain = section.isPresent() ? new Cell(told.group(1), cell.spot()) : cell;
    Optional<Mileage> mileage = quantity(plain, BRAKED, QuantityKind.MILEAGE);
    if (mileage.isEmpty()) {
      return Optional.empty();
    }
    double from = Math.max(0, a.fromM() - ABOUT_M);
    double to = Math.min(path.lengthM(), a.target().atM() + ABOUT_M);
    double wanted = a.brakingPointM().orElse(a.target().atM());
    Optional<Double> found =
        path.sections().stream()
            .filter(s -> section.isEmpty() || section.get().equals(s.name()))
            .filter(s -> s.holds(mileage.get()))
            .map(s -> path.metresAt(new Location(s.name(), mileage.get())))
            .filter(at -> at >= from && at <= to)
            .min(java.util.Comparator.comparingDouble(at -> Math.abs(at - wanted)));
    if (found.isEmpty()) {
      in.error(
          cell.spot(),
          RideMistakes.NOT_ON_THE_APPROACH.with(
              BRAKED, cell.text(), a.number(), Place.of(path, from), Place.of(path, to)));
    }
    return found;
  }

  private boolean isSection(String name) {
    return path.sections().stream().anyMatch(s -> s.name().equals(name));
  }

  private Optional<Double> stopError(Cell cell) {
    if (cell.text().equals("at mark")) {
      return Optional.of(0.0);
    }
    Matcher m = ERROR.matcher(cell.text());
    if (!m.matches()) {
      boolean length = QuantityKind.LENGTH.parse(cell.text()).isOk();
      in.error(
          cell.spot(),
          length
              ? RideMistakes.NO_SIDE_OF_THE_MARK.with(STOP, cell.text(), cell.text())
              : RideMistakes.NO_STOP_ERROR.with(STOP, cell.text()));
      return Optional.empty();
    }
    double sign = m.group(2).equals("short") ? 1 : -1;
    return quantity(new Cell(m.group(1), cell.spot()), STOP, QuantityKind.LENGTH)
        .map(l -> sign * l.metres());
  }

  private Optional<Double> over(Cell cell) {
    return cell.text().equals("none")
        ? Optional.of(0.0)
        : quantity(cell, OVER, QuantityKind.SPEED).map(v -> v.metresPerSecond());
  }

  private Optional<Integer> count(Cell cell) {
    if (cell.text().equals("none")) {
      return Optional.of(0);
    } else if (cell.text().matches("\\d{1,3}")) {
      return Optional.of(Integer.parseInt(cell.text()));
    }
    in.error(cell.spot(), RideMistakes.NO_COUNT.with(FORBIDDEN, cell.text()));
    return Optional.empty();
  }
}
