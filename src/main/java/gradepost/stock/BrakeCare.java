package gradepost.stock;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * How the operator makes sure of the brakes, beyond what they do. All of it is told, and none of it
 * shapes a plan.
 *
 * @param beforeLeaving the tests before the train leaves, in order
 * @param signs that a brake has failed, in the order in which a driver meets them
 */
public record BrakeCare(List<LeavingTest> beforeLeaving, List<FailureSign> signs) {
  /** Nothing is supplied. */
  public static final BrakeCare NOT_SUPPLIED = new BrakeCare(List.of(), List.of());

  public BrakeCare {
    beforeLeaving = List.copyOf(beforeLeaving);
    signs = List.copyOf(signs);
  }

  /** The brakes that are named, by short name. */
  public Set<String> brakes() {
    return Stream.concat(
            beforeLeaving.stream().map(LeavingTest::brake), signs.stream().map(FailureSign::brake))
        .collect(Collectors.toSet());
  }
}
