package gradepost.cli;

import gradepost.app.Batch;
import gradepost.app.BatchAct;
import gradepost.cli.terminal.Saying;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code gradepost register batch}. */
@Command(
    name = "batch",
    mixinStandardHelpOptions = true,
    description = {
      "Enters a table of people and packs at once: every row, or none.",
      "Columns: issue and person; for staff, person alone.",
      "May also have, for hand-out: copy.",
      "May also have, for return: copy, destroyed (yes or no).",
      "Needs also, for sign-off: direction, assessor, lapses.",
      "May also have, for sign-off: formation, score, paper, conditions."
    })
final class BatchCommand implements Callable<Integer> {
  @Parameters(
      index = "0",
      paramLabel = "ACT",
      description = "What each row does: ${COMPLETION-CANDIDATES}.")
  private BatchAct act = BatchAct.HAND_OUT;

  @Parameters(index = "1", paramLabel = "FILE", description = "The table, as CSV.")
  private Path file = Path.of("");

  @Option(
      names = "--confirm",
      description =
          "Enter it though an issue is not in use, or somebody holds a copy of it already.")
  private boolean confirmed;

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Override
  public Integer call() {
    return Saying.exitCode(
        register.command(),
        new Batch(register.store(), Main.clock(register.command()), register.who(), confirmed)
            .of(act, file));
  }
}
