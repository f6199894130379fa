package gradepost.source.ride;

import static gradepost.source.ride.RecorderColumns.AWS;
import static gradepost.source.ride.RecorderColumns.DISTANCE;
import static gradepost.source.ride.RecorderColumns.NOTCH;
import static gradepost.source.ride.RecorderColumns.PASSED;
import static gradepost.source.ride.RecorderColumns.PRESSURE;
import static gradepost.source.ride.RecorderColumns.SPEED;
import static gradepost.source.ride.RecorderColumns.TIME;
import static gradepost.source.ride.RecorderColumns.VOLTAGE;

import gradepost.plan.Plan;
import gradepost.ride.Ride;
import gradepost.ride.Ride.Sample;
import gradepost.source.ride.RideReader.Cell;
import gradepost.stock.Notch;
import gradepost.yaml.Problem;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A recorder's export: distance and speed, perhaps time, brake pressure, notch and the places that
 * were noted as passed, the unit of each in its heading. Distances count from anywhere.
 */
final class RecordedRide {
  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,9}([.,]\\d{1,9})?");
  private static final Pattern NOTCH_NUMBER = Pattern.compile("\\d{1,2}");
  private static final int MOST_PROBLEMS = 100;

  /** What stands in the column of the magnets where there is none. */
  private static final Set<String> NOTHING = Set.of("0", "-", "–", "no", "off");

  /** What a counter that is read twice at one place may go back. */
  private static final double BACK_M = 1.0;

  /** What a meter shows beside a line without current. */
  private static final double LEAST_VOLTS = 100;

  private static final double FASTEST_MPS = 150;

  /** A speedometer that stands may show so much less than nothing. */
  private static final double BELOW_ZERO_MPS = 1;

  private final RideAsked asked;
  private final RidePlaces places;
  private final List<String> notches;
  private final Reader in;
  private final Matcher number = NUMBER.matcher("");
  private final List<Sample> out = new ArrayList<>();
  private double zeroM = Double.NaN;
  private double lastM;
  private double firstS = Double.NaN;
  private double lastS;

  RecordedRide(Plan plan, RideAsked asked, Reader in) {
    this.asked = asked;
    this.places = new RidePlaces(plan, in);
    this.in = in;
    notches = plan.assignment().stock().traction().notches().stream().map(Notch::name).toList();
  }

  Optional<Ride> read(RideText.Table table) {
    RecorderColumns columns = new RecorderColumns(table.headings(), in);
    if (in.count() > 0) {
      return Optional.empty();
    }
    List<SourcePosition> leftOut = new ArrayList<>();
    for (List<Cell> row : table.rows()) {
      if (in.count() >= MOST_PROBLEMS) {
        break;
      }
      boolean whole = row.size() == table.headings().size();
      boolean told =
          whole
              && List.of(DISTANCE, SPEED, TIME).stream()
                  .allMatch(n -> columns.cell(row, n).filter(c -> c.text().isBlank()).isEmpty());
      if (told) {
        line(row, columns);
      } else {
        leftOut.add(row.get(0).spot());
      }
    }
    if (!leftOut.isEmpty()) {
      in.add(
          new Problem(
              leftOut.get(0), Severity.NOTE, RideMistakes.LINES_LEFT_OUT.with(leftOut.size())));
    }
    if (in.count() == 0 && out.size() < 2) {
      in.error(
          new SourcePosition(in.file(), 2, 1),
          asked.from().isPresent() || asked.to().isPresent()
              ? RideMistakes.NOTHING_BETWEEN
              : RideMistakes.ONE_SAMPLE);
    }
    return in.count() > 0 ? Optional.empty() : Optional.of(new Ride.Recorded(out));
  }

  private void line(List<Cell> row, RecorderColumns columns) {
    Optional<Double> d = columns.cell(row, DISTANCE).flatMap(c -> number(c, DISTANCE));
    Optional<Double> v = columns.cell(row, SPEED).flatMap(c -> number(c, SPEED));
    Optional<Double> t = columns.cell(row, TIME).flatMap(this::time);
    if (d.isEmpty() || v.isEmpty() || !isAsked(t)) {
      return;
    }
    double metres = d.get() * columns.unit(DISTANCE);
    double mps = v.get() * columns.unit(SPEED);
    if (Double.isNaN(zeroM)) {
      zeroM = metres;
    }
    columns.cell(row, DISTANCE).ifPresent(c -> checkDistance(c, metres - zeroM));
    columns.cell(row, SPEED).ifPresent(c -> checkSpeed(c, mps));
    lastM = Math.max(lastM, metres - zeroM);
    out.add(
        new Sample(
            t.map(s -> s - firstS),
            lastM,
            Math.max(0, mps),
            filled(columns.cell(row, PRESSURE))
                .flatMap(c -> number(c, PRESSURE))
                .map(p -> Math.max(0, p * columns.unit(PRESSURE))),
            filled(columns.cell(row, NOTCH)).flatMap(this::notch),
            filled(columns.cell(row, PASSED)).flatMap(c -> places.on(c, PASSED)),
            filled(columns.cell(row, AWS)).filter(c -> !NOTHING.contains(c.text())).isPresent(),
            filled(columns.cell(row, VOLTAGE))
                .flatMap(c -> number(c, VOLTAGE))
                .map(u -> Math.abs(u * columns.unit(VOLTAGE)) >= LEAST_VOLTS)));
  }

  private static Optional<Cell> filled(Optional<Cell> cell) {
    return cell.filter(c -> !c.text().isBlank());
  }

  private Optional<Double> time(Cell cell) {
    Optional<Double> s = RecorderTime.seconds(cell.text());
    if (s.isEmpty()) {
      in.error(cell.spot(), RideMistakes.NO_TIME.with(cell.text()));
      return s;
    }
    double at =
        Double.isNaN(firstS) || !RecorderTime.isOfDay(cell.text())
            ? s.get()
            : RecorderTime.behind(lastS, s.get());
    firstS = Double.isNaN(firstS) ? at : firstS;
    lastS = at;
    return Optional.of(at);
  }

  /** Whether a line lies between the moments that were asked for. */
  private boolean isAsked(Optional<Double> t) {
    return t.map(
            s ->
                asked
                        .from()
                        .flatMap(RecorderTime::seconds)
                        .map(this::at)
                        .filter(f -> s < f)
                        .isEmpty()
                    && asked
                        .to()
                        .flatMap(RecorderTime::seconds)
                        .map(this::at)
                        .filter(e -> s > e)
                        .isEmpty())
        .orElse(true);
  }

  private double at(double askedS) {
    return RecorderTime.asked(firstS, askedS);
  }

  private void checkDistance(Cell cell, double runM) {
    if (runM < lastM - BACK_M) {
      in.error(cell.spot(), RideMistakes.DISTANCE_GOES_BACK);
    }
  }

  private void checkSpeed(Cell cell, double mps) {
    if (mps > FASTEST_MPS) {
      in.error(cell.spot(), RideMistakes.TOO_FAST);
    } else if (mps < -BELOW_ZERO_MPS) {
      in.error(cell.spot(), RideMistakes.BELOW_ZERO);
    }
  }

  private Optional<Double> number(Cell cell, String name) {
    if (number.reset(cell.text()).matches()) {
      return Optional.of(Double.parseDouble(cell.text().replace(',', '.')));
    }
    in.error(cell.spot(), RideMistakes.NO_NUMBER.with(name, cell.text()));
    return Optional.empty();
  }

  /** By its number, 0 for off, or by its name. */
  private Optional<Integer> notch(Cell cell) {
    String text = cell.text().toLowerCase(Locale.ROOT);
    if (text.equals("off")) {
      return Optional.of(-1);
    } else if (NOTCH_NUMBER.matcher(text).matches() && Integer.parseInt(text) <= notches.size()) {
      return Optional.of(Integer.parseInt(text) - 1);
    }
    for (int i = 0; i < notches.size(); i++) {
      if (notches.get(i).toLowerCase(Locale.ROOT).equals(text)) {
        return Optional.of(i);
      }
    }
    in.error(cell.spot(), RideMistakes.UNKNOWN_NOTCH.with(cell.text(), notches.size(), notches));
    return Optional.empty();
  }
}
