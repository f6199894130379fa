package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.Subject;
import gradepost.route.BoardKind;
import gradepost.route.Differential;
import gradepost.route.PermanentRestriction;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** How fast, until where, and what the board shows. */
final class SpeedItems {
  private final BriefingFacts taught;
  private final References references;
  private final List<CeilingStep> steps;

  SpeedItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
    this.steps = taught.plan().ceiling();
  }

  /** In the middle of each stretch of one permissible speed, well away from its ends. */
  List<Item> permissible() {
    List<Item> out = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      CeilingStep step = steps.get(i);
      double at = taught.path().printedAtOrBefore((step.fromM() + step.toM()) / 2);
      double margin = taught.units().placeStepM();
      if (at < step.fromM() + margin || at > step.toM() - margin) {
        continue;
      }
      Distractors near = new Distractors(taught.speed(step.speedMps()));
      for (int by : new int[] {1, -1, 2, -2}) {
        if (i + by >= 0 && i + by < steps.size()) {
          near.add(taught.speed(steps.get(i + by).speedMps()));
        }
      }
      double ten = 10 * taught.units().speedUnitMps();
      for (double by : new double[] {-ten / 2, ten / 2, -ten, ten, -1.5 * ten, 1.5 * ten}) {
        if (step.speedMps() + by > ten / 3) {
          near.add(taught.speed(step.speedMps() + by));
        }
      }
      out.add(
          new Item(
              Subject.PERMISSIBLE_SPEED,
              "",
              at,
              taught.text("ask.permissible-speed", new Where(taught).of(at)),
              taught.speed(step.speedMps()),
              near.all(),
              references.line(begin(i))));
    }
    return out;
  }

  /** Where the line sheets tell the speed of a step: at or after it where the speed rises. */
  private String begin(int step) {
    double from = steps.get(step).fromM();
    boolean rises = step > 0 && steps.get(step).speedMps() > steps.get(step - 1).speedMps();
    return rises ? taught.placePast(from) : taught.place(from);
  }

  /** Where the permissible speed rises for the front, the rear being clear of what was lower. */
  List<Item> rearClear() {
    List<Item> out = new ArrayList<>();
    double train = taught.assignment().formation().lengthM();
    for (int i = 0; i + 1 < steps.size(); i++) {
      CeilingStep step = steps.get(i);
      CeilingStep next = steps.get(i + 1);
      double clear = step.toM();
      if (next.speedMps() <= step.speedMps() || clear > taught.path().lengthM() - 1) {
        continue;
      }
      Distractors near = new Distractors(taught.placePast(clear));
      for (double by : new double[] {-1, 1, -0.5, 0.5, -2, 2, -1.5, 1.5}) {
        near.place(taught, clear, clear + by * train);
      }
      if (near.enough()) {
        out.add(
            new Item(
                Subject.REAR_CLEAR,
                step.lastCause(),
                clear,
                taught.text(
                    "ask.rear-clear",
                    taught.speed(step.speedMps()),
                    step.lastCause(),
                    taught.speed(next.speedMps())),
                taught.placePast(clear),
                near.all(),
                references.line(taught.placePast(clear))));
      }
    }
    return once(out);
  }

  /** What is asked in the same words of two places is asked of neither. */
  static List<Item> once(List<Item> items) {
    return items.stream()
        .filter(i -> items.stream().filter(o -> o.ask().equals(i.ask())).count() == 1)
        .toList();
  }

  List<Item> boards() {
    List<PermanentRestriction> all =
        taught.assignment().route().restrictions().stream()
            .filter(r -> taught.applies(r.applies()))
            .toList();
    List<Item> out = new ArrayList<>();
    for (PermanentRestriction r : all) {
      for (BriefingFacts.At<gradepost.route.Board> board : taught.boards(r.boards())) {
        if (board.what().kind() != BoardKind.COMMENCEMENT) {
          continue;
        }
        Distractors near = new Distractors(shown(r));
        r.differentials().forEach(d -> near.add(taught.number(d.speed().metresPerSecond())));
        near.add(taught.number(r.speed().metresPerSecond()));
        int own = all.indexOf(r);
        for (int by : new int[] {1, -1, 2, -2, 3, -3}) {
          if (own + by >= 0 && own + by < all.size()) {
            near.add(shown(all.get(own + by)));
          }
        }
        if (near.enough()) {
          out.add(
              new Item(
                  Subject.BOARD,
                  r.name(),
                  board.atM(),
                  taught.text("ask.board", r.name(), taught.place(board.atM())),
                  shown(r),
                  near.all(),
                  references.table("permanent")));
        }
      }
    }
    return once(out);
  }

  private String shown(PermanentRestriction r) {
    return taught.number(r.speed().metresPerSecond())
        + r.differentials().stream().map(this::shown).collect(Collectors.joining());
  }

  private String shown(Differential d) {
    return " "
        + taught.text(
            "speed.differential", d.trainClass(), taught.number(d.speed().metresPerSecond()));
  }
}
