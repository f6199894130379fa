package gradepost.stock;

import gradepost.units.Mass;
import java.util.function.Function;

/**
 * What the rotating parts of a vehicle (wheels, axles, motors, gears) add to the mass that has to
 * be slowed. It does not change with the load.
 */
public sealed interface RotatingMass {

  /** The mass that is added, of a vehicle that weighs so much empty. */
  Mass of(Mass tare);

  /** One answer for each way of stating it. */
  <T> T match(Function<ShareOfTare, T> share, Function<Stated, T> stated);

  /** As a share of the vehicle's mass empty: 0.08 is 8 %. The usual form (common practice). */
  record ShareOfTare(double share) implements RotatingMass {
    public ShareOfTare {
      if (!(share >= 0)) {
        throw new IllegalArgumentException("rotating parts have a mass");
      }
    }

    @Override
    public Mass of(Mass tare) {
      return new Mass(share * tare.kilograms());
    }

    @Override
    public <T> T match(Function<ShareOfTare, T> ofShare, Function<Stated, T> ofStated) {
      return ofShare.apply(this);
    }
  }

  /** As a mass, worked out or measured by the maker. */
  record Stated(Mass mass) implements RotatingMass {
    @Override
    public Mass of(Mass tare) {
      return mass;
    }

    @Override
    public <T> T match(Function<ShareOfTare, T> ofShare, Function<Stated, T> ofStated) {
      return ofStated.apply(this);
    }
  }
}
