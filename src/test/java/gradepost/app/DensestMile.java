package gradepost.app;

import gradepost.source.Frozen;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * An invented line, in either system of units, with one mile in which more stands than a driver can
 * say in one breath: signals, boards, a junction, restrictions over one another, landmarks, and a
 * station in the middle. Names have 30 letters, the widest that names are made of.
 *
 * <p>Places are counted in steps of a chain or of 20 m; the dense mile is 200 to 280.
 */
final class DensestMile {
  static final String LONGEST = "Great Wimbrellow Market Street";
  static final String WIDEST = "Wimmerdown Common and Mawmouth";

  /** What a strip has to name: stations, signals, landmarks, structures, gaps. */
  static final List<String> NAMED =
      List.of(
          "Aldwick End",
          LONGEST,
          WIDEST,
          "WWM 2041",
          "WWM 2043",
          "WWM 2045",
          "WWM 2047",
          "Wimbrellow Market Mill Crossing",
          "Mawmouth Common Tunnel",
          "chapel with the bent wind vane",
          "mill with a whitewashed window",
          "parapet of Womenswick Mill way",
          "lamp of the wharf and warehouse",
          "gate of the Wimbrellow meadows",
          "platform ramp, Wimbrellow",
          "mouth of Mawmouth Common bore",
          "telegraph pole with white bands",
          "Wimbrellow Mill Crossing gap");

  private static final int FIRST = 80;
  private static final int LAST = 400;
  private static final int OF_A_MILE = 80;
  private static final double STEP_KM = 0.02;
  private final UnitStyle units;
  private final Path folder;

  private DensestMile(Path folder, UnitStyle units) {
    this.folder = folder;
    this.units = units;
  }

  /** Writes all files below the folder and names the pack. */
  static Path pack(Path folder, UnitStyle units, String cards) throws IOException {
    return new DensestMile(folder, units).write(cards);
  }

  /**
   * What changes where it is densest: one restriction more, and the one that stood is tightened.
   */
  static Path notice(Path folder, UnitStyle units) throws IOException {
    DensestMile mile = new DensestMile(folder, units);
    Path file = folder.resolve("notice.yaml");
    Files.writeString(
        file,
        "gradepost: restrictions\nnotices:\n"
            + mile.slack("T 26/2041", 230, 234, 15, "wet bed under the points, trains shake")
            + mile.slack("T 26/2044", 262, 268, 20, "embankment watched by day and night"));
    return file;
  }

  private boolean miles() {
    return units == UnitStyle.MILES;
  }

  private String at(double step) {
    if (!miles()) {
      return String.format(Locale.ROOT, "%.3f km", STEP_KM * step);
    }
    int whole = (int) step / OF_A_MILE;
    double chains = step - whole * OF_A_MILE;
    return chains == Math.rint(chains)
        ? String.format(Locale.ROOT, "%dm %02dch", whole, (int) chains)
        : String.format(Locale.ROOT, "%dm %04.1fch", whole, chains);
  }

  private String over(double from, double to) {
    return "from: " + at(from) + ", to: " + at(to);
  }

  private String speed(int mph) {
    return miles() ? mph + " mph" : Math.round(mph * 1.6 / 5) * 5 + " km/h";
  }

  private String length(int chains) {
    return miles() ? chains + " ch" : chains * 20 + " m";
  }

  private String falling(int one) {
    return one == 0
        ? "level"
        : miles()
            ? "1 in " + Math.abs(one) + (one < 0 ? " falling" : " rising")
            : Math.abs(1000 / one) + " permille" + (one < 0 ? " falling" : " rising");
  }

  private Path write(String cards) throws IOException {
    String stock = miles() ? "valley-unit" : "coast-unit";
    String policy = miles() ? "miles-psi" : "km-bar";
    copy("stock/" + stock + ".yaml");
    copy("policy/" + policy + ".yaml");
    Path line = Files.createDirectories(folder.resolve("dense"));
    Files.writeString(line.resolve("route.yaml"), route());
    Files.writeString(
        line.resolve("restrictions.yaml"),
        "gradepost: restrictions\nnotices:\n"
            + slack("T 26/2041", 230, 234, 20, "wet bed under the points"));
    Path pack = line.resolve("pack-dense.yaml");
    Files.writeString(pack, pack(stock, policy, cards));
    return pack;
  }

