package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.export.SchemaText;
import gradepost.app.store.Answer;
import gradepost.source.file.FileKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property and regression: checks of whole packs, the log, starting files, the strip. */
@Tag("slow")
class CheckTest {
  @TempDir Path folder;

  /** A starting pack in which one thing after the other is changed. */
  private Path pack() {
    Path pack = folder.resolve("pack-new.yaml");
    assertThat(new NewFile().of(FileKind.PACK, pack).good()).isTrue();
    return pack;
  }

  private void change(String file, String from, String to) throws IOException {
    Path path = folder.resolve(file);
    String text = Files.readString(path);
    assertThat(text).contains(from);
    Files.writeString(path, text.replace(from, to));
  }

  private List<String> found() {
    return new Check()
        .of(List.of(folder)).problems().stream().map(p -> p.replace(folder + "/", "")).toList();
  }

  private static boolean saysWhatIsNotSurveyed(String problem) {
    return problem.endsWith("[not-supplied]") || problem.endsWith("[cue-missing]");
  }

  /** Whatever has no train has no braking points: the route alone asks for no cue. */
  @Test
  void aStartingPackIsToldOnceATrainThatNothingIsSurveyed() throws IOException {
    pack();
    assertThat(found().stream().filter(p -> p.endsWith("[cue-missing]")))
        .containsExactly(
            "route.yaml:4:1: note: 2-car, Down: no landmark or signal is surveyed. At night or in fog 1 of 1 braking points have no cue. Look first for one from 3m 29ch"
                + " to 3m 42ch, for Last Station; allowed: a landmark or signal within 15 s before"
                + " each braking point [cue-missing]",
            "route.yaml:4:1: note: 2-car, Up: no landmark or signal is surveyed. At night or in fog 1 of 1 braking points have no cue. Look first for one from 0m 44ch"
                + " to 0m 31ch, for First Station; allowed: a landmark or signal within 15 s before"
                + " each braking point [cue-missing]");
    assertThat(new Check().of(List.of(folder.resolve("route.yaml"))).problems())
        .isNotEmpty()
        .noneMatch(p -> p.contains("[cue-missing]"));
    change(
        "route.yaml",
        "# landmarks:",
        "landmarks:\n"
            + "  - {name: stone bridge, at: 3m 20ch, directions: Down, side: left, night: yes,"
            + " sighting: 300 yd}\n"
            + "# landmarks:");
    assertThat(found().stream().filter(p -> p.endsWith("[cue-missing]")))
        .containsExactly(
            "route.yaml:83:3: note: 2-car, Down: no cue for Last Station within 15 s before braking"
                + " at 3m 42ch. Look for one from 3m 29ch on; allowed: a landmark or signal"
                + " there, for night and fog one that is lit or heard [cue-missing]",
            "route.yaml:83:3: note: 2-car, Up: no landmark or signal is surveyed. At night or in fog 1 of 1 braking points have no cue. Look first for one from 0m 44ch"
                + " to 0m 31ch, for First Station; allowed: a landmark or signal within 15 s before"
                + " each braking point [cue-missing]");
  }

  @Test
  void aStartingPackHasNotesOnly() throws IOException {
    pack();
    Answer answer = new Check().of(List.of(folder));
    assertThat(answer.good()).isTrue();
    assertThat(answer.said()).containsExactly("5 files checked, notes only");
    assertThat(answer.problems()).isNotEmpty().allMatch(CheckTest::saysWhatIsNotSurveyed);
    for (FileKind kind : FileKind.values()) {
      String name = kind == FileKind.PACK ? "pack-new.yaml" : kind.word() + ".yaml";
      assertThat(SchemaTest.faults(folder.resolve(name))).as(name).isEmpty();
      assertThat(folder.resolve(kind.word() + ".schema.json")).hasContent(SchemaText.of(kind));
    }
  }

  @Test
  void nothingThatExistsIsWrittenOver() throws IOException {
    Path mine = Files.writeString(folder.resolve("route.yaml"), "mine");
    assertThat(new NewFile().of(FileKind.ROUTE, mine).problems())
        .containsExactly(mine + ": error: the file already exists");
    pack();
    assertThat(mine).hasContent("mine");
  }

  /** Two cars of 62 ft are 41.3 yd; a chain is 22 yd. */
  @Test
  void thePlatformThatIsShorterThanTheTrain() throws IOException {
    pack();
    change(
        "route.yaml",
        "from: 3m 60ch\n        to: 3m 66ch\n        directions: Down",
        "from: 3m 64ch\n        to: 3m 65ch\n        directions: Down");
    assertThat(found())
        .contains(
            "route.yaml:65:9: warning: 2-car, Down: platform 1 of Last Station is 22 yd, the"
                + " train 42 yd: no instruction for the doors; allowed: doors: what is done with"
                + " the doors off the platform [platform-short]");
    change(
        "route.yaml",
        "directions: Down\n        lines: [Down Main]\n        side: left\n",
        "directions: Down\n        lines: [Down Main]\n        side: left\n        doors: rear car locked out\n");
    assertThat(found()).noneMatch(p -> p.contains("platform-short"));
  }

  @Test
  void theFormationWithoutItsMark() throws IOException {
    pack();
    change(
        "route.yaml",
        "{cars: 2, at: 0m 12ch, direction: Up}",
        "{cars: 3, at: 0m 12ch, direction: Up}");
    assertThat(found())
        .contains(
            "route.yaml:61:21: warning: 2-car, Up: platform 2 of First Station has no mark for 2"
                + " cars; allowed: a stop mark for every formation of the pack [mark-missing]");
  }

