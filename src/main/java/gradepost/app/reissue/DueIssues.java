package gradepost.app.reissue;

import gradepost.app.making.Due;
import gradepost.app.making.Making;
import gradepost.app.making.MakingHere;
import gradepost.app.making.Outcome;
import gradepost.app.making.Outcome.State;
import gradepost.app.making.Registry;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** The issues of touched packs, made here or by workers. */
final class DueIssues {
  private final Order order;
  private final By by;
  private final Optional<Register> register;
  private final Optional<Workers> workers;

  /**
   * @param register empty where there is none yet
   * @param workers empty where the run makes the issues itself
   */
  DueIssues(Order order, By by, Optional<Register> register, Optional<Workers> workers) {
    this.order = order;
    this.by = by;
    this.register = register;
    this.workers = workers;
  }

  /**
   * What becomes of each; those that cannot be issued come first.
   *
   * @param done is told the file of each pack when it is made
   */
  List<Outcome> made(List<Seen.Touched> touched, Consumer<Path> done)
      throws IOException, RegisterException {
    List<Outcome> outcomes = new ArrayList<>();
    List<Due> due = new ArrayList<>();
    for (Seen.Touched each : touched) {
      if (each.next().obstacle().isPresent()) {
        Answer why = each.told().and(each.next().obstacle().get());
        outcomes.add(Outcome.of(each.outcome().file(), State.FAILED, why));
        done.accept(each.outcome().file());
      } else {
        due.add(each.due(order.tell().emergency()));
      }
    }
    outcomes.addAll(making().of(due, done));
    return outcomes;
  }

  private Making making() throws IOException {
    if (register.isEmpty() || order.put().dryRun()) {
      Optional<Making> own = workers.flatMap(w -> w.dry(order));
      if (own.isPresent()) {
        return own.get();
      }
      return new MakingHere(Optional.empty(), order.tell().templates(), order.pace().threads());
    } else if (workers.isPresent()) {
      return workers.get().making(order, by, register.get());
    }
    Registry registry =
        Registry.of(register.get(), order.put().store().kept(), by, order.tell().reason());
    return new MakingHere(Optional.of(registry), order.tell().templates(), order.pace().threads());
  }
}
