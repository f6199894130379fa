package gradepost.policy;

/** What a question of a knowledge paper is about; one kind of question each. */
public enum Subject {
  /** Permissible speed at a place. */
  PERMISSIBLE_SPEED,
  /** Where a lower speed ends for the rear of the train. */
  REAR_CLEAR,
  /** The order in which cues are met. */
  ORDER_OF_CUES,
  GRADIENT,
  /** Hand of a curve and side of its check rail. */
  CURVE,
  STOP_MARK,
  BRAKING_POINT,
  /** What is seen at a braking point. */
  LANDMARK,
  /** Pressure of the first application. */
  FIRST_PRESSURE,
  /** What comes of it when the service brake gives nothing. */
  FAILURE_ANSWER,
  /** The last place for the next brake. */
  LAST_PLACE,
  /** Which indication leads where, and how fast. */
  SIGNAL_ROUTE,
  /** What a board shows in numbers. */
  BOARD,
  /** What is in this issue that was not before. */
  CHANGED,
  /** What the gauges show in a brake test. */
  BRAKE_TEST,
  /** Which handle movement is forbidden. */
  HANDLES
}
