package gradepost.cli;

import gradepost.app.Exchange;
import gradepost.source.RouteCsv;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost import}. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    description =
        "Changes a list of a route to match a table. Comments and the order of the file stay.")
final class ImportCommand implements Callable<Integer> {
  @Parameters(
      index = "0",
      paramLabel = "KIND",
      description = "gradients, curves, restrictions, signals, platforms or landmarks.")
  private RouteCsv.Part part = RouteCsv.Part.GRADIENTS;

  @Parameters(index = "1", paramLabel = "TABLE", description = "The table, as export prints it.")
  private Path table = Path.of("");

  @Option(
      names = "--into",
      required = true,
      paramLabel = "ROUTE",
      description = "The route file; left as it is if the table has a mistake.")
  private Path route = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    return Saying.exitCode(spec, new Exchange().into(part, table, route));
  }
}
