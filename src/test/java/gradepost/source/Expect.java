package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

/** Asserts the text of a problem, word for word, at the place of the mark. */
final class Expect {

  /** Changes one thing in the fixture's file; the whole answer is this problem and no other. */
  static void problem(String file, String from, String to, String expected) {
    Fixture fixture = Fixture.good();
    String marked = fixture.marked(file, from, to);
    String place = marked.contains(Fixture.HERE) ? Fixture.place(file, marked) + ": " : "";
    fixture.put(file, marked.replace(Fixture.HERE, ""));
    assertThat(fixture.sources().pack(Fixture.PACK))
        .isInstanceOf(Reading.Rejected.class)
        .extracting(r -> r.problems().text())
        .isEqualTo(place + expected + "\n");
  }

  private Expect() {}
}
