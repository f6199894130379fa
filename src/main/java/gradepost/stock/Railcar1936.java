package gradepost.stock;

import gradepost.units.Exact;

/**
 * The railcar formula of 1936: {@code W = 2.0·G + 0.25·(V/10)²·F} in kilograms-force, with {@code
 * G} the mass in tonnes, {@code V} in km/h and {@code F} the frontal area in square metres. The air
 * term counts once for the train. Stated for railcars up to about 160 km/h.
 */
public record Railcar1936(double frontalAreaM2) implements ResistanceLaw {
  @Override
  public RunningResistance of(Formation formation, LoadCase load) {
    double a = 2.0 * formation.massKg(load) / 1000.0 * Exact.G;
    double c = 0.25 * frontalAreaM2 * Exact.G * 3.6 * 3.6 / 100.0;
    return new RunningResistance(a, 0, c);
  }
}
