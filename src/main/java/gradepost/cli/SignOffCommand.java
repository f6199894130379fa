package gradepost.cli;

import gradepost.cli.terminal.Saying;
import gradepost.reissue.register.Signature;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code gradepost register sign-off}. */
@Command(
    name = "sign-off",
    mixinStandardHelpOptions = true,
    description = "Notes that a driver was signed off for one direction.")
final class SignOffCommand implements Callable<Integer> {
  @Parameters(paramLabel = "ISSUE", description = RegisterCommand.ISSUE)
  private String issue = "";

  @Option(names = "--person", paramLabel = "NAME", required = true, description = "The driver.")
  private String person = "";

  @Option(names = "--latin-name", paramLabel = "NAME", description = RegisterCommand.LATIN_NAME)
  private @Nullable String latin;

  @Option(
      names = "--direction",
      paramLabel = "NAME",
      required = true,
      description = "A direction of the pack. Each is signed separately.")
  private String direction = "";

  @Option(
      names = "--formation",
      paramLabel = "NAME",
      defaultValue = "",
      description = "A formation of the pack. Each is signed separately.")
  private String formation = "";

  @Option(
      names = "--score",
      paramLabel = "WORDS",
      defaultValue = "",
      description = "Of the knowledge paper, such as \"21 of 24\".")
  private String score = "";

  @Option(
      names = "--paper",
      paramLabel = "N",
      defaultValue = "",
      description = "The number printed on the knowledge paper.")
  private String paper = "";

  @Option(
      names = "--conditions",
      paramLabel = "WORDS",
      defaultValue = "",
      description = "Of the assessed ride: day or night, weather, rail.")
  private String conditions = "";

  @Option(
      names = "--assessor",
      paramLabel = "NAME",
      required = true,
      description = "Who signed the driver off.")
  private String assessor = "";

  @Option(
      names = "--lapses",
      paramLabel = "DATE",
      required = true,
      description = "The day on which it lapses, such as 2027-05-25.")
  private LocalDate lapses = LocalDate.MIN;

  @Option(
      names = "--confirm",
      description = "Sign the driver off though the issue is recalled, superseded or expired.")
  private boolean confirmed;

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Override
  public Integer call() {
    return Saying.exitCode(
        register.command(),
        RegisterCommand.desk(register)
            .signOff(
                issue,
                Optional.ofNullable(latin),
                new Signature(
                    person, direction, formation, assessor, lapses, score, paper, conditions),
                confirmed));
  }
}
