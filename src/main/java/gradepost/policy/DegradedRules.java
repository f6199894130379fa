package gradepost.policy;

import gradepost.units.Pressure;
import gradepost.units.Speed;
import java.util.Optional;

/**
 * What the operator's rules say of trains whose brake is not whole. A clause that is absent permits
 * nothing.
 *
 * @param outOfUse the service brake is out of use on the whole train
 * @param onPart the service brake works on part of the train
 * @param isolated the brakes of some vehicles are isolated
 */
public record DegradedRules(
    Optional<Clause> outOfUse, Optional<Clause> onPart, Optional<Clause> isolated) {

  /**
   * One clause.
   *
   * @param reference where the rule stands
   * @param permit what it permits; empty where it forbids such a run
   */
  public record Clause(String reference, Optional<Permit> permit) {}

  /**
   * What a clause permits.
   *
   * @param to how far a train may run so, in words
   * @param atMost how fast
   * @param mostVehicles share of the vehicles that may be so at the most, 0 to 1
   * @param technique how the train is then braked; empty where it is braked as always
   */
  public record Permit(
      String to, Speed atMost, double mostVehicles, Optional<AutomaticTechnique> technique) {}

  /**
   * How a train is braked with a brake that cannot be eased: applied once for a stop and held until
   * the train stands; for a lower speed released once.
   *
   * @param stopping without eases
   * @param restriction with the release as its only ease
   * @param check pressure of a checking application
   * @param purposeOfStopping what the technique for a stop is for, in words
   * @param purposeOfRestriction what that for a lower speed is for
   */
  public record AutomaticTechnique(
      Technique stopping,
      Technique restriction,
      Pressure check,
      String purposeOfStopping,
      String purposeOfRestriction) {
    public AutomaticTechnique {
      boolean eased = restriction.eases().size() > 1;
      if (!stopping.eases().isEmpty() || eased) {
        throw new IllegalArgumentException("a brake that cannot be eased has no eases");
      }
    }
  }
}
