package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import gradepost.source.file.FileKind;
import gradepost.source.pack.PackFile;
import gradepost.stock.BrakeAction;
import gradepost.stock.BrakePercentage;
import gradepost.stock.BrakePreset;
import gradepost.stock.BrakeSystem;
import gradepost.stock.PipeLaw;
import gradepost.stock.Stock;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.yaml.Reading;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: stock by its motors, its brake percentage or a usual arrangement is read or refused.
 */
class StockFormsTest {
  private static final int MOTORS = 0;
  private static final int PERCENTAGE = 1;
  private static final int PRESET = 2;
  private static final int TWO_PIPE = 3;

  private static Stock stock(int which) {
    return stock(Fixture.otherStocks().get(which));
  }

  private static Stock stock(String text) {
    Reading<PackFile> read = Fixture.good().put(Fixture.STOCK, text).sources().pack(Fixture.PACK);
    assertThat(read).as(read.problems().text()).isInstanceOf(Reading.Good.class);
    return ((Reading.Good<PackFile>) read).value().stock();
  }

  @Test
  void aPercentageMakesServiceAndEmergency() {
    Pressure full = Pressure.ofBar(3.8);
    assertThat(stock(PERCENTAGE).brakes())
        .containsExactly(
            new BrakePercentage(110).service(full), new BrakePercentage(110).emergency(full));
    assertThat(stock(PERCENTAGE).brakeForce()).isEqualTo(new BrakePercentage(110).force(full));
  }

  /** SUBSET-026 A.3.7.1: service braking counts 135 at most; whoever typed more is told. */
  @Test
  void ofAHighPercentageServiceBrakingCountsLessAndTheCheckSaysSo() {
    Reading<PackFile> read = percentage("percentage: 110", "percentage: 135.5");
    assertThat(read.problems().text())
        .isEqualTo(
            "stock/unit.yaml:21:22: note: the percentage counts as 135 in service braking, and in"
                + " full in emergency [percentage-cut]\n");
    Stock stock = ((Reading.Good<PackFile>) read).value().stock();
    assertThat(stock.brakes())
        .extracting(b -> b.percentage().orElseThrow().lambda())
        .containsExactly(135.0, 135.5);
    assertThat(percentage("percentage: 110", "percentage: 135").problems().text()).isEmpty();
  }

  @Test
  void aPercentageIsConvertedUpToASpeedAndALength() {
    assertThat(percentage("maximum-speed: 60 mph", "maximum-speed: 200 km/h").problems().text())
        .isEmpty();
    assertThat(percentage("maximum-speed: 60 mph", "maximum-speed: 201 km/h").problems().text())
        .isEqualTo(
            "stock/unit.yaml:4:16: error: maximum-speed is too high for a brake percentage;"
                + " allowed: 200 km/h or less, or brakes by force and systems\n");
    // 46 vehicles of 64 ft 6 in are 904.3 m, 45 are 884.7 m.
    String few = "vehicles: [DMS, TS" + ", TS".repeat(43) + "]";
    assertThat(percentage("vehicles: [DMS, TS]", few).problems().text()).isEmpty();
    assertThat(percentage("vehicles: [DMS, TS]", few.replace("]", ", TS]")).problems().text())
        .isEqualTo(
            "stock/unit.yaml:10:5: error: formation \"2-car\" is 904 m long, too long for a"
                + " brake percentage; allowed: 900 m or less, or brakes by force and systems\n");
  }

  private static Reading<PackFile> percentage(String from, String to) {
    String good = Fixture.otherStocks().get(PERCENTAGE);
    assertThat(good).contains(from);
    return Fixture.good().put(Fixture.STOCK, good.replace(from, to)).sources().pack(Fixture.PACK);
  }

