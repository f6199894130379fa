package gradepost.drive.grid;

import gradepost.drive.grid.ControlProfile.PowerPhase;
import gradepost.drive.grid.ControlProfile.SpeedPoint;
import java.util.List;

/** One thing in which a guide may differ from another. */
public sealed interface GuideChange {
  /** Makes the change in a guide's lists. */
  void make(List<PowerPhase> powers, List<SpeedPoint> releases);

  /** Behind this place it makes no difference to what a guide says, metres run. */
  double upToM();

  /** Power that is taken in another way. */
  record OtherPower(PowerPhase was, PowerPhase instead) implements GuideChange {
    @Override
    public void make(List<PowerPhase> powers, List<SpeedPoint> releases) {
      powers.set(powers.indexOf(was), instead);
    }

    @Override
    public double upToM() {
      return Math.max(was.offM(), instead.offM());
    }
  }

  /** Power that is not taken. */
  record NoPower(PowerPhase was) implements GuideChange {
    @Override
    public void make(List<PowerPhase> powers, List<SpeedPoint> releases) {
      powers.remove(was);
    }

    @Override
    public double upToM() {
      return was.offM();
    }
  }

  /** Power that stays on up to where the next one comes off. */
  record OnePower(PowerPhase was, PowerPhase then, PowerPhase instead) implements GuideChange {
    @Override
    public void make(List<PowerPhase> powers, List<SpeedPoint> releases) {
      powers.set(powers.indexOf(was), instead);
      powers.remove(then);
    }

    @Override
    public double upToM() {
      return then.offM();
    }
  }

  /** A brake that comes off at another speed. */
  record OtherRelease(SpeedPoint was, SpeedPoint instead) implements GuideChange {
    @Override
    public void make(List<PowerPhase> powers, List<SpeedPoint> releases) {
      releases.set(releases.indexOf(was), instead);
    }

    @Override
    public double upToM() {
      return was.atM() + ControlProfile.RELEASED_BEHIND_M;
    }
  }
}
