package gradepost.cli;

import gradepost.app.Reproduce;
import gradepost.cli.terminal.Saying;
import gradepost.cli.terminal.TerminalProgress;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost reproduce}. */
@Command(
    name = "reproduce",
    mixinStandardHelpOptions = true,
    description =
        "Makes the papers of a registered issue again from the archive. Says whether they are the"
            + " same, byte for byte, or what differs.")
final class ReproduceCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "ISSUE",
      description = "\"valley/4\", or eight digits or more of its fingerprint, from the first.")
  private String issue = "";

  @Option(names = "--out", paramLabel = "DIR", description = "Also put the papers here.")
  private @Nullable Path out;

  @Option(
      names = "--templates",
      paramLabel = "DIR",
      description = "The depot's own templates, where the issue was laid out with them.")
  private @Nullable Path templates;

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    try (TerminalProgress progress = TerminalProgress.forThisTerminal()) {
      Reproduce reproduce =
          new Reproduce(register.store(), Optional.ofNullable(templates), progress);
      return Saying.exitCode(spec, reproduce.of(issue, Optional.ofNullable(out)));
    }
  }
}
