package gradepost.drive.leg;

import gradepost.drive.grid.GuideChange;

/**
 * What a change of a way's guide does to the way, as far as can be seen from the stretch where the
 * two ways differ.
 *
 * @param fromM where they part
 * @param toM where they have met again
 * @param joules more energy at the wheel rim; negative where less
 * @param seconds more time
 * @param moves more handle movements
 * @param idle more movements for a moment, and stretches along which the train creeps
 */
record ChangeEffect(
    GuideChange change,
    double fromM,
    double toM,
    double joules,
    double seconds,
    long moves,
    long idle) {

  /** Of a change that is no gain: the train does not come through, or it is too much to do. */
  static ChangeEffect none(GuideChange change, double fromM, double toM) {
    return new ChangeEffect(change, fromM, toM, Double.POSITIVE_INFINITY, 0, 0, 0);
  }

  boolean apartFrom(ChangeEffect other) {
    return toM <= other.fromM || other.toM <= fromM;
  }
}
