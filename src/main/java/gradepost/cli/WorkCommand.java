package gradepost.cli;

import gradepost.app.queue.Worker;
import gradepost.app.store.Answer;
import gradepost.cli.terminal.Saying;
import java.time.Duration;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code gradepost work}. */
@Command(
    name = "work",
    mixinStandardHelpOptions = true,
    description =
        "Makes issues that reissue --queue asks for, until it is stopped. Start one on each"
            + " machine, and stop it at any time: another takes up its work.")
final class WorkCommand implements Callable<Integer> {
  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "How many issues to make at once (default: one for each processor).")
  private int threads = Runtime.getRuntime().availableProcessors();

  @Option(
      names = "--until-done",
      description = "End when nothing is left to do (default: wait for more).")
  private boolean untilDone;

  @Option(
      names = "--sign-of-life",
      paramLabel = "SECONDS",
      defaultValue = "15",
      description =
          "How often to give one (default: ${DEFAULT-VALUE}). A worker that misses "
              + Worker.MISSED
              + " is taken for dead.")
  private int sign = 15;

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Worker.Pace pace = new Worker.Pace(threads, Duration.ofSeconds(sign), untilDone);
    Answer answer =
        new Worker(register.storeOfWorkers(), pace, made -> Saying.exitCode(spec, made)).run();
    return Saying.exitCode(spec, answer);
  }
}
