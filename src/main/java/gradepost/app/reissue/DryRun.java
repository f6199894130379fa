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
    if (!order.put().store().exists()) {
      Answer fits = round.fits(packs, Optional.empty());
      return fits.good() ? fits.and(told(round.of(packs, Optional.empty()))) : fits;
    }
    try (Register register = order.put().store().open()) {
      Answer fits = round.fits(packs, Optional.of(register));
      if (!fits.good()) {
        return fits;
      }
      Answer restored = FromArchive.asOrdered(order, packs, register);
      List<Outcome> outcomes = restored.good() ? round.of(packs, Optional.of(register)) : List.of();
      return fits.and(restored).and(told(outcomes));
    }
  }

  private static Answer told(List<Outcome> outcomes) {
    return ReissueTold.of(outcomes, true).and(Answer.said("dry run: nothing was written"));
  }

  private DryRun() {}
}
