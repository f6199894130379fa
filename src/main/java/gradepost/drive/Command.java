package gradepost.drive;

/** What the driver does with a handle. */
public sealed interface Command {

  /** Take power: move to this notch, index into the stock's notches. */
  record Power(int notch) implements Command {}

  /** Power off. */
  record ShutOff() implements Command {}

  /** Ask the service brake for this cylinder pressure. */
  record Brake(double pressurePa, Stage stage) implements Command {}

  /** Brake fully off. */
  record Release() implements Command {}

  /** The train stands: hold it. */
  record Stand() implements Command {}

  /** What a brake command is for. */
  enum Stage {
    FIRST,
    MAIN,
    EASE,
    /** Holds the speed on a falling grade. */
    CHECK
  }
}
