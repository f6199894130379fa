package gradepost.told;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.Changed;
import gradepost.drive.Mill;
import gradepost.route.Path;
import gradepost.route.place.Direction;
import gradepost.stock.BrakeCare;
import gradepost.stock.BrakeSystem;
import gradepost.stock.FailureSign;
import gradepost.stock.GaugeReading;
import gradepost.stock.LeavingTest;
import gradepost.stock.Stock;
import gradepost.told.print.PrintGrid;
import gradepost.units.Pressure;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: a range of pressures is told no wider than it is supplied, on the steps of a gauge. */
class TrainSheetTest {
  private static final PrintGrid PSI = grid(UnitStyle.MILES);
  private static final PrintGrid BAR = grid(UnitStyle.METRIC);

  private static PrintGrid grid(UnitStyle units) {
    return new PrintGrid(new Path(Changed.in(Mill.route(), "units", units), Direction.FORWARD));
  }

  private static Stock with(GaugeReading reading) {
    BrakeCare care =
        new BrakeCare(
            List.of(
                new LeavingTest(
                    "continuity",
                    "Auto",
                    List.of(new LeavingTest.Step("Apply.", Optional.of(reading))))),
            List.of());
    return Changed.in(Mill.stock(), "care", care);
  }

  private static String told(double fromPsi, double toPsi, PrintGrid grid) {
    Stock stock =
        with(
            new GaugeReading(
                GaugeReading.Gauge.REAR_CYLINDER, Pressure.ofPsi(fromPsi), Pressure.ofPsi(toPsi)));
    TrainSheet.Reading told =
        TrainSheet.of(stock, grid).tests().get(0).steps().get(0).shows().orElseThrow();
    return told.least().text() + " to " + told.most().text();
  }

  /** By hand: 1 bar is 14.504 psi, so that 45 psi is 3.10 bar and 50 psi 3.45 bar. */
  @Test
  void theLeastIsRoundedUpAndTheMostDown() {
    assertThat(told(45, 50, PSI)).isEqualTo("45 psi to 50 psi");
    assertThat(told(45.01, 49.99, PSI)).isEqualTo("46 psi to 49 psi");
    assertThat(told(45, 50, BAR)).isEqualTo("3.2 bar to 3.4 bar");
    assertThat(told(0, 2, PSI)).isEqualTo("0 psi to 2 psi");
    assertThat(told(0, 2, BAR)).isEqualTo("0.0 bar to 0.1 bar");
  }

  /** 0.1 bar is the narrowest range that a file may hold: it holds a step of either gauge. */
  @Test
  void theNarrowestRangeStillHoldsAMarkOfTheGauge() {
    for (double from = 0; from < 40; from += 0.37) {
      for (PrintGrid grid : List.of(PSI, BAR)) {
        Stock stock =
            with(
                new GaugeReading(
                    GaugeReading.Gauge.REAR_CYLINDER,
                    Pressure.ofPsi(from),
                    new Pressure(Pressure.ofPsi(from).pascals() + 10_000)));
        TrainSheet.Reading told =
            TrainSheet.of(stock, grid).tests().get(0).steps().get(0).shows().orElseThrow();
        assertThat(told.least().steps()).as("%s", from).isLessThanOrEqualTo(told.most().steps());
      }
    }
  }

  @Test
  void whatIsNotSuppliedIsTold() {
    TrainSheet none = TrainSheet.of(Mill.stock(), PSI);
    assertThat(none.tests()).isEmpty();
    assertThat(none.untested()).containsExactly("EP", "Auto");
    assertThat(none.signless()).containsExactly("EP");
    assertThat(none.emergencyHeld()).isTrue();
    Stock one =
        Changed.in(
            Mill.stock(),
            "care",
            new BrakeCare(
                List.of(new LeavingTest("continuity", "Auto", List.of())),
                List.of(new FailureSign("EP", FailureSign.By.LAMP, "out", Optional.empty()))));
    assertThat(TrainSheet.of(one, PSI).untested()).containsExactly("EP");
    assertThat(TrainSheet.of(one, PSI).signless()).isEmpty();
    Stock without =
        Changed.in(
            Mill.stock(),
            "brakes",
            Mill.stock().brakes().stream()
                .filter(b -> b.role() != BrakeSystem.Role.EMERGENCY)
                .toList());
    assertThat(TrainSheet.of(without, PSI).emergencyHeld()).isFalse();
  }
}
