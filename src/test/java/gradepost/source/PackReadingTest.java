package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.PaperKind;
import gradepost.policy.Currency;
import gradepost.policy.PaperRules;
import gradepost.policy.RecorderRules;
import gradepost.policy.RideFault;
import gradepost.policy.SignOffRules;
import gradepost.policy.StripLayer;
import gradepost.policy.Subject;
import gradepost.route.BoardKind;
import gradepost.route.CheckRail;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.Signal;
import gradepost.route.place.Direction;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.source.file.FileKind;
import gradepost.source.file.Input;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.stock.PipeLaw;
import gradepost.stock.QuadraticResistance;
import gradepost.stock.law.FrictionTable;
import gradepost.stock.law.RocklCurveResistance;
import gradepost.stock.law.ShareOf;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.units.Acceleration;
import gradepost.units.Exact;
import gradepost.units.Gradient;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Property: what is typed is what comes out, in every kind of file. */
class PackReadingTest {
  private final PackFile pack = read();

  private static PackFile read() {
    Reading<PackFile> reading = Fixture.good().sources().pack(Fixture.PACK);
    assertThat(reading.problems().text()).isEmpty();
    return ((Reading.Good<PackFile>) reading).value();
  }

  @Test
  void readsTheLineItself() {
    Route route = pack.route();
    assertThat(route.units()).isEqualTo(UnitStyle.MILES);
    assertThat(route.nameOf(Direction.BACKWARD)).isEqualTo("Up");
    assertThat(new Path(route, Direction.FORWARD).lengthM())
        .isEqualTo(290 * Exact.CHAIN_M, org.assertj.core.data.Offset.offset(1e-6));
    assertThat(route.sections().get(1).rises()).isFalse();
    assertThat(route.lines().get(0).extents()).isEmpty();
    assertThat(route.lines().get(0).directions()).containsExactly(Direction.FORWARD);
    assertThat(route.gradients().get(0).gradient()).isEqualTo(Gradient.falling(80));
    assertThat(route.curves().get(0).hand()).isEqualTo(Hand.LEFT);
    assertThat(route.curves().get(0).radius()).isEqualTo(Length.ofChains(14));
    assertThat(route.curves().get(0).cant()).isEqualTo(new Length(0.075));
    assertThat(route.curves().get(0).checkRail()).isEqualTo(CheckRail.LOW_RAIL);
    assertThat(route.curves().get(1).checkRail()).isEqualTo(CheckRail.NONE);
  }

  /** 2m 00ch and 12m 20ch are one place: the seam may be named from either side. */
  @Test
  void takesASeamFromEitherSide() {
    Path path = new Path(pack.route(), Direction.FORWARD);
    Location end = pack.route().gradients().get(1).extent().to();
    Location start = pack.route().gradients().get(2).extent().from();
    assertThat(end).isEqualTo(new Location("Mill", Mileage.ofMilesChains(12, 20)));
    assertThat(start).isEqualTo(new Location("Valley", Mileage.ofMilesChains(2, 0)));
    assertThat(path.metresAt(end))
        .isEqualTo(path.metresAt(start), org.assertj.core.data.Offset.offset(1e-6));
  }

  @Test
  void readsWhatStandsByTheLine() {
    Route route = pack.route();
    assertThat(route.restrictions().get(1).speedFor(List.of("MU"))).isEqualTo(Speed.ofMph(30));
    assertThat(route.restrictions().get(1).boards().get(1).kind())
        .isEqualTo(BoardKind.COMMENCEMENT);
    assertThat(route.restrictions().get(1).applies().directions())
        .containsExactly(Direction.FORWARD);
    assertThat(route.junctions().get(0).routes().get(1).diverging()).isTrue();
    assertThat(route.stations().get(0).platforms().get(0).stopMarks().get(1).cars()).isEqualTo(8);
    assertThat(route.stations().get(1).platforms().get(0).bufferStops())
        .contains(new Location("Harbour", Mileage.ofMilesChains(0, 58)));
    assertThat(route.signals().get(0).kind()).isEqualTo(Signal.Kind.STOP_AND_CAUTION);
    assertThat(route.signals().get(0).routes().get(0).speed()).contains(Speed.ofMph(20));
    assertThat(route.landmarks().get(0).sighting()).isEqualTo(new Length(300 * 0.9144));
    assertThat(route.structures().get(1).extent().from())
        .isEqualTo(route.structures().get(1).extent().to());
    assertThat(route.railGaps()).hasSize(1);
    assertThat(route.lowAdhesion().get(0).note()).isEqualTo("leaf fall");
    assertThat(route.brakeTests().get(0).speed()).isEqualTo(Speed.ofMph(30));
    assertThat(route.observations().get(0).subject()).isEqualTo("speed boards");
  }

