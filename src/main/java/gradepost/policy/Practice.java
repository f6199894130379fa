package gradepost.policy;

/**
 * Driving practice: how a driver is taken to use power and brake where no rule of the operator says
 * it. A policy that gives none of it has the usual values; the page of assumptions prints all.
 *
 * @param brake how the brake is used
 * @param power how power and coasting are used
 * @param warning what counts as a warning, and as too often late
 */
public record Practice(BrakePractice brake, PowerPractice power, WarningPractice warning) {

  /** Common practice, from memory; each value can be set in the policy. */
  public static final Practice USUAL =
      new Practice(BrakePractice.USUAL, PowerPractice.USUAL, WarningPractice.USUAL);

  /** The same with another use of the brake. */
  public Practice with(BrakePractice other) {
    return new Practice(other, power, warning);
  }

  /** The same with another use of power. */
  public Practice with(PowerPractice other) {
    return new Practice(brake, other, warning);
  }

  /** The same with another rule for warnings. */
  public Practice with(WarningPractice other) {
    return new Practice(brake, power, other);
  }
}
