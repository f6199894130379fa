package gradepost.cli;

import gradepost.app.AssessRide;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost ride}. */
@Command(
    name = "ride",
    mixinStandardHelpOptions = true,
    description = "Compares a driven run with the briefed one and prints the assessor's report.")
final class RideCommand implements Callable<Integer> {
  @Parameters(
      arity = "1",
      paramLabel = "RIDE.csv",
      description =
          "What was observed: the filled-in ride form, or a recorder's export with distance and"
              + " speed.")
  private Path ride = Path.of("");

  @Option(
      names = "--pack",
      required = true,
      paramLabel = "PACK.yaml",
      description = "The pack that the driver was briefed with.")
  private Path pack = Path.of("");

  @Option(
      names = "--direction",
      paramLabel = "NAME",
      description = "The direction driven; needed if the pack has more than one.")
  private @Nullable String direction;

  @Option(
      names = "--formation",
      paramLabel = "NAME",
      description = "The formation driven; needed if the pack has more than one.")
  private @Nullable String formation;

  @Option(
      names = "--date",
      paramLabel = "YYYY-MM-DD",
      description = "The day of the ride, for the report and its due dates.")
  private @Nullable LocalDate date;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = ".",
      description = "Where the report goes (default: the current folder).")
  private Path out = Path.of(".");

  @Option(
      names = "--templates",
      paramLabel = "DIR",
      description = "Lay out with the depot's own templates instead of those in the jar.")
  private @Nullable Path templates;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    return Saying.exitCode(
        spec,
        new AssessRide(Optional.ofNullable(templates), Optional.ofNullable(date))
            .of(ride, pack, Optional.ofNullable(direction), Optional.ofNullable(formation), out));
  }
}
