package gradepost.stock;

import gradepost.stock.BrakeSystem.Role;

/** Which brakes of one vehicle work. */
public enum WorkingBrakes {
  /** All that the stock has. */
  ALL,
  /** All but the service brake. */
  ALL_BUT_SERVICE,
  /** None: its brake is isolated. */
  NONE;

  /** Whether a brake of this role works on it. */
  public boolean has(Role role) {
    return switch (this) {
      case ALL -> true;
      case ALL_BUT_SERVICE -> role != Role.SERVICE;
      case NONE -> false;
    };
  }
}
