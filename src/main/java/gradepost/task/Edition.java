package gradepost.task;

import gradepost.policy.DegradedRules;
import java.util.List;
import java.util.Optional;

/**
 * A paper that a pack asks for beside the ordinary one: the same run with a brake that is not
 * whole.
 *
 * @param name as it stands in every head
 * @param formations by name; empty for every formation of the pack
 * @param vehicles on which the brake is not whole, the leading one of the forward direction is 1;
 *     empty for the whole train
 */
public record Edition(String name, Kind kind, List<String> formations, List<Integer> vehicles) {
  public Edition {
    formations = List.copyOf(formations);
    vehicles = List.copyOf(vehicles);
  }

  /** What is wrong with the brake. */
  public enum Kind {
    /** The service brake is out of use: the train runs on the automatic brake alone. */
    EP_OUT_OF_USE("ep-out-of-use"),
    /** Some vehicles do not answer to the service brake. */
    EP_ON_PART("ep-on-part"),
    /** The brakes of some vehicles are isolated. */
    BRAKES_ISOLATED("brakes-isolated");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** As it stands in a file. */
    public String word() {
      return word;
    }
  }

  /** What a policy says of such a run; empty where it says nothing. */
  public Optional<DegradedRules.Clause> clause(DegradedRules rules) {
    return switch (kind) {
      case EP_OUT_OF_USE -> rules.outOfUse();
      case EP_ON_PART -> rules.onPart();
      case BRAKES_ISOLATED -> rules.isolated();
    };
  }

  /** Whether it is wanted of a formation. */
  public boolean isFor(String formation) {
    return formations.isEmpty() || formations.contains(formation);
  }
}
