package gradepost.source.notice;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.route.Route;
import gradepost.source.Fixture;
import gradepost.yaml.Reading;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: a notice that finds no route is told of at its place, and none is lost in silence. */
class NoticeRoutesTest {
  private static final String FILE = "line/new.yaml";
  private final Fixture fixture = Fixture.good();
  private final Route small = route("Small line");
  private final Route hill = route("Hill line");

  private Route route(String name) {
    fixture.put("line/other.yaml", fixture.text(Fixture.ROUTE).replace("Small line", name));
    return ((Reading.Good<Route>) fixture.sources().route("line/other.yaml")).value();
  }

  /** Each notice with this in it; what is found, without the name of the file. */
  private String found(List<Route> routes, String... notices) {
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (String more : notices) {
      text.append("  - {speed: 20 mph").append(more).append("}\n");
    }
    return check(FILE, text.toString(), routes);
  }

  private String check(String file, String text, List<Route> routes) {
    fixture.put(file, text);
    return fixture.sources().noticeFile(file).fits(routes).text().replace(file + ":", "");
  }

  @Test
  void oneForARouteHereIsGood() {
    assertThat(found(List.of(small, hill), ", route: Small line", ", route: ' Hill line '"))
        .isEmpty();
    assertThat(found(List.of(small), "")).isEmpty();
    assertThat(found(List.of(small, small), "")).isEmpty();
  }

  @Test
  void aMisspeltRouteIsAnError() {
    assertThat(found(List.of(small, hill), ", route: Hill line", ", route: Smal line"))
        .isEqualTo(
            "4:28: error: there is no route \"Smal line\" here; allowed: Hill line, Small line\n"
                + "  Maybe Small line\n");
    assertThat(found(List.of(small), ", route: small line")).contains("  Maybe Small line\n");
  }

  @Test
  void aMissingRouteIsAnErrorWhereThereAreSeveral() {
    assertThat(found(List.of(small, hill), "", ", route: Hill line"))
        .isEqualTo(
            "3:5: error: this notice names no route, and the packs are of several routes; allowed: route: one of Hill line, Small line\n");
  }

  @Test
  void aRunningLineIsNoRoute() {
    assertThat(found(List.of(small), ", route: down main"))
        .isEqualTo(
            "3:28: error: \"down main\" is a running line, not a route; allowed: Small line\n"
                + "  Maybe lines: down main, and route: Small line\n");
  }

  @Test
  void routesThatAreNotHereAreNotedOnceAndKeepNothingBack() {
    String told =
        found(
            List.of(small),
            ", route: Small line",
            ", route: Quarry branch",
            ", route: Quarry branch",
            ", route: Estuary");
    assertThat(told)
        .isEqualTo(
            "4:28: note: ignored: no pack here is of the route \"Quarry branch\", \"Estuary\";"
                + " allowed: Small line\n");
    assertThat(fixture.sources().noticeFile(FILE).fits(List.of(small)).hasErrors()).isFalse();
  }

  @Test
  void aNameCutShortIsAskedAbout() {
    assertThat(found(List.of(hill, small), ", route: Hill line", ", route: small"))
        .isEqualTo(
            "4:28: note: ignored: no pack here is of the route \"small\"; allowed: Hill line,"
                + " Small line\n  Maybe Small line\n");
  }

  @Test
  void ofManyRoutesThatAreNotHereFiveAreNamed() {
    assertThat(
            found(
                List.of(small),
                ", route: Aldermoor",
                ", route: Birchfold",
                ", route: Coverdene",
                ", route: Dunmarsh",
                ", route: Eskerby",
                ", route: Fennwick",
                ", route: Gorsehay"))
        .endsWith("\"Dunmarsh\", \"Eskerby\" and 2 more; allowed: Small line\n")
        .doesNotContain("Fennwick");
  }

  @Test
  void aTableIsLookedAtAlike() {
    assertThat(
            check(
                "line/new.csv",
                "speed,route\n20 mph,Small line\n20 mph,Smal line\n",
                List.of(small)))
        .isEqualTo(
            "3:8: error: there is no route \"Smal line\" here; allowed: Small line\n  Maybe Small line\n");
  }

  /** It is told of where the notices are read for a route, once. */
  @Test
  void whatIsWrongWithTheFileItselfIsNotToldHere() {
    assertThat(check(FILE, "gradepost: [", List.of(small))).isEmpty();
  }
}
