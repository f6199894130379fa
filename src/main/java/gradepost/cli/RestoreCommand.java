package gradepost.cli;

import gradepost.app.store.Backup;
import gradepost.cli.terminal.Saying;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code gradepost register restore}. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    description = "Restores a backup where no register is yet, each file checked by its digest.")
final class RestoreCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "The backup, such as backup-2026-11.zip.")
  private Path file = Path.of("");

  @Option(
      names = "--data",
      paramLabel = "FOLDER",
      description = "The folder for packs, routes, stock and policies (default: left out).")
  private @Nullable Path data;

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Override
  public Integer call() {
    return Saying.exitCode(
        register.command(), new Backup(register.store(), Optional.ofNullable(data)).from(file));
  }
}
