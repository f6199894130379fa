package gradepost.route.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaFieldAccess;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTag;
import com.tngtech.archunit.junit.ArchTest;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Property: every rule has its sentences in the catalogue, and every sentence there has its use.
 */
@AnalyzeClasses(packages = "gradepost", importOptions = ImportOption.DoNotIncludeTests.class)
@ArchTag("slow")
class AuditTextTest {

  @Test
  void everyRuleHasASummaryAndAWayOfFinding() {
    for (AuditRule rule : AuditRule.values()) {
      assertThat(rule.summary()).as(rule.code()).endsWith(".");
      assertThat(AuditText.values()).as(rule.code()).anyMatch(t -> t.rule() == rule);
    }
    for (AuditText text : AuditText.values()) {
      assertThat(AuditText.CATALOGUE.keys()).contains(text.key() + ".what");
    }
  }

  @Test
  void everySentenceOfTheCatalogueBelongsToARule() {
    Set<String> known = new TreeSet<>();
    for (AuditRule rule : AuditRule.values()) {
      known.add(rule.code() + ".summary");
    }
    for (AuditText text : AuditText.values()) {
      List.of(".what", ".bound", ".maybe").forEach(s -> known.add(text.key() + s));
    }
    assertThat(known).containsAll(AuditText.CATALOGUE.keys());
  }

  @ArchTest
  static void everyWayOfFindingIsUsed(JavaClasses classes) {
    Set<String> used =
        classes.stream()
            .filter(c -> !c.isEquivalentTo(AuditText.class))
            .flatMap(c -> c.getFieldAccessesFromSelf().stream())
            .filter(a -> a.getTargetOwner().isEquivalentTo(AuditText.class))
            .map(JavaFieldAccess::getName)
            .collect(Collectors.toSet());
    assertThat(used).containsAll(Arrays.stream(AuditText.values()).map(Enum::name).toList());
  }

  @Test
  void aHoleWithoutAValueAndAValueWithoutAHoleAreRefused() {
    Object element = "a record";
    assertThat(
            new AuditFinding(AuditText.NOT_SUPPLIED, element, "curves", Map.of("entries", "curves"))
                .what())
        .isEqualTo("no curves");
    for (Map<String, String> wrong :
        List.of(Map.<String, String>of(), Map.of("entries", "curves", "more", "1"))) {
      assertThatThrownBy(() -> new AuditFinding(AuditText.NOT_SUPPLIED, element, "", wrong))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageStartingWith("not-supplied wants [entries] and is given ");
    }
  }
}
