package gradepost.source.policy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import gradepost.policy.AdhesionCase;
import gradepost.source.Expect;
import gradepost.source.Fixture;
import gradepost.source.pack.PackFile;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.yaml.Reading;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: what holds on low-adhesion sites is read for the cases that it is given for. */
@Tag("slow")
class SiteAdhesionTest {
  private static final String TYPED =
      "site-adhesion: {law: share, of: low, share: 50 %, in: [damp, low], for: leaf film on known"
          + " sites}";

  private static List<AdhesionCase> cases(String site) {
    Fixture fixture = Fixture.good();
    fixture.put(Fixture.POLICY, fixture.text(Fixture.POLICY).replace(TYPED, site));
    Reading<PackFile> read = fixture.sources().pack(Fixture.PACK);
    assertThat(read).as(read.problems().text()).isInstanceOf(Reading.Good.class);
    return ((Reading.Good<PackFile>) read).value().policy().adhesion();
  }

  @Test
  void aShareOfACase() {
    List<AdhesionCase> cases = cases(TYPED);
    assertThat(cases.get(0).sites()).isEmpty();
    assertThat(cases.get(1).sites().orElseThrow().mu(10)).isCloseTo(0.03, within(1e-12));
    assertThat(cases.get(2).sites().orElseThrow().mu(10)).isCloseTo(0.03, within(1e-12));
  }

  @Test
  void aValueHoldsInEveryCaseButThePlannedOne() {
    List<AdhesionCase> cases = cases("site-adhesion: {value: 0.05, for: leaf film}");
    assertThat(cases.get(0).sites()).isEmpty();
    assertThat(cases.get(1).sites()).contains(new ConstantAdhesion(0.05));
    assertThat(cases.get(2).sites()).contains(new ConstantAdhesion(0.05));
  }

  @Test
  void leftOutTheSitesAreLikeTheRest() {
    assertThat(cases("")).allMatch(c -> c.sites().isEmpty());
  }

  @Test
  void evenThePlannedCaseWhereThePolicySaysSo() {
    List<AdhesionCase> cases =
        cases("site-adhesion: {law: constant, mu: 0.05, in: [dry], for: leaf film}");
    assertThat(cases.get(0).sites()).contains(new ConstantAdhesion(0.05));
    assertThat(cases.get(2).sites()).isEmpty();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String to, String expected) {
    Expect.problem(Fixture.POLICY, TYPED, "site-adhesion: " + to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        arguments(
            "an unknown case",
            "{value: 0.05, in: [«lo], for: leaf film}",
            "error: there is no adhesion case \"lo\"; allowed: dry, damp, low\n  Maybe low"),
        arguments(
            "a share of an unknown case",
            "{law: share, of: «wet, share: 50 %, for: leaf film}",
            "error: there is no adhesion case \"wet\"; allowed: dry, damp, low"),
        arguments(
            "better than the rest",
            "«{value: 0.08, for: leaf film}",
            "error: the sites have more adhesion than the rest of the line in the case \"low\";"
                + " allowed: no more than the case itself at any speed"),
        arguments(
            "without a purpose",
            "«{value: 0.05}",
            "error: adhesion on the sites lacks the key \"for\"; allowed: what it is for, in"
                + " words"),
        arguments(
            "a bare number",
            "«0.05",
            "error: site-adhesion is \"0.05\"; allowed: adhesion on the sites with the key value or"
                + " law"));
  }
}
