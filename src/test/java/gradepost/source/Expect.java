package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.yaml.Problem;
import gradepost.yaml.Reading;

/** Asserts the text of a problem, word for word, at the place of the mark. */
public final class Expect {

  /** Changes one thing in the fixture's file; the whole answer is this problem and no other. */
  public static void problem(String file, String from, String to, String expected) {
    Fixture fixture = Fixture.good();
    String marked = fixture.marked(file, from, to);
    String place = marked.contains(Fixture.HERE) ? Fixture.place(file, marked) + ": " : "";
    fixture.put(file, marked.replace(Fixture.HERE, ""));
    assertThat(fixture.sources().pack(Fixture.PACK))
        .isInstanceOf(Reading.Rejected.class)
        .extracting(r -> r.problems().text())
        .isEqualTo(place + expected + "\n");
  }

  /** Changes one thing in the route; it still reads, and this is all that is found in it. */
  static void finding(String from, String to, String expected) {
    Fixture fixture = Fixture.good();
    String marked = fixture.marked(Fixture.ROUTE, from, to);
    String place = marked.contains(Fixture.HERE) ? Fixture.place(Fixture.ROUTE, marked) + ": " : "";
    fixture.put(Fixture.ROUTE, marked.replace(Fixture.HERE, ""));
    assertThat(fixture.sources().route(Fixture.ROUTE))
        .isInstanceOf(Reading.Good.class)
        .extracting(r -> r.problems().text())
        .isEqualTo(expected.isEmpty() ? "" : place + expected + "\n");
  }

  /** Changes one thing in the route; it still reads, and this is found at the mark among others. */
  static void among(String from, String to, String expected) {
    Fixture fixture = Fixture.good();
    String marked = fixture.marked(Fixture.ROUTE, from, to);
    fixture.put(Fixture.ROUTE, marked.replace(Fixture.HERE, ""));
    Reading<?> reading = fixture.sources().route(Fixture.ROUTE);
    assertThat(reading).isInstanceOf(Reading.Good.class);
    assertThat(reading.problems().all())
        .extracting(Problem::text)
        .contains(Fixture.place(Fixture.ROUTE, marked) + ": " + expected);
  }

  private Expect() {}
}
