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
  /** Where the next brake comes too late when the service brake gives nothing. */
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
  HANDLES,
  /** On which side the platform is. */
  PLATFORM_SIDE,
  /** Which signal is met next. */
  NEXT_SIGNAL,
  /** Where the train is longer than the platform. */
  SHORT_PLATFORM,
  /** Where the train has to be checked. */
  CHECKED,
  /** Where the rail is known to be poor. */
  POOR_RAIL,
  /** Between which speeds a speed is held, and with what. */
  HELD_SPEED,
  /** Which signal is the last that can stop the train before a crossing, bridge or single line. */
  PROTECTING_SIGNAL,
  /** What is passed last before a gap in the conductor rail, a crossing or a brake test. */
  PASSED_BEFORE,
  /** What a signal can show, and what is noted of it: how it is seen, a token. */
  SIGNAL_KIND,
  /** Where another formation has to brake earlier. */
  OTHER_FORMATION
}
