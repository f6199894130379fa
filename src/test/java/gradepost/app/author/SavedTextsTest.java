package gradepost.app.author;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.app.Depot;
import gradepost.app.author.LinesDesk.Typed;
import gradepost.app.author.SavedText.How;
import gradepost.app.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Earlier texts outlive a process that is killed, and a file that others write. */
class SavedTextsTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 29, 12, 0);

  @TempDir Path folder;

  @Test
  void aLineThatWasNotFinishedCountsForNothing() throws IOException {
    SavedTexts saved = new SavedTexts(folder);
    SavedText one = new SavedText(NOON, saved.keep("one\n"), How.SAVED, "Ada\tof\nthe depot");
    saved.add("a/route.yaml", one);
    Path list = only(folder.resolve(".gradepost/saves"));
    Files.writeString(list, Files.readString(list) + "2026-11-29T12:00\tabc\tSAV");
    SavedText two = new SavedText(NOON, saved.keep("two\n"), How.TAKEN_BACK, "");
    saved.add("a/route.yaml", two);
    assertThat(saved.of("a/route.yaml"))
        .containsExactly(new SavedText(NOON, one.digest(), How.SAVED, "Ada of the depot"), two);
    assertThat(saved.text(one.digest())).contains("one\n");
    assertThat(saved.text("../../x")).isEmpty();
    assertThat(saved.of("b/route.yaml")).isEmpty();
  }

  /** What somebody wrote by other means is kept before the desk writes over it. */
  @Test
  void whatOthersWroteIsKeptToo() throws IOException {
    Path route = folder.resolve("route.yaml");
    Files.writeString(route, "gradepost: route\n# first\n");
    LinesDesk desk =
        new LinesDesk(
            folder, Store.of(folder.resolve("none.db").toString(), Optional.empty()), Depot.NOON);
    LineFile file = desk.file("route.yaml").orElseThrow();
    String first = desk.open(file).digest();
    desk.save(file, new Typed("gradepost: route\n# second\n", first, "Ada", true));
    Files.writeString(route, "gradepost: route\n# by hand\n");
    Saved refused = desk.save(file, new Typed("x", first, "Bo", true));
    assertThat(refused.state()).isEqualTo(Saved.State.CHANGED_MEANWHILE);
    String now = refused.now().digest();
    Saved done = desk.save(file, new Typed("gradepost: route\n# third\n", now, "Bo", true));
    assertThat(done.state()).isEqualTo(Saved.State.SAVED);
    List<SavedText> saves = desk.saves(file);
    assertThat(saves.stream().map(SavedText::how))
        .containsExactly(How.SAVED, How.FOUND, How.SAVED, How.FOUND);
    assertThat(desk.text(file, saves.get(1).digest()))
        .hasValueSatisfying(text -> assertThat(text).contains("# by hand"));
  }

  /** Where the hidden folder is something else, nothing is written at all. */
  @Test
  void withoutAPlaceForEarlierTextsNothingIsSaved() throws IOException {
    Path route = folder.resolve("route.yaml");
    Files.writeString(route, "gradepost: route\n");
    Files.writeString(folder.resolve(".gradepost"), "");
    LinesDesk desk =
        new LinesDesk(
            folder, Store.of(folder.resolve("none.db").toString(), Optional.empty()), Depot.NOON);
    LineFile file = desk.file("route.yaml").orElseThrow();
    Typed typed = new Typed("gradepost: route\n# more\n", desk.open(file).digest(), "", true);
    assertThatThrownBy(() -> desk.save(file, typed)).hasMessageContaining("not a folder");
    assertThat(route).hasContent("gradepost: route");
  }

  private static Path only(Path in) throws IOException {
    try (Stream<Path> files = Files.list(in)) {
      return files.findFirst().orElseThrow();
    }
  }
}
