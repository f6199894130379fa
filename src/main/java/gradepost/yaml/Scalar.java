package gradepost.yaml;

import gradepost.units.Nearest;
import gradepost.units.Parsed;
import gradepost.units.Parsed.Bad;
import gradepost.units.Parsed.Ok;
import gradepost.units.PrintedText;
import gradepost.units.QuantityKind;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/** A value that is one text. What YAML itself would make of the text does not matter. */
public sealed interface Scalar<T> extends ValueType<T>
    permits Scalar.Text, Scalar.PlainNumber, Scalar.Choice, Scalar.Quantity, OwnText {

  @Override
  default boolean isOneText() {
    return true;
  }

  @Override
  default <R> R match(Cases<R> cases) {
    return cases.text(this);
  }

  /** One answer for each kind of text. */
  interface Texts<R> {
    /** Words. */
    R words(Text text);

    /** A number. */
    R number(PlainNumber text);

    /** One of some words. */
    R choice(Choice<?> text);

    /** A quantity with its unit. */
    R quantity(Quantity<?> text);

    /** What only some tables know. */
    R own(OwnText<?> text);
  }

  /** The answer for this kind of text. */
  <R> R matchText(Texts<R> texts);

  /** The value of a text that is not blank. */
  Parsed<T> parse(String text);

  @Override
  default Optional<T> read(Node node, String label, Reader in) {
    if (!(node instanceof ScalarNode scalar) || scalar.getValue().isBlank()) {
      in.error(node, YamlMistakes.NOT_THIS.with(label, node, this, Optional.empty()));
      return Optional.empty();
    }
    return parse(scalar.getValue().strip())
        .match(
            ok -> accept(ok, scalar, label, in) ? Optional.of(ok.value()) : Optional.empty(),
            bad -> {
              in.error(node, bad.fault().told(label, this, suggestions(bad.meant(), in)));
              return Optional.empty();
            });
  }

  /** What is suggested of what may have been meant, where more is known than the text. */
  default List<String> suggestions(List<String> meant, Reader in) {
    return meant;
  }

  /** That a text is a value beyond the bounds. */
  static <T> Parsed<T> outOfRange(String text) {
    return new Bad<>(
        (key, allowed, meant) -> YamlMistakes.OUT_OF_RANGE.with(key, text, allowed), List.of());
  }

  /** A last word where more is known than the text, such as the units that the file is in. */
  default boolean accept(Ok<T> ok, ScalarNode node, String label, Reader in) {
    return true;
  }

  /**
   * Any words that can be printed.
   *
   * @param lines whether they may be typed on several lines, which are printed as one
   */
  record Text(String allowed, boolean lines) implements Scalar<String> {
    public static final int LONGEST = 2000;

    @Override
    public <R> R matchText(Texts<R> texts) {
      return texts.words(this);
    }

    @Override
    public Parsed<String> parse(String text) {
      if (text.length() > LONGEST) {
        return new Bad<>(
            (key, kind, meant) -> YamlMistakes.TOO_LONG.with(key, LONGEST, kind), List.of());
      }
      String words = lines ? PrintedText.joined(text) : text;
      return PrintedText.obstacle(words)
          .<Parsed<String>>map(
              obstacle ->
                  new Bad<>(
                      (key, kind, meant) ->
                          YamlMistakes.NOT_PRINTABLE.with(
                              key, text, obstacle, this, PrintedText.meant(text)),
                      PrintedText.meant(text)))
          .orElseGet(() -> new Ok<>(words));
    }
  }

  /** A number that has no unit: a count or a ratio. */
  record PlainNumber(String noun, boolean whole, double least, double most)
      implements Scalar<Double> {
    @Override
    public <R> R matchText(Texts<R> texts) {
      return texts.number(this);
    }

    @Override
    public String allowed() {
      return YamlMistakes.NUMBER.of(this);
    }

    @Override
    public Parsed<Double> parse(String text) {
      if (!text.matches(whole ? "\\d{1,9}" : "\\d{1,9}(\\.\\d{1,9})?")) {
        String digits = text.replaceAll("[^0-9.].*$", "");
        boolean near = !digits.equals(text) && digits.matches("\\d{1,9}(\\.\\d{1,9})?");
        return near
            ? new Bad<>(
                (key, allowed, meant) ->
                    YamlMistakes.UNIT_AFTER_A_NUMBER.with(key, text, allowed, meant),
                Optional.of(digits).filter(d -> parse(d).isOk()))
            : new Bad<>(
                (key, allowed, meant) -> YamlMistakes.NO_NUMBER.with(key, text, allowed),
                List.of());
      }
      double value = Double.parseDouble(text);
      return value >= least && value <= most ? new Ok<>(value) : outOfRange(text);
    }
  }

  /** One of a few words. */
  record Choice<T>(Map<String, T> words) implements Scalar<T> {
    public Choice {
      words = Collections.unmodifiableMap(new LinkedHashMap<>(words));
    }

    /** The constants of an enum, written in lower case with spaces. */
    public static <E extends Enum<E>> Choice<E> of(Class<E> type) {
      Map<String, E> words = new LinkedHashMap<>();
      for (E constant : type.getEnumConstants()) {
        words.put(constant.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '), constant);
      }
      return new Choice<>(words);
    }

    /** Words that stand for themselves. */
    public static Choice<String> words(String... each) {
      Map<String, String> words = new LinkedHashMap<>();
      for (String word : each) {
        words.put(word, word);
      }
      return new Choice<>(words);
    }

    /** Yes or no. */
    public static Choice<Boolean> yesNo() {
      Map<String, Boolean> words = new LinkedHashMap<>();
      words.put("yes", true);
      words.put("no", false);
      return new Choice<>(words);
    }

    @Override
    public <R> R matchText(Texts<R> texts) {
      return texts.choice(this);
    }

    @Override
    public String allowed() {
      return String.join(", ", words.keySet());
    }

    @Override
    public Parsed<T> parse(String text) {
      for (Map.Entry<String, T> word : words.entrySet()) {
        if (word.getKey().equals(text)) {
          return new Ok<>(word.getValue());
        }
      }
      return new Bad<>(
          (key, allowed, meant) -> YamlMistakes.UNKNOWN_WORD.with(key, text, allowed, meant),
          Nearest.to(text, words.keySet()));
    }
  }

  /**
   * A quantity within bounds.
   *
   * @param least lower bound as it would be typed; empty text where there are no bounds
   * @param most upper bound as it would be typed
   * @param inRouteUnits whether it has to be in the units of the route, as mileages and speeds have
   */
  record Quantity<Q>(QuantityKind<Q> kind, String least, String most, boolean inRouteUnits)
      implements Scalar<Q> {
    /** A quantity within bounds, which are written as in a file; in any unit of its kind. */
    public static <Q> Quantity<Q> of(QuantityKind<Q> kind, String least, String most) {
      return new Quantity<>(kind, least, most, false);
    }

    /** The same; it has to be in the units of the route. */
    public Quantity<Q> routeUnits() {
      return new Quantity<>(kind, least, most, true);
    }

    @Override
    public <R> R matchText(Texts<R> texts) {
      return texts.quantity(this);
    }

    @Override
    public String allowed() {
      return least.isEmpty() ? kind.allowed() : YamlMistakes.BOUNDED.of(this);
    }

    @Override
    public Parsed<Q> parse(String text) {
      return kind.parse(text).match(ok -> within(text, ok), bad -> bad);
    }

    private Parsed<Q> within(String text, Ok<Q> ok) {
      if (least.isEmpty()) {
        return ok;
      }
      double value = kind.si(ok.value());
      double slack = 1e-9 * Math.max(1, Math.abs(value));
      boolean within =
          value >= kind.si(kind.require(least)) - slack
              && value <= kind.si(kind.require(most)) + slack;
      return within ? ok : outOfRange(text);
    }

    /** Of two suggestions the one in the units of the route. */
    @Override
    public List<String> suggestions(List<String> meant, Reader in) {
      if (!inRouteUnits || meant.size() < 2) {
        return meant;
      }
      List<String> usual =
          meant.stream()
              .filter(
                  text ->
                      kind.parse(text)
                          .ok()
                          .filter(ok -> in.surroundings().has(ok.convention()))
                          .isPresent())
              .toList();
      return usual.isEmpty() ? meant : usual;
    }

    @Override
    public boolean accept(Ok<Q> ok, ScalarNode node, String label, Reader in) {
      in.unitsUsed().note(label, this, ok.convention(), node);
      return !inRouteUnits || in.surroundings().accepts(ok.convention(), node, label, in);
    }
  }
}
