package gradepost.app.export;

import static gradepost.app.export.HandOverFigures.number;

import com.fasterxml.jackson.databind.JsonNode;

/** The figures in the sentence of a finding, from what the file says of it. */
final class HandOverFindings {
  /**
   * US (FRA Safety Advisory 2015-03) and British triggers, read: a drop of more than 20 mph, or by
   * a third or more.
   */
  private static final double FAR_MPS = 20 * 0.44704;

  private final JsonNode finding;
  private final HandOverGrid grid;
  private final FigureLists out;

  private HandOverFindings(JsonNode finding, HandOverGrid grid, FigureLists out) {
    this.finding = finding;
    this.grid = grid;
    this.out = out;
  }

  static void add(JsonNode finding, HandOverGrid grid, FigureLists out) {
    new HandOverFindings(finding, grid, out).all();
  }

  private double n(String field) {
    return number(finding, field);
  }

  private void all() {
    switch (finding.get("kind").textValue()) {
      case "BoardTooLate" -> {
        place(n("boardM"));
        length(grid.lengthUp(n("boardM") - n("plannedM")));
        place(n("plannedM"));
      }
      case "BigDrop" -> {
        speed(grid.speed(n("fromMps")));
        speed(grid.speed(n("toMps")));
        if (n("toMps") > n("fromMps") * 2 / 3 + 1e-9) {
          speed(grid.speed(FAR_MPS));
        }
      }
      case "PlatformTooShort" -> {
        length(grid.room(n("platformM")));
        length(grid.lengthUp(n("trainM")));
      }
      case "NoStopMark" -> count(finding.get("cars").longValue());
      case "NoBrakingPoint" -> {
        if (finding.get("service").has("printedM")) {
          place(number(finding.get("service"), "printedM"));
        }
      }
      case "NearBuffers" -> {
        length(grid.room(n("distanceM")));
        length(grid.lengthUp(n("marginM")));
      }
      case "LessToGive" -> {
        time(HandOverGrid.down(n("afterS")));
        pressure(grid.pressureLeft(n("givesPa")));
        pressure(grid.pressure(finding.at("/brake/full/pascals").doubleValue()));
      }
      case "FullAgain" -> {
        place(n("releasedM"));
        time(HandOverGrid.up(n("afterS")));
        out.add("PrintedValue.Place.at", grid.placePast(n("fullM")));
      }
      case "AtBuffers" -> speed(grid.speedAtMost(n("speedMps")));
      case "OftenLate" -> {
        count(Math.round(100 * n("share")));
        if (finding.has("earlierM")) {
          length(grid.lengthUp(n("earlierM")));
        }
      }
      case "SometimesNotHeld", "LateThough" -> count((long) Math.ceil(100 * n("share") - 1e-9));
      case "NextFirst" -> speed(grid.speed(n("fromMps")));
      case "NoRoomForTest" -> noRoom();
      case "TestInstead" -> {
        if (finding.has("where")) {
          place(number(finding.get("where"), "atM"));
          speed(grid.speed(number(finding.get("where"), "mps")));
        }
      }
      case "TestOnRail" -> {
        place(n("brakingM"));
        place(n("testM"));
      }
      case "RuleBroken" -> rule();
      default -> {}
    }
  }

  private void noRoom() {
    place(n("testM"));
    double is = finding.at("/why/is").doubleValue();
    switch (finding.at("/why/reason").textValue()) {
      case "SLOW" -> {
        speed(grid.speed(is));
        speed(grid.speed(n("testMps")));
      }
      case "FAST" -> {
        speed(grid.speedAtMost(is));
        speed(grid.speed(n("testMps")));
      }
      case "AGAIN" -> time(HandOverGrid.down(is));
      case "RECHARGE" -> time(HandOverGrid.up(is));
      default -> {}
    }
  }

  /** What there is too little of leans down, what there is too much of up. */
  private void rule() {
    place(n("atM"));
    switch (finding.get("broken").textValue()) {
      case "MOVEMENTS", "ROWS" -> {
        count((long) n("is"));
        count((long) n("rule"));
      }
      case "DEAD_NOTCH", "NOTCH_KEPT" -> {
        time(HandOverGrid.up(n("is")));
        time(HandOverGrid.up(n("rule")));
      }
      default -> {
        time(HandOverGrid.down(n("is")));
        time(HandOverGrid.up(n("rule")));
      }
    }
  }

  private void place(double atM) {
    out.add("PrintedValue.Place.at", grid.place(atM));
  }

  private void speed(long number) {
    out.add("PrintedValue.Speed.speed", number);
  }

  private void length(long number) {
    out.add("PrintedValue.Length.length", number);
  }

  private void pressure(long number) {
    out.add("PrintedValue.Pressure.pressure", number);
  }

  private void time(long seconds) {
    out.add("PrintedValue.Time.time", seconds);
  }

  private void count(long number) {
    out.add("PrintedValue.Count.number", number);
  }
}
