package gradepost.cli;

import gradepost.app.account.AccountDesk;
import gradepost.app.account.Passwords;
import gradepost.app.store.Answer;
import gradepost.cli.terminal.Saying;
import gradepost.reissue.register.Account;
import gradepost.reissue.register.Question;
import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost account}. */
@Command(
    name = "account",
    mixinStandardHelpOptions = true,
    description = {
      "Keeps the accounts of the desk, in the register.",
      "A first password is made and printed once. It is changed at the first entry."
    })
final class AccountCommand implements Runnable {
  private static final String TYPED =
      "Type the first password, or hand it in on standard input. Else one is made.";

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), CliText.NO_ACT.of(spec.subcommands().keySet()));
  }

  private static AccountDesk desk(RegisterOptions register) {
    return new AccountDesk(register.store(), Main.clock(register.command()), register.who());
  }

  private interface WithPassword {
    Answer with(String password);
  }

  /** Says the answer, and the password if it was made here. */
  private static int first(RegisterOptions register, boolean typed, WithPassword act) {
    String password = typed ? typed() : Passwords.made();
    Answer answer = act.with(password);
    if (answer.good() && !typed) {
      answer = answer.and(Answer.said("first password: " + password));
    }
    return Saying.exitCode(register.command(), answer);
  }

  /** Without echo where it is a terminal; else one line. */
  @SuppressWarnings(
      "SystemConsoleNull") // where there is one without a terminal, it reads a line too
  private static String typed() {
    Console console = System.console();
    if (console != null) {
      char[] read = console.readPassword("First password: ");
      return read == null ? "" : new String(read);
    }
    try {
      String line =
          new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)).readLine();
      return line == null ? "" : line;
    } catch (IOException e) {
      return "";
    }
  }

  @Command(
      name = "add",
      mixinStandardHelpOptions = true,
      description = "Makes an account. Acts at the desk are entered under its name.")
  int add(
      @Parameters(paramLabel = "NAME", description = "Of the person, as papers and lists have it.")
          String name,
      @Option(
              names = "--role",
              paramLabel = "ROLE",
              required = true,
              description =
                  "clerk: issues and edits. instructor: signs off, uses the bench. learner: reads"
                      + " and practises.")
          Account.Role role,
      @Option(names = "--type-password", description = TYPED) boolean typed,
      @Mixin RegisterOptions register) {
    return first(register, typed, password -> desk(register).add(name, role, password));
  }

  @Command(
      name = "reset",
      mixinStandardHelpOptions = true,
      description = "Gives a new first password, and signs out. Opens an account that was shut.")
  int reset(
      @Parameters(paramLabel = "NAME", description = "Whose account.") String name,
      @Option(names = "--type-password", description = TYPED) boolean typed,
      @Mixin RegisterOptions register) {
    return first(register, typed, password -> desk(register).reset(name, password));
  }

  @Command(
      name = "shut",
      mixinStandardHelpOptions = true,
      description = "Signs out, and lets nobody in by this account until it is reset.")
  int shut(
      @Parameters(paramLabel = "NAME", description = "Whose account.") String name,
      @Mixin RegisterOptions register) {
    return Saying.exitCode(register.command(), desk(register).shut(name));
  }

  @Command(
      name = "sign-out",
      mixinStandardHelpOptions = true,
      description = "Signs out everywhere, such as after a telephone was lost.")
  int signOut(
      @Parameters(paramLabel = "NAME", description = "Whose account.") String name,
      @Mixin RegisterOptions register) {
    return Saying.exitCode(register.command(), desk(register).endSessions(name));
  }

  @Command(name = "list", mixinStandardHelpOptions = true, description = "Lists the accounts.")
  int list(@Mixin RegisterOptions register, @Mixin ListFormat format) {
    return format.list(register, Question.accounts());
  }
}