  private void copy(String file) throws IOException {
    Path to = folder.resolve(file);
    Files.createDirectories(to.getParent());
    Files.copy((miles() ? Frozen.FOLDER : Path.of("routes")).resolve(file), to);
  }

  private String slack(String reference, int from, int to, int mph, String reason) {
    return ("  - {reference: %s, type: temporary, status: in force,"
            + " route: Wimbrellow and Mawmouth line, %s, directions: Down,"
            + " speed: %s, normal-speed: %s, reason: \"%s\", imposed: 2026-11-20 04:00,"
            + " until: further notice, boards: [%s, %s, %s]}\n")
        .formatted(
            reference,
            over(from, to),
            speed(mph),
            speed(40),
            reason,
            board("warning", from - 14),
            board("commencement", from),
            board("termination", to));
  }

  private String board(String kind, double step) {
    return "{kind: %s, at: %s, direction: Down}".formatted(kind, at(step));
  }

  private String restriction(String name, int from, int to, int mph, boolean boards) {
    return "  - {name: \"%s\", %s, speed: %s, reason: \"curves and points\"%s}\n"
        .formatted(
            name,
            over(from, to),
            speed(mph),
            boards
                ? ", boards: [%s, %s, %s]"
                    .formatted(
                        board("warning", from - 16),
                        board("commencement", from),
                        board("termination", to))
                : "");
  }

  private String station(String name, String code, int from, int to, boolean last) {
    int[] cars = miles() ? new int[] {2, 4, 8} : new int[] {2, 3, 6};
    StringBuilder marks = new StringBuilder();
    for (int i = 0; i < cars.length; i++) {
      marks.append(i == 0 ? "" : ", ");
      marks.append("{cars: %d, at: %s, direction: Down}".formatted(cars[i], at(to - 6 + 2 * i)));
    }
    return ("  - name: \"%s\"\n    code: %s\n    platforms:\n"
            + "      - {number: \"12\", %s, directions: Down, lines: [Down Main], side: left,"
            + " stop-marks: [%s]%s}\n")
        .formatted(
            name,
            code,
            over(from, to),
            marks,
            last ? ", buffer-stops: " + at(to + 2) : ", doors: \"released by the guard alone\"");
  }

  private String signal(String id, String kind, double step, String more) {
    return "  - {id: %s, kind: %s, at: %s, direction: Down, line: Down Main, aws: %s%s}\n"
        .formatted(id, kind, at(step), at(step - 9), more);
  }

  private String landmark(String name, double step, boolean night) {
    return "  - {name: \"%s\", at: %s, side: left, night: %s, sighting: %s}\n"
        .formatted(name, at(step), night ? "yes" : "no", length(8));
  }

