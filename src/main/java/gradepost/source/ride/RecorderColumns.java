package gradepost.source.ride;

import gradepost.source.ride.RideReader.Cell;
import gradepost.source.table.TableMistakes;
import gradepost.units.Parsed;
import gradepost.units.QuantityKind;
import gradepost.yaml.Problem;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which columns of an export are used, and the unit of each. */
final class RecorderColumns {
  static final String DISTANCE = "distance";
  static final String SPEED = "speed";
  static final String PRESSURE = "pressure";
  static final String NOTCH = "notch";
  static final String TIME = "time";
  static final String PASSED = "passed";
  static final String AWS = "aws";
  static final String VOLTAGE = "line voltage";
  private static final List<String> KNOWN =
      List.of(DISTANCE, SPEED, PRESSURE, NOTCH, TIME, PASSED, AWS, VOLTAGE, "note");

  private final List<Cell> headings;
  private final Reader in;
  private final Map<String, Integer> columns = new HashMap<>();
  private final Map<String, Double> units = new HashMap<>();

  /** Tells what is missing or without a unit; a column of another name is not used, and told. */
  RecorderColumns(List<Cell> headings, Reader in) {
    this.headings = headings;
    this.in = in;
    find();
    if (in.count() == 0) {
      unit(DISTANCE, QuantityKind.LENGTH, "m");
      unit(SPEED, QuantityKind.SPEED, "mph");
      unit(PRESSURE, QuantityKind.PRESSURE, "psi");
      unit(VOLTAGE, QuantityKind.VOLTAGE, "V");
    }
  }

  private void find() {
    List<String> unused = new ArrayList<>();
    for (int i = 0; i < headings.size(); i++) {
      Cell heading = headings.get(i);
      String name = RideReader.name(heading.text());
      if (!KNOWN.contains(name)) {
        unused.add(heading.text());
      } else if (columns.putIfAbsent(name, i) != null) {
        in.error(heading.spot(), TableMistakes.COLUMN_TWICE.with(name));
      }
    }
    for (String name : List.of(DISTANCE, SPEED)) {
      if (!columns.containsKey(name)) {
        in.error(headings.get(0).spot(), RideMistakes.COLUMN_MISSING.with(name, KNOWN));
      }
    }
    if (!unused.isEmpty()) {
      in.add(
          new Problem(
              headings.get(0).spot(), Severity.NOTE, RideMistakes.NOT_USED.with(unused, KNOWN)));
    }
  }

  /** The cell of a column, where the export has it. */
  Optional<Cell> cell(List<Cell> row, String name) {
    return Optional.ofNullable(columns.get(name)).map(row::get);
  }

  /** What one of a column's unit is in SI. */
  double unit(String name) {
    return units.getOrDefault(name, 1.0);
  }

  private <Q> void unit(String name, QuantityKind<Q> kind, String example) {
    Integer column = columns.get(name);
    if (column == null) {
      return;
    }
    Cell heading = headings.get(column);
    Optional<String> unit = RideReader.unit(heading.text());
    if (unit.isEmpty()) {
      in.error(heading.spot(), RideMistakes.NO_UNIT.with(heading.text(), kind, name, example));
      return;
    }
    Optional<Double> one = si("1 " + unit.get(), kind);
    if (one.isPresent()) {
      units.put(name, one.get());
    } else {
      in.error(heading.spot(), RideMistakes.UNKNOWN_UNIT.with(unit.get(), kind, name, example));
    }
  }

  /** Also in another spelling, where it can mean one thing only. */
  private static <Q> Optional<Double> si(String text, QuantityKind<Q> kind) {
    return kind.parse(text)
        .match(
            ok -> Optional.of(kind.si(ok.value())),
            bad ->
                bad.meant().size() == 1
                    ? kind.parse(bad.meant().get(0)).ok().map(Parsed.Ok::value).map(kind::si)
                    : Optional.empty());
  }
}
