package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.app.Changes;
import gradepost.app.SyntheticNetwork;
import gradepost.briefing.Messages;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.Comparison;
import gradepost.reissue.RestrictionChange.Kind;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: the comparison that a reissue finds, planning only what it must, is the one that is
 * found by planning everything.
 */
@Tag("slow")
class ComparisonFoundTest extends Changes {
  private static final int ROUNDS = Integer.getInteger("gradepost.rounds", Examples.of(3, 20));

  @Test
  void equalInputsGiveNoChange() {
    PackFile pack = pack(packs.get(0));
    assertThat(compared(pack, pack).isEmpty()).isTrue();
    assertThat(compared(pack, pack).unchanged()).containsExactly(1, 2);
  }

  /** It ends where the speed that it brakes to begins, and is about nothing else. */
  @Test
  void ofAnApproachToAnotherSpeedItIsNotSaidThatNoSpeedChangedThere() throws IOException {
    String slow = ", reference: R 1, from: 0.900 km, to: 1.100 km, directions: Out";
    PackFile before =
        with(pack(packs.get(0)), "status: in force, boards: none, speed: 20 km/h" + slow);
    PackFile after = with(before, "status: eased, boards: none, speed: 25 km/h" + slow);
    assertThat(compared(before, after).approaches())
        .filteredOn(c -> c.aspects().contains(ApproachChange.Aspect.TARGET))
        .isNotEmpty()
        .noneMatch(ApproachChange::outside);
  }

  /** A sheet of which only the number differs is not exchanged, and says of itself what it said. */
  @Test
  void whatOnlyGetsAnotherNumberKeepsItsSheet() throws IOException {
    PackFile before = pack(packs.get(0));
    PackFile after = with(before, at(km(400), km(450), "Out", "reference: R 1, speed: 80 km/h"));
    DifferenceFinder finder = new DifferenceFinder(Messages.english());
    var then = finder.of(packs.get(0), before, Optional.empty());
    var now = finder.of(packs.get(0), after, Optional.of(new LastIssue(before, List.of())));
    assertThat(now.papers().get(0).comparison().approaches())
        .filteredOn(ApproachChange::renumberedOnly)
        .extracting(c -> c.any().number() + " · " + c.any().target().name())
        .containsExactly("3 · Corrow");
    assertThat(now.sheets())
        .filteredOn(s -> s.title().startsWith("Corrow"))
        .hasSize(1)
        .allMatch(s -> then.sheets().stream().anyMatch(t -> t.digest().equals(s.digest())));
  }

  /** Each round has a line of its own; the second change of a round meets what the first left. */
  @Test
  void whatIsFoundIsWhatRecomputingEverythingFinds() throws IOException {
    Random random = new Random(5);
    DifferenceFinder finder = new DifferenceFinder(Messages.english());
    int touched = 0;
    int untouched = 0;
    for (int round = 0; round < ROUNDS; round++) {
      Path line = folder.resolve("round-" + round);
      Path file = new SyntheticNetwork(line, 2).packs(2, 1000 + round).get(random.nextInt(2));
      PackFile before = pack(file);
      for (int step = 0; step < 2; step++) {
        PackFile after = with(before, random(random));
        Differences found = finder.of(file, after, Optional.of(new LastIssue(before, List.of())));
        Comparison all = compared(before, after);
        assertThat(found.papers().stream().map(Differences.OfPaper::comparison))
            .as("round %d", round)
            .containsExactly(all);
        if (mayDiffer(before, after, 0)) {
          touched++;
        } else {
          assertThat(all.isEmpty()).isTrue();
          untouched++;
        }
        before = after;
      }
    }
    assertThat(touched).isGreaterThan(ROUNDS / 2);
    assertThat(untouched).isGreaterThan(ROUNDS / 4);
  }