  private String route() {
    StringBuilder out = new StringBuilder("gradepost: route\nname: Wimbrellow and Mawmouth line\n");
    out.append("description: made for a test\nunits: ").append(miles() ? "miles" : "metric");
    out.append("\ndirections: {forward: Down, backward: Up}\nposts: on the left\n");
    out.append("sections: [{name: Main, ").append(over(FIRST, LAST)).append("}]\n");
    out.append("lines:\n  - {name: Down Main, directions: Down}\ngradients:\n");
    int[] slopes = {-120, -80, 60, -66, 0, -75, -60, 90, -70, 0};
    int[] ends = {80, 200, 212, 226, 238, 256, 266, 272, 284, 330, 400};
    for (int i = 0; i < slopes.length; i++) {
      out.append(
          "  - {%s, gradient: %s}\n".formatted(over(ends[i], ends[i + 1]), falling(slopes[i])));
    }
    out.append("curves:\n");
    for (int[] c : List.of(new int[] {205, 211}, new int[] {219, 229}, new int[] {258, 271})) {
      out.append(
          "  - {%s, hand: %s, radius: %s, cant: 60 mm, check-rail: low rail}\n"
              .formatted(over(c[0], c[1]), c[0] == 219 ? "left" : "right", length(25)));
    }
    out.append("restrictions:\n").append(restriction("Line", FIRST, LAST, 60, false));
    out.append(restriction("Wimbrellow West Curves and Box", 220, 258, 40, true));
    out.append(restriction("Mawmouth Common Womenswick Dip", 268, 276, 25, true));
    out.append("junctions:\n  - name: Wimbrellow Market West Points\n    ").append("from: ");
    out.append(at(226)).append("\n    to: ").append(at(228)).append("\n    routes:\n");
    out.append("      - {name: Main, speed: %s}\n".formatted(speed(40)));
    out.append(
        "      - {name: Wharf and Warehouse Goods Lines, speed: %s, diverging: yes}\n"
            .formatted(speed(15)));
    out.append("stations:\n").append(station("Aldwick End", "ALD", 84, 106, false));
    out.append(station(LONGEST, "WIMMWW", 240, 256, false));
    out.append(station(WIDEST, "MMWWMM", 370, 392, true));
    out.append("signals:\n").append(signal("WWM 2041", "distant", 206, ""));
    out.append(
        signal(
            "WWM 2043",
            "stop and caution",
            224,
            ", routes: [{leads-to: Main, indication: \"no position light\"}, {leads-to: Wharf and"
                + " Warehouse Goods Lines, indication: \"position 4\", speed: "
                + speed(15)
                + "}]"));
    out.append(signal("WWM 2045", "stop", 258, "")).append(signal("WWM 2047", "stop", 330, ""));
    out.append("structures:\n");
    out.append(
        "  - {kind: level crossing, name: Wimbrellow Market Mill Crossing, at: %s}\n"
            .formatted(at(239)));
    out.append("  - {kind: tunnel, name: Mawmouth Common Tunnel, %s}\n".formatted(over(262, 267)));
    out.append("landmarks:\n");
    out.append(landmark("chapel with the bent wind vane", 210, false));
    out.append(landmark("mill with a whitewashed window", 212, true));
    out.append(landmark("parapet of Womenswick Mill way", 217, false));
    out.append(landmark("lamp of the wharf and warehouse", 222, true));
    out.append(landmark("gate of the Wimbrellow meadows", 232, false));
    out.append(landmark("platform ramp, Wimbrellow", 240, true));
    out.append(landmark("mouth of Mawmouth Common bore", 262, false));
    out.append(landmark("telegraph pole with white bands", 266, true));
    out.append("rail-gaps:\n  - {name: Wimbrellow Mill Crossing gap, ");
    out.append(over(238.5, 239.5)).append("}\nlow-adhesion:\n");
    out.append("  - {name: Womenswick beech hanger, %s, note: leaves}\n".formatted(over(214, 222)));
    out.append("brake-tests:\n  - {at: %s, direction: Down, ".formatted(at(150)));
    return out.append("speed: ").append(speed(30)).append(", note: after the start}\n").toString();
  }

  private String pack(String stock, String policy, String cards) {
    return """
        gradepost: pack
        route: route.yaml
        stock: ../stock/%s.yaml
        policy: ../policy/%s.yaml
        restrictions: [restrictions.yaml]
        title: Wimbrellow and Mawmouth, stopping trains
        directions:
          - direction: Down
            lines: [Down Main]
            junctions: {Wimbrellow Market West Points: Main}
            calls:
              - {station: Aldwick End, platform: "12"}
              - {station: %s, platform: "12", dwell: 30 s}
              - {station: %s, platform: "12"}
        formations: [%s]
        load: seated
        cards: %s
        papers: [briefing, sign-off, cards]
        issue:
          number: 1
          issued: 2026-11-20 12:00
          valid-from: 2026-11-23 04:00
          valid-to: 2027-05-31 04:00
          known-up-to: 2026-11-19 18:00
          prepared-by: route clerk
          checked-by: driver instructor
          sources: ["an invented line book"]
        """
        .formatted(stock, policy, LONGEST, WIDEST, miles() ? "4-car" : "3-car", cards);
  }
}
