package gradepost.cli;

import gradepost.app.Check;
import gradepost.app.store.FailOn;
import gradepost.cli.terminal.Saying;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost check}. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description =
        "Reads data files and reports everything that is wrong, all at once. A pack is checked with"
            + " its trains.")
final class CheckCommand implements Callable<Integer> {
  @Parameters(
      arity = "1..*",
      paramLabel = "PATH",
      description = "A data file, or a folder for every YAML file below it.")
  private List<Path> paths = List.of();

  @Option(names = "--json", description = "Report as SARIF 2.1.0, for editors and build servers.")
  private boolean json;

  @Option(
      names = "--fail-on",
      paramLabel = "LEVEL",
      defaultValue = "warnings",
      description =
          "End with 1 from errors or from warnings on (default: warnings). For build servers.")
  private FailOn failOn = FailOn.WARNINGS;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Check check = new Check(Main.clock(spec)).failingOn(failOn);
    return Saying.exitCode(spec, json ? check.sarif(paths) : check.of(paths));
  }
}
