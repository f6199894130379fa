package gradepost.source.ride;

import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.ride.Ride;
import gradepost.ride.Ride.Observed;
import gradepost.source.ride.RideReader.Cell;
import gradepost.source.table.TableMistakes;
import gradepost.task.CeilingStep;
import gradepost.units.Nearest;
import gradepost.units.QuantityKind;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An assessor's lines: an approach each, what was not observed left empty. */
final class TypedRide {
  private static final String APPROACH = "approach";
  private static final String NAME = "name";
  private static final String BRAKED = "braked at";
  private static final String SPEED = "speed";
  private static final String PRESSURE = "first pressure";
  private static final String STOP = "stop error";
  private static final String OVER = "over";
  private static final String FORBIDDEN = "forbidden movements";
  private static final List<String> KNOWN =
      List.of(APPROACH, NAME, BRAKED, SPEED, PRESSURE, STOP, OVER, FORBIDDEN, "note");
  private static final Pattern ERROR = Pattern.compile("(.+?) (short|past|over)");
  private static final Set<String> NONE = Set.of("none", "nil", "no", "0", "ok");
  private static final Set<String> AT_THE_MARK = Set.of("at mark", "on mark", "on the mark", "0");
  private static final Set<String> NOT_SEEN = Set.of("", "-", "–", "n/a", "not seen");

  /** Nothing that a train did: it is not believed that far from what was briefed. */
  private static final double FAR_PAST_M = 300;

  private static final double FAR_OVER_MPS = 20;

  /** A gauge may show so much more than the brake has. */
  private static final double MORE = 1.2;

  private final Plan plan;
  private static final Pattern BARE =
      Pattern.compile("(\\d+(?:[.,]\\d+)?)((?: (?:short|past|over))?)", Pattern.CASE_INSENSITIVE);

  private final Map<String, String> units = new HashMap<>();
  private final RideAsked asked;
  private final RidePlaces places;
  private final Reader in;

  TypedRide(Plan plan, RideAsked asked, Reader in) {
    this.plan = plan;
    this.asked = asked;
    this.places = new RidePlaces(plan, in);
    this.in = in;
  }

  Optional<Ride> read(RideText.Table table) {
    for (List<Cell> row : table.rows()) {
      if (row.size() != table.headings().size()) {
        in.error(
            row.get(0).spot(),
            row.size() == 1
                ? RideMistakes.ONE_CELL.with(table.headings().size())
                : RideMistakes.OTHER_NUMBER_OF_CELLS.with(row.size(), table.headings().size()));
      }
    }
    if (in.count() > 0) {
      return Optional.empty();
    }
    FormHeading heading = new FormHeading(asked, in);
    heading.check(table.before());
    Map<String, Integer> columns = columns(table.headings());
    if (in.count() > 0) {
      return Optional.empty();
    }
    Map<Integer, Cell> seen = new HashMap<>();
    List<Observed> out = new ArrayList<>();
    for (List<Cell> row : table.rows()) {
      Cell first = row.get(columns.getOrDefault(APPROACH, 0));
      Optional<Approach> approach = approach(first);
      if (approach.isEmpty()) {
        continue;
      }
      int number = approach.get().number();
      cell(row, columns, NAME).ifPresent(c -> checkName(c, number));
      Cell before = seen.putIfAbsent(number, first);
      if (before != null) {
        in.error(first.spot(), RideMistakes.APPROACH_TWICE.with(number, before.spot()));
      }
      out.add(observed(approach.get(), name -> cell(row, columns, name)));
    }
    if (in.count() == 0 && out.stream().allMatch(TypedRide::empty)) {
      in.error(new SourcePosition(in.file(), 1, 1), RideMistakes.NOTHING_FILLED_IN);
    }
    if (in.count() > 0) {
      return Optional.empty();
    }
    heading.tellIfMissing();
    return Optional.of(new Ride.Typed(out));
  }

  /** The numbers of the approaches change with an issue; their names do not. */
  private void checkName(Cell cell, int number) {
    String name =
        asked.names().get().get(plan.approaches().indexOf(byNumber(number).orElseThrow()));
    if (!RideReader.plain(cell.text()).equals(RideReader.plain(name))) {
      in.error(cell.spot(), RideMistakes.OTHER_NAME.with(number, cell.text(), name));
    }
  }

  /** Where each known column stands; unknown ones, double ones and missing ones are reported. */
  private Map<String, Integer> columns(List<Cell> headings) {
    Map<String, Integer> out = new HashMap<>();
    for (int i = 0; i < headings.size(); i++) {
      Cell heading = headings.get(i);
      String name = RideReader.name(heading.text());
      RideReader.unit(heading.text()).ifPresent(unit -> units.put(name, unit));
      if (!KNOWN.contains(name)) {
        in.error(
            heading.spot(),
            heading.text().isBlank()
                ? RideMistakes.NO_HEADING.with(KNOWN)
                : RideMistakes.UNKNOWN_COLUMN.with(heading.text(), KNOWN, Nearest.to(name, KNOWN)));
      } else if (out.putIfAbsent(name, i) != null) {
        in.error(heading.spot(), TableMistakes.COLUMN_TWICE.with(name));
      }
    }
    if (!out.containsKey(APPROACH)) {
      in.error(headings.get(0).spot(), RideMistakes.COLUMN_MISSING.with(APPROACH, KNOWN));
    }
    return out;
  }

