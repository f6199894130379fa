package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.source.file.SourceFiles;
import gradepost.source.table.Csv;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Property: a table out and in again changes nothing, and a change changes nothing else. */
@Tag("slow")
class RouteCsvTest {
  private static final String FILE = "route.yaml";
  private static final List<Path> DEMOS =
      List.of(
          Path.of("routes/thrumble-valley/route.yaml"), Path.of("routes/ormel-coast/route.yaml"));

  private static RouteCsv csv(String yaml) {
    return new RouteCsv(name -> new SourceFiles.Bytes(yaml.getBytes(StandardCharsets.UTF_8)), FILE);
  }

  private static String out(String yaml, RouteList part) {
    return ((Reading.Good<String>) csv(yaml).export(part)).value();
  }

  private static Reading<String> in(String yaml, RouteList part, String table) {
    return csv(yaml)
        .imported(
            List.of(new RouteCsv.Table(part, "table.csv", table.getBytes(StandardCharsets.UTF_8))));
  }

  private static String good(String yaml, RouteList part, String table) {
    Reading<String> reading = in(yaml, part, table);
    assertThat(reading.problems().text()).isEmpty();
    return ((Reading.Good<String>) reading).value();
  }

  @ParameterizedTest
  @EnumSource(
      names = {
        "GRADIENTS",
        "CURVES",
        "RESTRICTIONS",
        "SIGNALS",
        "PLATFORMS",
        "LANDMARKS",
        "STATIONS"
      })
  void aTableOutAndInAgainIsTheSameBytes(RouteList part) throws IOException {
    for (Path demo : DEMOS) {
      for (String end : new String[] {"\n", "\r\n"}) {
        String yaml = Files.readString(demo).replace("\n", end);
        String table = out(yaml, part);
        assertThat(table.lines().count()).isGreaterThan(3);
        assertThat(good(yaml, part, table)).isEqualTo(yaml);
        assertThat(good(yaml, part, table.replace("\n", "\r\n"))).isEqualTo(yaml);
        assertThat(good("\ufeff" + yaml, part, "\ufeff" + table)).isEqualTo("\ufeff" + yaml);
      }
    }
  }

  /** Rows left out, put in twice over and put back: every comment and line comes back. */
  @ParameterizedTest
  @EnumSource(
      names = {
        "GRADIENTS",
        "CURVES",
        "RESTRICTIONS",
        "SIGNALS",
        "PLATFORMS",
        "LANDMARKS",
        "STATIONS"
      })
  void whatIsTakenOutAndPutBackIsThereAgain(RouteList part) throws IOException {
    for (Path demo : DEMOS) {
      String yaml = Files.readString(demo);
      List<String> rows = new ArrayList<>(rows(out(yaml, part)));
      List<String> comments = yaml.lines().filter(l -> l.strip().startsWith("#")).toList();
      for (int seed = 0; seed < 2; seed++) {
        Random random = new Random(seed);
        List<String> fewer = new ArrayList<>(rows);
        for (int i = 0; i < 3 && fewer.size() > 3; i++) {
          fewer.remove(1 + random.nextInt(fewer.size() - 1));
        }
        Reading<String> less = in(yaml, part, String.join("\n", fewer));
        if (less instanceof Reading.Good<String> without) {
          assertThat(rows(out(without.value(), part))).isEqualTo(fewer);
          assertThat(without.value().lines()).containsAll(comments);
          String again = good(without.value(), part, String.join("\n", rows));
          assertThat(rows(out(again, part))).isEqualTo(rows);
          assertThat(again.lines()).containsAll(comments);
        } else {
          assertThat(less.problems().all()).isNotEmpty();
        }
      }
    }
  }

  private static List<String> rows(String table) {
    return Csv.rows(table).stream().map(row -> Csv.text(List.of(row)).stripTrailing()).toList();
  }

