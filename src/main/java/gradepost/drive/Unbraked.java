package gradepost.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Gives a lower speed that the planned train meets without a brake an approach of its own: whoever
 * is faster there than planned has to know of it.
 */
final class Unbraked {
  private static final double SAME_M = 1e-3;

  /**
   * @param pieces of the run, in order
   * @param actions of the rerun of just these pieces
   */
  static List<Piece> with(
      List<Piece> pieces, List<Target> targets, List<Action> actions, Trace trace) {
    List<Piece> all = new ArrayList<>();
    int action = 0;
    for (Piece piece : pieces) {
      List<Instruction> left = piece.instructions();
      for (Target target : met(piece, pieces, targets)) {
        int cut = 0;
        while (cut < left.size()
            && action + cut < actions.size()
            && actions.get(action + cut).atM() < before(piece, target) - SAME_M) {
          cut++;
        }
        all.add(unbraked(piece, target, left.subList(0, cut), trace));
        left = left.subList(cut, left.size());
        action += cut;
      }
      action += left.size();
      all.add(piece.with(left));
    }
    return all;
  }

  /** Lower speeds between the piece before this one and this one's target. */
  private static List<Target> met(Piece piece, List<Piece> pieces, List<Target> targets) {
    int index = pieces.indexOf(piece);
    double from = index == 0 ? 0 : pieces.get(index - 1).target().atM();
    return targets.stream()
        .filter(t -> t instanceof Target.Reduction r && r.kind() != Target.Reduction.Kind.TERMINAL)
        .filter(t -> t.atM() > from && t.atM() < piece.target().atM())
        .toList();
  }

  /** What comes before this place is done for the target; the rest is for the piece behind it. */
  private static double before(Piece piece, Target target) {
    double own = piece.shutOffM().or(piece::brakingM).orElse(target.atM());
    return Math.min(own, target.atM());
  }

  private static Piece unbraked(
      Piece piece, Target target, List<Instruction> instructions, Trace trace) {
    return new Piece(
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
