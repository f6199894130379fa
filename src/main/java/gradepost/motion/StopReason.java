package gradepost.motion;

/** Why a leg of a run ended. */
public enum StopReason {
  PLACE,
  SPEED_DOWN,
  SPEED_UP,
  TIME,
  /** The train stands: it stopped under the brake, or stalled. */
  STANDSTILL,
  /** An hour of running brought nothing: the speed asked for is never reached. */
  NEVER
}
