package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.IssueMaker.Before;
import gradepost.app.IssueMaker.Draft;
import gradepost.drive.Finding;
import gradepost.drive.Plan;
import gradepost.drive.Planner;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.Comparison;
import gradepost.reissue.RestrictionChange;
import gradepost.reissue.RestrictionChange.Kind;
import gradepost.source.Amendment;
import gradepost.source.Input;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import gradepost.source.Sources;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: the comparison that a reissue finds, planning only what it must, is the one that is
 * found by planning everything; and every awkward geometry has a defined result.
 */
class ComparisonFoundTest {
  private static final String STANDING = "status: in force, from: %s, to: %s, directions: %s";
  @TempDir Path folder;
  private List<Path> packs = List.of();

  @BeforeEach
  void network() throws IOException {
    packs = new SyntheticNetwork(folder, 2).packs(4, 21);
  }

  private PackFile pack(int number) {
    return good(Disk.sources().pack(Disk.name(packs.get(number))));
  }

  private static PackFile good(Reading<PackFile> reading) {
    assertThat(reading.problems().hasErrors()).as(reading.problems().text()).isFalse();
    return ((Reading.Good<PackFile>) reading).value();
  }

  private PackFile with(PackFile pack, String... entries) throws IOException {
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (String entry : entries) {
      text.append("  - {type: temporary, imposed: 2026-11-24 04:00, until: further notice, ")
          .append(entry)
          .append("}\n");
    }
    Path file = Files.writeString(folder.resolve("n.yaml"), text);
    var notices = Disk.sources().notices(Disk.name(file), pack.route());
    assertThat(notices.problems().hasErrors()).as(notices.problems().text()).isFalse();
    List<Input> inputs =
        Amendment.withNotices(
            pack, ((Reading.Good<List<gradepost.route.TemporaryRestriction>>) notices).value());
    return good(Kits.read(inputs));
  }

  private static Plan plan(PackFile pack) {
    return Planner.plan(pack.assignment(pack.directions().get(0), pack.formations().get(0)));
  }

  private static Comparison compared(PackFile before, PackFile after) {
    return Comparison.of(plan(before), plan(after));
  }

  @Test
  void equalInputsGiveNoChange() {
    PackFile pack = pack(0);
    assertThat(compared(pack, pack).isEmpty()).isTrue();
    assertThat(compared(pack, pack).unchanged()).containsExactly(1, 2);
  }

  @Test
  void whatIsFoundIsWhatRecomputingEverythingFinds() throws IOException {
    Random random = new Random(5);
    Layout layout = new Layout(Optional.empty());
    int touched = 0;
    int untouched = 0;
    for (int round = 0; round < 12; round++) {
      PackFile before = pack(random.nextInt(4));
      for (int step = 0; step < 2; step++) {
        PackFile after = with(before, random(random));
        Draft draft =
            new IssueMaker(layout)
                .draft(packs.get(0), after, Optional.of(new Before(before, List.of())), false);
        Comparison all = compared(before, after);
        assertThat(draft.made().comparisons()).containsExactly(all);
        boolean may =
            Comparison.mayDiffer(
                Task.of(packs.get(0), before).get(0).assignment(),
                Task.of(packs.get(0), after).get(0).assignment());
        if (!may) {
          assertThat(all.isEmpty()).isTrue();
          untouched++;
        } else {
          touched++;
        }
        before = after;
      }
    }
    assertThat(touched).isGreaterThan(5);
    assertThat(untouched).isGreaterThan(2);
  }

  private static String random(Random random) {
    int from = 200 + 50 * random.nextInt(55);
    String status = random.nextInt(4) == 0 ? "withdrawn" : "in force";
    return "reference: R %d, status: %s, from: %s, to: %s, directions: %s, speed: %d km/h"
        .formatted(
            random.nextInt(2),
            status,
            km(from),
            km(from + 50 + 50 * random.nextInt(8)),
            random.nextBoolean() ? "Out" : random.nextBoolean() ? "In" : "both",
            20 + 5 * random.nextInt(10));
  }

  private static String km(double metres) {
    return String.format(java.util.Locale.ROOT, "%.3f km", metres / 1000);
  }

  private static String at(String from, String to, String way, String more) {
    return STANDING.formatted(from, to, way) + ", " + more;
  }

  private static Set<Kind> kinds(Comparison comparison) {
    return comparison.restrictions().get(0).kinds();
  }

