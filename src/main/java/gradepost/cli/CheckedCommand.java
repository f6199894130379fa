package gradepost.cli;

import gradepost.app.FinalPapers;
import gradepost.cli.terminal.Saying;
import gradepost.cli.terminal.TerminalProgress;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code gradepost register checked}. */
@Command(
    name = "checked",
    mixinStandardHelpOptions = true,
    description = {
      "Notes that you checked a draft: its papers are made without the word DRAFT.",
      "Only then can it be handed out. The person who prepared or entered it cannot check it."
    })
final class CheckedCommand implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "ISSUE", description = "Issues, such as valley/4.")
  private List<String> issues = List.of();

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = ".",
      description = "Where the papers go (default: the current folder).")
  private Path out = Path.of(".");

  @Option(
      names = "--templates",
      paramLabel = "DIR",
      description = "Lay out with the depot's own templates instead of those in the jar.")
  private @Nullable Path templates;

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Override
  public Integer call() {
    try (TerminalProgress progress = TerminalProgress.forThisTerminal()) {
      return Saying.exitCode(
          register.command(),
          new FinalPapers(
                  register.store(),
                  out,
                  Optional.ofNullable(templates),
                  Main.clock(register.command()),
                  register.who())
              .of(issues, Duration.ofSeconds(10), progress));
    }
  }
}
