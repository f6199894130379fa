package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.store.Archive;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Reissues that are processes of their own, and a look at what they left behind. */
public final class RealRuns {
  private final Path routes;
  private final Depot depot;
  private final Set<String> looked = new HashSet<>();

  /**
   * @param routes the packs
   * @param work where register, archive and papers go
   */
  public RealRuns(Path routes, Path work) {
    this.routes = routes;
    this.depot = new Depot(work);
  }

  public Path out() {
    return depot.out();
  }

  public Store store() {
    return depot.store();
  }

  /** A reissue of a depot that has a register. */
  public List<String> command(Path notice, String... more) {
    Depot.begun(depot.store());
    String classes =
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path", ""));
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:-UsePerfData",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                classes,
                "gradepost.cli.Main",
                "reissue",
                routes.toString(),
                "--notice",
                notice.toString(),
                "--out",
                out().toString(),
                "--register",
                depot.register().toString(),
                "--by",
                "a clerk"));
    command.addAll(List.of(more));
    return command;
  }

  public Process start(Path log, List<String> command) throws IOException {
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(log.toFile())
        .start();
  }

  /** Every route gets a restriction of the same reference and speed, Out only. */
  public static Path notice(Path folder, int number, int routes) throws IOException {
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (int route = 0; route < routes; route++) {
      int speed = 20 + 5 * (number % 4);
      String one =
          SyntheticNetwork.notice("T " + number, route, "Out", 800 + 10 * (number % 10), speed);
      text.append(one.substring(one.indexOf("  - ")));
    }
    return Files.writeString(folder.resolve("notice-" + number + ".yaml"), text);
  }

  /** After so many notices every line has so many issues more, all in place. */
  public void completed(int notices, int lines) throws Exception {
    whole();
    try (Register register = store().open()) {
      for (int line = 0; line < lines; line++) {
        Entry latest = register.latest("%04d".formatted(2 * line)).orElseThrow();
        assertThat(latest.number()).isEqualTo(notices + 1);
        assertThat(register.isDelivered(latest)).isTrue();
        Path placed = out().resolve(latest.pack() + "-issue-" + latest.number());
        assertThat(placed).isDirectory();
        assertThat(register.latest("%04d".formatted(2 * line + 1)).orElseThrow().number())
            .isEqualTo(1);
      }
      // Each has its number once: one act of issuing for each issue, and the one taken in.
      assertThat(register.list(Question.issues()).rows()).hasSize(lines * (notices + 2));
      assertThat(register.list(Question.acts()).rows().stream().map(r -> r.get(2) + r.get(3)))
          .doesNotHaveDuplicates()
          .filteredOn(act -> act.startsWith("issued"))
          .hasSize(lines * notices);
    }
    assertThat(hidden(out())).isEmpty();
  }

  private static List<Path> hidden(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(f -> String.valueOf(f.getFileName()).startsWith(".")).toList();
    }
  }

  /** What was whole once is looked at again. */
  void forget() {
    looked.clear();
  }

  /** Everything that can be looked at is as it was or as it shall be. */
  public void whole() throws Exception {
    Archive archive = store().kept();
    if (store().exists()) {
      try (Register register = store().open()) {
        for (List<String> row : register.list(Question.issues()).rows()) {
          Entry entry = register.find(row.get(0)).orElseThrow();
          Path placed = out().resolve(entry.pack() + "-issue-" + entry.number());
          if (looked.add(entry.name() + Files.exists(placed))) {
            whole(archive, entry, placed);
          }
        }
      }
    }
    try (Stream<Path> files = Files.walk(routes)) {
      for (Path file : files.filter(PackFiles::isPack).toList()) {
        Reading<PackFile> pack = Disk.sources().pack(Disk.name(file));
        assertThat(pack).as(file + pack.problems().text()).isInstanceOf(Reading.Good.class);
      }
    }
  }

  private static void whole(Archive archive, Entry entry, Path placed) throws IOException {
    assertThat(ArchivedInputs.pack(Disk.sources(), archive, entry)).as(entry.name()).isPresent();
    for (Kept paper : entry.papers()) {
      assertThat(archive.read(paper.digest())).as(entry.name() + paper.name()).isPresent();
      if (Files.exists(placed)) {
        assertThat(Digest.of(Files.readAllBytes(placed.resolve(paper.name()))))
            .isEqualTo(paper.digest());
      }
    }
  }
}
