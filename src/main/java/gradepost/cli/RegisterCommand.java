package gradepost.cli;

import gradepost.app.Desk;
import gradepost.app.Enter;
import gradepost.app.Entries;
import gradepost.cli.terminal.Saying;
import gradepost.cli.terminal.TerminalProgress;
import gradepost.reissue.register.Question;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost register}: acts upon issues, and lists. */
@Command(
    name = "register",
    mixinStandardHelpOptions = true,
    description = "Keeps the register of issues, copies, acknowledgements and sign-offs.",
    subcommands = {
      BackupCommand.class,
      BatchCommand.class,
      CheckedCommand.class,
      NoticesCommand.class,
      PrintBatchCommand.class,
      RestoreCommand.class,
      SignOffCommand.class,
      StaffCommand.class,
      UndoCommand.class
    })
final class RegisterCommand implements Runnable {
  static final String ISSUE =
      "The issue: \"valley/4\", or eight digits or more of its fingerprint, from the first.";
  static final String LATIN_NAME =
      "The name in Latin letters, if it is written in a script that the papers cannot print.";
  private static final String COPY = "The number of the copy, as written on its cover.";

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), CliText.NO_ACT.of(spec.subcommands().keySet()));
  }

  private static int act(RegisterOptions register, String issue, String done, Desk.Act act) {
    return Saying.exitCode(register.command(), desk(register).act(issue, done, act));
  }

  static Desk desk(RegisterOptions register) {
    return new Desk(register.store(), Main.clock(register.command()), register.who());
  }

  private static int list(RegisterOptions register, ListFormat format, Question question) {
    return format.list(register, question);
  }

  @Command(
      name = "enter",
      mixinStandardHelpOptions = true,
      description = "Registers packs as they are, with their papers. Later issues follow these.")
  int enter(
      @Parameters(arity = "1..*", paramLabel = "PACK|FOLDER", description = "Packs, or folders.")
          List<Path> packs,
      @Option(
              names = "--out",
              paramLabel = "DIR",
              defaultValue = ".",
              description = "Where the papers go (default: the current folder).")
          Path out,
      @Option(
              names = "--templates",
              paramLabel = "DIR",
              description = "Lay out with the depot's own templates instead of those in the jar.")
          @Nullable Path templates,
      @Option(names = "--confirm", description = "Register a pack though it has expired.")
          boolean confirmed,
      @Mixin RegisterOptions register) {
    try (TerminalProgress progress = TerminalProgress.forThisTerminal()) {
      return Saying.exitCode(
          register.command(),
          new Enter(
                  register.store(),
                  out,
                  Optional.ofNullable(templates),
                  Main.clock(register.command()),
                  register.who(),
                  confirmed)
              .of(packs, Duration.ofSeconds(10), progress));
    }
  }

  @Command(
      name = "hand-out",
      mixinStandardHelpOptions = true,
      description = "Notes that a copy was handed out.")
  int handOut(
      @Parameters(paramLabel = "ISSUE", description = ISSUE) String issue,
      @Option(
              names = "--copy",
              paramLabel = "NUMBER",
              description = "The number of the copy (default: the next one of the issue).")
          @Nullable String copy,
      @Option(
              names = "--to",
              paramLabel = "HOLDER",
              required = true,
              description = "Who has it now: a person or a place.")
          String holder,
      @Option(names = "--latin-name", paramLabel = "NAME", description = LATIN_NAME)
          @Nullable String latin,
      @Option(
              names = "--confirm",
              description =
                  "Hand it out though it is recalled, superseded or expired, or HOLDER has a copy.")
          boolean confirmed,
      @Mixin RegisterOptions register) {
    return Saying.exitCode(
        register.command(),
        desk(register)
            .handOut(
                issue, Optional.ofNullable(copy), holder, Optional.ofNullable(latin), confirmed));
  }

  @Command(
      name = "return",
      mixinStandardHelpOptions = true,
      description = "Notes that a copy came back, or was destroyed.")
  int takeBack(
      @Parameters(paramLabel = "ISSUE", description = ISSUE) String issue,
      @Option(names = "--copy", paramLabel = "NUMBER", required = true, description = COPY)
          String copy,
      @Option(names = "--destroyed", description = "It was destroyed where it was.")
          boolean destroyed,
      @Mixin RegisterOptions register) {
    return destroyed
        ? act(
            register,
            issue,
            CliText.COPY_DESTROYED.with(copy).inWords(),
            (r, by, entry) -> r.destroyed(by, entry, copy))
        : act(
            register,
            issue,
            CliText.COPY_BACK.with(copy).inWords(),
            (r, by, entry) -> r.takeBack(by, entry, copy));
  }

  @Command(
      name = "acknowledge",
      mixinStandardHelpOptions = true,
      description = "Notes that a slip came back signed.")
  int acknowledge(
      @Parameters(paramLabel = "ISSUE", description = ISSUE) String issue,
      @Option(
              names = "--person",
              paramLabel = "NAME",
              required = true,
              description = "Who signed it, the name as in the list of copies.")
          String person,
      @Option(names = "--latin-name", paramLabel = "NAME", description = LATIN_NAME)
          @Nullable String latin,
      @Mixin RegisterOptions register) {
    return Saying.exitCode(
        register.command(), desk(register).acknowledge(issue, person, Optional.ofNullable(latin)));
  }

  @Command(
      name = "recall",
      mixinStandardHelpOptions = true,
      description = "Recalls an issue that no other replaces.")
  int recall(
      @Parameters(paramLabel = "ISSUE", description = ISSUE) String issue,
      @Option(
              names = "--reason",
              paramLabel = "WORDS",
              required = true,
              description = "The reason, for the lists.")
          String reason,
      @Mixin RegisterOptions register) {
    return Saying.exitCode(
        register.command(),
        new Entries(register.store(), Main.clock(register.command()), register.who())
            .recall(issue, reason));
  }

  @Command(
      name = "placed",
      mixinStandardHelpOptions = true,
      description =
          "Notes that you wrote the files of an issue by hand, where one had been edited.")
  int placed(
      @Parameters(paramLabel = "ISSUE", description = ISSUE) String issue,
      @Mixin RegisterOptions register) {
    return act(register, issue, CliText.PLACED.inWords(), (r, by, entry) -> r.delivered(by, entry));
  }

  @Command(name = "issues", mixinStandardHelpOptions = true, description = "Lists every issue.")
  int issues(@Mixin RegisterOptions register, @Mixin ListFormat format) {
    return list(register, format, Question.issues());
  }

  @Command(
      name = "out",
      mixinStandardHelpOptions = true,
      description = "Lists the copies that are out, and which of them are recalled.")
  int out(@Mixin RegisterOptions register, @Mixin ListFormat format) {
    return list(register, format, Question.out());
  }

  @Command(
      name = "lapsing",
      mixinStandardHelpOptions = true,
      description = "Lists the issues and sign-offs that lapse soon.")
  int lapsing(
      @Option(
              names = "--days",
              paramLabel = "N",
              defaultValue = "28",
              description = "Within this number of days (default: ${DEFAULT-VALUE}).")
          long days,
      @Mixin RegisterOptions register,
      @Mixin ListFormat format) {
    LocalDate last = LocalDate.now(Main.clock(register.command())).plusDays(days);
    return list(register, format, Question.lapsing(last));
  }

  @Command(
      name = "signed",
      mixinStandardHelpOptions = true,
      description = "Lists who is signed off for what: the class list.")
  int signed(@Mixin RegisterOptions register, @Mixin ListFormat format) {
    return list(register, format, Question.signed());
  }

  @Command(
      name = "to-brief",
      mixinStandardHelpOptions = true,
      description =
          "Lists who holds a copy or knows an earlier issue, and has not signed for the latest.")
  int toBrief(@Mixin RegisterOptions register, @Mixin ListFormat format) {
    return list(
        register, format, Question.toBrief(LocalDateTime.now(Main.clock(register.command()))));
  }

  @Command(
      name = "to-make",
      mixinStandardHelpOptions = true,
      description = "Lists the issues that workers are still to make (see work).")
  int toMake(@Mixin RegisterOptions register, @Mixin ListFormat format) {
    return list(register, format, Question.toMake());
  }

  @Command(
      name = "log",
      mixinStandardHelpOptions = true,
      description = "Lists every act: when, who, what.")
  int log(@Mixin RegisterOptions register, @Mixin ListFormat format) {
    return list(register, format, Question.acts());
  }
}
