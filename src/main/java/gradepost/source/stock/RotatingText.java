package gradepost.source.stock;

import gradepost.stock.RotatingMass;
import gradepost.units.Mass;
import gradepost.units.Parsed;
import gradepost.units.Parsed.Bad;
import gradepost.units.Parsed.Ok;
import gradepost.units.QuantityKind;
import gradepost.yaml.OwnText;
import gradepost.yaml.Scalar;
import java.util.List;

/** A rotating mass: a share of the tare, "8 %", or a mass, "4.8 t". */
public record RotatingText() implements OwnText<RotatingMass> {
  public static final Scalar.Quantity<Double> SHARE =
      Scalar.Quantity.of(QuantityKind.PERCENT, "0 %", "40 %");
  public static final Scalar.Quantity<Mass> MASS =
      Scalar.Quantity.of(QuantityKind.MASS, "0 t", "120 t");

  @Override
  public List<String> patterns() {
    return List.of(SHARE.kind().pattern(), MASS.kind().pattern());
  }

  @Override
  public String allowed() {
    return SHARE.allowed() + ", or " + MASS.allowed();
  }

  @Override
  public Parsed<RotatingMass> parse(String text) {
    return SHARE
        .parse(text)
        .match(
            ok -> new Ok<>(new RotatingMass.ShareOfTare(ok.value()), ok.convention()),
            noShare ->
                MASS.parse(text)
                    .match(
                        ok -> new Ok<>(new RotatingMass.Stated(ok.value()), ok.convention()),
                        noMass -> {
                          boolean meantMass = QuantityKind.MASS.parse(text).isOk();
                          return meantMass ? bad(noMass) : bad(noShare);
                        }));
  }

  private Parsed<RotatingMass> bad(Bad<?> bad) {
    return new Bad<>(bad.fault(), bad.meant());
  }
}
