package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** By hand: what counts as power for too short a time is told from the actions alone. */
class ShortPowerTest {
  @Test
  void countsFromTheFirstNotchToTheShutOff() {
    List<Action> actions =
        List.of(
            at(0, new Command.Power(0)),
            at(2, new Command.Power(1)),
            at(8, new Command.ShutOff()),
            at(20, new Command.Power(0)),
            at(26, new Command.Power(1)),
            at(27.9, new Command.ShutOff()),
            at(30, new Command.Power(0)),
            at(30, new Command.ShutOff()),
            at(40, new Command.Brake(1e5, Command.Stage.FIRST)));
    assertThat(ShortPower.count(actions, 8)).isEqualTo(2);
    assertThat(ShortPower.count(actions, 7)).isEqualTo(1);
    assertThat(ShortPower.count(List.of(), 8)).isZero();
  }

  private static Action at(double timeS, Command command) {
    return new Action(1, new Trigger.AtPlace(100 * timeS), command, 100 * timeS, 10, timeS);
  }
}
