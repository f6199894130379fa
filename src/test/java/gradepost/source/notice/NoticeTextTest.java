package gradepost.source.notice;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.DailyHours;
import gradepost.pack.Particulars;
import gradepost.pack.TemporaryRestriction;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.Differential;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.source.Fixture;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.file.MemoryFiles;
import gradepost.source.pack.Amendment;
import gradepost.source.pack.PackFile;
import gradepost.units.Speed;
import gradepost.yaml.Reading;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: a notice written out and read again is the same notice, in YAML and in CSV. */
@Tag("slow")
class NoticeTextTest {
  private static final Route ROUTE =
      ((Reading.Good<Route>) Fixture.good().sources().route(Fixture.ROUTE)).value();

  @Test
  void whatIsWrittenIsReadAgainToTheLastBit() {
    Random random = new Random(11);
    NoticeText text = new NoticeText(ROUTE);
    for (int i = 0; i < 200; i++) {
      List<TemporaryRestriction> notices = new ArrayList<>();
      for (int n = 0; n <= random.nextInt(3); n++) {
        notices.add(notice("N " + n, random));
      }
      assertThat(read("n.yaml", text.yaml(notices, ""))).isEqualTo(notices);
      assertThat(read("n.csv", text.csv(notices))).isEqualTo(notices);
    }
  }

  private static List<TemporaryRestriction> read(String name, String text) {
    Reading<List<TemporaryRestriction>> reading = reading(name, text);
    assertThat(reading.problems().hasErrors()).as(reading.problems().text() + text).isFalse();
    return ((Reading.Good<List<TemporaryRestriction>>) reading).value();
  }

  private static Reading<List<TemporaryRestriction>> reading(String name, String text) {
    Fixture fixture = Fixture.good();
    PackFile pack = ((Reading.Good<PackFile>) fixture.sources().pack(Fixture.PACK)).value();
    fixture.put(name, text);
    return fixture.sources().noticeFile(name).read(pack);
  }

  private static TemporaryRestriction notice(String reference, Random random) {
    Path path = new Path(ROUTE, Direction.FORWARD);
    double chain = path.units().placeStepM();
    double from = Math.floor(random.nextDouble() * (path.lengthM() - 900) / chain) * chain;
    Extent extent = new Extent(path.locationAt(from), path.locationAt(from + 10.5 * chain));
    // Distances are joined here; a place is typed as a decimal of a chain.
    Extent typed = new Extent(typed(extent.from()), typed(extent.to()));
    List<Board> boards = new ArrayList<>();
    if (random.nextBoolean()) {
      boards.add(new Board(BoardKind.COMMENCEMENT, typed.from(), Direction.FORWARD));
    }
    return new TemporaryRestriction(
        reference,
        TemporaryRestriction.Kind.values()[random.nextInt(3)],
        TemporaryRestriction.Status.values()[random.nextInt(5)],
        typed,
        new Applies(
            boards.isEmpty() && random.nextBoolean()
                ? Set.of(Direction.BACKWARD)
                : Set.of(Direction.FORWARD, Direction.BACKWARD),
            random.nextBoolean() ? Set.of() : Set.of(ROUTE.lines().get(0).name())),
        Speed.ofMph(5 + random.nextInt(50)),
        random.nextBoolean() ? List.of() : List.of(new Differential("MU", Speed.ofMph(22.5))),
        random.nextBoolean() ? Optional.empty() : Optional.of(Speed.ofMph(60)),
        random.nextBoolean() ? "" : "a \"wet\" bed; see note, page 2",
        LocalDateTime.of(2026, 11, 1 + random.nextInt(28), 4, 30),
        random.nextBoolean() ? Optional.empty() : Optional.of(LocalDateTime.of(2026, 12, 1, 4, 5)),
        random.nextBoolean() ? Optional.empty() : Optional.of(LocalDateTime.of(2027, 1, 2, 3, 4)),
        random.nextBoolean()
            ? Optional.empty()
            : Optional.of(new DailyHours(LocalTime.of(22, 0), LocalTime.of(5, 30))),
        boards,
        random.nextBoolean() ? "" : "notice office",
        random.nextBoolean()
            ? Particulars.NONE
            : new Particulars(
                "",
                "A and B",
                "",
                "",
                "magnets",
                Optional.of(LocalDateTime.of(2026, 10, 1, 8, 0)),
                "45",
                "47"));
  }

