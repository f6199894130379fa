package gradepost.app.shelf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/**
 * By what files are known to be as they were: size, and when they were last written. Whoever writes
 * a file of the same size within one tick of the disk's clock is not seen.
 */
record Stamps(Map<Path, String> byFile) {
  /** Copies the map. */
  Stamps {
    byFile = Map.copyOf(byFile);
  }

  static Stamps of(Collection<Path> files) {
    Map<Path, String> out = new HashMap<>();
    files.forEach(file -> out.put(file, one(file)));
    return new Stamps(out);
  }

  /** Whether one of them is as it was. */
  boolean stands(Path file) {
    return one(file).equals(byFile.get(file));
  }

  /** Whether each of them is as it was. */
  boolean stand() {
    return byFile.entrySet().stream().allMatch(e -> one(e.getKey()).equals(e.getValue()));
  }

  private static String one(Path file) {
    try {
      BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
      return found.size() + " " + found.lastModifiedTime() + " " + found.fileKey();
    } catch (IOException e) {
      return "none";
    }
  }
}
