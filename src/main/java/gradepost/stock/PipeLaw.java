package gradepost.stock;

import gradepost.units.Exact;
import gradepost.units.Pressure;

/** How a reduction of brake-pipe pressure becomes cylinder pressure. */
public sealed interface PipeLaw {

  /** Running pressure of the brake pipe. */
  Pressure pipe();

  /** Cylinder gauge pressure, in pascals, after a reduction of so many pascals. */
  double cylinderPa(double reductionPa);

  /** The reduction from which on the cylinder holds its most: full service. */
  double fullReductionPa();

  /** Where reservoir and cylinder stand equal when they begin with these gauge pressures. */
  double equalPa(double reservoirPa, double cylinderPa);

  /** What the reservoir keeps when the cylinder is filled from one pressure to another. */
  double reservoirAfterPa(double reservoirPa, double fromCylinderPa, double toCylinderPa);

  /** Whether an application takes air from the reservoirs, which then fill again from the pipe. */
  boolean drainsReservoirs();

  /**
   * The handbook rule: so many pounds in the cylinder for each pound of reduction (Howard 1913:
   * 2.5, with a reservoir of 2.5 times the cylinder), until both stand equal.
   */
  record Ratio(Pressure pipe, double poundsPerPound) implements PipeLaw {
    public Ratio {
      if (!(poundsPerPound > 0)) {
        throw new IllegalArgumentException("a reduction fills the cylinder");
      }
    }

    @Override
    public double cylinderPa(double reductionPa) {
      return poundsPerPound * Math.min(Math.max(reductionPa, 0), fullReductionPa());
    }

    @Override
    public double fullReductionPa() {
      return pipe.pascals() / (1 + poundsPerPound);
    }

    @Override
    public double equalPa(double reservoirPa, double cylinderPa) {
      return (poundsPerPound * reservoirPa + cylinderPa) / (1 + poundsPerPound);
    }

    @Override
    public double reservoirAfterPa(double reservoirPa, double fromCylinderPa, double toCylinderPa) {
      return reservoirPa - (toCylinderPa - fromCylinderPa) / poundsPerPound;
    }

    @Override
    public boolean drainsReservoirs() {
      return true;
    }
  }

  /**
   * Boyle's law in absolute pressures for a reservoir of {@code volumeRatio} cylinders and a piston
   * that starts from no volume: the cylinder first fills to atmosphere, which costs a reduction of
   * its own.
   */
  record Boyle(Pressure pipe, double volumeRatio) implements PipeLaw {
    public Boyle {
      if (!(volumeRatio > 0)) {
        throw new IllegalArgumentException("a reservoir has a volume");
      }
    }

    @Override
    public double cylinderPa(double reductionPa) {
      double r = Math.min(Math.max(reductionPa, 0), fullReductionPa());
      return Math.max(0, volumeRatio * r - Exact.ATMOSPHERE_PA);
    }

    @Override
    public double fullReductionPa() {
      return (pipe.pascals() + Exact.ATMOSPHERE_PA) / (1 + volumeRatio);
    }

    @Override
    public double equalPa(double reservoirPa, double cylinderPa) {
      double air = volumeRatio * (reservoirPa + Exact.ATMOSPHERE_PA) + heldPa(cylinderPa);
      return Math.max(0, air / (1 + volumeRatio) - Exact.ATMOSPHERE_PA);
    }

    @Override
    public double reservoirAfterPa(double reservoirPa, double fromCylinderPa, double toCylinderPa) {
      return reservoirPa - (heldPa(toCylinderPa) - heldPa(fromCylinderPa)) / volumeRatio;
    }

    @Override
    public boolean drainsReservoirs() {
      return true;
    }

    /** Absolute pressure times volume in a cylinder; an empty one has no volume. */
    private static double heldPa(double cylinderPa) {
      return cylinderPa > 0 ? cylinderPa + Exact.ATMOSPHERE_PA : 0;
    }
  }

  /**
   * A distributor: the cylinder holds so many times the reduction, up to a limit, and follows the
   * pipe both ways. Its reservoirs are kept full by a second pipe, so that nothing is taken from
   * them. Common practice of stock with distributors (in the manner of UIC 540, from memory): pipe
   * 5 bar, full service at a reduction of 1.5 bar, 3.8 bar in the cylinder.
   *
   * @param ratio cylinder pressure for each unit of reduction
   * @param limit the most that it puts into the cylinder
   */
  record Distributor(Pressure pipe, double ratio, Pressure limit) implements PipeLaw {
    public Distributor {
      if (!(ratio > 0 && limit.pascals() > 0)) {
        throw new IllegalArgumentException("a reduction fills the cylinder");
      }
      if (limit.pascals() / ratio >= pipe.pascals()) {
        throw new IllegalArgumentException(
            "a distributor is at its limit before the pipe is empty");
      }
    }

    @Override
    public double cylinderPa(double reductionPa) {
      return Math.min(ratio * Math.max(reductionPa, 0), limit.pascals());
    }

    @Override
    public double fullReductionPa() {
      return limit.pascals() / ratio;
    }

    @Override
    public double equalPa(double reservoirPa, double cylinderPa) {
      return limit.pascals();
    }

    @Override
    public double reservoirAfterPa(double reservoirPa, double fromCylinderPa, double toCylinderPa) {
      return reservoirPa;
    }

    @Override
    public boolean drainsReservoirs() {
      return false;
    }
  }
}