  private static boolean empty(Observed o) {
    return o.brakedAtM().isEmpty()
        && o.brakedSpeedMps().isEmpty()
        && o.firstPressurePa().isEmpty()
        && o.stopErrorM().isEmpty()
        && o.over().isEmpty()
        && o.forbidden().isEmpty();
  }

  private Optional<Cell> cell(List<Cell> row, Map<String, Integer> columns, String name) {
    return Optional.ofNullable(columns.get(name))
        .map(row::get)
        .filter(c -> !NOT_SEEN.contains(RideReader.plain(c.text())))
        .map(c -> withUnit(c, units.getOrDefault(name, "")));
  }

  private Optional<Approach> approach(Cell cell) {
    int last = plan.approaches().size();
    Optional<Approach> found =
        cell.text().matches("\\d{1,4}")
            ? byNumber(Integer.parseInt(cell.text()))
            : Optional.empty();
    if (found.isEmpty()) {
      in.error(
          cell.spot(),
          cell.text().isBlank()
              ? RideMistakes.NO_APPROACH.with(last)
              : RideMistakes.UNKNOWN_APPROACH.with(cell.text(), last));
    }
    return found;
  }

  /** A number alone has the unit of its heading. */
  private static Cell withUnit(Cell cell, String unit) {
    Matcher bare = BARE.matcher(cell.text());
    return unit.isEmpty() || !bare.matches()
        ? cell
        : new Cell(bare.group(1) + " " + unit + bare.group(2), cell.spot());
  }

  private Optional<Approach> byNumber(int number) {
    return plan.approaches().stream().filter(a -> a.number() == number).findFirst();
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
        cells.apply(BRAKED).flatMap(c -> places.on(c, BRAKED, a)),
        cells
            .apply(SPEED)
            .flatMap(c -> quantity(c, SPEED, QuantityKind.SPEED))
            .map(v -> v.metresPerSecond())
            .filter(v -> believed(cells, SPEED, v <= mostMps())),
        cells
            .apply(PRESSURE)
            .flatMap(c -> quantity(c, PRESSURE, QuantityKind.PRESSURE))
            .map(p -> p.pascals())
            .filter(p -> believed(cells, PRESSURE, p <= MORE * mostPa())),
        cells
            .apply(STOP)
            .flatMap(this::stopError)
            .filter(e -> believed(cells, STOP, Math.abs(e) <= FAR_PAST_M)),
        cells.apply(OVER).flatMap(this::over).filter(v -> believed(cells, OVER, v <= FAR_OVER_MPS)),
        cells.apply(FORBIDDEN).flatMap(this::count));
  }

  /** What no train does is a slip of the pen: it is asked about, and not scored. */
  private boolean believed(Function<String, Optional<Cell>> cells, String name, boolean possible) {
    if (!possible) {
      cells
          .apply(name)
          .ifPresent(c -> in.error(c.spot(), RideMistakes.IMPOSSIBLE.with(name, c.text())));
    }
    return possible;
  }

  private double mostMps() {
    double line = plan.ceiling().stream().mapToDouble(CeilingStep::speedMps).max().orElse(0);
    return line + FAR_OVER_MPS;
  }

  private double mostPa() {
    return plan.assignment().stock().brakes().stream()
        .mapToDouble(b -> b.full().pascals())
        .max()
        .orElse(Double.POSITIVE_INFINITY);
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

  private Optional<Double> stopError(Cell cell) {
    String text = RideReader.plain(cell.text());
    if (AT_THE_MARK.contains(text)) {
      return Optional.of(0.0);
    }
    Matcher m = ERROR.matcher(text);
    if (!m.matches()) {
      boolean length = QuantityKind.LENGTH.parse(text).isOk();
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
    return NONE.contains(RideReader.plain(cell.text()))
        ? Optional.of(0.0)
        : quantity(cell, OVER, QuantityKind.SPEED).map(v -> v.metresPerSecond());
  }

  private Optional<Integer> count(Cell cell) {
    if (NONE.contains(RideReader.plain(cell.text()))) {
      return Optional.of(0);
    } else if (cell.text().matches("\\d{1,3}")) {
      return Optional.of(Integer.parseInt(cell.text()));
    }
    in.error(cell.spot(), RideMistakes.NO_COUNT.with(FORBIDDEN, cell.text()));
    return Optional.empty();
  }
}
