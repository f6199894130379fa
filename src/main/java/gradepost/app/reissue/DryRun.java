package gradepost.app.reissue;

import gradepost.app.making.Outcome;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A reissue that only says what would happen. */
final class DryRun {

  static Answer of(Order order, List<Path> packs, ReissueRound round)
      throws IOException, RegisterException {
    Answer restored = Answer.GOOD;
    List<Outcome> outcomes = List.of();
    if (order.put().store().exists()) {
      try (Register register = order.put().store().open()) {
        restored = FromArchive.asOrdered(order, packs, register);
        outcomes = restored.good() ? round.of(packs, Optional.of(register)) : outcomes;
      }
    } else {
      outcomes = round.of(packs, Optional.empty());
    }
    return restored
        .and(ReissueTold.of(outcomes, true))
        .and(Answer.said("dry run: nothing was written"));
  }

  private DryRun() {}
}
