package gradepost.source.policy;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.policy.BrakePractice;
import gradepost.policy.CoastPractice;
import gradepost.policy.CorrectionPractice;
import gradepost.policy.HandlePractice;
import gradepost.policy.LinePractice;
import gradepost.policy.Policy;
import gradepost.policy.PowerPractice;
import gradepost.policy.Practice;
import gradepost.policy.TaughtRules;
import gradepost.policy.WarningPractice;
import gradepost.source.Fixture;
import gradepost.source.pack.PackFile;
import gradepost.units.Acceleration;
import gradepost.units.Length;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.yaml.Reading;
import org.junit.jupiter.api.Test;

/** Property: every key of driving practice reaches its value; what is left out is usual. */
class PracticeTableTest {
  private static final String ALL =
      """
      practice:
        eased-deceleration: {value: 0.2 m/s2, for: a}
        first-felt-above: {value: 1 m/s, for: b}
        lowest-aim: {value: 81 %, for: c}
        lowest-release: {value: 42 %, for: d}
        stays-on-from: {value: 0.03 m/s2, for: e}
        brake-off-at-least: {value: 9 s, for: f}
        first-held-at-least: {value: 3 s, for: g}
        first-held-longer: {value: 11 s, for: h}
        gain-at-least: {value: 0.21 m/s2, for: i}
        hold-at-least: {value: 0.05 m/s2, for: j}
        check-at-least: {value: 0.07 m/s2, for: k}
        longest-coast: {value: 50 s, for: l}
        coast-keeps: {value: 74 %, for: m}
        spared-power-keeps: {value: 63 %, for: n}
        power-off-at-least: {value: 6 s, for: o}
        movement-worth: {value: 4 %, for: p}
        creeping-below: {value: 5 m/s, for: q}
        junction-announced-within: {value: 900 m, for: r}
        late-share: {value: 15 %, for: s}
        applied-again-after: {value: 30 s, for: x}
        notch-gives-at-least: {value: 0.02 m/s2, for: x}
        dead-notch-at-most: {value: 4 s, for: x}
        movements-in-a-mile: {value: 15, for: x}
        rows-on-a-plate: {value: 8, for: n}
        rows-at-a-terminal: {value: 11, for: o}
        braked-lower-from: {value: 0.04 m/s2, for: t}
        last-ease-alone: {value: 150 %, for: u}
        gradient-ahead: {value: 500 m, for: v}
        rise-waited-for: {value: 7 s, for: w}
        notch-at-least: {value: 4 s, for: x}
        movement-saves: {value: 10 s, for: y}
        place-keeps: {value: 85 %, for: z}
        creeping-share: {value: 45 %, for: a}
        creeping-at-most: {value: 12 s, for: b}
        creeping-before: {value: 250 m, for: c}
        names-alike-within: {value: 700 m, for: d}
        over-gap-at-least: {value: 7 m/s, for: e}
        brake-test-held: {value: 13 s, for: f}
        brake-test-within: {value: 3 m/s, for: m}
        cue-within: {value: 17 s, for: g}
        looks-every: {value: 3 s, for: k}
        corrects-after: {value: 1500 ms, for: h}
        late-corrected-share: {value: 2 %, for: i}
        leaves-next-brake: {value: no, for: j}
      """;

  @Test
  void everyKeyReachesItsValue() {
    assertThat(policy(ALL).practice())
        .isEqualTo(
            new Practice(
                new BrakePractice(
                    new Acceleration(0.2),
                    new Speed(1),
                    0.81,
                    0.42,
                    new Acceleration(0.03),
                    new Acceleration(0.04),
                    1.5,
                    new Span(9),
                    new Span(3),
                    new Span(11)),
                new PowerPractice(
                    new Acceleration(0.21),
                    new Acceleration(0.05),
                    new Acceleration(0.07),
                    new Span(50),
                    0.74,
                    0.63,
                    new Span(6),
                    0.04,
                    new Speed(5),
                    new Length(500)),
                new CoastPractice(0.85, 0.45, new Span(12), new Length(250)),
                new HandlePractice(new Span(7), new Span(4), new Span(10)),
                new WarningPractice(new Length(900), 0.15),
                new TaughtRules(new Span(30), new Acceleration(0.02), new Span(4), 15, 8, 11),
                new LinePractice(
                    new Length(700), new Speed(7), new Span(13), new Speed(3), new Span(17)),
                new CorrectionPractice(new Span(3), new Span(1.5), 0.02, false)));
    assertThat(policy(ALL).purposes()).containsEntry("practice.lowest-aim", "c");
  }

  @Test
  void whatIsLeftOutIsUsual() {
    assertThat(policy("").practice()).isEqualTo(Practice.USUAL);
    assertThat(policy("practice:\n  longest-coast: {value: 50 s, for: l}\n").practice().brake())
        .isEqualTo(BrakePractice.USUAL);
  }

  /** What the schema says stands if a key is left out is what stands. */
  @Test
  void theUsualValueIsTheOneThatIsDocumented() {
    StringBuilder documented = new StringBuilder("practice:\n");
    PracticeTable.PRACTICE_SHAPE
        .keys()
        .forEach(
            k ->
                documented.append(
                    "  %s: {value: %s, for: as usual}%n".formatted(k.name(), k.fallbackText())));
    assertThat(policy(documented.toString()).practice())
        .usingRecursiveComparison()
        .withComparatorForType(PracticeTableTest::alike, Double.class)
        .isEqualTo(Practice.USUAL);
  }

  private static int alike(Double one, Double other) {
    return Math.abs(one - other) < 1e-9 ? 0 : Double.compare(one, other);
  }

  private static Policy policy(String practice) {
    String good = Fixture.good().text(Fixture.POLICY);
    String text = good.substring(0, good.indexOf("practice:")) + practice;
    Reading<PackFile> read = Fixture.good().put(Fixture.POLICY, text).sources().pack(Fixture.PACK);
    assertThat(read.problems().text()).isEqualTo("");
    return ((Reading.Good<PackFile>) read).value().policy();
  }
}
