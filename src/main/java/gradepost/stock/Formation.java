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

  public int cars() {
    return vehicles.size();
  }

  public double lengthM() {
    return vehicles.stream().mapToDouble(v -> v.length().metres()).sum();
  }

  public double massKg(LoadCase load) {
    return vehicles.stream().mapToDouble(v -> v.massKg(load)).sum();
  }

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
