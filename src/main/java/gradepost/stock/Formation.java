package gradepost.stock;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A train made up of vehicles.
 *
 * @param vehicles in the order in which they stand in the forward direction, leading one first
 */
public record Formation(String name, List<Vehicle> vehicles) {
  public Formation {
    vehicles = List.copyOf(vehicles);
    if (vehicles.isEmpty()) {
      throw new IllegalArgumentException("formation " + name + " has no vehicle");
    }
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
    List<Vehicle> other = new ArrayList<>(vehicles);
    Collections.reverse(other);
    return new Formation(name, other);
  }
}
