package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.policy.Subject;
import gradepost.stock.Notch;
import java.util.ArrayList;
import java.util.List;

/** Between which speeds a speed is held, and with what. */
final class HeldItems {
  private final BriefingFacts taught;
  private final References references;
  private final List<Notch> notches;

  HeldItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
    this.notches = taught.assignment().stock().traction().notches();
  }

  List<Item> all() {
    List<Item> out = new ArrayList<>();
    for (Approach approach : taught.plan().approaches()) {
      for (Action action : approach.actions()) {
        action.command().hold().ifPresent(hold -> out.add(item(approach, action, hold)));
      }
    }
    return out;
  }

  private Item item(Approach approach, Action action, Command.Hold hold) {
    String right = answer(hold.by(), hold.lowerMps(), hold.upperMps());
    Distractors near = new Distractors(right);
    // Two bands, each with two handles: all four are alike.
    double step = taught.units().speedStep() * taught.units().speedUnitMps();
    double by = hold.lowerMps() > 2 * step && action.approach() % 2 == 0 ? -step : step;
    Command.HeldBy other = others(hold.by()).get(0);
    near.add(answer(other, hold.lowerMps(), hold.upperMps()));
    near.add(answer(hold.by(), hold.lowerMps() + by, hold.upperMps() + by));
    near.add(answer(other, hold.lowerMps() + by, hold.upperMps() + by));
    return new Item(
        Subject.HELD_SPEED,
        taught.title(approach),
        action.atM(),
        taught.text("ask.held-speed", taught.place(action.atM()), taught.place(hold.untilM())),
        right,
        near.all(),
        references.approach(approach));
  }

  /** The next notch, and the other handle. */
  private List<Command.HeldBy> others(Command.HeldBy by) {
    double check = taught.assignment().policy().run().checkPressure().pascals();
    return by.match(
        in ->
            List.of(
                new Command.InNotch(in.notch() + 1 < notches.size() ? in.notch() + 1 : 0),
                new Command.WithBrake(check)),
        brake -> List.of(new Command.InNotch(0)));
  }

  private String answer(Command.HeldBy by, double lowerMps, double upperMps) {
    String with =
        by.match(
            in -> taught.notch(notches.get(in.notch()).name()),
            brake -> taught.text("answer.held-brake", taught.pressure(brake.pressurePa())));
    return taught.text("answer.held", taught.speed(lowerMps), taught.speed(upperMps), with);
  }
}
