package gradepost.cli;

import gradepost.app.Exchange;
import gradepost.cli.terminal.Saying;
import gradepost.source.RouteList;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost export}. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    description = "Prints a list of a route as a table of comma-separated values.")
final class ExportCommand implements Callable<Integer> {
  @Parameters(
      index = "0",
      paramLabel = "KIND",
      description =
          "gradients, curves, restrictions, signals, landmarks, stations, platforms, junctions,"
              + " structures, gaps or notices.")
  private RouteList part = RouteList.GRADIENTS;

  @Parameters(
      index = "1",
      paramLabel = "ROUTE",
      description = "A route file; for notices a file of restrictions.")
  private Path route = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    return Saying.exitCode(spec, new Exchange().export(part, route));
  }
}
