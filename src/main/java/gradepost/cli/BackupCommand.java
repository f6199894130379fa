package gradepost.cli;

import gradepost.app.store.Backup;
import gradepost.cli.terminal.Saying;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code gradepost register backup}. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    description = "Keeps register, archive and data in one ZIP file, each with its digest.")
final class BackupCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "The backup, such as backup-2026-11.zip.")
  private Path file = Path.of("");

  @Option(
      names = "--data",
      paramLabel = "FOLDER",
      description = "The folder of packs, routes, stock and policies (default: none).")
  private @Nullable Path data;

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Override
  public Integer call() {
    return Saying.exitCode(
        register.command(),
        new Backup(register.store(), Optional.ofNullable(data))
            .to(file, register.who(), Duration.ofSeconds(10)));
  }
}
