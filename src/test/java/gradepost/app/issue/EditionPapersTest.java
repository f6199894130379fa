package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.export.HandOver;
import gradepost.briefing.Briefing;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.compose.Composer;
import gradepost.plan.Plan;
import gradepost.source.Fixture;
import gradepost.source.pack.PackFile;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: an edition is a paper of its own, with its name and what permits it at its head. */
class EditionPapersTest {
  private static PackFile pack(Fixture fixture) {
    return fixture.sources().pack(Fixture.PACK).found().orElseThrow();
  }

  private static PackFile with() {
    return pack(Fixture.good().put(Fixture.PACK, Fixture.packWithEditions()));
  }

  private static PackFile without() {
    String text = Fixture.packWithEditions();
    return pack(Fixture.good().put(Fixture.PACK, text.substring(0, text.indexOf("editions:"))));
  }

  @Test
  void itsFilesAndItsTitleCarryItsName() {
    assertThat(Task.of(with()))
        .extracting(Task::stem)
        .containsExactly(
            "pack-down-4-car",
            "pack-down-4-car-ep-out-of-use",
            "pack-down-4-car-ep-on-front-half",
            "pack-down-2-car",
            "pack-down-2-car-one-brake-isolated");
    assertThat(Task.of(with()))
        .extracting(Task::title)
        .contains("Small line, Down, 4-car, EP out of use");
  }

  @Test
  void anEditionAskedForIsANewPaperAndNoOtherIsTouched() {
    assertThat(PaperPair.anyMayDiffer(without(), with())).isTrue();
    for (PaperPair pair : PaperPair.of(Optional.of(without()), with())) {
      boolean edition = pair.now().assignment().degraded().isPresent();
      assertThat(pair.before().isEmpty()).as(pair.now().stem()).isEqualTo(edition);
      assertThat(pair.mayDiffer()).as(pair.now().stem()).isEqualTo(edition);
    }
  }

  @Test
  void anotherClauseTouchesItsEditionsAlone() {
    Fixture fixture = Fixture.good().put(Fixture.PACK, Fixture.packWithEditions());
    String slower = fixture.text(Fixture.POLICY).replace("at-most: 35 mph", "at-most: 30 mph");
    PackFile after = pack(fixture.put(Fixture.POLICY, slower));
    assertThat(PaperPair.of(Optional.of(with()), after))
        .filteredOn(PaperPair::mayDiffer)
        .extracting(p -> p.now().stem())
        .containsExactly("pack-down-4-car-ep-out-of-use");
  }

  @Test
  void vehiclesWithoutBrakeAreNamedAtTheHeadAsTheyStandInTheTrain() {
    PackFile pack = with();
    Task part = Task.of(pack).get(2);
    Task isolated = Task.of(pack).get(4);
    assertThat(brake(pack, part))
        .isEqualTo(
            "The electro-pneumatic brake does not work on these vehicles, counted from the front: 3, 4");
    assertThat(brake(pack, isolated))
        .isEqualTo("The brake is isolated on these vehicles, counted from the front: 2");
  }

  private static String brake(PackFile pack, Task task) {
    Plan plan = task.plan();
    assertThat(plan.failures()).as(task.stem()).isEmpty();
    return new Composer(Messages.english())
            .compose(task.title(), List.of(plan), Issue.of(pack, task.assignment()), List.of())
            .cover()
            .edition()
            .stream()
            .filter(f -> f.label().equals("Brake"))
            .map(Fact::value)
            .findFirst()
            .orElseThrow();
  }

  @Test
  void itsHeadNamesItAndWhatPermitsIt() {
    PackFile pack = with();
    Task task = Task.of(pack).get(1);
    Plan plan = task.plan();
    Briefing briefing =
        new Composer(Messages.english())
            .compose(task.title(), List.of(plan), Issue.of(pack, task.assignment()), List.of());
    assertThat(briefing.title()).contains("EP out of use");
    assertThat(briefing.parts().get(0).head()).contains("4-car, EP out of use");
    for (List<Fact> facts :
        List.of(briefing.cover().edition(), briefing.parts().get(0).train().facts())) {
      assertThat(facts)
          .contains(
              new Fact("Edition", "EP out of use"),
              new Fact("Permitted by", "rule 4.2 of the depot"),
              new Fact("As far as", "the end of the booked run"),
              new Fact("At most", "35 mph"));
    }
    assertThat(briefing.reading().method())
        .as("applied once, and not eased before the stand")
        .noneMatch(m -> m.contains("eased to ."))
        .anyMatch(m -> m.matches("A stop is usually braked like this: .* psi to a stand\\..*"));
    String json = new String(HandOver.of(plan, ""), StandardCharsets.UTF_8);
    assertThat(json).contains("\"edition\"").contains("rule 4.2 of the depot");
    Plan ordinary = Task.of(pack).get(0).plan();
    assertThat(new String(HandOver.of(ordinary, ""), StandardCharsets.UTF_8))
        .doesNotContain("\"edition\"")
        .doesNotContain("rule 4.2 of the depot");
  }
}