  @Test
  void everyChangeHasItsName() throws IOException {
    PackFile none = pack(0);
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
    PackFile none = pack(0);
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
  void adjoiningAndNestedRestrictionsTakeTheLowerSpeed() throws IOException {
    PackFile none = pack(0);
    PackFile two =
        with(
            none,
            at("0.700 km", "0.900 km", "Out", "reference: A, speed: 40 km/h"),
            at("0.900 km", "1.000 km", "Out", "reference: B, speed: 20 km/h"));
    Comparison adjoining = compared(none, two);
    assertThat(adjoining.restrictions())
        .extracting(RestrictionChange::reference)
        .containsExactly("A", "B");
    assertThat(adjoining.speeds()).extracting(s -> s.cause()).containsExactly("A", "B");
    PackFile nested =
        with(
            none,
            at("0.700 km", "1.200 km", "Out", "reference: A, speed: 40 km/h"),
            at("0.900 km", "0.950 km", "Out", "reference: B, speed: 20 km/h"));
    assertThat(compared(none, nested).speeds())
        .extracting(s -> s.cause())
        .containsExactly("A", "B", "A");
    PackFile higher =
        with(nested, at("0.900 km", "0.950 km", "Out", "reference: B, speed: 60 km/h"));
    assertThat(compared(nested, higher).speeds()).hasSize(1);
  }

  @Test
  void oneShorterThanTheTrainHoldsUntilTheRearIsClear() throws IOException {
    PackFile none = pack(0);
    PackFile one = with(none, at("0.900 km", "0.920 km", "Out", "reference: A, speed: 20 km/h"));
    double train = none.formations().get(0).lengthM();
    var speed = compared(none, one).speeds().get(0);
    assertThat(speed.toM() - speed.fromM())
        .isCloseTo(20 + train, org.assertj.core.api.Assertions.within(1e-6));
  }

  @Test
  void oneThatBeginsBeyondAStationLeavesTheWayToItAlone() throws IOException {
    PackFile none = pack(0);
    PackFile one = with(none, at("2.300 km", "2.500 km", "Out", "reference: A, speed: 20 km/h"));
    Comparison comparison = compared(none, one);
    assertThat(comparison.unchanged()).containsExactly(1);
    assertThat(comparison.approaches()).isNotEmpty();
  }

  @Test
  void directionsAndLinesSayWhoIsTouched() throws IOException {
    for (int way = 0; way < 2; way++) {
      PackFile none = pack(way);
      assertThat(
              may(none, with(none, at("0.9 km", "1.1 km", "Out", "reference: A, speed: 20 km/h"))))
          .isEqualTo(way == 0);
      assertThat(
              may(none, with(none, at("0.9 km", "1.1 km", "both", "reference: A, speed: 20 km/h"))))
          .isTrue();
      String line = "reference: A, speed: 20 km/h, lines: [In Main]";
      assertThat(may(none, with(none, at("0.9 km", "1.1 km", "both", line)))).isEqualTo(way == 1);
    }
  }

  /** The demo line: at a junction only the way that is taken counts. */
  @Test
  void atADivergingJunctionOnlyTheWayTakenCounts() throws IOException {
    PackFile valley =
        good(
            new Sources(new gradepost.source.DiskFiles(Path.of("routes")))
                .pack("thrumble-valley/pack-thrumble.yaml"));
    String place = "from: {section: Harbour, at: 0m 20ch}, to: {section: Harbour, at: 0m 30ch}";
    for (String line : List.of("Down Harbour", "Up Main")) {
      PackFile after =
          with(
              valley,
              "status: in force, %s, directions: Down, reference: Z, speed: 10 mph, lines: [%s]"
                  .formatted(place, line));
      assertThat(may(valley, after)).isEqualTo(line.equals("Down Harbour"));
    }
  }

  private static boolean may(PackFile before, PackFile after) {
    return Comparison.mayDiffer(
        before.assignment(before.directions().get(0), before.formations().get(0)),
        after.assignment(after.directions().get(0), after.formations().get(0)));
  }

  @Test
  void aBlanketRestrictionWithoutBoardsIsOnPaperOnly() throws IOException {
    PackFile none = pack(0);
    PackFile one =
        with(
            none,
            at("0.900 km", "1.100 km", "Out", "reference: A, speed: 20 km/h")
                .replace("status", "issued-by: office, status"));
    Plan after = plan(one);
    assertThat(after.approaches().get(0).findings()).anyMatch(f -> f instanceof Finding.NoBoard);
    Draft draft =
        new IssueMaker(new Layout(Optional.empty()))
            .draft(packs.get(0), one, Optional.of(new Before(none, List.of())), false);
    assertThat(draft.made().changes()).anyMatch(c -> c.contains("PAPER ONLY: no boards"));
  }

  @Test
  void comparingBackwardsUndoesIt() throws IOException {
    PackFile none = pack(0);
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
