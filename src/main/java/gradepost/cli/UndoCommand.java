package gradepost.cli;

import gradepost.app.Entries;
import gradepost.cli.terminal.Saying;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code gradepost register undo}. */
@Command(
    name = "undo",
    mixinStandardHelpOptions = true,
    description = "Takes back an entry made by mistake. Both entries stay in the log.")
final class UndoCommand implements Callable<Integer> {
  @Parameters(paramLabel = "ENTRY", description = "Its number, as the log has it.")
  private long entry;

  @Option(
      names = "--reason",
      paramLabel = "WORDS",
      required = true,
      description = "Why it is taken back, for the log.")
  private String reason = "";

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Override
  public Integer call() {
    return Saying.exitCode(
        register.command(),
        new Entries(register.store(), Main.clock(register.command()), register.who())
            .undo(entry, reason));
  }
}
