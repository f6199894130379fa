package gradepost.stock;

import gradepost.stock.law.CurveResistance;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;

/**
 * A type of train: its vehicles, power and brakes.
 *
 * @param trainClasses the classes of train to which differential speeds may be given
 * @param checkRailDragNPerKn extra resistance of a check-railed curve, N/kN; 0 where unknown
 * @param handleRules movements that are forbidden or needed, in words, for the train page
 * @param care tests before leaving and signs that a brake has failed
 */
public record Stock(
    String name,
    String description,
    List<String> trainClasses,
    Speed maximum,
    List<Vehicle> vehicles,
    List<Formation> formations,
    ResistanceLaw resistance,
    CurveResistance curves,
    double checkRailDragNPerKn,
    Traction traction,
    StatedBrakeForce brakeForce,
    List<BrakeSystem> brakes,
    List<String> handleRules,
    BrakeCare care) {

  /** Of whose brakes no test and no sign of failure is supplied. */
  public Stock(
      String name,
      String description,
      List<String> trainClasses,
      Speed maximum,
      List<Vehicle> vehicles,
      List<Formation> formations,
      ResistanceLaw resistance,
      CurveResistance curves,
      double checkRailDragNPerKn,
      Traction traction,
      StatedBrakeForce brakeForce,
      List<BrakeSystem> brakes,
      List<String> handleRules) {
    this(
        name,
        description,
        trainClasses,
        maximum,
        vehicles,
        formations,
        resistance,
        curves,
        checkRailDragNPerKn,
        traction,
        brakeForce,
        brakes,
        handleRules,
        BrakeCare.NOT_SUPPLIED);
  }

  public Stock {
    trainClasses = List.copyOf(trainClasses);
    vehicles = List.copyOf(vehicles);
    formations = List.copyOf(formations);
    brakes = List.copyOf(brakes);
    handleRules = List.copyOf(handleRules);
    if (!brakes.stream().map(BrakeSystem::shortName).toList().containsAll(care.brakes())) {
      throw new IllegalArgumentException("stock " + name + " lacks a brake that is tested");
    }
    if (brakes.stream().filter(b -> b.role() == BrakeSystem.Role.SERVICE).count() != 1) {
      throw new IllegalArgumentException("stock " + name + " has one service brake");
    }
  }

  /** The brake of this short name; empty where the train has none. */
  public Optional<BrakeSystem> brake(String shortName) {
    return brakes.stream().filter(b -> b.shortName().equals(shortName)).findFirst();
  }

  /** From cylinder pressure to force with this brake: its own, or the one stated for all. */
  public StatedBrakeForce force(BrakeSystem system) {
    return system.percentage().map(p -> p.force(system.full())).orElse(brakeForce);
  }

  /** The same with other brakes. */
  public Stock with(List<BrakeSystem> others) {
    return new Stock(
        name,
        description,
        trainClasses,
        maximum,
        vehicles,
        formations,
        resistance,
        curves,
        checkRailDragNPerKn,
        traction,
        brakeForce,
        others,
        handleRules);
  }

  /** The brake that a plan is made with. */
  public BrakeSystem service() {
    return brakes.stream()
        .filter(b -> b.role() == BrakeSystem.Role.SERVICE)
        .findFirst()
        .orElseThrow();
  }
}