  @Test
  void readsTheStock() {
    assertThat(pack.stock().vehicles().get(0).length().metres())
        .isEqualTo(64.5 * 0.3048, org.assertj.core.data.Offset.offset(1e-9));
    assertThat(pack.stock().vehicles().get(0).motoredShare()).isEqualTo(0.5);
    assertThat(pack.stock().vehicles().get(1).brakeWeight()).isEqualTo(0.8);
    assertThat(pack.stock().resistance()).isEqualTo(new QuadraticResistance(14, 0.2, 6, 1.1));
    assertThat(pack.stock().curves()).isEqualTo(new RocklCurveResistance());
    assertThat(pack.stock().checkRailDragNPerKn()).isEqualTo(0.5);
    assertThat(pack.stock().traction().notchingDown()).isFalse();
    assertThat(pack.stock().traction().notches().get(1).effort()).hasSize(3);
    assertThat(pack.stock().brakeForce().blocks()).isInstanceOf(FrictionTable.class);
    BrakeSystem automatic = pack.stock().brakes().get(1);
    assertThat(automatic.action())
        .isEqualTo(new BrakeAction.Propagated(new Span(0.5), new Speed(250)));
    assertThat(automatic.pipe()).contains(new PipeLaw.Ratio(Pressure.ofPsi(70), 2.5));
    assertThat(pack.stock().service().control()).isEqualTo(new BrakeControl.Continuous());
    assertThat(pack.stock().brakes().get(2).control())
        .isEqualTo(new BrakeControl.Steps(List.of(Pressure.ofPsi(30), Pressure.ofPsi(60))));
  }

  @Test
  void readsThePolicyAndWhatEachValueIsFor() {
    assertThat(pack.policy().adhesion().get(1).law()).isInstanceOf(ShareOf.class);
    assertThat(pack.policy().adhesion().get(1).law().mu(0))
        .isEqualTo(0.6 * pack.policy().plannedAdhesion().law().mu(0));
    assertThat(pack.policy().safeSide().load()).isEqualTo(LoadCase.CRUSH);
    assertThat(pack.policy().safeSide().brakeFactor()).isEqualTo(0.9);
    assertThat(pack.policy().stopping().eases()).hasSize(2);
    assertThat(pack.policy().terminal().get(1).speed()).isEqualTo(Speed.ofMph(5));
    assertThat(pack.policy().run().timeAllowance()).isEqualTo(0.05);
    assertThat(pack.policy().purposes())
        .containsEntry("margins.before-board", "before the board")
        .containsEntry("stopping", "stops")
        .containsEntry("adhesion.damp", "damp rail")
        .containsEntry("sign-off.ride.early", "early")
        .hasSize(109);
  }

  @Test
  void readsTheRulesOfSigningOff() {
    SignOffRules rules = pack.policy().signOff().orElseThrow();
    assertThat(pack.papers()).containsExactly(PaperKind.BRIEFING, PaperKind.SIGN_OFF);
    assertThat(rules.papers())
        .isEqualTo(
            new PaperRules(
                2,
                20,
                0.8,
                List.of(Subject.FIRST_PRESSURE, Subject.FAILURE_ANSWER),
                List.of(StripLayer.SPEEDS, StripLayer.CURVES)));
    assertThat(rules.ride().overspeed()).isEqualTo(Speed.ofMph(1));
    assertThat(rules.ride().overspeedFor()).isEqualTo(new Span(3));
    assertThat(rules.ride().recorder())
        .isEqualTo(
            new RecorderRules(0.02, 0.04, new Acceleration(0.4), new Span(0.3), new Span(8)));
    assertThat(rules.ride().fails()).containsExactly(RideFault.OVERSPEED);
    assertThat(rules.currency())
        .isEqualTo(new Currency(6, 2, 3, new Currency.Trips(4, 3, 1), java.util.Optional.of(24)));
  }

