package gradepost.source;

import gradepost.source.file.DiskFiles;
import gradepost.source.file.SourceFiles;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.nio.charset.StandardCharsets;
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

  /**
   * The same under a policy whose last places lean further: a fifth of the brakes isolated (one of
   * four vehicles, two of eight), 5 mph faster than planned, 80 % of the force. The strongest
   * brakes are those of the motor cars: 1.15 to 1.
   */
  public static PackFile leaning() {
    SourceFiles disk = new DiskFiles(FOLDER);
    return pack(
        name -> name.equals("policy/miles-psi.yaml") ? leaning(disk.read(name)) : disk.read(name),
        VALLEY);
  }

  /** The same line with two-pipe stock: distributors, graduated both ways. */
  public static PackFile twoPipe() {
    SourceFiles disk = new DiskFiles(FOLDER);
    SourceFiles stocks = new DiskFiles(Path.of("src/test/resources/gradepost/source"));
    return pack(
        name ->
            name.equals("stock/valley-unit.yaml")
                ? stocks.read("stock-two-pipe.yaml")
                : disk.read(name),
        VALLEY);
  }

  /** The same where the two steepest falls are 1 in 40: there the speed is checked, then braked. */
  public static PackFile steep() {
    SourceFiles disk = new DiskFiles(FOLDER);
    return pack(
        name ->
            name.equals("thrumble-valley/route.yaml") ? steep(disk.read(name)) : disk.read(name),
        VALLEY);
  }

  private static SourceFiles.Content steep(SourceFiles.Content route) {
    String text = new String(((SourceFiles.Bytes) route).bytes(), StandardCharsets.UTF_8);
    return new SourceFiles.Bytes(
        replaced(text, "gradient: 1 in 60 falling", "gradient: 1 in 40 falling")
            .getBytes(StandardCharsets.UTF_8));
  }

  private static SourceFiles.Content leaning(SourceFiles.Content policy) {
    String text = new String(((SourceFiles.Bytes) policy).bytes(), StandardCharsets.UTF_8);
    String other = replaced(text, "isolated-share: {value: 0 %", "isolated-share: {value: 20 %");
    other = replaced(other, "  overspeed: {value: 2 mph", "  overspeed: {value: 5 mph");
    other = replaced(other, "brake-factor: {value: 90 %", "brake-factor: {value: 80 %");
    return new SourceFiles.Bytes(other.getBytes(StandardCharsets.UTF_8));
  }

  private static String replaced(String text, String from, String to) {
    if (!text.contains(from)) {
      throw new AssertionError("the frozen policy has no " + from);
    }
    return text.replace(from, to);
  }

  /** A pack that has to be good. */
  public static PackFile pack(Path folder, String file) {
    return pack(new DiskFiles(folder), file);
  }

  private static PackFile pack(SourceFiles files, String file) {
    Reading<PackFile> reading = new Sources(files).pack(file);
    if (reading instanceof Reading.Good<PackFile> good) {
      return good.value();
    }
    throw new AssertionError(reading.problems().text());
  }

  private Frozen() {}
}
