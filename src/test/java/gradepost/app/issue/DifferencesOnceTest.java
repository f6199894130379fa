package gradepost.app.issue;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import gradepost.app.Enter;
import gradepost.app.FinalPapers;
import gradepost.app.Reproduce;
import gradepost.app.making.PackReissue;
import gradepost.briefing.reissue.ChangeMarks;
import gradepost.briefing.reissue.Sheets;
import gradepost.plan.Plan;
import gradepost.reissue.Comparison;
import gradepost.task.Assignment;

/** Property: what is different between two issues is asked in one place, once an issue. */
@AnalyzeClasses(packages = "gradepost", importOptions = ImportOption.DoNotIncludeTests.class)
class DifferencesOnceTest {

  @ArchTest
  static final ArchRule ONE_PLACE_COMPARES =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName(DifferenceFinder.class.getName())
          .should()
          .callMethod(Comparison.class, "of", Plan.class, Plan.class)
          .orShould()
          .dependOnClassesThat()
          .belongToAnyOf(ChangeMarks.class)
          .orShould()
          .callConstructor(Sheets.class, gradepost.briefing.Messages.class);

  @ArchTest
  static final ArchRule ONE_PLACE_LOOKS_WHETHER_TRAINS_CAN_DIFFER =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName(PaperPair.class.getName())
          .should()
          .callMethod(Comparison.class, "mayDiffer", Assignment.class, Assignment.class);

  /** Each of these handles an issue; what they make of it is made from the one answer. */
  @ArchTest
  static final ArchRule EACH_ISSUE_ASKS_ONCE =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName(PackReissue.class.getName())
          .and()
          .doNotHaveFullyQualifiedName(Enter.class.getName())
          .and()
          .doNotHaveFullyQualifiedName(FinalPapers.class.getName())
          .and()
          .doNotHaveFullyQualifiedName(Reproduce.class.getName())
          .should()
          .callConstructor(DifferenceFinder.class, gradepost.briefing.Messages.class);
}
