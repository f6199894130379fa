package gradepost.app.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import gradepost.plan.Trigger;
import gradepost.stock.law.CurveResistance;
import gradepost.stock.law.DegreeCurveResistance;
import gradepost.stock.law.InverseRadiusCurveResistance;
import gradepost.stock.law.NoCurveResistance;
import gradepost.stock.law.RocklCurveResistance;
import gradepost.task.Target;
import java.io.IOException;
import java.io.StringWriter;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Regression: the form of the hand-over file, which others read. */
class RecordJsonTest {
  @SuppressWarnings("ArrayRecordComponent") // an array is one of the things to be written
  record Held(String name, Optional<Double> atM, Set<String> lines, double[] massKg) {}

  @Test
  void writesComponentsByNameAndLeavesOutWhatIsAbsent() throws IOException {
    assertThat(json(new Held("a", Optional.empty(), Set.of("z", "b"), new double[] {1, 2.5})))
        .isEqualTo("{'name':'a','lines':['b','z'],'massKg':[1.0,2.5]}");
    assertThat(json(new Held("a", Optional.of(3.5), Set.of(), new double[0])))
        .isEqualTo("{'name':'a','atM':3.5,'lines':[],'massKg':[]}");
  }

  @Test
  void saysWhichCaseOfASealedTypeItIs() throws IOException {
    assertThat(json(List.of(new Trigger.AtPlace(12), new Trigger.Standstill())))
        .isEqualTo("[{'kind':'AtPlace','atM':12.0},{'kind':'Standstill'}]");
  }

  /** A reader of JSON need not bear one name twice in one object. */
  @Test
  void aCaseWithAKindOfItsOwnWritesThatAlone() throws IOException {
    Target.Reduction reduction =
        new Target.Reduction(
            "curve",
            Target.Reduction.Kind.PERMANENT,
            "c1",
            100,
            10,
            20,
            Optional.empty(),
            Optional.empty());
    assertThat(json(reduction))
        .contains("'kind':'PERMANENT'")
        .satisfies(text -> assertThat(text.split("'kind'")).hasSize(2));
  }

  /** Version 3 was first written with these words; the code may call them otherwise. */
  @Test
  void namesALawOfCurvesAsTheVersionHasIt() throws IOException {
    List<CurveResistance> laws =
        List.of(
            new RocklCurveResistance(),
            new DegreeCurveResistance(1),
            new InverseRadiusCurveResistance(2),
            new NoCurveResistance());
    assertThat(json(laws))
        .isEqualTo(
            "[{'kind':'RocklCurve'},{'kind':'DegreeCurve','poundsPerTonPerDegree':1.0},"
                + "{'kind':'InverseRadiusCurve','k':2.0},{'kind':'NoCurveDrag'}]");
  }

  @Test
  void keepsAChosenOrderAndSortsAnyOther() throws IOException {
    Map<String, Integer> chosen = new LinkedHashMap<>();
    chosen.put("z", 1);
    chosen.put("a", 2);
    assertThat(json(chosen)).isEqualTo("{'z':1,'a':2}");
    assertThat(json(new TreeMap<>(chosen))).isEqualTo("{'a':2,'z':1}");
    assertThat(json(Map.of("z", 1, "a", 2))).isEqualTo("{'a':2,'z':1}");
  }

  @Test
  void refusesWhatJsonCannotHold() {
    assertThatThrownBy(() -> json(new Trigger.AtPlace(Double.POSITIVE_INFINITY)))
        .hasMessageContaining("finite");
    assertThatThrownBy(() -> json(new BitSet())).hasMessageContaining("BitSet");
  }

  private static String json(Object value) throws IOException {
    StringWriter text = new StringWriter();
    try (JsonGenerator generator = new JsonFactory().createGenerator(text)) {
      new RecordJson(generator).write(value);
    }
    return text.toString().replace('"', '\'');
  }
}
