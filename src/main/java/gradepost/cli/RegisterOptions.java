package gradepost.cli;

import gradepost.app.store.Store;
import gradepost.reissue.register.Names;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Where the register is, and who is at work; common to every command that needs it. */
final class RegisterOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec command = CommandSpec.create();

  @Option(
      names = "--register",
      paramLabel = "FILE|URL",
      defaultValue = "register/register.db",
      description = "The register: a file, or a JDBC address (default: ${DEFAULT-VALUE}).")
  private String register = "";

  @Option(
      names = "--archive",
      paramLabel = "DIR|register",
      description =
          "Where issues are kept (default: the folder archive beside the register). A register in"
              + " PostgreSQL keeps them itself with the word register, or where there is no such"
              + " folder.")
  private @Nullable Path archive;

  @Option(
      names = "--by",
      paramLabel = "NAME",
      defaultValue = "${sys:user.name}",
      description = "Your name, for the register (default: the user of this machine).")
  private String by = "";

  @Option(
      names = "--depot",
      paramLabel = "NAME",
      defaultValue = "${env:GRADEPOST_DEPOT:-}",
      description = "Your depot, for entries and lists, where depots share a register.")
  private String depot = "";

  /** The command that these options were given to. */
  CommandSpec command() {
    return command;
  }

  /**
   * @throws ParameterException where this register cannot hold its archive
   */
  Store store() {
    if (Store.inRegister(Optional.ofNullable(archive)) && !Store.isPostgres(register)) {
      throw new ParameterException(command.commandLine(), CliText.NO_ARCHIVE_IN_FILE.inWords());
    }
    return Store.of(register, Optional.ofNullable(archive)).at(depot).telling(this::say);
  }

  /** At once: what is said at the end comes too late for whoever waits. */
  private void say(String words) {
    PrintWriter err = command.commandLine().getErr();
    err.print(words + "\n");
    err.flush();
  }

  /**
   * The same for work that is shared: the register holds the archive too.
   *
   * @throws ParameterException where it cannot, or another archive is named
   */
  Store storeOfWorkers() {
    Optional<Path> named = Optional.ofNullable(archive);
    if (!Store.isPostgres(register) || (named.isPresent() && !Store.inRegister(named))) {
      throw new ParameterException(command.commandLine(), CliText.NO_WORKERS.inWords());
    }
    return Store.of(register, Optional.of(Path.of(Store.REGISTER))).at(depot);
  }

  /**
   * @throws ParameterException where the papers could not print the name
   */
  String who() {
    Names.obstacle(Names.Entered.BY_OPTION, by)
        .ifPresent(
            why -> {
              throw new ParameterException(command.commandLine(), why.inWords());
            });
    return by;
  }
}
