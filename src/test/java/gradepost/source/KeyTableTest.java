package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.source.route.PlaceKind;
import gradepost.yaml.Key;
import gradepost.yaml.Scalar;
import gradepost.yaml.WordMap;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: every row of every key table is read, checked and described. */
@Tag("slow")
class KeyTableTest {
  private static String problems(KeyWalk.Met met, String text) {
    Sources sources = Fixture.good().put(met.file(), text).sources();
    boolean kindKnown = !met.key().name().equals("gradepost");
    return met.file().equals(Fixture.PACK) || !kindKnown
        ? sources.pack(Fixture.PACK).problems().text()
        : sources.check(met.file()).text();
  }

  @Test
  void aGroupThatBelongsNowhereIsReportedAtItsPlace() {
    for (KeyWalk.Met met : KeyWalk.some()) {
      if (met.key().kind() instanceof WordMap) {
        continue; // a group with names of its own: PackNameProblemsTest
      }
      String text = met.replaced("{zzz: 1}");
      String problems = problems(met, text);
      // Where no key is required, the one that is not known is all that is wrong, one column on.
      String unknown =
          "%s:%d:%d: error: "
              .formatted(
                  met.file(),
                  met.value().getStartMark().getLine() + 1,
                  met.value().getStartMark().getColumn() + 2);
      boolean allMayBeLeftOut =
          Set.of("practice", "degraded", "recorder").contains(met.key().name());
      assertThat(problems)
          .as(met.key().name())
          .contains(allMayBeLeftOut ? unknown : met.at(met.value()));
    }
  }

  @Test
  void aBareNumberForAQuantityIsReportedAtItsPlace() {
    int quantities = 0;
    for (KeyWalk.Met met : KeyWalk.some()) {
      String text = met.replaced("17");
      String problems = problems(met, text);
      if (met.key().kind() instanceof Scalar.Quantity<?> || met.key().kind() instanceof PlaceKind) {
        quantities++;
        assertThat(problems)
            .as(met.key().name())
            .contains(met.at(met.value()) + met.key().name() + " \"17\" has no unit; allowed: ")
            .contains("\n  Maybe ");
      }
    }
    assertThat(quantities).isGreaterThan(Examples.of(50, 150));
  }

  @Test
  void aMissingKeyIsReportedAtItsGroup() {
    int required = 0;
    for (KeyWalk.Met met : KeyWalk.some()) {
      String text = met.text();
      int name = text.lastIndexOf(met.key().name() + ":", met.value().getStartMark().getIndex());
      String renamed = text.substring(0, name) + "x-" + text.substring(name);
      String problems = problems(met, renamed);
      if (!isDiscriminator(met)) {
        assertThat(problems).as(met.key().name()).contains("has no key \"x-" + met.key().name());
      }
      if (met.key().required()) {
        required++;
        assertThat(problems)
            .as(met.key().name())
            .contains(met.at(met.group()))
            .contains(" lacks the key \"" + met.key().name() + "\"");
      }
    }
    assertThat(required).isGreaterThan(Examples.of(80, 250));
  }

  /** Without it the table itself is not known, so that the answer is another. */
  private static boolean isDiscriminator(KeyWalk.Met met) {
    return Set.of("law", "action", "brake", "permitted").contains(met.key().name());
  }

  @Test
  void theFixtureHasEveryKeyButThoseOfOtherLaws() {
    Set<String> seen = new TreeSet<>();
    KeyWalk.met().forEach(m -> seen.add(m.key().name()));
    Set<String> unseen = new TreeSet<>();
    for (Key<?> key : KeyWalk.keys()) {
      if (!seen.contains(key.name())) {
        unseen.add(key.name());
      }
    }
    assertThat(unseen)
        .containsExactly(
            "changed-from",
            "dwell",
            "frontal-area",
            "k",
            "lead-area",
            "n-per-tonne",
            "none",
            // A file of its own: PictureProblemsTest has it.
            "picture",
            "pounds-per-ton-per-degree",
            "trail-area",
            "volume-ratio");
  }

  @Test
  void everyKeyIsDescribedAndNamedInOneManner() {
    for (Key<?> key : KeyWalk.keys()) {
      assertThat(key.name()).matches("[a-z]+(-[a-z0-9]+)*");
      assertThat(key.description()).as(key.name()).matches("(?s)[A-Z].*\\.");
      assertThat(key.kind().allowed()).as(key.name()).isNotBlank();
    }
  }
}
