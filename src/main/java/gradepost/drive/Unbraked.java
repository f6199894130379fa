package gradepost.drive;

import gradepost.drive.brake.Slack;
import gradepost.drive.leg.ApproachSolution;
import gradepost.plan.Action;
import gradepost.plan.Instruction;
import gradepost.plan.Run;
import gradepost.plan.Trace;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Gives a lower speed that the planned train meets without a brake an approach of its own: whoever
 * is faster there than planned has to know of it.
 */
final class Unbraked {
  /**
   * @param pieces of the run, in order
   * @param actions of the rerun of just these pieces
   */
  static List<ApproachSolution> with(
      List<ApproachSolution> pieces, List<Target> targets, List<Action> actions, Trace trace) {
    List<ApproachSolution> all = new ArrayList<>();
    int action = 0;
    for (ApproachSolution piece : pieces) {
      List<Instruction> left = piece.instructions();
      for (Target target : met(piece, pieces, targets)) {
        int cut = 0;
        while (cut < left.size()
            && action + cut < actions.size()
            && actions.get(action + cut).atM() < before(piece, target) - Slack.JUST_BEFORE_M) {
          cut++;
        }
        if (cut > 0 && cut < left.size() && left.get(cut - 1).command().testsBrake()) {
          // A running brake test is told on one page.
          cut++;
        }
        while (cut > 0 && cut < left.size() && furtherNotch(left.get(cut))) {
          // And so is power taken through its notches.
          cut++;
        }
        all.add(unbraked(piece, target, left.subList(0, cut), trace));
        left = left.subList(cut, left.size());
        action += cut;
      }
      action += left.size();
      all.add(piece.with(left));
    }
    return withBrakesBeforeTheBoard(all, actions);
  }

  /**
   * A brake that checks the speed before a board is told on the page of that board, though the
   * piece that was worked out for it ends earlier. An application for a target is told on the page
   * of its target, with the answers that belong to it.
   */
  private static List<ApproachSolution> withBrakesBeforeTheBoard(
      List<ApproachSolution> pieces, List<Action> actions) {
    List<ApproachSolution> all = new ArrayList<>(pieces);
    int action = 0;
    for (int i = 0; i < all.size(); i++) {
      List<Instruction> own = all.get(i).instructions();
      int first = action;
      int moved = 0;
      if (i > 0 && isUnbraked(all.get(i - 1))) {
        double boardM = all.get(i - 1).target().atM();
        for (int j = 0; j < own.size() && first + j < actions.size(); j++) {
          boolean before = actions.get(first + j).atM() <= boardM;
          moved = before && own.get(j).command().checksSpeed() ? j + 1 : moved;
        }
      }
      if (moved > 0) {
        all.set(i - 1, to(all.get(i - 1), own.subList(0, moved)));
        all.set(i, all.get(i).with(own.subList(moved, own.size())));
      }
      action += own.size();
    }
    return all;
  }

  private static boolean furtherNotch(Instruction instruction) {
    return instruction.command().isPower() && instruction.trigger().after().isPresent();
  }

  private static boolean isUnbraked(ApproachSolution piece) {
    return piece.target().isLowerSpeed() && piece.braking().isEmpty();
  }

  private static ApproachSolution to(ApproachSolution piece, List<Instruction> more) {
    List<Instruction> with = new ArrayList<>(piece.instructions());
    more.forEach(i -> with.add(new Instruction(piece.target(), i.trigger(), i.command())));
    return piece.with(with);
  }

  /** Lower speeds between the piece before this one and this one's target. */
  private static List<Target> met(
      ApproachSolution piece, List<ApproachSolution> pieces, List<Target> targets) {
    int index = pieces.indexOf(piece);
    double from = index == 0 ? 0 : pieces.get(index - 1).target().atM();
    return targets.stream()
        .filter(Target::isLowerSpeed)
        .filter(t -> t.atM() > from && t.atM() < piece.target().atM())
        .toList();
  }

  /** What comes before this place is done for the target; the rest is for the piece behind it. */
  private static double before(ApproachSolution piece, Target target) {
    double own = piece.shutOffM().or(piece::brakingM).orElse(target.atM());
    return Math.min(own, target.atM());
  }

  private static ApproachSolution unbraked(
      ApproachSolution piece, Target target, List<Instruction> instructions, Trace trace) {
    return new ApproachSolution(
        target,
        piece.fromM(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new Run(trace).speedAt(target.atM()),
        Optional.empty(),
        piece.line(),
        instructions.stream().map(i -> new Instruction(target, i.trigger(), i.command())).toList(),
        target.atM(),
        true);
  }

  private Unbraked() {}
}
