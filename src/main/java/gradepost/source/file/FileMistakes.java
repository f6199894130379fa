package gradepost.source.file;

import gradepost.source.file.SourceFiles.Unreadable;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.yaml.Holes;
import java.util.Collection;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;

/** What can be wrong with a file as a whole. Its sentences stand in {@code mistakes.properties}. */
public final class FileMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(FileMistakes.class);

  public static final One<Unreadable> UNREADABLE =
      MISTAKES.declare("unreadable", new Hole<>("why", Unreadable::why));
  public static final Two<String, Unreadable> NAMED_UNREADABLE =
      MISTAKES.declare("named-unreadable", Hole.word("file"), new Hole<>("why", Unreadable::why));
  public static final Two<FileKind, FileKind> ANOTHER_KIND =
      MISTAKES.declare(
          "another-kind",
          new Hole<>("found", FileKind::word),
          new Hole<>("wanted", FileKind::word));
  public static final One<Node> NO_GROUP = MISTAKES.declare("no-group", Holes.node("found"));
  static final Phrase<Collection<String>> KINDS = MISTAKES.phrase("kinds", Hole.list("kinds"));
  public static final One<Collection<String>> NO_KIND =
      MISTAKES.declare("no-kind", Hole.list("kinds"));
  public static final Three<Node, Collection<String>, Optional<String>> UNKNOWN_KIND =
      MISTAKES.declare(
          "unknown-kind", Holes.node("found"), Hole.list("kinds"), Hole.perhaps("near"));
  public static final Mistake A_FOLDER = MISTAKES.declare("a-folder");
  public static final Mistake NOT_A_REGULAR_FILE = MISTAKES.declare("not-a-regular-file");
  public static final Mistake A_LINK_OUT = MISTAKES.declare("a-link-out");
  static final One<Integer> TOO_LARGE = MISTAKES.declare("too-large", Hole.count("most"));
  public static final Mistake NO_SUCH_FILE = MISTAKES.declare("no-such-file");
  public static final Mistake NO_NAME_OF_A_FILE = MISTAKES.declare("no-name-of-a-file");
  public static final Mistake CANNOT_BE_OPENED = MISTAKES.declare("cannot-be-opened");
  public static final Mistake NOT_KEPT = MISTAKES.declare("not-kept");

  private FileMistakes() {}
}
