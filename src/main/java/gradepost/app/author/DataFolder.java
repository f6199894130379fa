package gradepost.app.author;

import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.source.file.FileNames;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The files of data below a folder, and which packs name them. A link that leads out is none. */
final class DataFolder {
  private static final Pattern KIND = Pattern.compile("(?m)^gradepost:[ \\t]*([a-z]+)");

  /** What is quoted, or a comment, or plain words up to the end of the name of a file. */
  private static final Pattern NAMED =
      Pattern.compile(
          "(?<![^\\s\\[{,:])(?:\"([^\"\\n]{0,255})\"|'([^'\\n]{0,255})')"
              + "|(?<!\\S)#[^\\n]*"
              + "|([^\\s,\\[\\]{}'\":#-](?:[^\\n,\\[\\]{}'\":#]|(?<=\\S)#){0,254}?\\.ya?ml)");

  /** The kind stands at the top; whatever else is there may be long. */
  private static final int HEAD_BYTES = 8192;

  private final Path root;
  private final Map<Path, Named> named = new HashMap<>();

  /** The files that a pack names, as it was when it was written last. */
  private record Named(String stamp, Set<Path> files) {}

  DataFolder(Path folder) throws IOException {
    root = folder.toRealPath();
  }

  Path root() {
    return root;
  }

  /** All of them, by name. */
  List<LineFile> all() throws IOException {
    List<Path> found;
    try (Stream<Path> walk = Files.walk(root)) {
      found = walk.filter(this::isOurs).sorted().toList();
    }
    List<LineFile> out = new ArrayList<>();
    for (Path file : found) {
      out.add(new LineFile(Disk.name(root.relativize(file)), kind(file), file));
    }
    return out;
  }

  /** The one that is called so, among those that the folder holds. */
  Optional<LineFile> file(String name) throws IOException {
    return all().stream().filter(f -> f.name().equals(name)).findFirst();
  }

  private boolean isOurs(Path file) {
    boolean hidden = false;
    for (Path part : root.relativize(file)) {
      hidden |= part.toString().startsWith(".");
    }
    try {
      return !hidden
          && FileNames.isYaml(Disk.name(file))
          && Files.isRegularFile(file)
          && file.toRealPath().startsWith(root);
    } catch (IOException e) {
      return false;
    }
  }

  private static String kind(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      Matcher kind = KIND.matcher(new String(in.readNBytes(HEAD_BYTES), StandardCharsets.UTF_8));
      return kind.find() ? kind.group(1) : "";
    }
  }

  /** The packs that name a file, and it too if it is one; by their names. */
  synchronized List<Path> packsWith(Path file) throws IOException {
    List<Path> out = new ArrayList<>();
    for (LineFile pack : all()) {
      if (PackFiles.isPack(pack.at())
          && (pack.at().equals(file) || named(pack.at()).contains(file))) {
        out.add(pack.at());
      }
    }
    return out;
  }

  private Set<Path> named(Path pack) throws IOException {
    BasicFileAttributes now = Files.readAttributes(pack, BasicFileAttributes.class);
    String stamp = now.size() + " " + now.lastModifiedTime();
    Named known = named.get(pack);
    if (known == null || !known.stamp().equals(stamp)) {
      known = new Named(stamp, files(pack));
      named.put(pack, known);
    }
    return known.files();
  }

  /** By its text alone: a pack that cannot be read still names its files. */
  private static Set<Path> files(Path pack) throws IOException {
    String text = new String(Disk.typed(pack), StandardCharsets.UTF_8);
    Set<Path> out = new HashSet<>();
    Matcher names = NAMED.matcher(text);
    while (names.find()) {
      Stream.of(1, 2, 3)
          .flatMap(form -> Optional.ofNullable(names.group(form)).stream())
          .flatMap(name -> FileNames.tidy(name.strip()).stream())
          .filter(FileNames::isYaml)
          .forEach(name -> out.add(Disk.folder(pack).resolve(name).normalize()));
    }
    return out;
  }
}
