package gradepost.yaml;

import gradepost.units.Nearest;
import gradepost.units.Parsed;
import gradepost.units.Parsed.Bad;
import gradepost.units.Parsed.Ok;
import gradepost.units.PrintedText;
import gradepost.units.QuantityKind;
import java.util.Collections;
import java.util.LinkedHashMap;
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
      in.error(node, label + " is " + Nodes.described(node), allowed(), "");
      return Optional.empty();
    }
    return parse(scalar.getValue().strip())
        .match(
            ok -> accept(ok, node, label, in) ? Optional.of(ok.value()) : Optional.empty(),
            bad -> {
              in.error(node, label + " " + bad.what(), bad.allowed(), suggestion(bad.maybe(), in));
              return Optional.empty();
            });
  }

  /** What is suggested, where more is known than the text. */
  default String suggestion(String maybe, Reader in) {
    return maybe;
  }

  /** A last word where more is known than the text, such as the units that the file is in. */
  default boolean accept(Ok<T> ok, Node node, String label, Reader in) {
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
        return new Bad<>("is longer than " + LONGEST + " characters", allowed, "");
      }
      String words = lines ? PrintedText.joined(text) : text;
      return PrintedText.obstacle(words)
          .<Parsed<String>>map(
              why ->
                  new Bad<>(
                      Nodes.shown(text) + " " + why,
                      allowed + (lines ? ", in " : ", on one line, in ") + PrintedText.ALLOWED,
                      PrintedText.meant(text).orElse("")))
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
      return noun + " from " + shown(least) + " to " + shown(most);
    }

    private String shown(double value) {
      return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    @Override
    public Parsed<Double> parse(String text) {
      if (!text.matches(whole ? "\\d{1,9}" : "\\d{1,9}(\\.\\d{1,9})?")) {
        String digits = text.replaceAll("[^0-9.].*$", "");
        boolean near = !digits.equals(text) && digits.matches("\\d{1,9}(\\.\\d{1,9})?");
        return new Bad<>(
            Nodes.shown(text) + (near ? " has a unit" : " is not a number"),
            allowed(),
            near && parse(digits).isOk() ? digits : "");
      }
      double value = Double.parseDouble(text);
      return value >= least && value <= most
          ? new Ok<>(value)
          : new Bad<>(Nodes.shown(text) + " is out of range", allowed(), "");
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
          Nodes.shown(text) + " is not known",
          allowed(),
          Nearest.to(text, words.keySet()).orElse(""));
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
      return kind.allowed() + (least.isEmpty() ? "" : ", from " + least + " to " + most);
    }

    @Override
    public Parsed<Q> parse(String text) {
      return kind.parse(text)
          .match(ok -> within(text, ok), bad -> new Bad<>(bad.what(), allowed(), bad.maybe()));
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
      return within ? ok : new Bad<>(Nodes.shown(text) + " is out of range", allowed(), "");
    }

    /** Of two suggestions the one in the units of the route. */
    @Override
    public String suggestion(String maybe, Reader in) {
      String[] offers = maybe.split(" or ");
      if (!inRouteUnits || offers.length == 1) {
        return maybe;
      }
      return java.util.Arrays.stream(offers)
          .filter(
              o ->
                  kind.parse(o)
                      .ok()
                      .filter(ok -> in.surroundings().has(ok.convention()))
                      .isPresent())
          .reduce((a, b) -> a + " or " + b)
          .orElse(maybe);
    }

    @Override
    public boolean accept(Ok<Q> ok, Node node, String label, Reader in) {
      in.unitsUsed().note(label, this, ok.convention(), node);
      return !inRouteUnits || in.surroundings().accepts(ok.convention(), node, label, in);
    }
  }
}
