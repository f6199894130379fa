package gradepost.pack;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Property: the spellings of one person's name are one, and those of two are two. */
class PersonNameTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "A Clerk|A. Clerk",
        "A Clerk|A.Clerk",
        "Bob Reader|Reader, Bob",
        "Bob Reader|READER,bob",
        "Bob Reader|bob  reader",
        "J. R. Elm|JR Elm",
        "J.R. Elm|Elm, J R",
        "Ash-Rowe, Ann|ann ash rowe",
        "N O’Hara|n o'hara",
        "Zoë Elm|Zoe\u0308 Elm",
        "desk 4|Desk  4",
        "A Clerk|\u0410 \u0421lerk",
        "A Clerk|\uFF21 Clerk",
        "A Clerk|A Cl\u200Berk",
        "\u0412\u041E\u041B\u041A\u041E\u0412|\u0412\u043E\u043B\u043A\u043E\u0432",
      })
  void oneIsOne(String one, String other) {
    assertThat(PersonName.same(one, other)).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "A Clerk|B Clerk",
        "A Clerk|Ann Clerk",
        "Bob Reader|Reader Bob",
        "Bob Reader|Rob Reader",
        "desk 1 1|desk 11",
        "Ann Lee, Bob Rowe, Cy Elm|Bob Rowe, Cy Elm, Ann Lee",
        "Жанна Орлова|Жанна Орлов",
      })
  void twoAreTwo(String one, String other) {
    assertThat(PersonName.same(one, other)).isFalse();
  }
}
