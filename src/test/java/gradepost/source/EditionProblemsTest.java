package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import gradepost.policy.Policy;
import gradepost.source.pack.PackFile;
import gradepost.stock.BrakeSystem;
import gradepost.stock.WorkingBrakes;
import gradepost.task.Assignment;
import gradepost.yaml.Reading;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: an edition that cannot or may not be made is refused at its place, in one answer. */
class EditionProblemsTest {
  private static final String PACK = Fixture.PACK;
  private static final String POLICY = Fixture.POLICY;

  private static Fixture good() {
    return Fixture.good().put(PACK, Fixture.packWithEditions());
  }

  private static PackFile read(Fixture fixture) {
    Reading<PackFile> reading = fixture.sources().pack(PACK);
    assertThat(reading.problems().text()).isEmpty();
    return reading.found().orElseThrow();
  }

  @Test
  void anEditionThatThePolicyPermitsIsRead() {
    PackFile pack = read(good());
    assertThat(pack.editions()).extracting(e -> e.name()).hasSize(3);
    Assignment out =
        pack.assignment(pack.directions().get(0), pack.formations().get(0), pack.editions().get(0));
    assertThat(out.trainName()).isEqualTo("4-car, EP out of use");
    assertThat(out.stock().brakes())
        .extracting(BrakeSystem::shortName, BrakeSystem::role)
        .containsExactly(
            tuple("Auto", BrakeSystem.Role.SERVICE), tuple("Emgy", BrakeSystem.Role.EMERGENCY));
    assertThat(out.policy().stopping().eases()).isEmpty();
    assertThat(out.policy().restriction().eases()).hasSize(1);
    Assignment part =
        pack.assignment(pack.directions().get(0), pack.formations().get(0), pack.editions().get(1));
    assertThat(part.formation().numbersWith(WorkingBrakes.ALL_BUT_SERVICE))
        .isEqualTo(List.of(3, 4));
  }

  @Test
  void theOrdinaryRunKnowsNothingOfTheClauses() {
    PackFile with = read(good());
    PackFile without = read(Fixture.good());
    Policy rules = with.assignment(with.directions().get(0), with.formations().get(0)).policy();
    assertThat(rules.degraded()).isEmpty();
    assertThat(rules.purposes().keySet()).noneMatch(k -> k.startsWith("degraded"));
    assertThat(rules)
        .isEqualTo(
            without.assignment(without.directions().get(0), without.formations().get(0)).policy());
  }