  private static String random(Random random) {
    int from = 200 + 50 * random.nextInt(55);
    String status = random.nextInt(4) == 0 ? "withdrawn" : "in force";
    List<String> more =
        List.of(
            "",
            "",
            "",
            ", lines: [Out Main]",
            ", hours: 22:00 to 05:30",
            ", until: 2026-12-31 04:00");
    return "reference: R %d, status: %s, from: %s, to: %s, directions: %s, speed: %d km/h%s"
        .formatted(
            random.nextInt(2),
            status,
            km(from),
            km(from + 50 + 50 * random.nextInt(8)),
            random.nextBoolean() ? "Out" : random.nextBoolean() ? "In" : "both",
            20 + 5 * random.nextInt(10),
            more.get(random.nextInt(more.size())));
  }

  private static Set<Kind> kinds(Comparison comparison) {
    return comparison.restrictions().get(0).kinds();
  }

  @Test
  void everyChangeHasItsName() throws IOException {
    PackFile none = pack(packs.get(0));
    PackFile one = with(none, at("0.900 km", "1.100 km", "Out", "reference: A, speed: 30 km/h"));
    assertThat(kinds(compared(none, one))).containsExactly(Kind.ADDED);
    assertThat(kinds(compared(one, none))).containsExactly(Kind.WITHDRAWN);
    PackFile eased = with(one, at("0.900 km", "1.100 km", "Out", "reference: A, speed: 40 km/h"));
    assertThat(kinds(compared(one, eased))).containsExactly(Kind.EASED);
    assertThat(kinds(compared(eased, one))).containsExactly(Kind.TIGHTENED);
    PackFile moved = with(one, at("0.800 km", "1.000 km", "Out", "reference: A, speed: 30 km/h"));
    assertThat(kinds(compared(one, moved))).containsExactly(Kind.MOVED);
    PackFile ended =
        with(
            one,
            "status: withdrawn, from: 0.900 km, to: 1.100 km, directions: Out, reference: A,"
                + " speed: 30 km/h");
    assertThat(kinds(compared(one, ended))).containsExactly(Kind.WITHDRAWN);
    assertThat(compared(none, ended).isEmpty()).isTrue();
    PackFile night =
        with(
            one,
            at(
                "0.900 km",
                "1.100 km",
                "Out",
                "reference: A, speed: 30 km/h, hours: 22:00 to 05:30"));
    Comparison partTime = compared(one, night);
    assertThat(kinds(partTime)).containsExactly(Kind.RETIMED);
    // A paper that is valid all day is driven as if it stood all day.
    assertThat(partTime.speeds()).isEmpty();
    assertThat(partTime.approaches()).isEmpty();
  }

  @Test
  void anApproachIsTouchedByAChangeThatLiesOutsideIt() throws IOException {
    PackFile none = pack(packs.get(0));
    PackFile one = with(none, at("0.700 km", "1.050 km", "Out", "reference: A, speed: 20 km/h"));
    Comparison comparison = compared(none, one);
    ApproachChange stop =
        comparison.approaches().stream()
            .filter(a -> a.any().target().name().equals("Brink"))
            .findFirst()
            .orElseThrow();
    assertThat(stop.aspects()).contains(ApproachChange.Aspect.ENTRY_SPEED);
    assertThat(stop.movedM().orElseThrow()).isPositive();
  }

  @Test
  void comparingBackwardsUndoesIt() throws IOException {
    PackFile none = pack(packs.get(0));
    PackFile one = with(none, at("0.900 km", "1.100 km", "Out", "reference: A, speed: 30 km/h"));
    Comparison there = compared(none, one);
    Comparison back = compared(one, none);
    List<Double> moved = new ArrayList<>();
    there.approaches().forEach(a -> a.movedM().ifPresent(moved::add));
    List<Double> undone = new ArrayList<>();
    back.approaches().forEach(a -> a.movedM().ifPresent(m -> undone.add(-m)));
    assertThat(undone).isEqualTo(moved);
    assertThat(back.speeds()).hasSameSizeAs(there.speeds());
  }
}
