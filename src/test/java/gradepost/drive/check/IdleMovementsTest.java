package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import java.util.List;
import org.junit.jupiter.api.Test;

/** By hand: what counts as a movement for a moment is told from the actions alone. */
class IdleMovementsTest {
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
    // 7.9 s and none of power, and power again after 2.1 s.
    assertThat(IdleMovements.count(actions, least(8))).isEqualTo(3);
    assertThat(IdleMovements.count(actions, least(7))).isEqualTo(2);
    assertThat(IdleMovements.count(List.of(), least(8))).isZero();
  }

  @Test
  void countsABrakeThatIsPutOnAgainAtOnce() {
    List<Action> actions =
        List.of(
            at(0, new Command.Brake(1e5, Command.Stage.CHECK)),
            at(10, new Command.Release()),
            at(10.5, new Command.Brake(1e5, Command.Stage.FIRST)),
            at(13.5, new Command.Brake(2e5, Command.Stage.MAIN)),
            at(20, new Command.Release()),
            at(26, new Command.Brake(1e5, Command.Stage.CHECK)),
            at(36, new Command.Brake(1e5, Command.Stage.FIRST)),
            at(39, new Command.Brake(2e5, Command.Stage.MAIN)));
    // After 0.5 s, after 6 s, and one that is still on.
    assertThat(IdleMovements.count(actions, least(8))).isEqualTo(3);
  }

  @Test
  void countsABrakeThatComesOffBeforeItIsFelt() {
    List<Action> actions =
        List.of(
            at(0, new Command.Brake(1e5, Command.Stage.FIRST)),
            at(2.9, new Command.Release()),
            at(20, new Command.Brake(1e5, Command.Stage.FIRST)),
            at(23, new Command.Brake(2e5, Command.Stage.MAIN)),
            at(24, new Command.Release()));
    assertThat(IdleMovements.count(actions, least(8))).isEqualTo(1);
  }

  private static Action at(double timeS, Command command) {
    return new Action(1, new Trigger.AtPlace(100 * timeS), command, 100 * timeS, 10, timeS);
  }

  /** A brake let go for 8 s and power off for 5 s at least. */
  private static IdleMovements.Least least(double powerS) {
    return new IdleMovements.Least(powerS, 3, 8, 5);
  }
}
