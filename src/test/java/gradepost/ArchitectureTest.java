package gradepost;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.simpleNameStartingWith;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.stream.Collectors.counting;
import static java.util.stream.Collectors.groupingBy;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.NullMarked;

/** Property: the arrows between packages are the ones that DEVELOPERS.md draws, and no others. */
@AnalyzeClasses(packages = "gradepost", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule ARROWS =
      layeredArchitecture()
          .consideringOnlyDependenciesInAnyPackage("gradepost..")
          .layer("cli")
          .definedBy("gradepost.cli..")
          .layer("desk")
          .definedBy("gradepost.desk..")
          .layer("app")
          .definedBy("gradepost.app..")
          .layer("render")
          .definedBy("gradepost.render..")
          .layer("briefing")
          .definedBy("gradepost.briefing..")
          .layer("source")
          .definedBy("gradepost.source..")
          .layer("reissue")
          .definedBy("gradepost.reissue..")
          .layer("ride")
          .definedBy("gradepost.ride..")
          .layer("drive")
          .definedBy("gradepost.drive..")
          .layer("plan")
          .definedBy("gradepost.plan..")
          .layer("told")
          .definedBy("gradepost.told..")
          .layer("task")
          .definedBy("gradepost.task..")
          .layer("policy")
          .definedBy("gradepost.policy..")
          .layer("pack")
          .definedBy("gradepost.pack..")
          .layer("motion")
          .definedBy("gradepost.motion..")
          .layer("stock")
          .definedBy("gradepost.stock..")
          .layer("route")
          .definedBy("gradepost.route..")
          .layer("yaml")
          .definedBy("gradepost.yaml..")
          .layer("text")
          .definedBy("gradepost.text..")
          .layer("units")
          .definedBy("gradepost.units..")
          .whereLayer("cli")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("desk")
          .mayOnlyBeAccessedByLayers("cli")
          .whereLayer("desk")
          .mayOnlyAccessLayers("app", "reissue", "text", "units")
          .whereLayer("app")
          .mayOnlyBeAccessedByLayers("cli", "desk")
          .whereLayer("source")
          .mayOnlyBeAccessedByLayers("app", "cli")
          .whereLayer("render")
          .mayOnlyBeAccessedByLayers("app")
          .whereLayer("briefing")
          .mayOnlyBeAccessedByLayers("app", "render")
          .whereLayer("reissue")
          .mayOnlyBeAccessedByLayers("app", "briefing", "cli", "desk")
          .whereLayer("ride")
          .mayOnlyBeAccessedByLayers("app", "source", "briefing")
          .whereLayer("drive")
          .mayOnlyBeAccessedByLayers("app", "source", "briefing", "reissue", "ride")
          .whereLayer("plan")
          .mayOnlyBeAccessedByLayers("app", "source", "briefing", "reissue", "ride", "drive")
          .whereLayer("told")
          .mayOnlyBeAccessedByLayers(
              "app", "source", "briefing", "reissue", "ride", "drive", "plan")
          .whereLayer("task")
          .mayOnlyBeAccessedByLayers(
              "app", "source", "briefing", "reissue", "ride", "drive", "plan")
          .whereLayer("policy")
          .mayOnlyBeAccessedByLayers(
              "app", "source", "briefing", "reissue", "ride", "drive", "plan", "task")
          .whereLayer("pack")
          .mayOnlyBeAccessedByLayers(
              "cli", "app", "source", "briefing", "reissue", "ride", "drive", "plan", "task")
          .whereLayer("motion")
          .mayOnlyBeAccessedByLayers(
              "app",
              "source",
              "briefing",
              "reissue",
              "ride",
              "drive",
              "plan",
              "task",
              "policy",
              "pack")
          .whereLayer("text")
          .mayNotAccessAnyLayer()
          .whereLayer("text")
          .mayOnlyBeAccessedByLayers(
              "cli",
              "desk",
              "app",
              "source",
              "briefing",
              "reissue",
              "drive",
              "route",
              "yaml",
              "units")
          .whereLayer("yaml")
          .mayOnlyBeAccessedByLayers("app", "source")
          .ensureAllClassesAreContainedInArchitecture();

  @ArchTest
  static final ArchRule NO_CYCLES = slices().matching("gradepost.(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule ROUTE_AND_STOCK_STAND_APART =
      noClasses()
          .that()
          .resideInAPackage("gradepost.stock..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("gradepost.route..")
          .orShould()
          .dependOnClassesThat()
          .resideInAPackage("gradepost.source..");

  @ArchTest
  static final ArchRule NO_CLOCK_BELOW_THE_COMMANDS =
      noClasses()
          .that()
          .resideOutsideOfPackages("gradepost.cli..", "gradepost.desk..", "gradepost.app..")
          .should()
          .dependOnClassesThat()
          .belongToAnyOf(Clock.class)
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(java.time.LocalDateTime.class, "now")
          .orShould()
          .callMethod(java.time.Instant.class, "now");

  @ArchTest
  static final ArchRule NO_FILES_BELOW_SOURCE_AND_RENDER =
      noClasses()
          .that()
          .resideInAnyPackage(
              "gradepost.units..",
              "gradepost.route..",
              "gradepost.stock..",
              "gradepost.motion..",
              "gradepost.pack..",
              "gradepost.policy..",
              "gradepost.task..",
              "gradepost.told..",
              "gradepost.plan..",
              "gradepost.ride..",
              "gradepost.drive..",
              "gradepost.reissue..",
              "gradepost.briefing..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("java.nio.file..")
          .orShould()
          .dependOnClassesThat(simpleNameStartingWith("File").and(resideInAPackage("java.io")));

  @ArchTest
  static final ArchRule NO_CONSOLE_OUTSIDE_THE_COMMANDS =
      noClasses()
          .that()
          .resideOutsideOfPackage("gradepost.cli..")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");

  @ArchTest
  static void everyPackageSaysWhatIsNotNull(JavaClasses classes) {
    var unmarked =
        classes.stream()
            .filter(c -> !c.getSimpleName().equals("package-info"))
            .filter(c -> c.isTopLevelClass() && !c.getModifiers().contains(JavaModifier.SYNTHETIC))
            .map(c -> c.getPackage())
            .filter(p -> p.tryGetAnnotationOfType(NullMarked.class).isEmpty())
            .map(p -> p.getName())
            .distinct()
            .toList();
    assertThat(unmarked).isEmpty();
  }

  /** A package that holds more is a drawer; one that holds less is no room of its own. */
  @ArchTest
  static void noRoomIsTooFull(JavaClasses classes) {
    Map<String, Long> files =
        classes.stream()
            .filter(c -> !c.getSimpleName().equals("package-info"))
            .filter(c -> c.isTopLevelClass() && !c.getModifiers().contains(JavaModifier.SYNTHETIC))
            .collect(groupingBy(c -> c.getPackageName(), TreeMap::new, counting()));
    assertThat(files).allSatisfy((room, count) -> assertThat(count).as(room).isBetween(3L, 30L));
  }
}
