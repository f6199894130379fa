package gradepost.yaml;

import gradepost.text.Allowed;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Five;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.PrintedText;
import gradepost.units.PrintedText.Obstacle;
import gradepost.yaml.YamlText.Complaint;
import java.util.Collection;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;

/**
 * What can be wrong with a file of keys and values, and what may stand in one. Its texts stand in
 * {@code mistakes.properties}.
 */
final class YamlMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(YamlMistakes.class);
  private static final Hole<String> KEY = Hole.word("key");
  private static final Hole<String> NOUN = Hole.word("noun");
  private static final Hole<String> TEXT = Holes.quoted("text");
  private static final Hole<Node> FOUND = Holes.node("found");
  private static final Hole<Allowed> ALLOWED = Hole.allowed("allowed");
  private static final Hole<Collection<String>> KNOWN = Hole.list("known");
  private static final Hole<Optional<String>> NEAR = Hole.perhaps("near");

  static final String FOUND_EMPTY = MISTAKES.phrase("found.empty");
  static final String FOUND_LIST = MISTAKES.phrase("found.list");
  static final String FOUND_GROUP = MISTAKES.phrase("found.group");
  static final String FOUND_ELSE = MISTAKES.phrase("found.else");
  static final String WHOLE_FILE = MISTAKES.phrase("whole-file");
  static final Phrase<SourcePosition> POSITION =
      MISTAKES.phrase(
          "position",
          Hole.count("line")
              .of(SourcePosition::line)
              .and(Hole.count("column").of(SourcePosition::column)));
  static final Phrase<String> ENTRY = MISTAKES.phrase("entry", Hole.word("list"));
  static final Phrase<Integer> MORE_PROBLEMS = MISTAKES.phrase("more-problems", Hole.count("more"));

  private static final Hole<Scalar.Text> PRINTABLE =
      ALLOWED
          .<Scalar.Text>of(text -> text)
          .and(new Hole<>("printable", text -> PrintedText.allowed()));
  private static final Phrase<Scalar.Text> ONE_LINE = MISTAKES.phrase("words.one-line", PRINTABLE);
  private static final Phrase<Scalar.Text> LINES = MISTAKES.phrase("words.lines", PRINTABLE);

  static final Phrase<Scalar.PlainNumber> NUMBER =
      MISTAKES.phrase(
          "number",
          NOUN.of(Scalar.PlainNumber::noun)
              .and(number("least").of(Scalar.PlainNumber::least))
              .and(number("most").of(Scalar.PlainNumber::most)));
  static final Phrase<Scalar.Quantity<?>> BOUNDED =
      MISTAKES.phrase(
          "bounded",
          Hole.allowed("quantity")
              .<Scalar.Quantity<?>>of(Scalar.Quantity::kind)
              .and(Hole.word("least").of(Scalar.Quantity::least))
              .and(Hole.word("most").of(Scalar.Quantity::most)));
  static final String HEIGHT = MISTAKES.phrase("height");
  private static final Hole<ListOf<?>> ELEMENT = Hole.allowed("element").of(ListOf::element);
  static final Phrase<ListOf<?>> LIST = MISTAKES.phrase("list", ELEMENT);
  static final Phrase<ListOf<?>> LIST_LEAST =
      MISTAKES.phrase("list.least", ELEMENT.and(Hole.count("least").of(ListOf::least)));
  static final Phrase<ListOr<?>> LIST_OR_GROUP =
      MISTAKES.phrase(
          "list-or-group",
          Hole.allowed("list")
              .<ListOr<?>>of(ListOr::list)
              .and(Hole.allowed("group").of(ListOr::shape)));
  static final Phrase<ObjectSchema<?>> GROUP =
      MISTAKES.phrase(
          "group",
          NOUN.<ObjectSchema<?>>of(ObjectSchema::noun)
              .and(Hole.list("keys").of(ObjectSchema::keyNames)));
  static final Phrase<Variants<?>> VARIANTS =
      MISTAKES.phrase(
          "variants",
          NOUN.<Variants<?>>of(Variants::noun)
              .and(KEY.of(Variants::key))
              .and(Hole.list("words").of(variants -> variants.shapes().keySet())));
  static final Phrase<Forms<?>> FORMS =
      MISTAKES.phrase(
          "forms",
          NOUN.<Forms<?>>of(Forms::noun)
              .and(Hole.list("keys", " or ").of(forms -> forms.forms().keySet())));
  static final Phrase<WordOr<?>> WORD_OR =
      MISTAKES.phrase(
          "word-or",
          Hole.word("word")
              .<WordOr<?>>of(WordOr::word)
              .and(Hole.allowed("other").of(WordOr::other)));
  static final Phrase<WordMap> WORD_MAP =
      MISTAKES.phrase("word-map", Hole.word("value").of(WordMap::valueNoun));

  static final Four<String, Node, Allowed, Optional<String>> NOT_THIS =
      MISTAKES.declare("not-this", KEY, FOUND, ALLOWED, NEAR);
  static final Four<String, Node, Allowed, String> TEXT_FOR_A_LIST =
      MISTAKES.declare("text-for-a-list", KEY, FOUND, ALLOWED, Hole.word("text"));
  static final Three<String, Integer, Allowed> TOO_LONG =
      MISTAKES.declare("too-long", KEY, Hole.count("longest"), ALLOWED);
  static final Five<String, String, Obstacle, Scalar.Text, Optional<String>> NOT_PRINTABLE =
      MISTAKES.declare(
          "not-printable",
          KEY,
          TEXT,
          PrintedText.obstacleIn("obstacle"),
          new Hole<>("allowed", text -> (text.lines() ? LINES : ONE_LINE).of(text)),
          NEAR);
  static final Four<String, String, Allowed, Collection<String>> UNIT_AFTER_A_NUMBER =
      MISTAKES.declare("unit-after-a-number", KEY, TEXT, ALLOWED, Hole.list("near"));
  static final Three<String, String, Allowed> NO_NUMBER =
      MISTAKES.declare("no-number", KEY, TEXT, ALLOWED);
  static final Three<String, String, Allowed> OUT_OF_RANGE =
      MISTAKES.declare("out-of-range", KEY, TEXT, ALLOWED);
  static final Four<String, String, Allowed, Collection<String>> UNKNOWN_WORD =
      MISTAKES.declare("unknown-word", KEY, TEXT, ALLOWED, Hole.list("near"));
  static final Three<String, Integer, Integer> TOO_FEW_ENTRIES =
      MISTAKES.declare("too-few-entries", KEY, Hole.count("count"), Hole.count("least"));
  static final Two<String, Integer> ONE_ENTRY =
      MISTAKES.declare("one-entry", KEY, Hole.count("least"));
  static final Three<String, Integer, Integer> TOO_MANY_ENTRIES =
      MISTAKES.declare("too-many-entries", KEY, Hole.count("count"), Hole.count("most"));
  static final Four<String, String, String, SourcePosition> VALUE_TWICE =
      MISTAKES.declare("value-twice", KEY, TEXT, Hole.word("list"), Holes.line("first"));
  static final Two<String, Node> KEY_NOT_A_WORD = MISTAKES.declare("key-not-a-word", NOUN, FOUND);
  static final One<String> NAME_NOT_A_WORD = MISTAKES.declare("name-not-a-word", KEY);
  static final Two<String, SourcePosition> KEY_TWICE =
      MISTAKES.declare("key-twice", Holes.quoted("key"), Holes.line("first"));
  static final Four<String, String, Collection<String>, Optional<String>> UNKNOWN_KEY =
      MISTAKES.declare("unknown-key", NOUN, Holes.quoted("key"), KNOWN, NEAR);
  static final Three<String, String, Allowed> KEY_MISSING =
      MISTAKES.declare("key-missing", NOUN, KEY, ALLOWED);
  static final Three<String, Node, Collection<String>> VARIANT_NOT_A_WORD =
      MISTAKES.declare("variant-not-a-word", KEY, FOUND, KNOWN);
  static final Four<String, String, Collection<String>, Optional<String>> UNKNOWN_VARIANT =
      MISTAKES.declare("unknown-variant", KEY, TEXT, KNOWN, NEAR);

  /** What a value says that refuses to be made of these keys. */
  static final One<IllegalArgumentException> REFUSED =
      MISTAKES.declare("refused", new Hole<>("why", e -> String.valueOf(e.getMessage())));

  static final One<Allowed> EMPTY_FILE = MISTAKES.declare("empty-file", Hole.allowed("wanted"));
  static final String UNREADABLE = MISTAKES.phrase("unreadable");
  private static final Phrase<Complaint> IN_CONTEXT =
      MISTAKES.phrase(
          "in-context",
          Hole.word("problem")
              .of(Complaint::problem)
              .and(Hole.word("context").of(Complaint::context)));
  private static final Hole<Complaint> COMPLAINT =
      new Hole<>("problem", c -> c.context().isEmpty() ? c.problem() : IN_CONTEXT.of(c));
  static final One<Complaint> NOT_YAML = MISTAKES.declare("not-yaml", COMPLAINT);
  static final One<Complaint> TAB = MISTAKES.declare("tab", COMPLAINT);
  static final One<Complaint> COLON = MISTAKES.declare("colon", COMPLAINT);
  static final Three<String, Integer, Integer> TOO_MANY_KEYS =
      MISTAKES.declare("too-many-keys", NOUN, Hole.count("count"), Hole.count("most"));
  static final Two<String, Integer> REST_NOT_READ =
      MISTAKES.declare("rest-not-read", KEY, Hole.count("most"));
  static final One<Integer> LONG_FILE = MISTAKES.declare("long-file", Hole.count("most"));
  static final One<Integer> LONG_LINE = MISTAKES.declare("long-line", Hole.count("most"));
  static final Mistake NOT_UTF_8 = MISTAKES.declare("not-utf-8");
  static final One<Integer> CONTROL_CHARACTER =
      MISTAKES.declare("control-character", new Hole<>("code", c -> "U+%04X".formatted(c)));

  /** A number as it would be typed: a whole one without a point. */
  private static Hole<Double> number(String name) {
    return new Hole<>(
        name,
        value ->
            value == Math.rint(value) ? Long.toString(value.longValue()) : Double.toString(value));
  }

  private YamlMistakes() {}
}
