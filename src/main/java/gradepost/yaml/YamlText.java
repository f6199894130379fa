package gradepost.yaml;

import gradepost.text.Allowed;
import gradepost.text.Mistakes.One;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.reader.StreamReader;

/** From the bytes of a file to its tree of nodes; no value is made, no type is guessed. */
public final class YamlText {
  /**
   * How large a text may be that people type, in MB: a file of data or a table. A route of a
   * thousand miles has a tenth of it.
   */
  public static final int MOST_MB = 4;

  private static final int MOST_BYTES = MOST_MB * 1_000_000;

  /** The parser copies the rest of a line again and again while it looks for the end of a word. */
  static final int LONGEST_LINE = 20_000;

  private static final int DEPTH = 30;
  private static final int ALIASES = 50;

  /**
   * What the parser of YAML says.
   *
   * @param context what it was reading; empty text where it does not say
   */
  record Complaint(String problem, String context) {}

  /** The tree; empty where the text is not YAML, and then there is a problem. */
  public static Optional<Node> compose(String file, byte[] bytes, Consumer<Problem> problems) {
    return compose(file, bytes, () -> "", problems);
  }

  /**
   * The tree of a file.
   *
   * @param wanted what an empty file should hold at least
   */
  public static Optional<Node> compose(
      String file, byte[] bytes, Allowed wanted, Consumer<Problem> problems) {
    if (bytes.length > MOST_BYTES) {
      problems.accept(
          Problem.error(new SourcePosition(file, 1, 1), YamlMistakes.LONG_FILE.with(MOST_MB)));
      return Optional.empty();
    }
    Optional<String> text = decode(file, bytes, problems);
    return text.filter(t -> linesEnd(file, t, problems))
        .flatMap(t -> tree(file, t, wanted, problems));
  }

  /** Whether no line is so long that nobody typed it; reported otherwise. */
  private static boolean linesEnd(String file, String text, Consumer<Problem> problems) {
    int line = 1;
    int start = 0;
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '\n' || text.charAt(i) == '\r') {
        line += text.charAt(i) == '\n' ? 1 : 0;
        start = i + 1;
      } else if (i - start >= LONGEST_LINE) {
        problems.accept(
            Problem.error(
                new SourcePosition(file, line, 1), YamlMistakes.LONG_LINE.with(LONGEST_LINE)));
        return false;
      }
    }
    return true;
  }

  private static Optional<Node> tree(
      String file, String text, Allowed wanted, Consumer<Problem> problems) {
    try {
      @Nullable Node root = yaml().compose(new java.io.StringReader(text));
      if (root == null) {
        problems.accept(
            Problem.error(new SourcePosition(file, 1, 1), YamlMistakes.EMPTY_FILE.with(wanted)));
      }
      return Optional.ofNullable(root);
    } catch (MarkedYAMLException e) {
      @Nullable Mark mark = e.getProblemMark() != null ? e.getProblemMark() : e.getContextMark();
      SourcePosition spot =
          mark == null ? new SourcePosition(file, 1, 1) : SourcePosition.of(file, mark);
      String problem = e.getProblem() == null ? YamlMistakes.UNREADABLE : e.getProblem();
      String context = e.getContext() == null ? "" : oneLine(e.getContext());
      problems.accept(
          Problem.error(spot, hint(problem).with(new Complaint(oneLine(problem), context))));
    } catch (YAMLException e) {
      problems.accept(
          Problem.error(
              new SourcePosition(file, 1, 1),
              YamlMistakes.NOT_YAML.with(
                  new Complaint(oneLine(String.valueOf(e.getMessage())), ""))));
    }
    return Optional.empty();
  }

  private static Yaml yaml() {
    LoaderOptions options = new LoaderOptions();
    options.setCodePointLimit(MOST_BYTES);
    options.setNestingDepthLimit(DEPTH);
    options.setMaxAliasesForCollections(ALIASES);
    options.setAllowRecursiveKeys(false);
    options.setAllowDuplicateKeys(false);
    options.setProcessComments(false);
    return new Yaml(new SafeConstructor(options));
  }

  /** Strict UTF-8, with or without a byte-order mark; and nothing that YAML calls unprintable. */
  public static Optional<String> decode(String file, byte[] bytes, Consumer<Problem> problems) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    String text = out.flip().toString();
    if (result.isError()) {
      problems.accept(Problem.error(spotOfEnd(file, text), YamlMistakes.NOT_UTF_8));
      return Optional.empty();
    }
    String plain = text.startsWith("\ufeff") ? text.substring(1) : text;
    for (int i = 0; i < plain.length(); i += Character.charCount(plain.codePointAt(i))) {
      if (!StreamReader.isPrintable(plain.codePointAt(i))) {
        problems.accept(
            Problem.error(
                spotOfEnd(file, plain.substring(0, i)),
                YamlMistakes.CONTROL_CHARACTER.with(plain.codePointAt(i))));
        return Optional.empty();
      }
    }
    return Optional.of(plain);
  }

  private static SourcePosition spotOfEnd(String file, String before) {
    int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
    return new SourcePosition(file, line, before.length() - before.lastIndexOf('\n'));
  }

  /** By the words of the parser, the mistake that says what may help. */
  private static One<Complaint> hint(String problem) {
    if (problem.contains("\\t")) {
      return YamlMistakes.TAB;
    }
    return problem.contains("mapping values are not allowed")
        ? YamlMistakes.COLON
        : YamlMistakes.NOT_YAML;
  }

  private static String oneLine(String text) {
    String line = text.replaceAll("\\s+", " ").strip();
    return line.length() > 160 ? line.substring(0, 157) + "…" : line;
  }

  private YamlText() {}
}
