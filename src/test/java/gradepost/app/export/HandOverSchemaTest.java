package gradepost.app.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import gradepost.drive.Changed;
import gradepost.drive.DemoPlans;
import gradepost.drive.FrozenPlans;
import gradepost.drive.Planner;
import gradepost.plan.Plan;
import gradepost.plan.SignalBraking;
import gradepost.stock.BrakeCare;
import gradepost.stock.FailureSign;
import gradepost.stock.GaugeReading;
import gradepost.stock.LeavingTest;
import gradepost.task.Assignment;
import gradepost.units.Pressure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: by another's validator, a hand-over is what its published schema says, and holds
 * nothing that the schema does not name.
 */
@Tag("slow")
class HandOverSchemaTest {
  private static final Path PUBLISHED =
      Path.of("src/main/resources/gradepost/schema/hand-over.schema.json");
  private static final ObjectMapper JSON = new ObjectMapper();

  /** The kept valley, 4-car, down: with signals, gaps and brake tests. */
  private static final Plan DOWN = Planner.plan(FrozenPlans.assignments().get(0));

  private static JsonNode file(Plan plan) throws IOException {
    return JSON.readTree(HandOver.of(plan, "0".repeat(64)));
  }

  /** What the validator finds; nothing beside what the schema names is allowed here. */
  private static Set<ValidationMessage> faults(JsonNode file) throws IOException {
    JsonNode strict = JSON.readTree(SchemaText.ofHandOver());
    strict.get("definitions").forEach(HandOverSchemaTest::close);
    close(strict);
    return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V7)
        .getSchema(strict)
        .validate(file);
  }

  private static void close(JsonNode group) {
    if (group.has("properties")) {
      ((ObjectNode) group).put("additionalProperties", false);
    }
  }

  /**
   * After an addition: {@code gradepost schema hand-over > …/hand-over.schema.json}. What else is
   * changed in it needs another version of the hand-over.
   */
  @Test
  void thePublishedCopyIsWhatTheTypesSay() throws IOException {
    assertThat(Files.readString(PUBLISHED).equals(SchemaText.ofHandOver())).isTrue();
  }

  @Test
  void theFilesOfTheDemoKeepIt() throws IOException {
    for (Assignment assignment : DemoPlans.tried()) {
      assertThat(faults(file(DemoPlans.plan(assignment)))).isEmpty();
    }
    assertThat(faults(file(Planner.plan(DemoPlans.twoPipe().get(0))))).isEmpty();
    assertThat(faults(file(DOWN))).isEmpty();
  }

  @Test
  void whatIsMissingOrOfAnotherKindIsRefused() throws IOException {
    for (String key : List.of("version", "signals", "brakeTests", "gaps", "approaches", "train")) {
      ObjectNode file = (ObjectNode) file(DOWN);
      file.remove(key);
      assertThat(faults(file)).as(key).isNotEmpty();
    }
    ObjectNode other = (ObjectNode) file(DOWN);
    other.put("version", 2);
    assertThat(faults(other)).isNotEmpty();
    ObjectNode text = (ObjectNode) file(DOWN);
    ((ObjectNode) text.at("/approaches/0/applications/0")).put("brakingPointM", "far");
    assertThat(faults(text)).isNotEmpty();
    ObjectNode kind = (ObjectNode) file(DOWN);
    ((ObjectNode) kind.at("/plan/actions/0/command")).put("kind", "Sing");
    assertThat(faults(kind)).isNotEmpty();
    ObjectNode more = (ObjectNode) file(DOWN);
    ((ObjectNode) more.at("/gaps/0")).put("colour", "red");
    assertThat(faults(more)).isNotEmpty();
  }

  /**
   * By hand, in chains of 20.1168 m from 1m 60ch where the path begins; it goes on at 6m 50ch with
   * 14m 20ch, and at 11m 22ch with 0m 00ch: 390 and 238 chains.
   */
  @Test
  void gapsTestsAndSignalsStandAtTheirDistanceRun() throws IOException {
    JsonNode file = file(DOWN);
    assertThat(file.at("/gaps/0/name").textValue()).isEqualTo("Weir Lane crossing gap");
    at(file.at("/gaps/0/fromM"), 89.5);
    at(file.at("/gaps/0/toM"), 90.5);
    at(file.at("/gaps/1/fromM"), 390 + 238 + 1);
    at(file.at("/gaps/1/toM"), 390 + 238 + 4);
    assertThat(file.get("brakeTests")).hasSize(2);
    at(file.at("/brakeTests/0/atM"), 34);
    assertThat(file.at("/brakeTests/0/testMps").doubleValue()).isCloseTo(13.4112, within(1e-9));
    assertThat(file.get("signals")).hasSize(DOWN.signals().size()).isNotEmpty();
    for (int i = 0; i < DOWN.signals().size(); i++) {
      SignalBraking signal = DOWN.signals().get(i);
      JsonNode written = file.get("signals").get(i);
      assertThat(written.get("signal").textValue()).isEqualTo(signal.signal().id());
      assertThat(written.get("warnedM").doubleValue()).isEqualTo(signal.warnedM());
      assertThat(written.get("standM").doubleValue()).isEqualTo(signal.standM());
      assertThat(written.has("cautionAt")).isEqualTo(signal.caution().isPresent());
      assertThat(written.get("needs")).hasSize(signal.needs().size());
    }
  }

  private static void at(JsonNode metres, double chains) {
    assertThat(metres.doubleValue()).isCloseTo(chains * 20.1168, within(1e-6));
  }

  /** No number is made up for a brake that the gradient beats. */
  @Test
  void aBrakeThatTheGradientBeatsHasNoDistance() throws IOException {
    SignalBraking signal =
        DOWN.signals().stream().filter(x -> !x.needs().isEmpty()).findFirst().orElseThrow();
    List<SignalBraking.Need> beaten =
        List.of(Changed.in(signal.needs().get(0), "needM", Double.POSITIVE_INFINITY));
    Plan plan = Changed.in(DOWN, "signals", List.of(Changed.in(signal, "needs", beaten)));
    JsonNode file = file(plan);
    assertThat(file.at("/signals/0/needs/0/brake").textValue()).isEqualTo("EP");
    assertThat(file.at("/signals/0/needs/0").has("needM")).isFalse();
    assertThat(faults(file)).isEmpty();
  }

  @Test
  void theTestsBeforeLeavingAndTheSignsAreInIt() throws IOException {
    BrakeCare care =
        new BrakeCare(
            List.of(
                new LeavingTest(
                    "continuity",
                    "Auto",
                    List.of(
                        new LeavingTest.Step(
                            "Apply.",
                            Optional.of(
                                new GaugeReading(
                                    GaugeReading.Gauge.REAR_CYLINDER,
                                    Pressure.ofBar(3),
                                    Pressure.ofBar(3.5))))))),
            List.of(new FailureSign("EP", FailureSign.By.SOUND, "Silence.", Optional.empty())));
    Assignment assignment = DOWN.assignment();
    Plan plan =
        Changed.in(
            DOWN,
            "assignment",
            Changed.in(assignment, "stock", Changed.in(assignment.stock(), "care", care)));
    JsonNode file = file(plan);
    JsonNode shows = file.at("/train/beforeLeaving/0/steps/0/shows");
    assertThat(shows.at("/gauge").textValue()).isEqualTo("REAR_CYLINDER");
    assertThat(shows.at("/most/pascals").doubleValue()).isCloseTo(350_000, within(1e-6));
    assertThat(file.at("/train/signsOfFailure/0/by").textValue()).isEqualTo("SOUND");
    assertThat(faults(file)).isEmpty();
  }
}
