package gradepost.ride;

import gradepost.policy.RideRules;
import gradepost.ride.ForbiddenMovement.Why;
import gradepost.stock.Traction;
import java.util.ArrayList;
import java.util.List;

/** Finds the handle movements that the stock forbids in a tied run. */
final class HandleReading {
  /** A release shows on the gauge within this time, as a fall to this share. */
  private static final double RELEASE_SEEN_S = 1.5;

  private static final double RELEASE_SHARE = 0.9;

  private final Traction traction;
  private final RideRules rules;
  private final double brakeOnPa;
  private final TiedRun run;

  /**
   * @param brakeOnPa from this pressure on the brake is on
   */
  HandleReading(Traction traction, RideRules rules, double brakeOnPa, TiedRun run) {
    this.traction = traction;
    this.rules = rules;
    this.brakeOnPa = brakeOnPa;
    this.run = run;
  }

  /** In the order in which they were made. */
  List<ForbiddenMovement> all() {
    List<ForbiddenMovement> out = new ArrayList<>();
    for (int i = 1; i < run.size(); i++) {
      boolean seen = run.notch(i - 1).isPresent() && run.notch(i).isPresent();
      if (!seen || run.gapBefore(i)) {
        continue;
      }
      int was = run.notch(i - 1).orElseThrow();
      int is = run.notch(i).orElseThrow();
      if (is >= 0 && is < was && !traction.notchingDown()) {
        out.add(movement(i, was, is, Why.DOWN));
      } else if (is > was + 1 && tooSoon(i, is - was)) {
        out.add(movement(i, was, is, Why.SKIPPED));
      } else if (is > was && braked(i)) {
        out.add(movement(i, was, is, Why.BRAKE_ON));
      }
    }
    return out;
  }

  private ForbiddenMovement movement(int i, int was, int is, Why why) {
    return new ForbiddenMovement(run.atM(i), run.timeS(i), was, is, why);
  }

  /** Whether so many notches cannot have been taken one after the other since the line before. */
  private boolean tooSoon(int i, int notches) {
    double longest = run.timeS(i) - run.timeS(i - 1) + 2 * rules.recorder().clockWithin().seconds();
    return longest < (notches - 1) * traction.timePerNotch().seconds();
  }

  private double pressure(int i) {
    return run.pressurePa(i).orElse(0.0);
  }

  /**
   * Whether the brake was on, and has not been taken off by now, whatever the gauge still shows.
   */
  private boolean braked(int i) {
    double before = pressure(i - 1);
    if (before < brakeOnPa) {
      return false;
    }
    double untilS =
        run.timeS(i - 1) + RELEASE_SEEN_S + 2 * rules.recorder().clockWithin().seconds();
    int k = i;
    while (k + 1 < run.size() && run.timeS(k) < untilS) {
      k++;
    }
    return pressure(k) >= RELEASE_SHARE * before;
  }
}
