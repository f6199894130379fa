package gradepost.cli;

import gradepost.app.Exchange;
import gradepost.cli.terminal.Saying;
import gradepost.source.RouteList;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost import}. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    description =
        "Changes lists of a route to match tables. Comments and the order of the file stay.")
final class ImportCommand implements Callable<Integer> {
  @Parameters(
      index = "0",
      paramLabel = "KIND|FOLDER",
      description = {
        "gradients, curves, restrictions, signals, landmarks, stations, platforms, junctions,"
            + " structures, gaps or notices.",
        "Or a folder of tables, such as gradients.csv: all go in, or none."
      })
  private String kind = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "TABLE",
      description = "The table, as export prints it; with commas, semicolons or tabs.")
  private @Nullable Path table;

  @Option(
      names = "--into",
      required = true,
      paramLabel = "ROUTE",
      description =
          "The route file, or for notices the file of restrictions. It stays as it is if a table has"
              + " a mistake.")
  private Path route = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    if (table == null) {
      return Saying.exitCode(spec, new Exchange().all(Path.of(kind), route));
    }
    RouteList list =
        RouteList.of(kind.toLowerCase(Locale.ROOT))
            .orElseThrow(
                () ->
                    new ParameterException(
                        spec.commandLine(),
                        CliText.NO_LIST.with(kind, RouteList.words()).inWords()));
    return Saying.exitCode(spec, new Exchange().into(list, table, route));
  }
}
