package gradepost.app.export;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * How figures of a hand-over are printed, from the file alone: the steps of its units and the
 * sections of its track. Written anew; the printed words are plain texts here.
 */
final class HandOverGrid {
  private static final double HAIR = 1e-6;

  /** Nearer to its target than this, metres, a place is told by the distance before it. */
  private static final double NEAR_M = 100;

  private record Section(String name, double fromM, double toM, double mileageM, double sense) {
    double mileageAt(double atM) {
      return mileageM + sense * (atM - fromM);
    }

    double metresAt(double atMileageM) {
      return fromM + sense * (atMileageM - mileageM);
    }

    boolean holds(double atMileageM) {
      double at = metresAt(atMileageM);
      return at >= fromM - HAIR && at <= toM + HAIR;
    }
  }

  private final List<Section> sections = new ArrayList<>();
  private final double placeM;
  private final double lengthM;
  private final double speedMps;
  private final double pressurePa;

  HandOverGrid(JsonNode file) {
    JsonNode units = file.get("units");
    placeM = units.get("placeM").doubleValue();
    lengthM = units.get("lengthM").doubleValue();
    speedMps = units.get("speedMps").doubleValue();
    pressurePa = units.get("pressurePa").doubleValue();
    for (JsonNode section : file.at("/track/sections")) {
      double from = section.get("mileageFromM").doubleValue();
      sections.add(
          new Section(
              section.get("section").textValue(),
              section.get("fromM").doubleValue(),
              section.get("toM").doubleValue(),
              from,
              Math.signum(section.get("mileageToM").doubleValue() - from)));
    }
  }

  private Section at(double atM) {
    Section found = sections.get(0);
    for (Section section : sections) {
      found = atM >= section.fromM - 1e-9 ? section : found;
    }
    return found;
  }

  double metresAt(JsonNode location) {
    String name = location.get("section").textValue();
    for (Section section : sections) {
      if (section.name.equals(name)) {
        return section.metresAt(location.at("/mileage/metres").doubleValue());
      }
    }
    throw new AssertionError("no section " + name);
  }

  private double clamped(double atM) {
    return Math.min(Math.max(atM, 0), sections.get(sections.size() - 1).toM);
  }

  /** The last place of the grid at or before a place, in its section. */
  double before(double atM) {
    Section section = at(clamped(atM));
    double mileage = section.mileageAt(Math.min(clamped(atM), section.toM));
    double grid = section.sense > 0 ? down(mileage / placeM) : up(mileage / placeM);
    return Math.max(section.fromM, section.metresAt(grid * placeM));
  }

  String place(double atM) {
    return mileage(before(atM), false);
  }

  /** At or after it: for what must have been reached. */
  String placePast(double atM) {
    double before = before(atM);
    if (before >= clamped(atM) - HAIR) {
      return mileage(before, true);
    }
    Section section = at(clamped(atM));
    double next = before(Math.min(section.toM, clamped(atM) + placeM));
    return mileage(next >= clamped(atM) - HAIR ? next : section.toM, true);
  }

  private String mileage(double atM, boolean past) {
    Section section = at(atM);
    double steps = section.mileageAt(atM) / placeM;
    boolean on = Math.abs(steps - Math.rint(steps)) < HAIR;
    boolean up = (section.sense > 0) == past;
    long printed = (long) (on ? Math.rint(steps) : up ? Math.ceil(steps) : Math.floor(steps));
    double there = section.mileageAt(atM);
    boolean named = sections.stream().filter(s -> s.holds(there)).count() > 1;
    return printed + (named ? " " + section.name : "");
  }

  /** On the way to a target: by the distance where it is near, or was planned by it. */
  String placeTo(double atM, double targetM) {
    double ahead = targetM - atM;
    double units = ahead / lengthM;
    boolean whole = Math.abs(units - Math.rint(units)) < HAIR;
    boolean onGrid = Math.abs(before(atM) - atM) < HAIR;
    boolean byDistance = ahead >= 0.5 && (ahead < NEAR_M || (!onGrid && whole));
    return byDistance ? "before " + lengthUp(ahead) : place(atM);
  }

  long speed(double mps) {
    return down(mps / speedMps);
  }

  long speedAtMost(double mps) {
    return up(mps / speedMps);
  }

  long pressure(double pa) {
    return Math.round(pa / pressurePa);
  }

  long pressureAtLeast(double pa) {
    return up(pa / pressurePa);
  }

  long pressureLeft(double pa) {
    return down(pa / pressurePa);
  }

  long room(double metres) {
    return down(metres / lengthM);
  }

  long lengthUp(double metres) {
    return up(metres / lengthM);
  }

  double lengthUnitM() {
    return lengthM;
  }

  static long down(double x) {
    return (long) Math.floor(x + HAIR);
  }

  static long up(double x) {
    return (long) Math.ceil(x - HAIR);
  }
}
