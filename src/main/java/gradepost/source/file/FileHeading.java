package gradepost.source.file;

import gradepost.source.file.SourceFiles.Content;
import gradepost.units.Nearest;
import gradepost.yaml.Key;
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
            YamlText.compose(
                in.file(), held.bytes(), () -> FileMistakes.KINDS.of(FileKind.words()), in::add),
        unreadable -> {
          in.error(new SourcePosition(in.file(), 1, 1), FileMistakes.UNREADABLE.with(unreadable));
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
          in.error(stated.get(), FileMistakes.ANOTHER_KIND.with(kind, wanted));
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
    if (!(root instanceof MappingNode group)) {
      in.error(root, FileMistakes.NO_GROUP.with(root));
      return Optional.empty();
    }
    Optional<Node> stated = Reader.valueOf(group, KEY);
    if (stated.isEmpty()) {
      in.error(root, FileMistakes.NO_KIND.with(FileKind.words()));
      return Optional.empty();
    }
    Optional<FileKind> kind =
        Arrays.stream(FileKind.values()).filter(k -> says(stated.get(), k)).findFirst();
    if (kind.isEmpty()) {
      List<String> words = FileKind.words();
      String typed = stated.get() instanceof ScalarNode scalar ? scalar.getValue() : "";
      in.error(
          stated.get(),
          FileMistakes.UNKNOWN_KIND.with(stated.get(), words, Nearest.to(typed, words)));
    }
    return kind;
  }

  private FileHeading() {}
}
