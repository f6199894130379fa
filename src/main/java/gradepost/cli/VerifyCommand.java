package gradepost.cli;

import gradepost.app.Verify;
import gradepost.app.store.Store;
import gradepost.cli.terminal.Saying;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost verify}. */
@Command(
    name = "verify",
    mixinStandardHelpOptions = true,
    description = {
      "Tells whether a paper is genuine and in force, by the register.",
      "Without a register: whether its fingerprint is that of the data as they are now."
    })
final class VerifyCommand implements Callable<Integer> {
  @Parameters(arity = "1", paramLabel = "FILE", description = "A briefing: PDF, HTML or JSON.")
  private Path paper = Path.of("");

  @Option(
      names = "--pack",
      paramLabel = "PACK|FOLDER",
      description = "Compare with these packs (default: every pack below the current folder).")
  private List<Path> packs = List.of(Path.of("."));

  @Option(
      names = "--register",
      paramLabel = "FILE|URL",
      defaultValue = "register/register.db",
      description = "The register: a file, or a JDBC address (default: ${DEFAULT-VALUE}).")
  private String register = "";

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    return Saying.exitCode(
        spec,
        new Verify(Store.of(register, Optional.empty()), LocalDateTime.now(Main.clock(spec)))
            .of(paper, packs));
  }
}
