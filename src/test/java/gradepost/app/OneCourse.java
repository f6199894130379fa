package gradepost.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** The demo data with a pack of one direction and formation; what is accepted is of another. */
public final class OneCourse {
  private static final Path DEMO = Path.of("routes");

  /**
   * The pack, in a copy of the data.
   *
   * @param copy the folder that it goes to
   */
  public static Path in(Path copy) throws IOException {
    copy(DEMO, copy);
    Path pack = copy.resolve("ormel-coast/pack-ormel.yaml");
    String text = Files.readString(pack).replace("[3-car, 6-car]", "[3-car]");
    int in = text.indexOf("  - direction: In");
    int accepted = text.indexOf("accepted:");
    Files.writeString(
        pack,
        text.substring(0, in)
            + text.substring(text.indexOf("formations:"), accepted)
            + text.substring(text.indexOf("high-risk:", accepted)));
    return pack;
  }

  /** Everything below a folder, below another. */
  static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> walk = Files.walk(from)) {
      for (Path each : walk.sorted().toList()) {
        Path there = to.resolve(from.relativize(each).toString());
        if (Files.isDirectory(each)) {
          Files.createDirectories(there);
        } else {
          Files.copy(each, there);
        }
      }
    }
  }

  private OneCourse() {}
}