  private static gradepost.route.place.Location typed(gradepost.route.place.Location at) {
    double chains = Math.rint(at.mileage().metres() / 20.1168 * 2) / 2;
    double miles = Math.floor(chains / 80);
    return new gradepost.route.place.Location(
        at.section(), gradepost.units.Mileage.ofMilesChains(miles, chains - 80 * miles));
  }

  @Test
  void headingsAreReadInAnyCaseAndOrderWithUnitsInThem() {
    String csv =
        "SPEED (mph);Ref;Type; Status ;To;From;Imposed;Until;Boards;Differential speeds\r\n"
            + "# a comment\r\n"
            + "20;T 1;temporary;in force;1m 20ch;1m 10ch;2026-11-10 04:00;further notice;"
            + "\"warning 1m 00ch Down; commencement 1m 10ch Down\";MU 25 mph\r\n";
    TemporaryRestriction notice = read("n.csv", csv).get(0);
    assertThat(notice.speed()).isEqualTo(Speed.ofMph(20));
    assertThat(notice.boards()).hasSize(2);
    assertThat(notice.differentials()).hasSize(1);
  }

  @Test
  void aSlipInACellIsReportedAtItsCell() {
    String csv =
        "reference,type,status,from,to,speed,imposed,until\n"
            + "T 1,temporary,in force,1m 10ch,1m 20ch,20,2026-11-10 04:00,further notice\n";
    assertThat(reading("n.csv", csv).problems().text())
        .startsWith("n.csv:2:40: error: speed \"20\" has no unit; allowed: ");
    assertThat(reading("n.csv", csv.replace("speed", "sped")).problems().text())
        .startsWith("n.csv:1:31: error: a notice has no column \"sped\"; allowed: reference, ")
        .endsWith("  Maybe speed\n");
    assertThat(reading("n.csv", csv.replace("20,2026", "20 mph,5,2026")).problems().text())
        .startsWith("n.csv:2:66: error: the row has 9 cells; allowed: 8, one for each heading");
    assertThat(reading("n.csv", "").problems().text())
        .isEqualTo("n.csv:1:1: error: the table is empty; allowed: a row of headings\n");
  }

  @Test
  void noticesForAnotherRouteAreLeftUnread() {
    String csv =
        "route,reference,type,status,from,to,speed,imposed,until\n"
            + "Elsewhere,T 1,temporary,in force,99m 10ch,99m 20ch,x,2026-11-10 04:00,further notice\n";
    assertThat(read("n.csv", csv)).isEmpty();
  }

  @Test
  void aSpeedThatSlowsNoTrainIsTold() {
    String one =
        "gradepost: restrictions\nnotices:\n"
            + "  - {reference: A, type: temporary, status: in force, from: 1m 60ch, to: 1m 75ch,"
            + " speed: %s, imposed: 2026-11-10 04:00, until: further notice}\n";
    for (String fast : List.of("50 mph", "90 mph")) {
      assertThat(reading("n.yaml", one.formatted(fast)).problems().text())
          .isEqualTo(
              "n.yaml:3:90: warning: A slows no train: 50 mph is permissible there without it\n");
    }
    assertThat(reading("n.yaml", one.formatted("45 mph")).problems().text()).isEmpty();
  }

  @Test
  void aSecondLookTellsOfBoardsOverlapsAndFeatures() {
    String two =
        "gradepost: restrictions\nnotices:\n"
            + "  - {reference: A, type: temporary, status: in force, from: 1m 10ch, to: 1m 20ch,"
            + " speed: 20 mph, normal-speed: 20 mph, imposed: 2026-11-10 04:00,"
            + " until: further notice, boards: [{kind: warning, at: 1m 15ch, direction: Down}]}\n"
            + "  - {reference: B, type: temporary, status: in force, from: 1m 15ch, to: 1m 30ch,"
            + " speed: 30 mph, imposed: 2026-11-10 04:00, until: further notice, near-to: Nowhere}\n";
    assertThat(reading("n.yaml", two).problems().text())
        .contains(
            "warning: the normal speed is not above the restriction",
            "warning: the warning board for Down trains at 1m 15ch is beyond the beginning, 1m 10ch",
            "note: A and B overlap from 1m 15ch to 1m 20ch: the lower speed applies there",
            "error: the route has no feature \"Nowhere\"; allowed: ");
  }

