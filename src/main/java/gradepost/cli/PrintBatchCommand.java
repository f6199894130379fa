package gradepost.cli;

import gradepost.app.PrintBatch;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
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
      "They are in the order of person, then pack. The lists for the office are at the end."
    })
final class PrintBatchCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "The file, such as to-print.pdf.")
  private Path file = Path.of("");

  @Option(
      names = "--pack",
      paramLabel = "NAME",
      description = "Only of this pack; may be given several times (default: all packs).")
  private List<String> packs = List.of();

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Override
  public Integer call() {
    return Saying.exitCode(register.command(), new PrintBatch(register.store()).to(file, packs));
  }
}
