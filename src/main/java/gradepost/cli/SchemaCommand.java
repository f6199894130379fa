package gradepost.cli;

import gradepost.app.export.SchemaText;
import gradepost.source.file.FileKind;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost schema}. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    description =
        "Prints the JSON Schema of a kind of file. Editors use those of data files, other programs"
            + " that of the hand-over.")
final class SchemaCommand implements Callable<Integer> {
  /** What has a schema. */
  private enum Kind {
    ROUTE,
    STOCK,
    POLICY,
    RESTRICTIONS,
    PACK,
    HAND_OVER;

    /** As it is typed. */
    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private String schema() {
      return this == HAND_OVER ? SchemaText.ofHandOver() : SchemaText.of(FileKind.valueOf(name()));
    }
  }

  @Parameters(
      paramLabel = "KIND",
      description = "route, stock, policy, restrictions, pack or hand-over.")
  private Kind kind = Kind.ROUTE;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    spec.commandLine().getOut().print(kind.schema());
    spec.commandLine().getOut().flush();
    return 0;
  }
}
