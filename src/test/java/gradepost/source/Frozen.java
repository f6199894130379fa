package gradepost.source;

import java.nio.file.Path;

/**
 * The valley packs and their unit that are kept as they are; the demo may change, this does not.
 */
public final class Frozen {
  /** Route, stock and policy in folders of their own, as in {@code routes}. */
  public static final Path FOLDER = Path.of("src/test/resources/gradepost/frozen");

  /** The pack, from that folder. */
  public static final String VALLEY = "thrumble-valley/pack-thrumble.yaml";

  /** The double line with a single-line stretch, in two directions with two formations. */
  public static PackFile valley() {
    return pack(FOLDER, VALLEY);
  }

  /** A pack that has to be good. */
  public static PackFile pack(Path folder, String file) {
    Reading<PackFile> reading = new Sources(new DiskFiles(folder)).pack(file);
    if (reading instanceof Reading.Good<PackFile> good) {
      return good.value();
    }
    throw new AssertionError(reading.problems().text());
  }

  private Frozen() {}
}