  @Test
  void everyPresetHasAWord() {
    String text = Fixture.otherStocks().get(PRESET);
    assertThat(stock(text).brakes()).isEqualTo(BrakePreset.EP_AND_AUTOMATIC_AIR.systems());
    assertThat(stock(text.replace("ep-and-automatic-air", "two-pipe-air")).brakes())
        .isEqualTo(BrakePreset.TWO_PIPE_AIR.systems());
    assertThat(stock(text.replace("ep-and-automatic-air", "goods-air")).brakes())
        .isEqualTo(BrakePreset.GOODS_AIR.systems());
  }

  @Test
  void aDistributorIsReadForEveryBrakeOfTwoPipeStock() {
    Stock stock = stock(TWO_PIPE);
    PipeLaw law = new PipeLaw.Distributor(Pressure.ofBar(5), 2.5333, Pressure.ofBar(3.8));
    assertThat(stock.brakes()).extracting(b -> b.pipe().orElseThrow()).containsExactly(law, law);
    assertThat(stock.service().gradualRelease()).isTrue();
  }

  @Test
  void aBuildUpByLengthAndARechargeAreRead() {
    BrakeSystem air = stock(MOTORS).service();
    assertThat(air.action()).isEqualTo(new BrakeAction.ByLength(3.00, 1.50, 0.10, new Length(400)));
    assertThat(air.recharge()).isEmpty();
    BrakeSystem automatic = stock(Fixture.good().text(Fixture.STOCK)).brakes().get(1);
    assertThat(automatic.recharge().orElseThrow().pascalsPerSecond())
        .isCloseTo(Pressure.ofPsi(1).pascals(), within(1e-6));
  }

  @Test
  void lowerLineVoltageLowersTheSpeedsOfTheMotors() {
    String text = Fixture.otherStocks().get(MOTORS);
    Stock low = stock(text);
    Stock stated = stock(text.replace("  line-voltage: 90 %\n", ""));
    assertThat(low.traction().notches())
        .extracting("name")
        .containsExactly("Shunt", "Series", "Weak field");
    // Beyond the speed at which the last resistance is cut out.
    assertThat(low.traction().notches().get(1).effortN(18))
        .isLessThan(stated.traction().notches().get(1).effortN(18));
    assertThat(low.traction().notches().get(2).effortN(44))
        .isLessThan(stated.traction().notches().get(2).effortN(44));
  }

  @Test
  void lowerLineVoltageStretchesTheNotches() {
    // 95 % of the voltage: the same effort at 95 % of the speed.
    String text = Fixture.good().text(Fixture.STOCK);
    Stock low = stock(text);
    Stock stated = stock(text.replace("  line-voltage: 95 %\n", ""));
    assertThat(low.traction().notches().get(1).effortN(0.95 * 13))
        .isCloseTo(stated.traction().notches().get(1).effortN(13), within(1e-6));
  }

