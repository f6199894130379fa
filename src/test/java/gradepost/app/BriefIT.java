package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.store.Answer;
import gradepost.app.store.Progress;
import gradepost.pack.PaperKind;
import gradepost.source.Frozen;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: the whole way, on a part of the frozen pack. */
class BriefIT {
  private static final Path DEMO = Frozen.FOLDER;
  private static final String PACK = Frozen.VALLEY;

  @TempDir Path folder;

  @Test
  void sameInputGivesSameBytesAndTheHandOverHoldsWhatASolverNeeds() throws IOException {
    Path pack = downFourCar();
    Answer first = brief(Optional.empty()).of(List.of(pack), folder.resolve("one"));
    assertThat(first.problems()).isEmpty();
    assertThat(first.good()).isTrue();
    assertThat(first.written().stream().map(p -> p.getFileName().toString()))
        .containsExactly(
            "thrumble-down-4-car.pdf",
            "thrumble-down-4-car.html",
            "thrumble-down-4-car-cards.pdf",
            "thrumble-down-4-car-cards-to-cut.pdf",
            "thrumble-down-4-car.json",
            "thrumble-reference.pdf",
            "thrumble-reference.html");

    Answer second = brief(Optional.empty()).of(List.of(pack), folder.resolve("two"));
    for (int i = 0; i < first.written().size(); i++) {
      assertThat(first.written().get(i)).hasSameBinaryContentAs(second.written().get(i));
    }
    assertThat(Files.readString(first.written().get(1)))
        .contains("href=\"thrumble-reference.html\"");
    assertThat(Files.readString(first.written().get(6)))
        .contains("href=\"thrumble-down-4-car.html\"");

    for (int i : new int[] {0, 1, 4, 5, 6}) {
      Path paper = first.written().get(i);
      assertThat(new Verify().of(paper, List.of(pack)).said())
          .containsExactly(
              paper + ": made from the data of " + pack + " as they are now, issue 3",
              "  without a register: only its fingerprint was compared, not its other content");
    }

    JsonNode json = new ObjectMapper().readTree(first.written().get(4).toFile());
    assertThat(json.at("/track/elevation")).hasSizeGreaterThan(10);
    assertThat(json.at("/track/curves/0").has("radiusM")).isTrue();
    assertThat(json.at("/ceiling/0/speedMps").isNumber()).isTrue();
    assertThat(json.at("/train/planned/massKg")).hasSize(4);
    assertThat(json.at("/train/safeSide/brakes/Auto/delayS")).hasSize(4);
    assertThat(json.at("/train/planned/effort/Weak field/0/effortN").isNumber()).isTrue();
    assertThat(json.at("/approaches/0/applications/0/cases/0/ladder")).hasSize(3);
    assertThat(json.at("/plan/actions/0/command/kind").asText()).isEqualTo("Power");
  }

  @Test
  void aDepotsOwnTemplateStandsInForTheOneInTheJar() throws IOException {
    Path own = Files.createDirectory(folder.resolve("own"));
    String css = Files.readString(Path.of("templates/screen.css"));
    Files.writeString(own.resolve("screen.css"), css + "\n/* the depot's own */\n");
    List<Path> small = new SyntheticNetwork(folder.resolve("small"), 1).packs(1, 5);
    Answer answer = brief(Optional.of(own)).of(small, folder.resolve("papers"));
    assertThat(answer.good()).isTrue();
    assertThat(Files.readString(answer.written().get(1))).contains("/* the depot's own */");
  }

  @Test
  void aFolderOfTemplatesThatIsNotThereIsSaid() throws IOException {
    Path missing = folder.resolve("missing");
    Answer answer = brief(Optional.of(missing)).of(List.of(downFourCar()), folder.resolve("out"));
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems()).containsExactly(missing + ": error: there is no such folder");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void aMistakeInOneFileKeepsItsPackBackAndSaysWhere() throws IOException {
    Path pack = downFourCar();
    Path notices = pack.resolveSibling("restrictions.yaml");
    Files.writeString(notices, Files.readString(notices).replace("speed: 20 mph", "speed: 20"));
    Answer answer = brief(Optional.empty()).of(List.of(pack), folder.resolve("out"));
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems()).hasSize(1);
    assertThat(answer.problems().get(0)).contains("restrictions.yaml:10:12: error: ", "Maybe ");
    assertThat(folder.resolve("out")).doesNotExist();
    assertThat(new Check().of(List.of(pack, notices)).problems()).hasSize(1);
  }

  private static Brief brief(Optional<Path> templates) {
    return new Brief(
        templates,
        Brief.Wish.PAPERS.andJson().with(Set.of(PaperKind.CARDS)),
        new Progress() {
          @Override
          public void expect(int papers) {}

          @Override
          public void done(String paper) {}
        });
  }

  /** A copy of the frozen data whose pack asks for one paper, and accepts nothing of the others. */
  private Path downFourCar() throws IOException {
    Path copy = folder.resolve("routes");
    OneCourse.copy(DEMO, copy);
    Path pack = copy.resolve(PACK);
    List<String> lines = new ArrayList<>();
    boolean up = false;
    List<String> entry = new ArrayList<>();
    for (String line : Files.readAllLines(pack)) {
      up = line.contains("direction: Up") || (up && line.startsWith(" "));
      if (up) {
        continue;
      }
      boolean accepts =
          line.startsWith("  - rule:") || (!entry.isEmpty() && line.startsWith("    "));
      if (!accepts || line.startsWith("  - rule:")) {
        keepDownFourCar(entry, lines);
      }
      if (accepts) {
        entry.add(line);
      } else {
        lines.add(line.replace("[4-car, 8-car]", "[4-car]"));
      }
    }
    keepDownFourCar(entry, lines);
    Files.write(pack, lines);
    return pack;
  }

  private static void keepDownFourCar(List<String> entry, List<String> lines) {
    if (entry.stream().anyMatch(l -> l.contains("4-car, Down"))) {
      lines.addAll(entry);
    }
    entry.clear();
  }
}
