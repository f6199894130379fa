package gradepost.stock;

/** The constant newtons per tonne of textbook problems; no range is claimed. */
public record ConstantResistance(double nPerT) implements ResistanceLaw {
  @Override
  public RunningResistance of(Formation formation, LoadCase load) {
    return new RunningResistance(nPerT * formation.massKg(load) / 1000.0, 0, 0);
  }
}
