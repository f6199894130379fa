package gradepost.stock;

import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;

/**
 * Usual arrangements of brakes, to begin a stock file from; every figure can be given there
 * instead. Times lie in the ranges of common practice: passenger distributors fill to 95 % in 3 to
 * 5 s and release in 15 to 20 s, goods ones in 18 to 30 s and 45 to 60 s; an application travels
 * along the pipe at 250 to 280 m/s with accelerating valves and at 90 to 180 m/s without.
 */
public enum BrakePreset {
  /**
   * An older electric unit by common practice: main reservoir 90, brake pipe 70, cylinders at most
   * 50 psi.
   */
  EP_AND_AUTOMATIC_AIR {
    @Override
    public List<BrakeSystem> systems() {
      Pressure full = Pressure.ofPsi(50);
      Optional<PipeLaw> pipe = Optional.of(new PipeLaw.Ratio(Pressure.ofPsi(70), 2.5));
      Optional<PressureRate> recharge = Optional.of(psi(1));
      return List.of(
          new BrakeSystem(
              "electro-pneumatic",
              "EP",
              BrakeSystem.Role.SERVICE,
              wire(0.3),
              psi(20),
              psi(15),
              true,
              CONTINUOUS,
              full,
              Optional.empty()),
          new BrakeSystem(
              "automatic air",
              "Auto",
              BrakeSystem.Role.FALLBACK,
              along(0.5, 250),
              psi(12),
              psi(3),
              false,
              CONTINUOUS,
              full,
              pipe,
              recharge,
              Optional.empty()),
          new BrakeSystem(
              "emergency",
              "Emergency",
              BrakeSystem.Role.EMERGENCY,
              along(0.3, 280),
              psi(20),
              psi(3),
              false,
              CONTINUOUS,
              full,
              pipe,
              recharge,
              Optional.empty()));
    }
  },
  /** A unit whose three steps by wire give equal thirds of the force. */
  THREE_STEP_EP {
    @Override
    public List<BrakeSystem> systems() {
      BrakeControl steps =
          new BrakeControl.Steps(
              List.of(Pressure.ofBar(1.2), Pressure.ofBar(2.4), Pressure.ofBar(3.6)));
      Pressure full = Pressure.ofBar(3.6);
      return List.of(
          new BrakeSystem(
              "three-step",
              "Step",
              BrakeSystem.Role.SERVICE,
              wire(0.4),
              bar(1.8),
              bar(1.2),
              true,
              steps,
              full,
              Optional.empty()),
          new BrakeSystem(
              "emergency",
              "Emergency",
              BrakeSystem.Role.EMERGENCY,
              wire(0.3),
              bar(2.4),
              bar(1.2),
              false,
              CONTINUOUS,
              full,
              Optional.empty()));
    }
  },
  /**
   * A two-pipe passenger train with distributors: graduated both ways, reservoirs kept full from
   * the main pipe; pipe 5 bar, full service at a reduction of 1.5 bar (common practice).
   */
  TWO_PIPE_AIR {
    @Override
    public List<BrakeSystem> systems() {
      return air(
          0.4,
          250,
          0.95,
          0.22,
          Optional.of(new PipeLaw.Distributor(Pressure.ofBar(5), 3.8 / 1.5, Pressure.ofBar(3.8))));
    }
  },
  /** A goods train on one pipe, without accelerating valves. */
  GOODS_AIR {
    @Override
    public List<BrakeSystem> systems() {
      return air(0.8, 150, 0.15, 0.07, Optional.empty());
    }
  };

  private static final BrakeControl CONTINUOUS = new BrakeControl.Continuous();

  /** The brakes, service brake first. */
  public abstract List<BrakeSystem> systems();

  private static List<BrakeSystem> air(
      double deadS, double alongMps, double fillBar, double emptyBar, Optional<PipeLaw> pipe) {
    Pressure full = Pressure.ofBar(3.8);
    return List.of(
        new BrakeSystem(
            "automatic air",
            "Air",
            BrakeSystem.Role.SERVICE,
            along(deadS, alongMps),
            bar(fillBar),
            bar(emptyBar),
            true,
            CONTINUOUS,
            full,
            pipe),
        new BrakeSystem(
            "emergency",
            "Emergency",
            BrakeSystem.Role.EMERGENCY,
            along(deadS / 2, alongMps * 1.1),
            bar(fillBar),
            bar(emptyBar),
            false,
            CONTINUOUS,
            full,
            pipe));
  }

  private static BrakeAction wire(double deadS) {
    return new BrakeAction.Simultaneous(new Span(deadS));
  }

  private static BrakeAction along(double deadS, double mps) {
    return new BrakeAction.Propagated(new Span(deadS), new Speed(mps));
  }

  private static PressureRate psi(double perSecond) {
    return new PressureRate(Pressure.ofPsi(perSecond).pascals());
  }

  private static PressureRate bar(double perSecond) {
    return new PressureRate(Pressure.ofBar(perSecond).pascals());
  }
}
