package gradepost.policy;

/**
 * Driving practice: how a driver is taken to use power and brake where no rule of the operator says
 * it. A policy that gives none of it has the usual values; the page of assumptions prints all.
 *
 * @param brake how the brake is used
 * @param power how power and coasting are used
 * @param coast how much speed coasting may cost
 * @param handles which movements of the handles are not made
 * @param warning what counts as a warning, and as too often late
 * @param taught what an instructor would not teach
 * @param line what is usual at landmarks, gaps and running brake tests
 * @param correction how a braking is corrected, and what is kept in hand for it
 */
public record Practice(
    BrakePractice brake,
    PowerPractice power,
    CoastPractice coast,
    HandlePractice handles,
    WarningPractice warning,
    TaughtRules taught,
    LinePractice line,
    CorrectionPractice correction) {

  /** Common practice, from memory; each value can be set in the policy. */
  public static final Practice USUAL =
      new Practice(
          BrakePractice.USUAL,
          PowerPractice.USUAL,
          CoastPractice.USUAL,
          HandlePractice.USUAL,
          WarningPractice.USUAL,
          TaughtRules.USUAL,
          LinePractice.USUAL,
          CorrectionPractice.USUAL);

  /** The same with another use of the brake. */
  public Practice with(BrakePractice other) {
    return new Practice(other, power, coast, handles, warning, taught, line, correction);
  }

  /** The same with another use of power. */
  public Practice with(PowerPractice other) {
    return new Practice(brake, other, coast, handles, warning, taught, line, correction);
  }

  /** The same with another way of coasting. */
  public Practice with(CoastPractice other) {
    return new Practice(brake, power, other, handles, warning, taught, line, correction);
  }

  /** The same with another rule for movements of the handles. */
  public Practice with(HandlePractice other) {
    return new Practice(brake, power, coast, other, warning, taught, line, correction);
  }

  /** The same with another rule for warnings. */
  public Practice with(WarningPractice other) {
    return new Practice(brake, power, coast, handles, other, taught, line, correction);
  }

  /** The same with other rules of what is taught. */
  public Practice with(TaughtRules other) {
    return new Practice(brake, power, coast, handles, warning, other, line, correction);
  }

  /** The same with another rule for landmarks, gaps and brake tests. */
  public Practice with(LinePractice other) {
    return new Practice(brake, power, coast, handles, warning, taught, other, correction);
  }

  /** The same with another way of correcting a braking. */
  public Practice with(CorrectionPractice other) {
    return new Practice(brake, power, coast, handles, warning, taught, line, other);
  }
}
