package gradepost.yaml;

import gradepost.units.Length;
import gradepost.units.Parsed;
import gradepost.units.Parsed.Bad;
import gradepost.units.Parsed.Ok;
import gradepost.units.QuantityKind;
import java.util.List;

/** A height above a datum: a length that may lie below it, "−1.2 m". In metres. */
public record HeightText() implements OwnText<Double> {
  private static final double MOST_M = 5000;

  @Override
  public List<String> patterns() {
    return List.of("^\\s*[-\u2212]?\\s*\\d.*[a-z]\\s*$");
  }

  @Override
  public String allowed() {
    return YamlMistakes.HEIGHT;
  }

  @Override
  public Parsed<Double> parse(String text) {
    boolean below = text.startsWith("-") || text.startsWith("\u2212");
    Parsed<Length> length = QuantityKind.LENGTH.parse(below ? text.substring(1).strip() : text);
    return length.match(ok -> height(text, ok, below), bad -> new Bad<>(bad.fault(), bad.meant()));
  }

  private Parsed<Double> height(String text, Ok<Length> ok, boolean below) {
    double metres = ok.value().metres();
    return metres > MOST_M
        ? Scalar.outOfRange(text)
        : new Ok<>(below ? -metres : metres, ok.convention());
  }
}
