package gradepost.drive;

/** What the driver waits for; every value is one that is printed. */
public sealed interface Trigger {

  /** The front of the train is at this distance run. */
  record AtPlace(double atM) implements Trigger {}

  /** The speed has risen to this. */
  record SpeedUpTo(double speedMps) implements Trigger {}

  /** The speed has fallen to this. */
  record SpeedDownTo(double speedMps) implements Trigger {}

  /** So long after the action before. */
  record After(double seconds) implements Trigger {}

  /** The train is ready to start and has been given the right to. */
  record Start() implements Trigger {}

  /** The train has come to a stand. */
  record Standstill() implements Trigger {}
}
