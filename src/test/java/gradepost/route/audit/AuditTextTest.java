package gradepost.route.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.route.LineHoles.InUnits;
import gradepost.route.audit.AuditText.PlatformOf;
import gradepost.route.audit.AuditText.Train;
import gradepost.route.station.Station;
import gradepost.source.Frozen;
import gradepost.text.Catalogue;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.io.StringReader;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Property: every rule has its sentences in the catalogue, and every sentence there is of a rule.
 */
class AuditTextTest {

  @Test
  void everyRuleHasASummaryAndAWayOfFinding() {
    Set<String> found = new TreeSet<>();
    AuditText.MISTAKES.declared().forEach(key -> found.add(key.replaceFirst("[.].*", "")));
    Set<String> rules = new TreeSet<>();
    for (AuditRule rule : AuditRule.values()) {
      assertThat(rule.summary()).as(rule.code()).endsWith(".");
      rules.add(rule.code());
    }
    assertThat(found).isEqualTo(rules);
  }

  @Test
  void aFindingIsOfTheRuleUnderWhichItsSentencesStand() {
    Mistake none = AuditText.NOT_SUPPLIED.with("curves");
    assertThat(none.what()).isEqualTo("no curves");
    assertThat(new AuditFinding(none, "a record", "curves").rule())
        .isEqualTo(AuditRule.NOT_SUPPLIED);
    AuditFinding oneOfMany =
        new AuditFinding(AuditText.TWO_NAMES_SPELT.with("Ash", "ash"), "a record", "name");
    assertThat(oneOfMany.rule()).isEqualTo(AuditRule.TWO_NAMES);
  }

  /** A length is never negative, and a mark past the buffer stops is so far before them. */
  @Test
  void aMarkPastTheBufferStopsCanBeTold() {
    Station station = Frozen.valley().route().stations().get(0);
    Mistake told =
        AuditText.NEAR_BUFFERS.with(
            new Train("4-car", "Down"),
            new PlatformOf(station, station.platforms().get(0)),
            new InUnits<>(UnitStyle.METRIC, -2.0),
            InUnits.metres(UnitStyle.METRIC, 5));
    assertThat(told.what())
        .startsWith("4-car, Down: ")
        .endsWith(" is -2 m before the buffer stops");
    assertThat(told.allowed()).isEqualTo("5 m at least, by the policy");
  }

  @Test
  void aSentenceOfAnotherCatalogueIsNoFinding() throws IOException {
    Mistake other =
        Mistakes.of(Catalogue.read(new StringReader("no-water.what = no water\n")))
            .declare("no-water");
    assertThatThrownBy(() -> new AuditFinding(other, "a record", ""))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
