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
      bed = {flower}, {count} high
      """;

  private record Bed(String flower, int height) {}

  private static final Hole<Bed> FLOWER = Hole.word("flower").of(Bed::flower);
  private static final Hole<Bed> HEIGHT = Hole.count("count").of(Bed::height);

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
        .hasMessage("a fills {one} twice");
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
        .containsExactly("bed", "two-beds.allowed", "two-beds.maybe", "two-beds.what");
    mistakes.phrase("bed", FLOWER.and(HEIGHT));
    assertThat(mistakes.unused()).doesNotContain("bed");
    assertThat(mistakes.declared()).containsExactly("no-water");
  }

  @Test
  void oneThingFillsSeveralHolesAndAPhraseFillsAHole() throws IOException {
    Phrase<Bed> phrase = mistakes().phrase("bed", FLOWER.and(HEIGHT));
    assertThat(phrase.of(new Bed("tulips", 3))).isEqualTo("tulips, 3 high");
    Mistakes mistakes =
        Mistakes.of(Catalogue.read(new StringReader("a.what = {one}; {all}; {part}\n")));
    Mistake told =
        mistakes
            .declare("a", phrase.in("one"), phrase.list("all", " and "), Hole.mistake("part"))
            .with(
                new Bed("roses", 1),
                List.of(new Bed("asters", 2), new Bed("lilies", 4)),
                mistakes().declare("no-water"));
    assertThat(told.what())
        .isEqualTo("roses, 1 high; asters, 2 high and lilies, 4 high; there is no water");
  }

  @Test
  void aPhraseWithOtherHolesAndAHoleFilledTwiceAreRefused() throws IOException {
    Mistakes mistakes = mistakes();
    assertThatThrownBy(() -> mistakes.phrase("bed", FLOWER))
        .isInstanceOf(TextFault.class)
        .hasMessage("bed wants [count, flower] and is given [flower]");
    assertThatThrownBy(() -> FLOWER.and(FLOWER))
        .isInstanceOf(TextFault.class)
        .hasMessage("{flower} is filled twice");
    assertThatThrownBy(() -> mistakes.phrase("no-bed"))
        .isInstanceOf(TextFault.class)
        .hasMessage("no text for no-bed, or it is declared twice");
  }
}