  @Test
  void theMarkNearerToTheBuffersThanThePolicyAllows() throws IOException {
    pack();
    change(
        "route.yaml",
        "stop-marks: [{cars: 2, at: 3m 64ch, direction: Down}]",
        "buffer-stops: 3m 66ch\n        stop-marks: [{cars: 2, at: 3m 65.9ch, direction: Down}]");
    assertThat(found())
        .anyMatch(
            p ->
                p.contains(
                        "2-car, Down: the stop mark at platform 1 of Last Station is 2 yd before")
                    && p.contains("allowed: 6 yd at least, by the policy [near-buffers]"));
  }

  @Test
  void theSignalTooNearToItsCautionTheBoardTooLateAndTheGapTooLong() throws IOException {
    pack();
    change(
        "route.yaml",
        "# signals:",
        "signals:\n"
            + "  - {id: F 1, kind: distant, at: 2m 00ch, direction: Down, line: Down Main}\n"
            + "  - {id: F 2, kind: stop, at: 2m 10ch, direction: Down, line: Down Main}\n"
            + "# signals:");
    change(
        "route.yaml",
        "  # - name: Mill curve",
        "  - name: Weak bridge\n"
            + "    from: 2m 40ch\n"
            + "    to: 2m 50ch\n"
            + "    speed: 10 mph\n"
            + "    boards: [{kind: warning, at: 2m 39ch, direction: Down}]\n"
            + "  # - name: Mill curve");
    change(
        "route.yaml",
        "# rail-gaps:",
        "rail-gaps: [{name: Weak bridge, from: 2m 41ch, to: 2m 49ch}]\n# rail-gaps:");
    assertThat(found())
        .anyMatch(
            p ->
                p.contains("from sighting F 1 to the stop short of F 2: not enough to stop")
                    && p.contains("the automatic air brake ")
                    && p.contains("[signal-spacing]"))
        .anyMatch(
            p ->
                p.contains("2-car, Down: the warning board of Weak bridge at 2m 39ch is past the")
                    && p.contains("[warning-late]"))
        .anyMatch(
            p ->
                p.contains("Up trains drop from 50 mph to 10 mph at 2m 50ch (Weak bridge) without")
                    && p.contains("[big-drop]"))
        .anyMatch(
            p ->
                p.contains(
                        "2-car, Up: Weak bridge is 176 yd long, the train bridges 20 yd and runs")
                    && p.contains("[gap-long]"));
  }

  @Test
  void theNoticeThatNoBoardAnnounces() throws IOException {
    pack();
    change(
        "restrictions.yaml",
        "notices: []\nnone: none in force, checked on 2026-01-05\n",
        "notices:\n"
            + "  - {reference: T 1, type: emergency, status: in force, from: 2m 10ch, to: 2m 20ch,\n"
            + "     speed: 20 mph, imposed: 2026-01-05 04:00, until: further notice}\n");
    assertThat(found())
        .contains(
            "restrictions.yaml:5:5: warning: 2-car, Down: T 1 drops the speed from 50 mph to 20 mph"
                + " at 2m 10ch without a warning board; allowed: a warning board for a drop of a"
                + " third or of more than 20 mph (32 km/h) [big-drop]");
    change(
        "pack-new.yaml",
        "# What check found",
        "accepted:\n"
            + "  - {rule: big-drop, finding: \"2-car, Down: T 1 drops the speed from 50 mph to 20 mph"
            + " at 2m 10ch without a warning board\", by: manager, on: 2026-01-06, reason: hand"
            + " lamps}\n"
            + "  - {rule: big-drop, finding: \"2-car, Up: T 1 drops the speed from 50 mph to 20 mph"
            + " at 2m 20ch without a warning board\", by: manager, on: 2026-01-06, reason: hand"
            + " lamps}\n"
            + "# What check found");
    assertThat(found()).allMatch(CheckTest::saysWhatIsNotSurveyed);
  }

  /** SARIF 2.1.0, 3.27: each result names its rule, its level, its message and one place. */
  @Test
  void theLogHasEveryFindingAtItsPlace() throws IOException {
    pack();
    change("stock.yaml", "maximum-speed: 60 mph", "maximum-speed: 60");
    Files.writeString(folder.resolve("not yaml.yaml"), "a: [");
    Answer answer = new Check().sarif(List.of(folder));
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems()).isEmpty();
    JsonNode log = new ObjectMapper().readTree(String.join("\n", answer.said()));
    assertThat(log.get("version").asText()).isEqualTo("2.1.0");
    JsonNode run = log.get("runs").get(0);
    JsonNode rules = run.at("/tool/driver/rules");
    List<String> problems = new Check().of(List.of(folder)).problems();
    assertThat(run.get("results")).hasSameSizeAs(problems);
    for (JsonNode result : run.get("results")) {
      JsonNode rule = rules.get(result.get("ruleIndex").asInt());
      assertThat(rule.get("id")).isEqualTo(result.get("ruleId"));
      assertThat(rule.at("/shortDescription/text").asText()).isNotBlank();
      assertThat(result.get("level").asText()).isIn("error", "warning", "note");
      JsonNode place = result.at("/locations/0/physicalLocation");
      assertThat(place.at("/region/startLine").asInt()).isPositive();
      assertThat(place.at("/region/startColumn").asInt()).isPositive();
      assertThat(place.at("/artifactLocation/uri").asText())
          .startsWith("file:/")
          .doesNotContain(" ");
      String words = result.at("/message/text").asText().lines().findFirst().orElseThrow();
      assertThat(problems).anyMatch(p -> p.contains(words));
    }
    assertThat(run.get("results").toString()).contains("not%20yaml.yaml");
  }
}
