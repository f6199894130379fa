package gradepost.source.file;

import gradepost.source.file.SourceFiles.Content;
import gradepost.units.Nearest;
import gradepost.yaml.Key;
import gradepost.yaml.Nodes;
import gradepost.yaml.Reader;
import gradepost.yaml.Scalar;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.YamlText;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/** The key {@code gradepost}, by which a file says of what kind it is. */
public final class FileHeading {
  private static final String KEY = "gradepost";

  /** The key as a file of this kind has it. */
  public static Key<FileKind> key(FileKind kind) {
    return Key.required(
        KEY,
        new Scalar.Choice<>(Map.of(kind.word(), kind)),
        "The kind of file: " + kind.word() + ".");
  }

  /** The tree of a file; what prevents it is reported at the top of the file. */
  public static Optional<Node> load(Content content, Reader in) {
    return content.match(
        held ->
            YamlText.compose(in.file(), held.bytes(), "gradepost: " + FileKind.words(), in::add),
        unreadable -> {
          in.error(
              new SourcePosition(in.file(), 1, 1),
              "the file cannot be read: " + unreadable.why(),
              "",
              "");
          return Optional.empty();
        });
  }

  /**
   * False, and reported, when a file says that it is of another kind; the rest is then not read.
   */
  public static boolean isKind(Node root, FileKind wanted, Reader in) {
    if (root instanceof MappingNode group) {
      Optional<Node> stated = Reader.valueOf(group, KEY);
      for (FileKind kind : FileKind.values()) {
        boolean says = stated.filter(n -> says(n, kind)).isPresent();
        if (says && kind != wanted) {
          in.error(
              stated.get(),
              "this is a " + kind.word() + " file, where a " + wanted.word() + " file belongs",
              "gradepost: " + wanted.word(),
              "");
          return false;
        }
      }
    }
    return true;
  }

  private static boolean says(Node node, FileKind kind) {
    return node instanceof ScalarNode scalar && scalar.getValue().strip().equals(kind.word());
  }

  /** What kind of file it says that it is; reported where it does not say so. */
  public static Optional<FileKind> stated(Node root, Reader in) {
    String allowed = FileKind.words();
    if (!(root instanceof MappingNode group)) {
      in.error(root, "the file is " + Nodes.described(root), "a group of keys", "");
      return Optional.empty();
    }
    Optional<Node> stated = Reader.valueOf(group, KEY);
    if (stated.isEmpty()) {
      in.error(root, "the file lacks the key \"gradepost\"", allowed, "");
      return Optional.empty();
    }
    Optional<FileKind> kind =
        Arrays.stream(FileKind.values()).filter(k -> says(stated.get(), k)).findFirst();
    if (kind.isEmpty()) {
      List<String> words = Arrays.stream(FileKind.values()).map(FileKind::word).toList();
      String typed = stated.get() instanceof ScalarNode scalar ? scalar.getValue() : "";
      in.error(
          stated.get(),
          "gradepost " + Nodes.described(stated.get()) + " is not known",
          allowed,
          Nearest.to(typed, words).orElse(""));
    }
    return kind;
  }

  private FileHeading() {}
}