  @Test
  void anAmendmentLeavesWhatItDoesNotTouch() {
    Fixture fixture = Fixture.good();
    PackFile pack = ((Reading.Good<PackFile>) fixture.sources().pack(Fixture.PACK)).value();
    TemporaryRestriction first = pack.notices().get(0);
    Random random = new Random(3);
    TemporaryRestriction other = notice("T 99", random);
    List<Input> inputs = Amendment.withNotices(pack, List.of(other, same(first, "new words")));
    PackFile amended =
        ((Reading.Good<PackFile>) new Sources(new MemoryFiles(inputs)).pack(inputs.get(0).name()))
            .value();
    assertThat(amended.notices())
        .containsExactly(same(first, "new words"), pack.notices().get(1), other);
    byte[] issue =
        Amendment.issue(
            inputs.get(0).bytes(),
            9,
            LocalDateTime.of(2026, 12, 1, 8, 0),
            LocalDateTime.of(2026, 12, 2, 4, 0),
            LocalDateTime.of(2026, 12, 1, 7, 0),
            "8",
            Optional.empty());
    List<Input> next = new ArrayList<>(inputs);
    next.set(0, new Input(inputs.get(0).name(), issue));
    var details =
        ((Reading.Good<PackFile>) new Sources(new MemoryFiles(next)).pack(next.get(0).name()))
            .value()
            .issue();
    assertThat(details.number()).isEqualTo(9);
    assertThat(details.supersedes()).contains("8");
    assertThat(details.checkedBy()).isEmpty();
    assertThat(details.validFrom()).isEqualTo(LocalDateTime.of(2026, 12, 2, 4, 0));
  }

  @Test
  void aCommentBeforeTheFirstKeyMayHaveHyphens() {
    String entry =
        "  - # slip, foot - see notice 46 - and 47\n\n    # - both\n    reference: T 1\n"
            + "    type: temporary\n    status: in force\n    from: 1m 60ch\n    to: 1m 70ch\n"
            + "    speed: 20 mph\n    imposed: 2026-11-10 04:00\n    until: further notice\n"
            + "    reason: >-\n      works\n";
    for (String indent : List.of("", "  ")) {
      Fixture fixture = Fixture.good();
      fixture.put(
          Fixture.NOTICES,
          "gradepost: restrictions\nnotices:\n" + entry.replaceAll("(?m)^  ", indent));
      PackFile pack = ((Reading.Good<PackFile>) fixture.sources().pack(Fixture.PACK)).value();
      TemporaryRestriction first = pack.notices().get(0);
      TemporaryRestriction other = notice("T 99", new Random(3));
      assertThat(amended(pack, List.of(other))).containsExactly(first, other);
      assertThat(amended(pack, List.of(same(first, "new words"))))
          .containsExactly(same(first, "new words"));
    }
  }

  private static List<TemporaryRestriction> amended(
      PackFile pack, List<TemporaryRestriction> notices) {
    List<Input> inputs = Amendment.withNotices(pack, notices);
    Reading<PackFile> read = new Sources(new MemoryFiles(inputs)).pack(inputs.get(0).name());
    assertThat(read.problems().hasErrors()).as(read.problems().text()).isFalse();
    return ((Reading.Good<PackFile>) read).value().notices();
  }

  private static TemporaryRestriction same(TemporaryRestriction n, String reason) {
    return new TemporaryRestriction(
        n.reference(),
        n.kind(),
        n.status(),
        n.extent(),
        n.applies(),
        n.speed(),
        n.differentials(),
        n.normalSpeed(),
        reason,
        n.imposed(),
        n.changedFrom(),
        n.until(),
        n.hours(),
        n.boards(),
        n.issuedBy(),
        n.particulars());
  }
}
