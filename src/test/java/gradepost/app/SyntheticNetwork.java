package gradepost.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * An invented network for tests: short lines with three stations, each with packs for one direction
 * or the other. The same seed gives the same files.
 */
public final class SyntheticNetwork {
  private final Path folder;
  private final int packsOnARoute;

  /** A folder with the demo stock and policy, in which routes can be made. */
  public SyntheticNetwork(Path folder, int packsOnARoute) throws IOException {
    this.folder = folder;
    this.packsOnARoute = packsOnARoute;
    for (String file : List.of("stock/coast-unit.yaml", "policy/km-bar.yaml")) {
      Path to = folder.resolve(file);
      Files.createDirectories(to.getParent());
      Files.copy(Path.of("routes").resolve(file), to);
    }
  }

  /** Makes so many packs and names their files. */
  public List<Path> packs(int count, long seed) throws IOException {
    List<Path> packs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int route = i / packsOnARoute;
      Path line = folder.resolve("line-%03d".formatted(route));
      if (i % packsOnARoute == 0) {
        Files.createDirectories(line);
        Files.writeString(line.resolve("route.yaml"), route(route, new Random(seed + route)));
        Files.writeString(
            line.resolve("restrictions.yaml"),
            "gradepost: restrictions\nnotices: []\nnone: \"none in force, checked on 2026-11-19\"\n");
      }
      Path pack = line.resolve("pack-%04d.yaml".formatted(i));
      Files.writeString(pack, pack(i));
      packs.add(pack);
    }
    return packs;
  }

  public static String name(int route) {
    return "Invented line %03d".formatted(route);
  }

  private static String km(double metres) {
    return String.format(Locale.ROOT, "%.3f km", metres / 1000);
  }

  private static String route(int number, Random random) {
    double middle = 1500 + 10 * random.nextInt(40);
    double curve = 600 + 10 * random.nextInt(30);
    double summit = 800 + 10 * random.nextInt(60);
    int line = 60 + 10 * random.nextInt(4);
    StringBuilder out = new StringBuilder("gradepost: route\n");
    out.append("name: ").append(name(number)).append('\n');
    out.append("description: made for a test\nunits: metric\n");
    out.append("directions: {forward: Out, backward: In}\n");
    out.append("posts: posts on the left going Out, every 500 m\n");
    out.append("sections: [{name: Main, from: 0.000 km, to: 3.600 km}]\n");
    out.append("lines:\n  - {name: Out Main, directions: Out}\n");
    out.append("  - {name: In Main, directions: In}\n");
    out.append(
        "gradients:\n  - {from: 0.000 km, to: %s, gradient: %d permille rising}\n"
            .formatted(km(summit), 1 + random.nextInt(8)));
    out.append(
        "  - {from: %s, to: 3.600 km, gradient: %d permille falling}\n"
            .formatted(km(summit), 1 + random.nextInt(8)));
    out.append(
        "curves: [{from: %s, to: %s, hand: left, radius: 600 m, cant: 60 mm}]\n"
            .formatted(km(curve), km(curve + 200)));
    out.append("restrictions:\n");
    out.append(
        "  - {name: the line, from: 0.000 km, to: 3.600 km, speed: %d km/h}\n".formatted(line));
    out.append("stations:\n");
    double[] places = {300, middle, 3300};
    String[] names = {"Aldery", "Brink", "Corrow"};
    for (int i = 0; i < names.length; i++) {
      double at = places[i];
      out.append(
          "  - name: %s\n    code: %s\n    platforms:\n"
              .formatted(names[i], names[i].substring(0, 3).toUpperCase(Locale.ROOT)));
      for (String way : List.of("Out", "In")) {
        boolean forward = way.equals("Out");
        out.append(
            "      - {number: \"%d\", from: %s, to: %s, directions: %s, lines: [%s Main],"
                .formatted(forward ? 1 : 2, km(at - 100), km(at + 100), way, way));
        out.append(
            " side: left, stop-marks: [{cars: 3, at: %s, direction: %s}]}\n"
                .formatted(km(forward ? at + 60 : at - 60), way));
      }
    }
    out.append("landmarks:\n");
    for (int i = 0; i < 6; i++) {
      double at = 450 + 500 * i + 10 * random.nextInt(20);
      out.append(
          "  - {name: white house %d, at: %s, side: left, night: no, sighting: 200 m}\n"
              .formatted(i + 1, km(at)));
    }
    return out.toString();
  }

  private static String pack(int number) {
    boolean out = number % 2 == 0;
    List<String> names = new ArrayList<>(List.of("Aldery", "Brink", "Corrow"));
    if (!out) {
      java.util.Collections.reverse(names);
    }
    String platform = out ? "1" : "2";
    StringBuilder text = new StringBuilder("gradepost: pack\nroute: route.yaml\n");
    text.append("stock: ../stock/coast-unit.yaml\npolicy: ../policy/km-bar.yaml\n");
    text.append("restrictions: [restrictions.yaml]\n");
    text.append("title: Pack %04d\n".formatted(number));
    text.append(
        "directions:\n  - direction: %s\n    lines: [%1$s Main]\n    calls:\n"
            .formatted(out ? "Out" : "In"));
    for (int i = 0; i < names.size(); i++) {
      text.append(
          "      - {station: %s, platform: \"%s\"%s}\n"
              .formatted(names.get(i), platform, i == 1 ? ", dwell: 30 s" : ""));
    }
    text.append("formations: [3-car]\nload: seated\nissue:\n  number: 1\n");
    text.append("  issued: 2026-11-20 12:00\n  valid-from: 2026-11-23 04:00\n");
    text.append("  valid-to: 2027-05-31 04:00\n  known-up-to: 2026-11-19 18:00\n");
    text.append("  prepared-by: route clerk\n  checked-by: driver instructor\n");
    text.append("  sources: [\"an invented line book\"]\n");
    return text.toString();
  }

  /** A notice for one direction of one route. */
  public static String notice(String reference, int route, String way, double fromM, int kmh) {
    return ("gradepost: restrictions\nnotices:\n"
            + "  - {reference: %s, type: temporary, status: in force, route: %s, from: %s, to: %s,"
            + " directions: %s, speed: %d km/h, reason: wet bed, imposed: 2026-11-26 04:00,"
            + " until: further notice}\n")
        .formatted(reference, name(route), km(fromM), km(fromM + 200), way, kmh);
  }
}