  @Test
  void withoutABrakeBehindTheServiceBrakeItMayNotBeOutOfUse() {
    Fixture fixture = good().put(Fixture.STOCK, Fixture.otherStocks().get(3));
    assertThat(fixture.sources().pack(PACK).problems().text())
        .isEqualTo(
            "line/pack.yaml:16:13: error: Two-pipe unit has no brake behind its service brake"
                + " (automatic air, graduated); allowed: stock with a brake whose role is"
                + " fallback\n");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isRefusedAtItsPlace(String slip, String file, String from, String to, String expected) {
    Fixture fixture = good();
    String marked = fixture.marked(file, from, to);
    if (marked.contains(Fixture.HERE)) {
      expected = Fixture.place(file, marked) + ": " + expected;
    }
    fixture.put(file, marked.replace(Fixture.HERE, ""));
    Reading<PackFile> reading = fixture.sources().pack(PACK);
    assertThat(reading.found()).isEmpty();
    assertThat(reading.problems().text()).isEqualTo(expected + "\n");
  }

  private static Arguments slip(String slip, String file, String from, String to, String expected) {
    return arguments(slip, file, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "no clause",
            POLICY,
            "  ep-out-of-use:\n    permitted: yes\n    clause: rule 4.2 of the depot\n    to: the"
                + " end of the booked run\n    at-most: 35 mph\n    technique:\n      stopping:"
                + " {for: one application, first: 15 psi, first-held: 4 s, main: 28 psi}\n     "
                + " restriction: {for: one release, first: 15 psi, first-held: 4 s, main: 28 psi,"
                + " release-above-target: 2 mph}\n      check-pressure: 15 psi\n",
            "",
            "line/pack.yaml:16:13: error: the policy Small policy has no clause for ep-out-of-use: without one no paper is made; allowed: a policy with the clause ep-out-of-use"
                + " under degraded\n"
                + "  Maybe ep-out-of-use under degraded in the policy file, with permitted,"
                + " clause, to and at-most"),
        slip(
            "forbidden",
            POLICY,
            "{permitted: yes, clause: rule 4.3 of the depot, to: the next depot, at-most: 40 mph,"
                + " most-vehicles: 50 %}",
            "{permitted: no, clause: rule 4.3 of the depot}",
            "line/pack.yaml:17:13: error: the policy Small policy does not permit ep-on-part: rule"
                + " 4.3 of the depot; allowed: an edition that the policy permits"),
        slip(
            "brake unknown",
            PACK,
            "{brake: ep-out-of-use,",
            "{brake: «ep-out-of-usw,",
            "error: brake \"ep-out-of-usw\" is not known; allowed: ep-out-of-use, ep-on-part,"
                + " brakes-isolated\n  Maybe ep-out-of-use"),
        slip(
            "formation not printed",
            PACK,
            "formations: [4-car]}",
            "formations: [«4-cars]}",
            "error: the pack does not print formation \"4-cars\"; allowed: 4-car, 2-car\n"
                + "  Maybe 4-car"),
        slip(
            "formation of some vehicles not printed",
            PACK,
            "formation: 2-car, vehicles",
            "formation: «2-cars, vehicles",
            "error: the pack does not print formation \"2-cars\"; allowed: 4-car, 2-car\n"
                + "  Maybe 2-car"),
        slip(
            "no such vehicle",
            PACK,
            "vehicles: [3, 4]",
            "vehicles: [3, «5]",
            "error: 4-car has no vehicle 5; allowed: 1 to 4, the leading vehicle of the forward"
                + " direction is 1"),
        slip(
            "vehicle twice",
            PACK,
            "vehicles: [3, 4]",
            "vehicles: [3, «3]",
            "error: vehicle 3 is named twice; allowed: each vehicle once"),
        slip(
            "more vehicles than the policy permits",
            PACK,
            "vehicles: [3, 4]",
            "vehicles: «[2, 3, 4]",
            "error: 3 vehicles of 4-car are named, more than the policy permits (rule 4.3 of the"
                + " depot); allowed: 2 at most"),
        slip(
            "no brake left beside the share of the policy",
            POLICY,
            "isolated-share: {value: 0 %",
            "isolated-share: {value: 25 %",
            "line/pack.yaml:18:84: error: no brake is left on 2-car: the policy takes 1 more as"
                + " isolated; allowed: fewer vehicles"),
        slip(
            "the same file",
            PACK,
            "name: EP on front half",
            "name: «EP out-of use",
            "error: the edition \"EP out-of use\" would have the same files as \"EP out of use\";"
                + " allowed: names that differ in a letter or a digit"),
        slip(
            "no name for a file",
            PACK,
            "name: EP on front half",
            "name: «\"??\"",
            "error: the edition \"??\" gives no name to a file; allowed: a name with a letter or a"
                + " digit"),
        slip(
            "more than the automatic brake has",
            POLICY,
            "check-pressure: 15 psi",
            "check-pressure: «55 psi",
            "error: check-pressure 55 psi (3.8 bar) is above full service of Invented unit, which is"
                + " 50 psi (3.4 bar); allowed: full service or less"),
        slip(
            "an ease",
            POLICY,
            "{for: one application, first: 15 psi, first-held: 4 s, main: 28 psi}",
            "{for: one application, first: 15 psi, first-held: 4 s, main: 28 psi, «eases: []}",
            "error: the stopping technique without eases has no key \"eases\"; allowed: for, first,"
                + " first-held, main"));
  }
}
