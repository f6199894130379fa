package gradepost.cli;

import gradepost.app.Entries;
import gradepost.cli.terminal.Saying;
import gradepost.reissue.register.Question;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost register staff}. */
@Command(
    name = "staff",
    mixinStandardHelpOptions = true,
    description = {
      "Keeps the list of people and places of a depot.",
      "Where there is one, names that are not on it are refused."
    })
final class StaffCommand implements Runnable {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), CliText.NO_ACT.of(spec.subcommands().keySet()));
  }

  private static Entries entries(RegisterOptions register) {
    return new Entries(register.store(), Main.clock(register.command()), register.who());
  }

  @Command(name = "add", mixinStandardHelpOptions = true, description = "Enters names in the list.")
  int add(
      @Parameters(arity = "1..*", paramLabel = "NAME", description = "People or places.")
          List<String> names,
      @Mixin RegisterOptions register) {
    return Saying.exitCode(register.command(), entries(register).staff(names, false));
  }

  @Command(
      name = "leave",
      mixinStandardHelpOptions = true,
      description = "Notes that somebody left: no longer to be briefed, copies still to come back.")
  int leave(
      @Parameters(arity = "1..*", paramLabel = "NAME", description = "People or places.")
          List<String> names,
      @Mixin RegisterOptions register) {
    return Saying.exitCode(register.command(), entries(register).staff(names, true));
  }

  @Command(
      name = "forget",
      mixinStandardHelpOptions = true,
      description = {
        "Removes scores, sign-offs and acknowledgements of people who left, when they are due.",
        "They are kept for the months of keep-months in the policy of the latest issue.",
        "The log keeps its entries without the names. Copies that are out are kept.",
        "Archived slips and lists that name them go too, unless they are of the latest issue.",
        "Backups made before still have the names: after a restore, run it again."
      })
  int forget(
      @Option(names = "--dry-run", description = "Only tells what it would remove.") boolean dryRun,
      @Mixin RegisterOptions register) {
    return Saying.exitCode(register.command(), entries(register).forget(dryRun));
  }

  @Command(name = "list", mixinStandardHelpOptions = true, description = "Lists the names.")
  int list(@Mixin RegisterOptions register, @Mixin ListFormat format) {
    return format.list(register, Question.staff());
  }
}
