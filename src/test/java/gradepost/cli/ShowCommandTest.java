package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.source.Frozen;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: the strip shows what was typed, and fits the terminal. */
class ShowCommandTest {
  private final StringWriter err = new StringWriter();

  private List<String> show(String... options) {
    StringWriter out = new StringWriter();
    List<String> args = new ArrayList<>();
    args.add("show");
    args.add(Frozen.FOLDER.resolve("thrumble-valley/route.yaml").toString());
    args.addAll(List.of(options));
    int code = Main.run(new PrintWriter(out), new PrintWriter(err), args.toArray(String[]::new));
    assertThat(code).isEqualTo(err.toString().isEmpty() ? 0 : 1);
    return out.toString().lines().toList();
  }

  @Test
  void theStripShowsWhatWasTypedInNoMoreThanItsWidth() {
    for (int width : new int[] {60, 80, 133}) {
      List<String> strip = show("--width", "" + width);
      assertThat(strip)
          .allMatch(
              line ->
                  line.length() <= width && (line.equals(line.strip()) || line.startsWith(" ")));
      assertThat(strip).anyMatch(line -> line.startsWith("4m 07.5ch "));
      for (String id : new String[] {"HT 3", "EB 81", "== end"}) {
        assertThat(strip).anyMatch(line -> line.contains(id));
      }
    }
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void aPartBeginsAndEndsWhereItWasAskedFor() {
    List<String> part = show("--width", "80", "--from", "Harbour 1m 62ch", "--to", "1m 56ch");
    assertThat(part.get(3)).startsWith("1m 56ch ");
    assertThat(part).noneMatch(line -> line.startsWith("1m 55ch"));
  }

  @Test
  void aPlaceOnTwoSectionsAndATooNarrowTerminalAreRefused() {
    show("--width", "80", "--from", "1m 62ch");
    show("--width", "59");
    show("--width", "-5");
    show("--width", "1001");
    assertThat(err.toString())
        .isEqualTo(
            "error: 1m 62ch is on Valley, Harbour\n  Maybe \"Valley 1m 62ch\"\n"
                + "error: --width 59 is too narrow for a strip; allowed: 60 to 1000 characters\n"
                + "error: --width -5 is too narrow for a strip; allowed: 60 to 1000 characters\n"
                + "error: --width 1001 is too wide for a strip; allowed: 60 to 1000 characters\n");
  }
}
