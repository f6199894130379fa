package gradepost.cli;

import gradepost.app.export.SchemaText;
import gradepost.source.file.FileKind;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost schema}. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    description = "Prints the JSON Schema of a kind of file, for editors.")
final class SchemaCommand implements Callable<Integer> {
  @Parameters(paramLabel = "KIND", description = "route, stock, policy, restrictions or pack.")
  private FileKind kind = FileKind.ROUTE;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    spec.commandLine().getOut().print(SchemaText.of(kind));
    spec.commandLine().getOut().flush();
    return 0;
  }
}
