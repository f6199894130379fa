package gradepost.cli;

import gradepost.units.Nearest;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** The command {@code gradepost}. */
@Command(
    name = "gradepost",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    description = "Computes and prints a train driver's route briefing.",
    footer = {
      "",
      "A training aid. The rule book, current notices, signals and lineside signs come first.",
      "So do the operator's instructions and a competent person's judgement."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done, perhaps with warnings",
      "1:not done, or findings of check, verify or reproduce",
      "2:mistake in the command"
    })
public final class Main implements Runnable {
  /**
   * The level that streams in a PDF are deflated with: a quarter of the time of the usual 6, and 3
   * % more bytes. PDFBox takes it from this property only, for the whole process; so it is set
   * where the process is ours.
   */
  private static final String DEFLATE = "org.apache.pdfbox.filter.deflatelevel";

  private static final List<Class<?>> COMMANDS =
      List.of(
          BriefCommand.class,
          CheckCommand.class,
          VerifyCommand.class,
          RideCommand.class,
          SchemaCommand.class,
          ShowCommand.class,
          NewCommand.class,
          ReissueCommand.class,
          WorkCommand.class,
          RegisterCommand.class,
          ReproduceCommand.class,
          ImportCommand.class,
          ExportCommand.class,
          DeskCommand.class,
          AccountCommand.class);

  @Spec private CommandSpec spec = CommandSpec.create();
  private final Clock clock;

  private Main(Clock clock) {
    this.clock = clock;
  }

  /** The clock that the whole command goes by. */
  static Clock clock(CommandSpec command) {
    return command.root().userObject() instanceof Main main
        ? main.clock
        : Clock.system(ZoneId.systemDefault());
  }

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), CliText.NO_COMMAND.of(spec.subcommands().keySet()));
  }

  /** Runs the command and ends with its exit code. */
  public static void main(String[] args) {
    System.setProperty(DEFLATE, "4");
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int code = run(out, err, args);
    if (code != 0) {
      System.exit(code);
    }
  }

  /** Runs a command on these streams and gives its exit code. */
  static int run(PrintWriter out, PrintWriter err, String... args) {
    return run(Clock.system(ZoneId.systemDefault()), out, err, args);
  }

  /** The same by another clock. */
  static int run(Clock clock, PrintWriter out, PrintWriter err, String... args) {
    CommandLine commandLine = commandLine(clock, args);
    commandLine.setOut(out);
    commandLine.setErr(err);
    commandLine.setCaseInsensitiveEnumValuesAllowed(true);
    TypedValues.understoodBy(commandLine);
    int code = commandLine.execute(args);
    if (out.checkError()) {
      err.print("error: " + CliText.NOT_SAID.inWords() + "\n");
      err.flush();
      return code == 0 ? 1 : code;
    }
    return code;
  }

  /** The command with those that these words may name below it. */
  static CommandLine commandLine(String... args) {
    return commandLine(Clock.system(ZoneId.systemDefault()), args);
  }

  private static CommandLine commandLine(Clock clock, String... args) {
    CommandLine commandLine = new CommandLine(new Main(clock));
    asked(args).forEach(commandLine::addSubcommand);
    return commandLine.setParameterExceptionHandler(Main::refused);
  }

  /** What is wrong, and in a line where to look: the whole help would push it off the screen. */
  private static int refused(ParameterException wrong, String... args) {
    CommandLine command = wrong.getCommandLine();
    PrintWriter err = command.getErr();
    Optional<String> word =
        wrong instanceof UnmatchedArgumentException unmatched && !unmatched.isUnknownOption()
            ? unmatched.getUnmatched().stream().findFirst()
            : Optional.empty();
    if (word.isPresent()) {
      Set<String> known = command.getSubcommands().keySet();
      err.print(
          (known.isEmpty()
                      ? CliText.TOO_MANY.with(word.get())
                      : CliText.NO_SUCH_COMMAND.with(
                          word.get(), known, Nearest.to(word.get(), known)))
                  .inWords()
              + "\n");
    } else {
      err.print(wrong.getMessage() + "\n");
      UnmatchedArgumentException.printSuggestions(wrong, err);
    }
    err.print(CliText.HELP.of(command.getCommandSpec().qualifiedName()) + "\n");
    err.flush();
    return command.getCommandSpec().exitCodeOnInvalidInput();
  }

  /**
   * The command that is named, or else all: to read what the others take costs a tenth of a second.
   */
  private static List<Class<?>> asked(String... args) {
    return COMMANDS.stream()
        .filter(c -> args.length > 0 && c.getAnnotation(Command.class).name().equals(args[0]))
        .findFirst()
        .<List<Class<?>>>map(List::of)
        .orElse(COMMANDS);
  }

  /** The version that the jar's manifest states. */
  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      String version =
          Optional.ofNullable(Main.class.getPackage().getImplementationVersion())
              .orElse("(built from source)");
      return new String[] {"gradepost " + version};
    }
  }
}
