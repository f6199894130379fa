package gradepost.cli;

import gradepost.app.ride.AssessRide;
import gradepost.app.ride.RideDetails;
import gradepost.cli.terminal.Saying;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
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
      paramLabel = "RIDE.csv|FOLDER",
      description =
          "What was observed: the filled-in ride form, or a recorder's export with distance and"
              + " speed. Or a folder of them: the rides of a class.")
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

  @Option(names = "--driver", paramLabel = "NAME", description = "Who drove.")
  private @Nullable String driver;

  @Option(names = "--assessor", paramLabel = "NAME", description = "Who rode with the driver.")
  private @Nullable String assessor;

  @Option(
      names = "--from",
      paramLabel = "TIME",
      description = "Where the run begins in the export, by its own clock, such as 06:12.")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "TIME", description = "Where it ends.")
  private @Nullable String to;

  @Option(
      names = "--leave-out",
      paramLabel = "NUMBER=REASON",
      description =
          "An approach that is not judged, with the reason, such as 7=\"checked at a signal\"."
              + " May be given again.")
  private Map<Integer, String> leftOut = new LinkedHashMap<>();

  @Option(
      names = "--form",
      paramLabel = "FORM.csv",
      description = "The assessor's form beside an export: how the train stood at its marks.")
  private @Nullable Path form;

  @Option(names = "--json", description = "Writes what was observed and scored as JSON too.")
  private boolean json;

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
        new AssessRide(
                Optional.ofNullable(templates),
                new RideDetails(
                    Optional.ofNullable(direction),
                    Optional.ofNullable(formation),
                    Optional.ofNullable(date),
                    Optional.ofNullable(driver),
                    Optional.ofNullable(assessor),
                    Optional.ofNullable(from),
                    Optional.ofNullable(to),
                    leftOut,
                    Optional.ofNullable(form),
                    json))
            .of(ride, pack, out));
  }
}
