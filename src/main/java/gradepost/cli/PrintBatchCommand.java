package gradepost.cli;

import gradepost.app.PrintBatch;
import gradepost.cli.terminal.Saying;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code gradepost register print}. */
@Command(
    name = "print",
    mixinStandardHelpOptions = true,
    description = {
      "Makes one PDF of all supplements and slips that are still to be given out.",
      "They are in the order of person, then pack. The lists for the office are at the end.",
      "With --labels it makes the labels for their envelopes or pigeon-holes."
    })
final class PrintBatchCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "The file, such as to-print.pdf.")
  private Path file = Path.of("");

  @Option(
      names = "--pack",
      paramLabel = "NAME",
      description = "Only of this pack; may be given several times (default: all packs).")
  private List<String> packs = List.of();

  @Option(
      names = "--labels",
      description =
          "Makes labels for the same people instead: a label for each, in the same order.")
  private boolean labels;

  @Option(
      names = "--across",
      paramLabel = "N",
      defaultValue = "3",
      description = "Labels side by side on a sheet of A4 (default: ${DEFAULT-VALUE}).")
  private int across;

  @Option(
      names = "--down",
      paramLabel = "N",
      defaultValue = "8",
      description = "Labels one below another (default: ${DEFAULT-VALUE}).")
  private int down;

  @Option(
      names = "--skip",
      paramLabel = "N",
      defaultValue = "0",
      description = "This number of labels on the first sheet is used up.")
  private int skip;

  @Option(
      names = "--templates",
      paramLabel = "DIR",
      description =
          "Lay the labels out with the depot's own templates instead of those in the jar.")
  private @Nullable Path templates;

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Override
  public Integer call() {
    PrintBatch batch =
        new PrintBatch(register.store(), LocalDateTime.now(Main.clock(register.command())));
    return Saying.exitCode(
        register.command(),
        labels
            ? batch.labels(file, packs, Optional.ofNullable(templates), across, down, skip)
            : batch.to(file, packs));
  }
}
