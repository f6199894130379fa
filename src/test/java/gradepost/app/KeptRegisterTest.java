package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.reissue.Order;
import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.briefing.reissue.Sheets;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Regression: a register, an archive and data as version 0.1.0 left them, whose sheets have no
 * format number yet. Its pack has two directions; issue 2 took in a restriction on the Up. Of the
 * archive only the inputs are kept.
 */
@Tag("slow")
class KeptRegisterTest {
  private static final Path KEPT = Path.of("src/test/resources/gradepost/app/register-format-1");
  private static final Clock DECEMBER =
      Clock.fixed(Instant.parse("2026-12-01T12:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  private void copied() throws IOException {
    try (Stream<Path> files = Files.walk(KEPT)) {
      for (Path file : files.toList()) {
        Path to = folder.resolve(KEPT.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(to);
        } else {
          Files.copy(file, to);
        }
      }
    }
  }

  /** Whatever this version prints otherwise than that one: only the notice makes a sheet new. */
  @Test
  void aNewVersionMakesNoSheetNew() throws Exception {
    copied();
    Path notice = folder.resolve("notice.yaml");
    Files.writeString(
        notice,
        "gradepost: restrictions\nnotices:\n  - {reference: T 2, type: temporary, status: in force,"
            + " route: Starting line, from: 2m 10ch, to: 2m 20ch, directions: Down, speed: 20 mph, reason: wet bed,"
            + " imposed: 2026-11-29 04:00, until: further notice}\n");
    Store store = Store.of(folder.resolve("register.db").toString(), Optional.empty());
    Answer answer =
        new Depot(folder)
            .reissue(
                DECEMBER,
                store,
                List.of(folder.resolve("data")),
                Optional.of(notice),
                false,
                false,
                Order.Edits.NONE);
    assertThat(answer.said())
        .as(answer.toString())
        .anyMatch(s -> s.startsWith("p00: issue 3 takes the place of 2: "))
        .noneMatch(s -> s.contains("p00-up"));
    try (Register register = store.open()) {
      Map<String, Integer> before = since(register.issue("p00", 2).orElseThrow());
      Entry latest = register.latest("p00").orElseThrow();
      Map<String, Integer> now = since(latest);
      assertThat(register.issue("p00", 2).orElseThrow().sheets())
          .isNotEmpty()
          .allMatch(s -> s.format() == 1);
      assertThat(latest.sheets()).allMatch(s -> s.format() == Sheets.FORMAT);
      assertThat(now.keySet()).filteredOn(k -> k.startsWith("p00-up")).hasSize(5);
      now.forEach(
          (sheet, since) -> {
            if (sheet.startsWith("p00-up") || sheet.endsWith(" reading")) {
              assertThat(since).as(sheet).isLessThan(3);
              assertThat(since).as(sheet).isEqualTo(before.getOrDefault(sheet, since));
            }
          });
      assertThat(now.entrySet())
          .filteredOn(e -> e.getKey().startsWith("p00-down-2-car p1 Line: "))
          .isNotEmpty()
          .anyMatch(e -> e.getValue() == 3);
    }
  }

  private static Map<String, Integer> since(Entry issue) {
    return issue.sheets().stream()
        .collect(Collectors.toMap(s -> s.paper() + " " + s.sheet(), Entry.Sheet::since));
  }
}
