package gradepost.told;

import gradepost.stock.BrakeSystem;
import gradepost.stock.FailureSign;
import gradepost.stock.GaugeReading;
import gradepost.stock.LeavingTest;
import gradepost.stock.Stock;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedPressure;
import java.util.List;
import java.util.Optional;

/**
 * What the sheet of the train tells of its brakes: the tests before leaving, and the signs that one
 * has failed. A range of pressures is told no wider than it is supplied.
 *
 * @param untested the brakes that a driver uses and for which no test is supplied, by short name
 * @param signless those for which no sign of failure is supplied
 * @param emergencyHeld whether the train has an emergency application, which stays on to the stand
 */
public record TrainSheet(
    List<Test> tests,
    List<Sign> signs,
    List<String> untested,
    List<String> signless,
    boolean emergencyHeld) {

  /** One test, its steps in order. */
  public record Test(String name, String brake, List<Step> steps) {}

  /** One thing that is done, and what a gauge must then show. */
  public record Step(String action, Optional<Reading> shows) {}

  /** One sign, and what a gauge then shows. */
  public record Sign(String brake, FailureSign.By by, String what, Optional<Reading> shows) {}

  /** From one pressure to another, both right. */
  public record Reading(GaugeReading.Gauge gauge, PrintedPressure least, PrintedPressure most) {}

  public TrainSheet {
    tests = List.copyOf(tests);
    signs = List.copyOf(signs);
    untested = List.copyOf(untested);
    signless = List.copyOf(signless);
  }

  /** As it is told in the units of a grid. */
  public static TrainSheet of(Stock stock, PrintGrid grid) {
    List<LeavingTest> tests = stock.care().beforeLeaving();
    List<FailureSign> signs = stock.care().signs();
    return new TrainSheet(
        tests.stream().map(t -> test(t, grid)).toList(),
        signs.stream()
            .map(s -> new Sign(s.brake(), s.by(), s.what(), s.shows().map(r -> reading(r, grid))))
            .toList(),
        without(stock, tests.stream().map(LeavingTest::brake).toList()),
        List.of(stock.service().shortName()).stream()
            .filter(b -> signs.stream().noneMatch(s -> s.brake().equals(b)))
            .toList(),
        stock.brakes().stream().anyMatch(b -> b.role() == BrakeSystem.Role.EMERGENCY));
  }

  /** The service brake and the one to fall back on are tested; an emergency application is not. */
  private static List<String> without(Stock stock, List<String> tested) {
    return stock.brakes().stream()
        .filter(b -> b.role() != BrakeSystem.Role.EMERGENCY)
        .map(BrakeSystem::shortName)
        .filter(b -> !tested.contains(b))
        .toList();
  }

  private static Test test(LeavingTest test, PrintGrid grid) {
    return new Test(
        test.name(),
        test.brake(),
        test.steps().stream()
            .map(s -> new Step(s.action(), s.shows().map(r -> reading(r, grid))))
            .toList());
  }

  private static Reading reading(GaugeReading reading, PrintGrid grid) {
    return new Reading(
        reading.gauge(),
        grid.pressureAtLeast(reading.least().pascals()),
        grid.pressureLeft(reading.most().pascals()));
  }
}
