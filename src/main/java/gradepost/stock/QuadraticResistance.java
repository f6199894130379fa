package gradepost.stock;

/**
 * The plain form {@code A + B·v + C·v²} as makers and operators state it: the first two terms by
 * mass, the third for the train's front once and for its length by vehicle.
 *
 * @param aNPerT newtons per tonne
 * @param bNPerTPerMps newtons per tonne per m/s
 * @param cLeadNs2PerM2 newtons per (m/s)² of the leading end, counted once
 * @param cVehicleNs2PerM2 newtons per (m/s)² of each vehicle
 */
public record QuadraticResistance(
    double aNPerT, double bNPerTPerMps, double cLeadNs2PerM2, double cVehicleNs2PerM2)
    implements ResistanceLaw {
  @Override
  public RunningResistance of(Formation formation, LoadCase load) {
    double tonnes = formation.massKg(load) / 1000.0;
    return new RunningResistance(
        aNPerT * tonnes,
        bNPerTPerMps * tonnes,
        cLeadNs2PerM2 + cVehicleNs2PerM2 * formation.cars());
  }
}
