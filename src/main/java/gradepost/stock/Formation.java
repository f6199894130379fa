package gradepost.stock;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;

/**
 * A train made up of vehicles.
 *
 * @param vehicles in the order in which they stand in the forward direction, leading one first
 * @param brakes which brakes of each vehicle work, in the same order
 */
public record Formation(String name, List<Vehicle> vehicles, List<WorkingBrakes> brakes) {
  public Formation {
    vehicles = List.copyOf(vehicles);
    brakes = List.copyOf(brakes);
    if (vehicles.isEmpty()) {
      throw new IllegalArgumentException("formation " + name + " has no vehicle");
    }
    if (brakes.size() != vehicles.size()) {
      throw new IllegalArgumentException("formation " + name + " has brakes for each vehicle");
    }
  }

  /** A train on which every brake works. */
  public Formation(String name, List<Vehicle> vehicles) {
    this(name, vehicles, Collections.nCopies(vehicles.size(), WorkingBrakes.ALL));
  }

  /** How many vehicles there are. */
  public int cars() {
    return vehicles.size();
  }

  /** How many whole vehicles a share of them is: rounded up. */
  public int wholeVehicles(double share) {
    return (int) Math.ceil(share * cars() - 1e-9);
  }

  /** Length over couplers, metres. */
  public double lengthM() {
    return vehicles.stream().mapToDouble(v -> v.length().metres()).sum();
  }

  /** Metres of pipe from the front of the train to the valve of each vehicle, leading one first. */
  public double[] valvesM() {
    double[] valves = new double[vehicles.size()];
    double front = 0;
    for (int i = 0; i < valves.length; i++) {
      valves[i] = front + vehicles.get(i).valveM();
      front += vehicles.get(i).length().metres();
    }
    return valves;
  }

  /** Mass under a load without what turns, kilograms. */
  public double massKg(LoadCase load) {
    return vehicles.stream().mapToDouble(v -> v.massKg(load)).sum();
  }

  /** How many vehicles have motors. */
  public long motoredVehicles() {
    return vehicles.stream().filter(Vehicle::motored).count();
  }

  /** The same train with its other end leading. */
  public Formation reversed() {
    return new Formation(name, reversed(vehicles), reversed(brakes));
  }

  private static <T> List<T> reversed(List<T> all) {
    List<T> other = new ArrayList<>(all);
    Collections.reverse(other);
    return other;
  }

  /**
   * The same train on which only these brakes of some vehicles work.
   *
   * @param numbers of those vehicles, the leading one is 1
   */
  public Formation with(WorkingBrakes working, Collection<Integer> numbers) {
    List<WorkingBrakes> other = new ArrayList<>(brakes);
    numbers.forEach(n -> other.set(n - 1, working));
    return new Formation(name, vehicles, other);
  }

  /** The numbers of the vehicles of which only these brakes work; the leading vehicle is 1. */
  public List<Integer> numbersWith(WorkingBrakes working) {
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < brakes.size(); i++) {
      if (brakes.get(i) == working) {
        numbers.add(i + 1);
      }
    }
    return numbers;
  }

  /** How many vehicles a brake of this role can slow: it works there, and has a force. */
  public int braked(BrakeSystem.Role role) {
    int braked = 0;
    for (int i = 0; i < brakes.size(); i++) {
      if (brakes.get(i).has(role) && vehicles.get(i).brakeWeight() > 0) {
        braked++;
      }
    }
    return braked;
  }
}
