package gradepost.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: a mistake is declared with just the holes that its sentences have. */
class MistakesTest {
  private static final String TEXTS =
      """
      two-beds.what = there are {count} beds of {flower}
      two-beds.allowed = one of {known}
      two-beds.maybe = {near}
      no-water.what = there is no water
      """;

  private static Mistakes mistakes() throws IOException {
    return Mistakes.of(Catalogue.read(new StringReader(TEXTS)));
  }

  @Test
  void theHolesSpellWhatIsHandedIn() throws IOException {
    Mistake told =
        mistakes()
            .declare(
                "two-beds",
                Hole.count("count"),
                Hole.word("flower"),
                Hole.list("known"),
                Hole.perhaps("near"))
            .with(2, "tulips", List.of("roses", "asters"), Optional.empty());
    assertThat(told.what()).isEqualTo("there are 2 beds of tulips");
    assertThat(told.allowed()).isEqualTo("one of roses, asters");
    assertThat(told.maybe()).isEmpty();
  }

  @Test
  void aHoleTooManyTooFewOrTwiceIsRefused() throws IOException {
    Mistakes mistakes = mistakes();
    assertThatThrownBy(() -> mistakes.declare("no-water", Hole.word("day")))
        .isInstanceOf(TextFault.class)
        .hasMessage("no-water wants [] and is given [day]");
    assertThatThrownBy(() -> mistakes.declare("two-beds", Hole.count("count")))
        .isInstanceOf(TextFault.class)
        .hasMessage("two-beds wants [count, flower, known, near] and is given [count]");
    Mistakes others = Mistakes.of(Catalogue.read(new StringReader("a.what = {one}\n")));
    assertThatThrownBy(() -> others.declare("a", Hole.word("one"), Hole.word("one")))
        .isInstanceOf(TextFault.class)
        .hasMessage("a wants [one] and is given [one]");
  }

  @Test
  void aKeyThatIsNotThereOrIsDeclaredTwiceIsRefused() throws IOException {
    Mistakes mistakes = mistakes();
    mistakes.declare("no-water");
    for (String wrong : List.of("no-water", "no-light")) {
      assertThatThrownBy(() -> mistakes.declare(wrong))
          .isInstanceOf(TextFault.class)
          .hasMessage("no text for " + wrong + ", or it is declared twice");
    }
  }

  @Test
  void whatNobodyDeclaresIsUnused() throws IOException {
    Mistakes mistakes = mistakes();
    mistakes.declare("no-water");
    assertThat(mistakes.unused())
        .containsExactly("two-beds.allowed", "two-beds.maybe", "two-beds.what");
  }
}
