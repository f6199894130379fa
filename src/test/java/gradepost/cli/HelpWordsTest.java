package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.text.WordRules;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

/** Property: what a command says of itself is written by the rules of {@link WordRules}. */
class HelpWordsTest {
  /** Of every command: what it does, its options, what stands behind its name. */
  private static Stream<String> texts(CommandLine command) {
    CommandSpec spec = command.getCommandSpec();
    Stream<String> own =
        Stream.of(
                spec.usageMessage().description(),
                spec.usageMessage().footer(),
                spec.usageMessage().exitCodeList().values().toArray(new String[0]))
            .flatMap(Arrays::stream);
    Stream<String> arguments =
        spec.args().stream().map(ArgSpec::description).flatMap(Arrays::stream);
    return Stream.of(
            own,
            arguments,
            command.getSubcommands().values().stream().flatMap(HelpWordsTest::texts))
        .flatMap(s -> s);
  }

  private static List<String> wrong(CommandLine command) {
    List<String> out = new ArrayList<>();
    texts(command).forEach(text -> out.addAll(WordRules.wrong(text, WordRules.LONG)));
    return out;
  }

  @Test
  void everyHelpIsInPlainWords() {
    CommandLine command = Main.commandLine();
    assertThat(wrong(command)).isEmpty();
    assertThat(texts(command)).hasSizeGreaterThan(150);
  }

  @CommandLine.Command(name = "planted", description = "Whoever asks for it: {0}; {1}; {2}.")
  private static final class Planted implements Runnable {
    @CommandLine.Option(names = "--days", description = "Lapses within so many days.")
    private int days;

    @Override
    public void run() {
      throw new UnsupportedOperationException("" + days);
    }
  }

  @Test
  void aWrongHelpIsRefused() {
    CommandLine command = Main.commandLine();
    command.addSubcommand(new Planted());
    assertThat(String.join("\n", wrong(command)))
        .contains("\"Whoever\"", "\"so many\"", "more than one semicolon");
  }
}
