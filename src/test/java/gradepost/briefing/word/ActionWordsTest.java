package gradepost.briefing.word;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Messages;
import gradepost.drive.FrozenPlans;
import gradepost.stock.Notch;
import gradepost.task.Assignment;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedTrigger;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import gradepost.told.print.PrintedTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A power handle that is taken through its notches is told with each wait. */
class ActionWordsTest {
  private final Assignment assignment = FrozenPlans.assignments().get(0);
  private final List<String> notches =
      assignment.stock().traction().notches().stream().map(Notch::name).toList();
  private final ActionWords orders =
      new ActionWords(new Words(Messages.english(), assignment.path()), assignment.stock());

  private String told(long... waits) {
    List<PrintedOrder.Further> further = new ArrayList<>();
    for (long wait : waits) {
      further.add(
          new PrintedOrder.Further(new PrintedCommand.Power(further.size() + 1), after(wait)));
    }
    return orders.todo(
        new PrintedOrder(new PrintedTrigger.Start(), new PrintedCommand.Power(0), further));
  }

  @Test
  void waitsThatDifferAreToldEach() {
    assertThat(told(3, 5)).endsWith(" → " + notches.get(2) + ", after 3 s, then 5 s");
    assertThat(told(3, 3, 5)).endsWith(" → " + notches.get(3) + ", after 3 s, then 3 s, then 5 s");
  }

  @Test
  void waitsThatAreTheSameAreToldOnce() {
    assertThat(told(3, 3)).endsWith(" → " + notches.get(2) + ", 3 s each");
    assertThat(told(4)).endsWith(" → " + notches.get(1) + ", 4 s each");
  }

  @Test
  void aFirstApplicationIsOneOrderWithTheMainOneBehindIt() {
    PrintGrid grid = new PrintGrid(assignment.path());
    PrintedOrder order =
        new PrintedOrder(
            new PrintedTrigger.AtPlace(),
            brake(grid, 15, PrintedCommand.Stage.FIRST),
            List.of(
                new PrintedOrder.Further(brake(grid, 32, PrintedCommand.Stage.MAIN), after(4))));
    assertThat(orders.todo(order, Optional.empty())).isEqualTo("first application, main 4 s later");
    assertThat(orders.gauge(order)).isEqualTo("15 psi, 32 psi");
    assertThat(orders.whole(order, Optional.empty()))
        .isEqualTo("first application, 15 psi, then 32 psi 4 s later");
    assertThat(orders.technique(List.of(order))).isEqualTo("15 psi, 32 psi after 4 s");
  }

  @Test
  void aBrakeThatIsEasedAgainIsOneOrder() {
    PrintGrid grid = new PrintGrid(assignment.path());
    PrintedOrder order =
        new PrintedOrder(
            droppedTo(grid, 12),
            brake(grid, 14, PrintedCommand.Stage.EASE),
            List.of(
                new PrintedOrder.Further(
                    brake(grid, 11, PrintedCommand.Stage.EASE), droppedTo(grid, 4))));
    assertThat(orders.todo(order, Optional.empty())).isEqualTo("ease, again at 4 mph");
    assertThat(orders.gauge(order)).isEqualTo("14 psi, 11 psi");
    assertThat(orders.whole(order, Optional.empty()))
        .isEqualTo("ease, 14 psi, at 12 mph, dropping, then 11 psi at 4 mph");
    assertThat(orders.technique(List.of(order))).isEqualTo("14 psi at 12 mph, 11 psi at 4 mph");
  }

  private static PrintedTrigger after(long seconds) {
    return new PrintedTrigger.After(new PrintedTime(seconds));
  }

  /** 0.44704 m/s is a mile an hour, by definition of the mile. */
  private static PrintedTrigger droppedTo(PrintGrid grid, double mph) {
    return new PrintedTrigger.SpeedDownTo(grid.speed(mph * 0.44704 + 1e-9));
  }

  private static PrintedCommand.Brake brake(
      PrintGrid grid, double psi, PrintedCommand.Stage stage) {
    return new PrintedCommand.Brake(grid.pressure(psi * 6894.76), stage);
  }

  @Test
  void aSpeedThatIsHeldIsToldWithBothFiguresItsHandleAndItsEnd() {
    PrintGrid grid = new PrintGrid(assignment.path());
    PrintedPlace until = grid.place(3000);
    // 13 and 17 mph in m/s, by definition of the mile.
    PrintedSpeed lower = grid.speed(13 * 0.44704 + 1e-9);
    PrintedSpeed upper = grid.speed(17 * 0.44704 + 1e-9);
    assertThat(
            orders.todo(
                new PrintedCommand.Hold(new PrintedCommand.InNotch(1), lower, upper, until)))
        .isEqualTo(
            "hold 13 to 17 mph until %s: %s, off, as needed"
                .formatted(assignment.path().text(3000), notches.get(1)));
    assertThat(
            orders.todo(
                new PrintedCommand.Hold(
                    new PrintedCommand.WithBrake(grid.pressure(12 * 6894.76)),
                    lower,
                    upper,
                    until)))
        .isEqualTo(
            "hold 13 to 17 mph until %s: 12 psi, release, as needed"
                .formatted(assignment.path().text(3000)));
  }
}
