package gradepost.stock;

import gradepost.units.Length;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.function.Function;

/** How a demand reaches the vehicles. */
public sealed interface BrakeAction {

  /** One answer for each case. */
  <T> T match(
      Function<Simultaneous, T> simultaneous,
      Function<Propagated, T> propagated,
      Function<ByLength, T> byLength);

  /** Time from the demand until a cylinder answers whose valve is at the very front of the pipe. */
  Span deadTime();

  /** The same for a train of this length. */
  default Span deadTime(Length train) {
    return deadTime();
  }

  /** Time that an application then takes to travel along this length of pipe, in metres. */
  Span along(double metres);

  /** The same brake used towards a speed above zero instead of a stand. */
  BrakeAction towardsASpeed();

  /** By wire: every vehicle answers at once. */
  record Simultaneous(Span deadTime) implements BrakeAction {
    @Override
    public Span along(double metres) {
      return new Span(0);
    }

    @Override
    public BrakeAction towardsASpeed() {
      return this;
    }

    @Override
    public <T> T match(
        Function<Simultaneous, T> simultaneous,
        Function<Propagated, T> propagated,
        Function<ByLength, T> byLength) {
      return simultaneous.apply(this);
    }
  }

  /**
   * Along the pipe: after the dead time a vehicle answers when the application has come from the
   * front of the train to its valve (propagation of an application, EN 14531-1, from memory).
   */
  record Propagated(Span deadTime, Speed speed) implements BrakeAction {
    public Propagated {
      if (speed.metresPerSecond() <= 0) {
        throw new IllegalArgumentException("a propagation has a speed");
      }
    }

    @Override
    public Span along(double metres) {
      return new Span(metres / speed.metresPerSecond());
    }

    @Override
    public BrakeAction towardsASpeed() {
      return this;
    }

    @Override
    public <T> T match(
        Function<Simultaneous, T> simultaneous,
        Function<Propagated, T> propagated,
        Function<ByLength, T> byLength) {
      return propagated.apply(this);
    }
  }

  /**
   * The whole train as one after a time by its length, {@code a + b·(L/100) + c·(L/100)²} seconds
   * with L in metres: an equivalent build-up (SUBSET-026 A.3.8), and the brake then acts in full.
   *
   * @param least shorter trains count as this long
   */
  record ByLength(double aS, double bS, double cS, Length least) implements BrakeAction {
    /** SUBSET-026 A.3.9: a build-up towards a target speed above zero takes this much longer. */
    private static final double TOWARDS_A_SPEED = 1.2;

    public ByLength {
      if (!(aS >= 0 && bS >= 0 && cS >= 0)) {
        throw new IllegalArgumentException("a build-up takes time");
      }
    }

    @Override
    public Span deadTime() {
      return deadTime(new Length(0));
    }

    @Override
    public Span deadTime(Length train) {
      double hundreds = Math.max(train.metres(), least.metres()) / 100;
      return new Span(aS + hundreds * (bS + hundreds * cS));
    }

    @Override
    public Span along(double metres) {
      return new Span(0);
    }

    @Override
    public <T> T match(
        Function<Simultaneous, T> simultaneous,
        Function<Propagated, T> propagated,
        Function<ByLength, T> byLength) {
      return byLength.apply(this);
    }

    @Override
    public ByLength towardsASpeed() {
      return new ByLength(aS * TOWARDS_A_SPEED, bS * TOWARDS_A_SPEED, cS * TOWARDS_A_SPEED, least);
    }
  }
}
