package gradepost.stock;

import gradepost.units.Exact;

/**
 * Davis, 1926: {@code R = 1.3 + 29/w + 0.045·V + 0.0005·A·V²/(w·n)} in pounds per short ton, with
 * {@code w} the load of an axle in short tons, {@code n} axles a vehicle, {@code A} its frontal
 * area in square feet and {@code V} in miles an hour. Stated for axle loads above 5 short tons; in
 * common use from 5 to about 70 mph.
 *
 * @param leadAreaSqFt area that counts for the leading vehicle with the air term 0.0024 of a
 *     leading end left to the data: give the area that makes 0.0005·A the wanted term
 * @param trailAreaSqFt area that counts for each following vehicle
 */
public record Davis1926(double leadAreaSqFt, double trailAreaSqFt) implements ResistanceLaw {
  private static final double SHORT_TON_KG = 2000 * Exact.POUND_KG;

  @Override
  public RunningResistance of(Formation formation, LoadCase load) {
    double a = 0;
    double b = 0;
    double c = 0;
    boolean leads = true;
    for (Vehicle vehicle : formation.vehicles()) {
      double tons = vehicle.massKg(load) / SHORT_TON_KG;
      a += (1.3 * tons + 29.0 * vehicle.axles()) * Exact.POUND_FORCE_N;
      b += 0.045 * tons * Exact.POUND_FORCE_N / Exact.MPH_MPS;
      c +=
          0.0005
              * (leads ? leadAreaSqFt : trailAreaSqFt)
              * Exact.POUND_FORCE_N
              / (Exact.MPH_MPS * Exact.MPH_MPS);
      leads = false;
    }
    return new RunningResistance(a, b, c);
  }
}
