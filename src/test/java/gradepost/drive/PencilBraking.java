package gradepost.drive;

/**
 * A braking of the seated unit of {@link EvenLine} on the level, piece by piece: each piece has a
 * deceleration that is even or grows evenly, so that speed and distance are a square and a cube of
 * time. Every demand answers after 0.3 s; until then what was asked before goes on.
 */
public final class PencilBraking {
  private static final double PSI = 6894.757293168;
  private static final double DEAD_S = 0.3;
  private static final double FILLS_PA = 20 * PSI;
  private static final double EMPTIES_PA = 15 * PSI;
  private static final double SPRINGS_PA = 4 * PSI;
  private static final double MPS2_PER_PA = 0.85 / (46 * PSI);

  private final double force;
  private final double fillsPa;
  private double mps;
  private double metres;
  private double seconds;
  private double pascals;
  private double askedPa;

  /** From a speed, with the brake off. */
  public PencilBraking(double fromMps) {
    this(fromMps, 1, 1);
  }

  /** With so much of the force, and with cylinders that take so many times as long to fill. */
  public PencilBraking(double fromMps, double force, double fill) {
    this.mps = fromMps;
    this.force = force;
    this.fillsPa = FILLS_PA / fill;
  }

  /** Asks for a pressure, and waits so long. */
  public PencilBraking after(double pa, double waitS) {
    double until = seconds + waitS;
    answer(pa, until, 0);
    even(until - seconds, 0);
    return this;
  }

  /** Asks for a pressure, and waits until the speed is down to this. */
  public PencilBraking downTo(double pa, double toMps) {
    answer(pa, Double.POSITIVE_INFINITY, toMps);
    if (mps > toMps) {
      even(Double.POSITIVE_INFINITY, toMps);
    }
    return this;
  }

  public double distanceM() {
    return metres;
  }

  public double timeS() {
    return seconds;
  }

  public double speedMps() {
    return mps;
  }

  private void answer(double pa, double untilS, double toMps) {
    double answersS = seconds + DEAD_S;
    move(askedPa, Math.min(answersS, untilS), toMps);
    askedPa = pa;
    if (mps > toMps) {
      move(pa, untilS, toMps);
    }
  }

  /** Towards a pressure, no longer than up to a time or down to a speed. */
  private void move(double toPa, double untilS, double toMps) {
    while (pascals != toPa && seconds < untilS && mps > toMps) {
      double rate = toPa > pascals ? fillsPa : -EMPTIES_PA;
      boolean overSprings = (pascals - SPRINGS_PA) * (toPa - SPRINGS_PA) < 0;
      double next = overSprings ? SPRINGS_PA : toPa;
      double takes = (next - pascals) / rate;
      double has = Math.min(takes, untilS - seconds);
      double growth = Math.max(pascals, next) > SPRINGS_PA ? rate * force * MPS2_PER_PA : 0;
      double lasts = piece(has, growth, toMps);
      pascals = lasts == takes ? next : pascals + rate * lasts;
    }
    if (pascals == toPa && seconds < untilS && !Double.isInfinite(untilS) && mps > toMps) {
      even(untilS - seconds, toMps);
    }
  }

  private void even(double mostS, double toMps) {
    if (mostS > 0) {
      piece(mostS, 0, toMps);
    }
  }

  /** A piece, or as much of it as comes before the speed is down; its seconds. */
  private double piece(double mostS, double growthMps3, double toMps) {
    double now = Math.max(0, pascals - SPRINGS_PA) * force * MPS2_PER_PA;
    double loses = mps - toMps;
    double root = now * now + 2 * growthMps3 * loses;
    double met =
        root < 0 || (now == 0 && growthMps3 <= 0)
            ? Double.POSITIVE_INFINITY
            : 2 * loses / (now + Math.sqrt(root));
    double t = Math.min(mostS, met);
    metres += mps * t - now * t * t / 2 - growthMps3 * t * t * t / 6;
    mps = t == met ? toMps : mps - now * t - growthMps3 * t * t / 2;
    seconds += t;
    return t;
  }
}