  @Test
  void signOffPapersNeedTheirRules() {
    String text = Fixture.good().text(Fixture.POLICY);
    String without = text.substring(0, text.indexOf("sign-off:"));
    assertThat(Fixture.good().put(Fixture.POLICY, without).sources().pack(Fixture.PACK).problems())
        .extracting(Problems::text)
        .isEqualTo(
            Fixture.PACK
                + ":38:9: error: sign-off papers are wanted, and the policy has no rules for them;"
                + " allowed: a policy with the group sign-off\n");
  }

  @Test
  void readsTheNotices() {
    assertThat(pack.notices()).hasSize(2);
    assertThat(pack.standing()).hasSize(1);
    assertThat(pack.notices().get(0).hours().orElseThrow().from()).isEqualTo(LocalTime.of(22, 0));
    assertThat(pack.notices().get(0).normalSpeed()).contains(Speed.ofMph(50));
    assertThat(pack.notices().get(1).until()).isEmpty();
  }

  @Test
  void resolvesThePack() {
    assertThat(pack.issue().number()).isEqualTo(3);
    assertThat(pack.issue().validTo()).isEqualTo(LocalDateTime.of(2027, 2, 28, 4, 0));
    assertThat(pack.title()).contains("Small line, stopping trains");
    assertThat(pack.formations()).extracting(f -> f.cars()).containsExactly(4, 2);
    DirectionPart up = pack.directions().get(1);
    assertThat(up.junctionRoutes().get("Millbeck Junction").speed()).isEqualTo(Speed.ofMph(20));
    assertThat(up.calls())
        .extracting(Call::station)
        .containsExactly(pack.route().stations().get(1), pack.route().stations().get(0));
    Assignment assignment = pack.assignment(up, pack.formations().get(1));
    assertThat(assignment.formation().vehicles().get(0).type()).isEqualTo("TS");
    assertThat(assignment.lines()).isEqualTo(Set.of("Siding", "Up Main"));
    assertThat(assignment.restrictions()).hasSize(1);
  }

  @Test
  void listsItsInputsByNamesThatDoNotDependOnTheFolder() {
    assertThat(pack.inputs())
        .extracting(Input::name)
        .containsExactly(
            "pack.yaml",
            "route.yaml",
            "../stock/unit.yaml",
            "../policy/depot.yaml",
            "restrictions.yaml");
    assertThat(pack.inputs().get(2).bytes()).isEqualTo(Fixture.good().bytes(Fixture.STOCK));
  }

  @Test
  void tellsTheKindOfAFile() {
    Sources sources = Fixture.good().sources();
    for (int i = 0; i < FileKind.values().length; i++) {
      Reading<FileKind> kind = sources.kind(Fixture.ALL.get(i));
      assertThat(((Reading.Good<FileKind>) kind).value()).isEqualTo(FileKind.values()[i]);
      assertThat(sources.check(Fixture.ALL.get(i)).text()).isEmpty();
    }
  }

  @Test
  void aPackIsReadAnewOnlyWhenAFileOfItHasChanged() {
    Fixture fixture = Fixture.good();
    Sources sources = fixture.sources();
    PackFile first = ((Reading.Good<PackFile>) sources.pack(Fixture.PACK)).value();
    fixture.put(Fixture.NOTICES, fixture.bytes(Fixture.NOTICES).clone());
    assertThat(((Reading.Good<PackFile>) sources.pack(Fixture.PACK)).value()).isSameAs(first);
    fixture.put(Fixture.NOTICES, fixture.text(Fixture.NOTICES) + "# mine\n");
    PackFile now = ((Reading.Good<PackFile>) sources.pack(Fixture.PACK)).value();
    assertThat(now.inputs()).isNotEqualTo(first.inputs());
    assertThat(now.route()).isSameAs(first.route());
    assertThat(((Reading.Good<PackFile>) sources.pack(first.inputs())).value().inputs())
        .isEqualTo(first.inputs());
    fixture.put(Fixture.STOCK, "gradepost: stock\n");
    assertThat(sources.pack(Fixture.PACK)).isInstanceOf(Reading.Rejected.class);
  }
}