  @Test
  void theSchemaTakesEveryForm() {
    assertThat(Schemas.of(FileKind.STOCK).toString())
        .contains("percentage=", "preset=", "motors=", "notches=", "force=", "build-up=");
    assertThat(Schemas.of(FileKind.POLICY).toString())
        .contains("site-adhesion={", "every case but the planned one");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, int which, String from, String to, String expected) {
    String good = Fixture.otherStocks().get(which);
    assertThat(good).contains(from);
    String marked = good.replace(from, to);
    String place = Fixture.place(Fixture.STOCK, marked);
    Reading<PackFile> read =
        Fixture.good()
            .put(Fixture.STOCK, marked.replace(Fixture.HERE, ""))
            .sources()
            .pack(Fixture.PACK);
    assertThat(read.problems().text()).isEqualTo(place + ": error: " + expected + "\n");
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        arguments(
            "unknown preset",
            PRESET,
            "preset: ep-and",
            "preset: «ep-amd",
            "preset \"ep-amd-automatic-air\" is not known; allowed: ep-and-automatic-air,"
                + " three-step-ep, two-pipe-air, goods-air\n"
                + "  Maybe ep-and-automatic-air"),
        arguments(
            "percentage out of range",
            PERCENTAGE,
            "percentage: 110",
            "percentage: «300",
            "percentage \"300\" is out of range; allowed: a braked weight percentage from 30 to"
                + " 250"),
        arguments(
            "percentage as a share",
            PERCENTAGE,
            "percentage: 110",
            "percentage: «110 %",
            "percentage \"110 %\" has a unit; allowed: a braked weight percentage from 30 to 250\n"
                + "  Maybe 110"),
        arguments(
            "percentage beside a list",
            PERCENTAGE,
            "full: 3.8 bar}",
            "full: 3.8 bar, «systems: {preset: goods-air}}",
            "a brake by its percentage has no key \"systems\"; allowed: percentage, full"),
        arguments(
            "motors beside notches",
            MOTORS,
            "  line-voltage: 90 %",
            "  line-voltage: 90 %\n  «notches: []",
            "the power handle has no key \"notches\"; allowed: time-per-notch, notching-down,"
                + " motors, line-voltage"),
        arguments(
            "no back voltage",
            MOTORS,
            "resistance: 0.1 ohm",
            "resistance: «2 ohm",
            "current times resistance is not below volts; allowed: a resistance that leaves a back"
                + " voltage"),
        arguments(
            "another quantity",
            MOTORS,
            "line: 750 V",
            "line: «750 A",
            "line \"750 A\" is a current, not a voltage; allowed: a voltage, such as 750 V, from"
                + " 100 V to 4 kV"),
        arguments(
            "line voltage out of range",
            MOTORS,
            "line-voltage: 90 %",
            "line-voltage: «40 %",
            "line-voltage \"40 %\" is out of range; allowed: a percentage, such as 5 %, from 50 %"
                + " to 130 %"),
        arguments(
            "distributor that never comes to its limit",
            TWO_PIPE,
            "      full: 3.8 bar\n      pipe: {law: distributor, pressure: 5 bar, ratio: 2.5333,"
                + " limit: 3.8 bar}\n    - name",
            "      full: 2.4 bar\n      pipe: {law: distributor, pressure: 5 bar, ratio: 0.5,"
                + " limit: «2.5 bar}\n    - name",
            "limit is 36 psi (2.5 bar), and an empty pipe gives 36 psi (2.5 bar); allowed: less than"
                + " ratio times pressure"),
        arguments(
            "full above what a distributor gives",
            TWO_PIPE,
            "      full: 3.8 bar\n      pipe: {law: distributor, pressure: 5 bar, ratio: 2.5333,"
                + " limit: 3.8 bar}\n    - name",
            "      full: «3.8 bar\n      pipe: {law: distributor, pressure: 5 bar, ratio: 2.5333,"
                + " limit: 3.6 bar}\n    - name",
            "full is 55 psi (3.8 bar), and the pipe gives 52 psi (3.6 bar) at most; allowed: what"
                + " the pipe gives, or less"),
        arguments(
            "recharge of a distributor",
            TWO_PIPE,
            "limit: 3.8 bar}\n    - name",
            "limit: 3.8 bar}\n      recharge: «0.1 bar/s\n    - name",
            "recharge is given for a distributor, whose reservoirs a second pipe keeps full;"
                + " allowed: recharge with the law ratio or boyle only"),
        arguments(
            "group twice",
            MOTORS,
            "name: Series",
            "name: «Shunt",
            "the name \"Shunt\" is given twice under groups, first on line 26, column 16; allowed:"
                + " each name once"),
        arguments(
            "recharge without a pipe",
            MOTORS,
            "full: 50 psi}",
            "full: 50 psi, recharge: «1 psi/s}",
            "recharge is given without a pipe to recharge from; allowed: pipe beside it"),
        arguments(
            "build-up by a bare number",
            MOTORS,
            "a: 3.00 s",
            "a: «3.00",
            "a \"3.00\" has no unit; allowed: a time, such as 2 s, 500 ms or 5 min, from 0 s to"
                + " 60 s\n"
                + "  Maybe 3.00 s"));
  }
}