  @Test
  void oneValueIsReplacedWhereItStands() {
    String yaml = Fixture.good().text(Fixture.ROUTE);
    String table = out(yaml, RouteList.CURVES);
    assertThat(table)
        .isEqualTo(
            """
            from,to,hand,radius,cant,check-rail
            1m 10ch,1m 40ch,left,14 ch,75 mm,low rail
            1m 60ch,1m 70ch,right,30 ch,,
            """);
    String canted = good(yaml, RouteList.CURVES, table.replace("30 ch,,", "30 ch,60 mm,"));
    assertThat(canted).isEqualTo(yaml.replace("radius: 30 ch}", "radius: 30 ch, cant: 60 mm}"));
    String more = good(yaml, RouteList.CURVES, table + "11m 60ch,11m 50ch,left,\"60 ch\",,none\n");
    assertThat(more)
        .isEqualTo(
            yaml.replace(
                "radius: 30 ch}",
                "radius: 30 ch}\n  - {from: 11m 60ch, to: 11m 50ch, hand: left, radius: 60 ch,"
                    + " check-rail: none}"));
    String fewer =
        good(yaml, RouteList.CURVES, table.replace("1m 60ch,1m 70ch,right,30 ch,,\n", ""));
    assertThat(fewer)
        .isEqualTo(
            yaml.replace("  - {from: 1m 60ch, to: 1m 70ch, hand: right, radius: 30 ch}\n", ""));
  }

  @Test
  void anEntryOfManyLinesKeepsThem() {
    String yaml = Fixture.good().text(Fixture.ROUTE);
    String table = out(yaml, RouteList.RESTRICTIONS);
    String edited =
        good(
            yaml,
            RouteList.RESTRICTIONS,
            table
                .replace(",25 mph,", ",20 mph,")
                .replace("check-railed curve", "\"curve, with: check rail\"")
                .replace("[{class: MU, speed: 30 mph}]", "[ {class: MU,  speed: 30 mph} ]"));
    assertThat(edited)
        .isEqualTo(
            yaml.replace("    speed: 25 mph", "    speed: 20 mph")
                .replace("reason: check-railed curve", "reason: \"curve, with: check rail\""));
  }

  @Test
  void aListThatIsNotThereIsMade() throws IOException {
    String yaml = Files.readString(Path.of("src/main/resources/gradepost/start/route.yaml"));
    String table =
        "id,kind,at,direction,line,side,aws,routes,picture,note\nF 1,stop and caution,1m 00ch,Down,Down"
            + " Main,,0m 71ch,,,\"seen late, \"\"round\"\" the curve\"\n";
    String edited = good(yaml, RouteList.SIGNALS, table);
    assertThat(edited).startsWith(yaml).endsWith("note: \"seen late, \\\"round\\\" the curve\"}\n");
    assertThat(out(edited, RouteList.SIGNALS)).isEqualTo(table);
  }

  @Test
  void aMistakeIsToldByItsRowAndNothingIsMade() {
    String yaml = Fixture.good().text(Fixture.ROUTE);
    String table = out(yaml, RouteList.CURVES);
    assertThat(in(yaml, RouteList.CURVES, table.replace("30 ch", "30")).problems().text())
        .startsWith("table.csv:3:1: error: radius \"30\" has no unit; allowed: ");
    assertThat(in(yaml, RouteList.CURVES, table.replace("cant", "kant")).problems().text())
        .isEqualTo(
            "table.csv:1:1: error: there is no column \"kant\"; allowed: from, to, hand, radius,"
                + " cant, check-rail\n  Maybe cant\n");
    assertThat(in(yaml, RouteList.CURVES, "from,to\n\"1m").problems().text())
        .isEqualTo("table.csv:1:1: error: the quotation mark opened on line 2 is not closed\n");
    String platforms = out(yaml, RouteList.PLATFORMS);
    assertThat(
            in(yaml, RouteList.PLATFORMS, platforms.replace("Weir Lane", "Weir Lain"))
                .problems()
                .text())
        .isEqualTo(
            "table.csv:1:1: error: there is no station \"Weir Lain\"; allowed: Weir Lane, Harrow"
                + " Quay\n");
  }
}
