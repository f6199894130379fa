package gradepost.source.ride;

import gradepost.plan.Plan;
import gradepost.ride.Ride;
import gradepost.ride.Ride.Sample;
import gradepost.source.ride.RideReader.Cell;
import gradepost.stock.Notch;
import gradepost.units.Parsed;
import gradepost.units.QuantityKind;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A recorder's export: distance and speed, perhaps brake pressure and notch, the unit of each in
 * its heading. The first line is the train at its first stop mark: distances count from there.
 */
final class RecordedRide {
  private static final String DISTANCE = "distance";
  private static final String SPEED = "speed";
  private static final String PRESSURE = "pressure";
  private static final String NOTCH = "notch";
  private static final List<String> KNOWN =
      List.of(DISTANCE, SPEED, PRESSURE, NOTCH, "time", "note");
  private static final Pattern UNIT = Pattern.compile(".*\\((.*)\\)\\s*");
  private static final int MOST_PROBLEMS = 100;

  /** What a counter that is read twice at one place may go back. */
  private static final double BACK_M = 1.0;

  private static final double STANDS_MPS = 0.5;
  private static final double FASTEST_MPS = 150;

  private final Plan plan;
  private final Reader in;

  RecordedRide(Plan plan, Reader in) {
    this.plan = plan;
    this.in = in;
  }

  Optional<Ride> read(List<Cell> headings, List<List<Cell>> rows) {
    Map<String, Integer> columns =
        RideReader.columns(headings, KNOWN, List.of(DISTANCE, SPEED), in);
    if (in.count() > 0) {
      return Optional.empty();
    }
    int distance = columns.getOrDefault(DISTANCE, 0);
    int speed = columns.getOrDefault(SPEED, 0);
    Optional<Integer> pressure = Optional.ofNullable(columns.get(PRESSURE));
    Optional<Integer> notch = Optional.ofNullable(columns.get(NOTCH));
    double distanceUnit = unit(headings.get(distance), QuantityKind.LENGTH, "m");
    double speedUnit = unit(headings.get(speed), QuantityKind.SPEED, "mph");
    double pressureUnit =
        pressure.map(c -> unit(headings.get(c), QuantityKind.PRESSURE, "psi")).orElse(1.0);
    if (in.count() > 0) {
      return Optional.empty();
    }
    double start = plan.trace().points().get(0).atM();
    List<Sample> out = new ArrayList<>();
    double zero = Double.NaN;
    double last = Double.NEGATIVE_INFINITY;
    for (List<Cell> row : rows) {
      if (in.count() >= MOST_PROBLEMS) {
        break;
      }
      Optional<Double> d = number(row.get(distance), DISTANCE, distanceUnit);
      Optional<Double> v = number(row.get(speed), SPEED, speedUnit);
      Optional<Double> p = pressure.flatMap(c -> number(row.get(c), PRESSURE, pressureUnit));
      Optional<Integer> n = notch.flatMap(c -> notch(row.get(c)));
      if (d.isEmpty() || v.isEmpty()) {
        continue;
      }
      if (Double.isNaN(zero)) {
        zero = d.get();
        standsFirst(row.get(speed), v.get());
      }
      check(row.get(distance), d.get() - zero, last, row.get(speed), v.get());
      double run = Math.max(d.get() - zero, Math.max(last, 0));
      last = run;
      out.add(new Sample(start + run, v.get(), p, n));
    }
    if (in.count() == 0 && out.size() < 2) {
      in.error(new SourcePosition(in.file(), 2, 1), RideMistakes.ONE_SAMPLE);
    }
    return in.count() > 0 ? Optional.empty() : Optional.of(new Ride.Recorded(out));
  }

  private void standsFirst(Cell cell, double speedMps) {
    if (speedMps > STANDS_MPS) {
      in.error(
          cell.spot(),
          RideMistakes.NOT_AT_A_STAND.with(plan.assignment().calls().get(0).station().name()));
    }
  }

  private void check(Cell distance, double runM, double lastM, Cell speed, double speedMps) {
    if (runM < lastM - BACK_M) {
      in.error(distance.spot(), RideMistakes.DISTANCE_GOES_BACK);
    }
    if (runM > plan.assignment().path().lengthM()) {
      in.error(distance.spot(), RideMistakes.PAST_THE_END);
    }
    if (speedMps > FASTEST_MPS) {
      in.error(speed.spot(), RideMistakes.TOO_FAST);
    }
  }

  /** What one of the heading's unit is in SI. */
  private <Q> double unit(Cell heading, QuantityKind<Q> kind, String example) {
    String name = RideReader.plain(heading.text().replaceAll("\\(.*\\)", ""));
    Matcher m = UNIT.matcher(heading.text());
    if (!m.matches()) {
      in.error(heading.spot(), RideMistakes.NO_UNIT.with(heading.text(), kind, name, example));
      return 1;
    }
    Optional<Parsed.Ok<Q>> one = kind.parse("1 " + m.group(1).strip()).ok();
    if (one.isPresent()) {
      return kind.si(one.get().value());
    }
    in.error(heading.spot(), RideMistakes.UNKNOWN_UNIT.with(m.group(1), kind, name, example));
    return 1;
  }

  private Optional<Double> number(Cell cell, String name, double unit) {
    String text = cell.text().replace(',', '.');
    if (text.matches("\\d{1,9}(\\.\\d{1,9})?")) {
      return Optional.of(Double.parseDouble(text) * unit);
    }
    in.error(
        cell.spot(),
        cell.text().isBlank()
            ? RideMistakes.EMPTY_NUMBER.with(name)
            : RideMistakes.NO_NUMBER.with(name, cell.text()));
    return Optional.empty();
  }

  /** By its number, 0 for off, or by its name. */
  private Optional<Integer> notch(Cell cell) {
    List<String> names =
        plan.assignment().stock().traction().notches().stream().map(Notch::name).toList();
    String text = cell.text();
    if (text.equalsIgnoreCase("off")) {
      return Optional.of(-1);
    } else if (text.matches("\\d{1,2}") && Integer.parseInt(text) <= names.size()) {
      return Optional.of(Integer.parseInt(text) - 1);
    } else if (names.contains(text)) {
      return Optional.of(names.indexOf(text));
    }
    in.error(
        cell.spot(),
        text.isBlank()
            ? RideMistakes.EMPTY_NOTCH.with(names.size(), names)
            : RideMistakes.UNKNOWN_NOTCH.with(text, names.size(), names));
    return Optional.empty();
  }
}
