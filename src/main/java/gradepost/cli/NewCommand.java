package gradepost.cli;

import gradepost.app.NewFile;
import gradepost.cli.terminal.Saying;
import gradepost.source.file.FileKind;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost new}. */
@Command(
    name = "new",
    mixinStandardHelpOptions = true,
    description =
        "Writes a commented file to start from, with its schema beside it. A pack comes with the"
            + " files that it names.")
final class NewCommand implements Callable<Integer> {
  @Parameters(
      index = "0",
      paramLabel = "KIND",
      description = "route, stock, policy, restrictions or pack.")
  private FileKind kind = FileKind.ROUTE;

  @Parameters(index = "1", paramLabel = "FILE", description = "The file to be written.")
  private Path file = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    return Saying.exitCode(spec, new NewFile(Main.clock(spec)).of(kind, file));
  }
}
