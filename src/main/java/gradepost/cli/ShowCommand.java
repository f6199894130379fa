package gradepost.cli;

import gradepost.app.Show;
import gradepost.app.store.Answer;
import gradepost.cli.terminal.Saying;
import gradepost.cli.terminal.TextStrip;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost show}. */
@Command(
    name = "show",
    mixinStandardHelpOptions = true,
    description = "Draws a route as a strip of plain text. A wrong mileage is easily seen there.")
final class ShowCommand implements Callable<Integer> {
  @Parameters(paramLabel = "ROUTE", description = "A route file.")
  private Path route = Path.of("");

  @Option(
      names = "--from",
      paramLabel = "MILEAGE",
      description = "Where to begin, such as 3m 24ch, or with its section: \"Valley 1m 70ch\".")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "MILEAGE", description = "Where to end.")
  private @Nullable String to;

  @Option(
      names = "--width",
      paramLabel = "N",
      defaultValue = "${env:COLUMNS:-80}",
      converter = Width.class,
      description = "Characters in a line (default: COLUMNS, or 80).")
  private int width = 80;

  @Spec private CommandSpec spec = CommandSpec.create();

  /** Of less than nothing it is said which widths there are, as of one that is too small. */
  static final class Width implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String text) {
      return text.startsWith("-") ? -TypedValues.whole(text.substring(1)) : TypedValues.whole(text);
    }
  }

  @Override
  public Integer call() {
    if (width < TextStrip.LEAST_WIDTH || width > TextStrip.MOST_WIDTH) {
      return Saying.exitCode(
          spec,
          Answer.refused(
              "error: "
                  + (width < TextStrip.LEAST_WIDTH ? CliText.TOO_NARROW : CliText.TOO_WIDE)
                      .with(String.valueOf(width), TextStrip.LEAST_WIDTH, TextStrip.MOST_WIDTH)
                      .inWords()));
    }
    Show show = new Show((all, fromM, toM) -> new TextStrip(all).lines(fromM, toM, width));
    return Saying.exitCode(
        spec, show.of(route, Optional.ofNullable(from), Optional.ofNullable(to)));
  }
}
