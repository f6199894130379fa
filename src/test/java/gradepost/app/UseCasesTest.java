package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Property: a use case is the picture of its flow, and no longer than a page or two. */
class UseCasesTest {
  private static final Path APP = Path.of("src/main/java/gradepost/app");

  @Test
  void noneIsLongerThanItsFlow() throws IOException {
    try (Stream<Path> app = Files.list(APP);
        Stream<Path> ride = Files.list(APP.resolve("ride"));
        Stream<Path> notice =
            Stream.of(
                    "reissue/Reissue",
                    "reissue/ReissueRound",
                    "reissue/PackLook",
                    "making/PackReissue",
                    "queue/IssueWork",
                    "queue/Worker")
                .map(name -> APP.resolve(name + ".java"))) {
      List<Path> useCases =
          Stream.of(app, ride, notice)
              .flatMap(files -> files.filter(f -> f.toString().endsWith(".java")))
              // A catalogue of sentences is no flow.
              .filter(f -> !f.endsWith("AppText.java"))
              .toList();
      assertThat(useCases).hasSizeGreaterThan(10);
      assertThat(useCases)
          .allSatisfy(file -> assertThat(lines(file)).as(file.toString()).isLessThanOrEqualTo(120));
    }
  }

  /** Without what stands above the class: its package and its imports. */
  private static int lines(Path file) throws IOException {
    List<String> all = Files.readAllLines(file);
    int begin = 0;
    for (int i = 0; i < all.size(); i++) {
      begin = all.get(i).startsWith("import ") ? i + 1 : begin;
    }
    return all.size() - begin;
  }
}
