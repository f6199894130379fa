package gradepost.source.file;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The five kinds of file; each file says its own under the key {@code gradepost}. */
public enum FileKind {
  ROUTE,
  STOCK,
  POLICY,
  RESTRICTIONS,
  PACK;

  /** The word that stands in the file. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  static List<String> words() {
    return Arrays.stream(values()).map(FileKind::word).toList();
  }
}
