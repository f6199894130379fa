package gradepost.source.file;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Optional;

/**
 * Names of files as seen from other files; parts are separated by slashes, whatever the machine.
 */
public final class FileNames {

  /** The last part: how a pack file is called among its own inputs. */
  public static String last(String name) {
    return name.substring(name.lastIndexOf('/') + 1);
  }

  /** Whether a file has data in it, by its name. */
  public static boolean isYaml(String name) {
    return name.endsWith(".yaml") || name.endsWith(".yml");
  }

  /** {@code reference} without needless parts; empty when it is not relative. */
  public static Optional<String> tidy(String reference) {
    boolean elsewhere = reference.startsWith("/") || reference.matches("[A-Za-z]:.*");
    if (elsewhere || reference.contains("\\") || reference.indexOf('\0') >= 0) {
      return Optional.empty();
    }
    Deque<String> parts = new ArrayDeque<>();
    for (String part : reference.split("/", -1)) {
      boolean up = part.equals("..");
      if (up && !parts.isEmpty() && !parts.getLast().equals("..")) {
        parts.removeLast();
      } else if (!part.isEmpty() && !part.equals(".")) {
        parts.addLast(part);
      }
    }
    return Optional.of(String.join("/", parts));
  }

  /** A tidy reference made in {@code from}, as a name of the same sort as that of {@code from}. */
  public static String seenFrom(String from, String reference) {
    String folder = from.substring(0, from.lastIndexOf('/') + 1);
    String joined = folder + reference;
    boolean absolute = joined.startsWith("/");
    return tidy(absolute ? joined.substring(1) : joined)
        .map(tidied -> absolute ? "/" + tidied : tidied)
        .orElse(joined);
  }

  /** Letters and digits of any script stay; all else could mean something to a file system. */
  public static String asName(String words) {
    return words
        .toLowerCase(Locale.ROOT)
        .replaceAll("[^\\p{L}\\p{N}]+", "-")
        .replaceAll("^-|-$", "");
  }

  private FileNames() {}
}
