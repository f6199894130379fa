package gradepost;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import gradepost.route.Path;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Property: what a driver is told is rounded by the print grid and by nobody else. Whoever rounds
 * something that is not told stands here with the reason; who needs that no longer is taken out.
 */
@AnalyzeClasses(packages = "gradepost", importOptions = ImportOption.DoNotIncludeTests.class)
class RoundedOnceTest {
  private static final Set<String> ROOMS = Set.of("briefing", "reissue", "app", "plan", "told");

  /** Where the grid is. */
  private static final String GRID = "gradepost.told.print";

  private static final String AXIS = "the axis or the rows of a drawing";
  private static final String ASKED = "a place in a question, chosen on the grid";
  private static final String TRAIN = "a figure of the stock that no action hangs on";
  private static final String CHECKED = "a message to who made the data";

  private static final Map<String, String> WHY =
      Map.ofEntries(
          entry("SpeedCurves", AXIS),
          entry("PressureWriter", AXIS),
          entry("RunCharts", AXIS),
          entry("RowSetting", AXIS),
          entry("TrackStripWriter", AXIS),
          entry("SpeedItems", ASKED),
          entry("TrackItems", ASKED),
          entry("Distractors", ASKED),
          entry("BriefingFacts", "what was observed on a ride, to the nearest"),
          entry("TrainWriter", TRAIN),
          entry("FigureWriter", TRAIN),
          entry("PlaceTables", "the cant of a curve, as supplied"),
          entry("ReadingWriter", "the law of adhesion on the page of the method"),
          entry("LineTeller", "where in the rows something comes: the words are the grid's"),
          entry("Course", "the share of a course that is needed"),
          entry("RideFindings", "what was recorded on a ride"),
          entry("TrainItems", "which wrong pressure a question has"),
          entry("RideReport", "a speed that was recorded on a ride"),
          entry("Show", "whether two places are the same, in millimetres"),
          entry("KnownNotices", "speeds of notices as typed, in a list for the clerk"),
          entry("Bench", "the speed of a target in a list to choose from, as typed"),
          entry("BenchTold", "what comes of a try, which is no briefing: towards the worse"),
          entry("FilesTold", CHECKED));

  @ArchTest
  static void nobodyElseRounds(JavaClasses classes) {
    Set<String> rounding = new TreeSet<>();
    for (JavaClass c : classes) {
      String room = c.getPackageName();
      if (!room.equals(GRID)
          && ROOMS.stream().anyMatch(r -> room.startsWith("gradepost." + r))
          && calls(c).anyMatch(RoundedOnceTest::rounds)) {
        rounding.add(topLevel(c).getSimpleName());
      }
    }
    assertThat(rounding).containsExactlyInAnyOrderElementsOf(WHY.keySet());
  }

  private static Stream<JavaAccess<?>> calls(JavaClass c) {
    return Stream.concat(
        c.getMethodCallsFromSelf().stream(), c.getMethodReferencesFromSelf().stream());
  }

  private static boolean rounds(JavaAccess<?> call) {
    JavaClass of = call.getTargetOwner();
    String name = call.getName();
    return of.isEquivalentTo(Rounding.class)
        || (of.isEquivalentTo(Math.class)
            && Set.of("round", "floor", "ceil", "rint").contains(name))
        || (of.isEquivalentTo(Path.class)
            && Set.of("printedAtOrBefore", "printedAtOrAfter").contains(name))
        || (of.isEquivalentTo(UnitStyle.class)
            && Set.of("length", "speed", "speedNumber", "pressure").contains(name));
  }

  private static JavaClass topLevel(JavaClass c) {
    return c.getEnclosingClass().map(RoundedOnceTest::topLevel).orElse(c);
  }
}
