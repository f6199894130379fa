package gradepost.app.store;

import gradepost.source.file.FileNames;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Finds the files that a command was pointed at. */
public final class PackFiles {
  /** The packs among these: files as named, and every {@code pack-….yaml} below a folder. */
  public static List<Path> packs(List<Path> named) throws IOException {
    return below(named, PackFiles::isPack);
  }

  /** Whether a file is a pack, by its name. */
  public static boolean isPack(Path file) {
    return isPack(String.valueOf(file.getFileName()));
  }

  private static boolean isPack(String name) {
    return name.startsWith("pack-") && FileNames.isYaml(name);
  }

  /** Every data file among these: files as named, and every YAML file below a folder. */
  public static List<Path> all(List<Path> named) throws IOException {
    return below(named, FileNames::isYaml);
  }

  /** What the papers of a pack are named after: {@code pack-valley.yaml} makes {@code valley-…}. */
  public static String stem(Path pack) {
    String name = String.valueOf(pack.getFileName()).replaceFirst("\\.ya?ml$", "");
    return name.startsWith("pack-") ? name.substring("pack-".length()) : name;
  }

  /** Why these packs cannot be briefed into one folder, if so. */
  public static Optional<String> obstacle(List<Path> named, List<Path> packs) {
    return packs.isEmpty()
        ? Optional.of(
            named.get(0) + ": error: no pack below this folder; a pack is a file pack-….yaml")
        : clash(packs);
  }

  /** Two packs whose papers would have the same names, if there are any. */
  static Optional<String> clash(List<Path> packs) {
    Map<String, Path> taken = new LinkedHashMap<>();
    for (Path pack : packs) {
      Path other = taken.putIfAbsent(stem(pack), pack);
      if (other != null) {
        return Optional.of(
            "%s: error: %s would write papers of the same names\n  Maybe rename one, or give each its own --out"
                .formatted(pack, other));
      }
    }
    return Optional.empty();
  }

  /** Every pack that lies in a folder itself. */
  public static List<Path> beside(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(Files::isRegularFile).filter(PackFiles::isPack).sorted().toList();
    }
  }

  /** The folder that holds all data of a pack; files outside it may belong to somebody else. */
  public static Path data(Path pack) {
    Path own = Disk.folder(Disk.absolute(pack));
    return Optional.ofNullable(own.getParent()).orElse(own);
  }

  private static List<Path> below(List<Path> named, Predicate<String> wanted) throws IOException {
    List<Path> found = new ArrayList<>();
    for (Path path : named) {
      if (Files.isDirectory(path)) {
        try (Stream<Path> walk = Files.walk(path)) {
          walk.filter(Files::isRegularFile)
              .filter(file -> wanted.test(String.valueOf(file.getFileName())))
              .sorted()
              .forEach(found::add);
        } catch (UncheckedIOException e) {
          throw Optional.ofNullable(e.getCause()).orElseThrow(() -> e);
        }
      } else {
        found.add(path);
      }
    }
    return found.stream().distinct().toList();
  }

  private PackFiles() {}
}
