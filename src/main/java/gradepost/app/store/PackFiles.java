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
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Finds the files that a command was pointed at. */
public final class PackFiles {
  /** Ids by the name and the digest of a file. */
  private static final Map<String, String> IDS = new ConcurrentHashMap<>();

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

  /**
   * What a pack is called, by its file alone; whoever has read the pack knows it already. A file
   * that still holds what it held is not read as YAML anew.
   */
  public static String id(Path pack) {
    try {
      byte[] bytes = Files.isRegularFile(pack) ? Files.readAllBytes(pack) : new byte[0];
      return bytes.length == 0
          ? Disk.sources().idOf(Disk.name(pack))
          : IDS.computeIfAbsent(
              pack.getFileName() + " " + Digest.of(bytes),
              key -> Disk.sources().idOf(Disk.name(pack)));
    } catch (IOException e) {
      return Disk.sources().idOf(Disk.name(pack));
    }
  }

  /** Whether a file can be read as a pack, whatever may be wrong in it. */
  public static boolean opens(Path pack) {
    return Disk.sources().opensPack(Disk.name(pack));
  }

  /** Why these packs cannot be briefed into one folder, if so. */
  public static Optional<String> obstacle(List<Path> named, List<Path> packs) {
    return packs.isEmpty()
        ? Optional.of(
            named.get(0) + ": error: no pack below this folder; a pack is a file pack-….yaml")
        : clash(packs);
  }

  /** Why two of these packs would have the same history and papers of the same names, if so. */
  public static Optional<String> clash(List<Path> packs) {
    return sameId(packs).stream()
        .map(
            two ->
                StoreText.error(
                    two.pack(), StoreText.SAME_ID.with(two.other(), two.id(), two.free())))
        .findFirst();
  }

  /**
   * Two packs that are called the same.
   *
   * @param other the one that was met first
   */
  public record SameId(Path pack, Path other, String id) {
    /** An id that would tell the pack apart, by its folder. */
    public String free() {
      Path folder = Disk.folder(Disk.absolute(pack)).getFileName();
      return FileNames.asName(folder + " " + id);
    }
  }

  /** The packs among these that are called as an earlier one is. */
  public static List<SameId> sameId(List<Path> packs) {
    Map<String, Path> taken = new LinkedHashMap<>();
    List<SameId> same = new ArrayList<>();
    for (Path pack : packs) {
      String id = id(pack);
      Optional.ofNullable(taken.putIfAbsent(id, pack))
          .ifPresent(other -> same.add(new SameId(pack, other, id)));
    }
    return same;
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
