package gradepost.motion;

import gradepost.OneThread;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What the kernel costs: one stop, one braking point, one run of 16 km; and the same stop by the
 * independent solver. Run with the test class path: {@code org.openjdk.jmh.Main MotionBenchmark
 * -prof gc}.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class MotionBenchmark extends OneThread {
  private static final double FROM_M = 4000;
  private static final double TARGET_M = 5500;

  /** Random trains and routes. */
  @Param({"1", "2", "3"})
  public long seed;

  private Stepper stepper;
  private TrainBrake rig;
  private Oracle oracle;
  private final StopConditions until = new StopConditions();

  @Setup
  public void train() {
    Scenario scenario = new Scenario(seed);
    stepper = scenario.stepper();
    rig = scenario.rig();
    oracle = new Oracle(scenario, 1e-6, 0.5);
  }

  private double stopFrom(double at) {
    stepper.place(0, at, 20);
    stepper.brake(rig, rig.fullPa());
    stepper.advance(until.clear().place(12_000));
    return stepper.atM();
  }

  @Benchmark
  public double stop() {
    return stopFrom(FROM_M);
  }

  @Benchmark
  public double brakingPoint() {
    double low = TARGET_M - 1400;
    double high = TARGET_M;
    double fLow = stopFrom(low) - TARGET_M;
    double fHigh = stopFrom(high) - TARGET_M;
    for (int i = 0; i < 50 && high - low > 0.01; i++) {
      double at = i % 3 == 2 ? (low + high) / 2 : low - fLow * (high - low) / (fHigh - fLow);
      double f = stopFrom(at) - TARGET_M;
      if (f < 0) {
        low = at;
        fLow = f;
      } else {
        high = at;
        fHigh = f;
      }
    }
    return low;
  }

  @Benchmark
  public double run16km() {
    stepper.place(0, 300, 0.1);
    stepper.power(2);
    stepper.advance(until.clear().place(15_000).speedUp(25));
    while (stepper.atM() < 15_000 && stepper.speedMps() > 0) {
      stepper.shutOff();
      stepper.advance(until.clear().place(15_000).speedDown(22).speedUp(27));
      stepper.power(2);
      stepper.advance(until.clear().place(15_000).speedUp(25));
      if (stepper.speedMps() >= 27) {
        stepper.place(stepper.timeS(), stepper.atM(), 22);
      }
    }
    return stepper.timeS();
  }

  /** The same equations by the other library, tolerance 1e-6, steps up to half a second. */
  @Benchmark
  public double stopByTheOtherSolver() {
    oracle.place(FROM_M, 20);
    oracle.brake(rig.fullPa());
    oracle.runTo(12_000);
    return oracle.atM();
  }
}
