package gradepost.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.Examples;
import gradepost.drive.DemoPlans;
import gradepost.drive.HeldLines;
import gradepost.drive.MadeUp;
import gradepost.drive.Planner;
import gradepost.plan.BrakeTest;
import gradepost.plan.Plan;
import gradepost.plan.SignalBraking;
import gradepost.plan.TrainFigures;
import gradepost.task.Assignment;
import gradepost.told.InstructionSet;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Validation: whoever has the hand-over alone works out every figure that a driver is told, with
 * arithmetic of his own.
 */
@Tag("slow")
class PrintedFromHandOverTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final List<String> wrong = new ArrayList<>();
  private final Set<String> met = new TreeSet<>();

  /** Where the solvers of the other tests stand is named beside each; they must exist. */
  @Test
  void noKindOfFigureIsWithoutItsFields() {
    assertThat(PrintedSources.kinds()).isEqualTo(FigureLists.kindsOf(InstructionSet.class));
    assertThat(PrintedSources.ALL).allSatisfy(s -> assertThat(s.judges()).isNotEmpty());
  }

  /** The same for what stands beside the sheets: all numbers of these types. */
  @Test
  void norIsAnyOfTheSignalsTheTestsTheTrainAndTheRun() {
    Set<String> numbers = new TreeSet<>();
    for (Class<?> type :
        List.of(
            SignalBraking.class,
            SignalBraking.Need.class,
            BrakeTest.class,
            TrainFigures.Balance.class,
            TrainFigures.Reach.class,
            TrainFigures.FullStop.class,
            TrainFigures.Reduction.class,
            Plan.class,
            Plan.Cost.class)) {
      for (RecordComponent component : type.getRecordComponents()) {
        String of = component.getGenericType().getTypeName();
        if (of.equals("double") || of.equals("java.util.Optional<java.lang.Double>")) {
          numbers.add(
              type.getName().replaceAll(".*[.]", "").replace('$', '.') + "." + component.getName());
        }
      }
    }
    assertThat(PrintedSources.BESIDE.stream().map(PrintedSources.Source::figure))
        .containsExactlyInAnyOrderElementsOf(numbers);
  }

  @Test
  void thePublishedSchemaHasAllTheseFields() throws IOException {
    JsonNode schema = JSON.readTree(SchemaText.ofHandOver());
    List<PrintedSources.Source> all = new ArrayList<>(PrintedSources.ALL);
    all.addAll(PrintedSources.BESIDE);
    for (PrintedSources.Source source : all) {
      for (String field : source.fields()) {
        assertThat(has(schema, schema, List.of(field.split("/"))))
            .as(source.figure() + ": " + field)
            .isTrue();
      }
    }
  }

  /** Whether a path of keys leads somewhere; lists are passed through, of cases one is enough. */
  private static boolean has(JsonNode schema, JsonNode at, List<String> path) {
    JsonNode here = at;
    while (here.has("$ref") || here.has("items")) {
      here =
          here.has("items")
              ? here.get("items")
              : schema.at(here.get("$ref").textValue().substring(1));
    }
    if (path.isEmpty()) {
      return true;
    }
    if (here.has("anyOf")) {
      for (JsonNode each : here.get("anyOf")) {
        if (has(schema, each, path)) {
          return true;
        }
      }
      return false;
    }
    JsonNode next = here.at("/properties/" + path.get(0));
    JsonNode any = here.get("additionalProperties");
    List<String> rest = path.subList(1, path.size());
    return next.isMissingNode()
        ? any != null && any.isObject() && has(schema, any, rest)
        : has(schema, next, rest);
  }

  @Test
  void everyFigureOfEverySheetComesOutOfTheFileAlone() throws IOException {
    for (int i : DemoPlans.numbers().toArray()) {
      look("pack " + i, DemoPlans.plan(i));
    }
    for (Plan plan : HeldLines.plans()) {
      look("held", plan);
    }
    look("two pipes", Planner.plan(DemoPlans.twoPipe().get(0)));
    look("steep", Planner.plan(MadeUp.steep(0.5)));
    for (Assignment leaning : DemoPlans.leaning().subList(0, Examples.of(1, 2))) {
      look("late", Planner.plan(MadeUp.notLeavingNextBrake(leaning)));
    }
    for (long seed = 1; seed <= Examples.of(4, 8); seed++) {
      look("line " + seed, Planner.plan(MadeUp.random(seed)));
    }
    assertThat(wrong).isEmpty();
    Set<String> never = new TreeSet<>(PrintedSources.kinds());
    never.removeAll(met);
    assertThat(never).isEmpty();
  }

  private void look(String name, Plan plan) throws IOException {
    JsonNode file = JSON.readTree(HandOver.of(plan, "0".repeat(64)));
    InstructionSet told = plan.told();
    assertThat(file.get("approaches")).hasSize(told.sheets().size());
    for (int i = 0; i < told.sheets().size(); i++) {
      FigureLists printed = FigureLists.of(told.sheets().get(i));
      FigureLists own = HandOverFigures.of(file, file.get("approaches").get(i));
      met.addAll(printed.kinds());
      Set<String> kinds = new TreeSet<>(printed.kinds());
      kinds.addAll(own.kinds());
      for (String kind : kinds) {
        if (!printed.of(kind).equals(own.of(kind))) {
          wrong.add(
              name
                  + ", sheet "
                  + (i + 1)
                  + ", "
                  + kind
                  + ": printed "
                  + printed.of(kind)
                  + ", from the file "
                  + own.of(kind));
        }
      }
    }
  }
}
