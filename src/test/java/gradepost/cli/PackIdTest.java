package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.SyntheticNetwork;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Regression: a pack is known by its id, wherever its file lies and however it is called. */
class PackIdTest {
  @TempDir private Path folder;
  private Clerk clerk;

  @BeforeEach
  void begin() throws Exception {
    clerk = new Clerk(folder).at("2026-12-02T09:00");
  }

  private void named(String id) throws Exception {
    clerk.edit(clerk.pack, "gradepost: pack\n", "gradepost: pack\nid: " + id + "\n");
  }

  @Test
  void registerPapersAndIssuesGoByIt() throws Exception {
    named("valley");
    clerk.enter();
    assertThat(clerk.out).contains("valley/1 registered");
    try (Stream<Path> papers = Files.list(Path.of(clerk.papers()))) {
      assertThat(papers.map(p -> p.getFileName().toString()))
          .isNotEmpty()
          .allMatch(name -> name.startsWith("valley-"));
    }
    clerk.notice(
        0, "n", Clerk.entry("TSR-1", 2000, 2400, 30, "2026-12-01 06:00", "2026-12-20 06:00"));
    assertThat(clerk.out).contains("valley: issue 2 takes the place of 1");
    assertThat(clerk.register(0, "issues")).contains("valley/2").doesNotContain("0000/");
    assertThat(clerk.office(0, "reproduce", "valley/2")).doesNotContain("0000");
  }

  @Test
  void aRenamedFileGoesOnWithItsHistoryUnderTheOldNameAsId() throws Exception {
    clerk.enter();
    assertThat(clerk.out).contains("0000/1 registered");
    Path renamed = clerk.pack.resolveSibling("pack-main.yaml");
    Files.move(clerk.pack, renamed);
    clerk.edit(renamed, "gradepost: pack\n", "gradepost: pack\nid: \"0000\"\n");
    clerk.office(0, "reissue", clerk.routes.toString(), "--out", clerk.papers());
    clerk.notice(
        0, "n", Clerk.entry("TSR-1", 2000, 2400, 30, "2026-12-01 06:00", "2026-12-20 06:00"));
    assertThat(clerk.out).contains("0000: issue 2 takes the place of 1");
    assertThat(clerk.register(0, "issues")).contains("0000/2");
  }

  @Test
  void twoPacksOfAFolderWithTheSameIdAreRefusedAndBothFilesAreNamed() throws Exception {
    named("main");
    Path second = new SyntheticNetwork(clerk.routes.resolve("east"), 1).packs(1, 8).get(0);
    clerk.edit(second, "gradepost: pack\n", "gradepost: pack\nid: main\n");
    clerk.register(1, "enter", clerk.routes.toString(), "--out", clerk.papers());
    assertThat(clerk.err)
        .contains(clerk.pack.toString(), second.toString(), "has the same id, main")
        .contains("-main”");
    assertThat(folder.resolve("papers")).doesNotExist();
    clerk.types(1, "check", clerk.routes.toString());
    assertThat(clerk.err).contains("has the same id, main; allowed: an id of its own");
  }

  @Test
  void anIdThatTheRegisterHasForAnotherLineIsRefused() throws Exception {
    clerk.enter();
    clerk.edit(clerk.pack.resolveSibling("route.yaml"), "Invented line 000", "Another line");
    Path other = clerk.pack.resolveSibling("pack-east.yaml");
    Files.move(clerk.pack, other);
    clerk.edit(other, "gradepost: pack\n", "gradepost: pack\nid: \"0000\"\n");
    clerk.edit(other, "number: 1", "number: 2");
    clerk.register(1, "enter", clerk.routes.toString(), "--out", clerk.papers());
    assertThat(clerk.err)
        .contains("pack-east.yaml: error: 0000/1 is an issue of “Invented line 000”")
        .contains("was made from a file pack-0000.yaml")
        .contains("“id: another-line”");
    clerk.edit(other, "id: \"0000\"", "id: another-line");
    clerk.enter();
    assertThat(clerk.out).contains("another-line/2 registered");
  }

  @Test
  void anIdThatCannotNameAFileIsRefused() throws Exception {
    named("up/down");
    clerk.types(1, "check", clerk.pack.toString());
    assertThat(clerk.err).contains(":2:5: error: id \"up/down\" cannot name a pack; allowed: ");
    assertThat(clerk.err).contains("Maybe up-down");
  }

  /** What is typed by mistake must not cost a pack its history. */
  @Test
  void aBrokenFileIsRestoredUnderTheIdThatItHad() throws Exception {
    named("\"valley north\"   # of the depot");
    clerk.enter();
    String good = Files.readString(clerk.pack);
    for (String broken :
        List.of(
            good.replace("title:", "title: [\n"),
            good.replace("\n", "\r\n").replace("title:", "\ttitle: {"),
            "")) {
      Files.writeString(clerk.pack, broken);
      clerk.office(
          0, "reissue", clerk.routes.toString(), "--from-archive", "--out", clerk.papers());
      assertThat(clerk.out).contains(clerk.pack + " restored from the archive");
      assertThat(clerk.pack).content().isEqualToNormalizingNewlines(good);
    }
  }
}
