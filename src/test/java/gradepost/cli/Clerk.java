package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.SyntheticNetwork;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

/** A clerk with a small network, a register and a clock, who types commands and reads answers. */
final class Clerk {
  final Path folder;
  final Path routes;
  final Path pack;
  private Clock clock = Clock.systemUTC();
  String out = "";
  String err = "";

  Clerk(Path folder) throws Exception {
    this.folder = folder;
    this.routes = folder.resolve("routes");
    this.pack = new SyntheticNetwork(routes, 1).packs(1, 7).get(0);
  }

  /** It is now so late, such as "2026-11-29T09:00". */
  Clerk at(String moment) {
    clock = Clock.fixed(LocalDateTime.parse(moment).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
    return this;
  }

  /** Types a command that ends with this code; gives what it prints. */
  String types(int code, String... words) {
    StringWriter said = new StringWriter();
    StringWriter told = new StringWriter();
    int done = Main.run(clock, new PrintWriter(said), new PrintWriter(told), words);
    out = said.toString();
    err = told.toString();
    assertThat(done).as(() -> String.join(" ", words) + ":\n" + out + err).isEqualTo(code);
    return out;
  }

  /** The same with the register and the archive of the depot. */
  String office(int code, String... words) {
    List<String> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--register", folder.resolve("register.db").toString()));
    all.addAll(List.of("--archive", folder.resolve("archive").toString()));
    return types(code, all.toArray(String[]::new));
  }

  String register(int code, String... words) {
    List<String> all = new ArrayList<>(List.of("register"));
    all.addAll(List.of(words));
    return office(code, all.toArray(String[]::new));
  }

  String enter() {
    return register(0, "enter", routes.toString(), "--out", papers());
  }

  /** These entries stand in the files before any issue is registered. */
  void inForce(String entries) throws Exception {
    Files.writeString(
        pack.resolveSibling("restrictions.yaml"), "gradepost: restrictions\nnotices:\n" + entries);
  }

  String papers() {
    return folder.resolve("papers").toString();
  }

  /** Reissues with a notice of these entries. */
  String notice(int code, String name, String entries, String... more) throws Exception {
    Path file = folder.resolve(name + ".yaml");
    Files.writeString(file, "gradepost: restrictions\nnotices:\n" + entries);
    List<String> words =
        new ArrayList<>(List.of("reissue", routes.toString(), "--notice", file.toString()));
    words.addAll(List.of("--out", papers()));
    words.addAll(List.of(more));
    return office(code, words.toArray(String[]::new));
  }

  /** An entry of a notice for trains going Out. */
  static String entry(String reference, int fromM, int toM, int kmh, String from, String until) {
    return ("  - {reference: %s, type: temporary, status: in force, route: Invented line 000, from: %.3f km, to: %.3f km,"
            + " directions: Out, speed: %d km/h, reason: wet bed, imposed: %s, until: %s}\n")
        .formatted(reference, fromM / 1000.0, toM / 1000.0, kmh, from, until);
  }

  void edit(Path file, String from, String to) throws Exception {
    String text = Files.readString(file);
    assertThat(text).contains(from);
    Files.writeString(file, text.replace(from, to));
  }
}
