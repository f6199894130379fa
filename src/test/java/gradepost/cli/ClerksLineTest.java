package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The clerk's way to a new line from spreadsheets: six stations, two directions, nine commands at
 * most.
 */
class ClerksLineTest {
  private static final int MOST_COMMANDS = 9;
  private static final List<String> STATIONS =
      List.of("Aldmere", "Birkholt", "Cawbridge", "Dunsett", "Elmcroft", "Fernhow");

  @TempDir Path folder = Path.of("");
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private int commands;

  private int run(String... args) {
    commands++;
    return Main.run(new PrintWriter(out), new PrintWriter(err), args);
  }

  private void table(String name, String text) throws IOException {
    Files.writeString(Files.createDirectories(folder.resolve("tables")).resolve(name), text);
  }

  /** As a spreadsheet saves them: semicolons, tabs, a byte-order mark, an old code page. */
  private void tables() throws IOException {
    table(
        "gradients.csv",
        "from;to;gradient\n0m 00ch;7m 00ch;level\n7m 00ch;12m 00ch;1 in 80 falling\n");
    table("curves.csv", "from\tto\thand\tradius\n1m 30ch\t1m 50ch\tleft\t40 ch\n");
    table(
        "restrictions.csv",
        "sep=,\nname,from,to,speed\nLine speed,0m 00ch,12m 00ch,50 mph\n"
            + "Mill curve,5m 20ch,5m 60ch,40 mph\n");
    StringBuilder stations =
        new StringBuilder("\ufeffstation;code;number;from;to;directions;lines;side;stop-marks\r\n");
    for (int i = 0; i < STATIONS.size(); i++) {
      String name = STATIONS.get(i);
      String code = name.substring(0, 3).toUpperCase(Locale.ROOT);
      String mile = 2 * i + "m ";
      stations.append(
          "%s;%s;1;%s10ch;%s16ch;Down;Down Main;left;[{cars: 2, at: %s14ch, direction: Down}]\r\n"
              .formatted(name, code, mile, mile, mile));
      stations.append(
          ";;2;%s10ch;%s16ch;Up;Up Main;right;[{cars: 2, at: %s12ch, direction: Up}]\r\n"
              .formatted(mile, mile, mile));
    }
    table("stations.csv", stations.toString());
    table(
        "signals.csv", "id,kind,at,direction,line\nA 1,stop and caution,1m 20ch,Down,Down Main\n");
    table("structures.csv", "kind,name,at\noverbridge,Quarry Lane bridge,3m 05ch\n");
    table("gaps.csv", "name,from,to,lines\nMill gap,1m 10ch,1m 11ch,Down Main; Up Main\n");
    table(
        "junctions.csv",
        "name,from,to,routes\nMill Junction,6m 40ch,6m 43ch,\"[{name: Main, speed: 50 mph},"
            + " {name: Siding, speed: 15 mph, diverging: yes}]\"\n");
    table(
        "notices.csv",
        "reference,type,status,from,to,speed,normal speed,reason,imposed,until,lines,boards\n"
            + "T 26/1,temporary,in force,3m 10ch,3m 20ch,20 mph,50 mph,embankment works,"
            + "2026-01-05 04:00,further notice,Down Main,"
            + "warning 2m 40ch Down; commencement 3m 10ch Down; termination 3m 20ch Down\n");
    Files.write(
        folder.resolve("tables/landmarks.csv"),
        "name,at,side,night,sighting\nCaf\u00e9 bridge,1m 60ch,left,yes,200 yd\n"
            .getBytes(Charset.forName("windows-1252")));
  }

  @Test
  void aNewLineTakesNineCommandsAtMost() throws IOException {
    Path pack = folder.resolve("data/pack-new.yaml");
    Path route = folder.resolve("data/route.yaml");
    tables();
    Files.createDirectories(route.getParent());
    assertThat(run("new", "pack", pack.toString())).isZero();
    edit(route, "to: 4m 00ch}\n\nlines", "to: 12m 00ch}\n\nlines");
    edit(pack, "First Station", "Aldmere");
    edit(pack, "Last Station", "Fernhow");
    Set<PosixFilePermission> mode = PosixFilePermissions.fromString("rw-rw-r--");
    Files.setPosixFilePermissions(route, mode);

    assertThat(run("import", folder.resolve("tables").toString(), "--into", route.toString()))
        .as(err.toString())
        .isZero();
    assertThat(err.toString())
        .contains("landmarks.csv:1:1: note: the table is not UTF-8 and was read as Windows-1252");
    assertThat(Files.getPosixFilePermissions(route)).isEqualTo(mode);
    assertThat(route)
        .content()
        .contains("Caf\u00e9 bridge", "name: Fernhow", "lines: [Down Main, Up Main]")
        .doesNotContain("First Station");
    assertThat(folder.resolve("data/restrictions.yaml")).content().doesNotContain("\nnone:");
    Path notices = folder.resolve("data/restrictions.yaml");
    assertThat(run("check", route.toString(), notices.toString())).as(err.toString()).isZero();
    assertThat(commands).isLessThanOrEqualTo(MOST_COMMANDS);

    String before = Files.readString(route);
    for (String kind : List.of("stations", "gaps", "structures", "junctions")) {
      Path table = folder.resolve(kind + ".csv");
      out.getBuffer().setLength(0);
      assertThat(run("export", kind, route.toString())).isZero();
      Files.writeString(table, out.toString());
      assertThat(run("import", kind, table.toString(), "--into", route.toString())).isZero();
      assertThat(out.toString()).contains("already has all that");
    }
    assertThat(Files.readString(route)).isEqualTo(before);
  }

  @Test
  void aTableWithAMistakeChangesNothingAnywhere() throws IOException {
    Path route = folder.resolve("data/route.yaml");
    tables();
    Files.createDirectories(route.getParent());
    assertThat(run("new", "pack", folder.resolve("data/pack-new.yaml").toString())).isZero();
    String before = Files.readString(route);
    table("curves.csv", "from,to,hand\n1m 30ch,1m 50ch,left\n");
    table("signal.csv", "id\n");
    assertThat(run("import", folder.resolve("tables").toString(), "--into", route.toString()))
        .isEqualTo(1);
    assertThat(err.toString()).contains("the file \"signal.csv\" is not a table of a route");
    Files.delete(folder.resolve("tables/signal.csv"));
    assertThat(run("import", folder.resolve("tables").toString(), "--into", route.toString()))
        .isEqualTo(1);
    assertThat(err.toString()).contains("curves.csv:1:1: error: these columns are missing: radius");
    assertThat(Files.readString(route)).isEqualTo(before);
  }

  @Test
  void anOutputThatCannotBeWrittenIsAnError() {
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException("No space left on device");
          }
        };
    int code =
        Main.run(
            new PrintWriter(full, false, StandardCharsets.UTF_8),
            new PrintWriter(err),
            "schema",
            "pack");
    assertThat(code).isEqualTo(1);
    assertThat(err.toString())
        .isEqualTo(
            "error: the output could not be written, so it is not whole; the disk may be full\n");
  }

  private static void edit(Path file, String from, String to) throws IOException {
    String text = Files.readString(file);
    assertThat(text).contains(from);
    Files.writeString(file, text.replace(from, to));
  }
}
