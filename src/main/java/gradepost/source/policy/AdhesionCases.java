package gradepost.source.policy;

import gradepost.policy.AdhesionCase;
import gradepost.source.policy.PolicyTables.TypedCase;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ShareOf;
import gradepost.units.Nearest;
import gradepost.yaml.Values;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Makes the adhesion cases of a policy from what is typed: a share needs the case before it. */
final class AdhesionCases {

  /** Whether every share is one of a case before it, so that {@link #of} can be made. */
  static boolean areKnown(List<TypedCase> typed) {
    List<String> earlier = new ArrayList<>();
    for (TypedCase each : typed) {
      if (each.of().filter(name -> !earlier.contains(name)).isPresent()) {
        return false;
      }
      earlier.add(each.name());
    }
    return true;
  }

  static List<AdhesionCase> of(List<TypedCase> typed) {
    Map<String, AdhesionLaw> laws = new HashMap<>();
    List<AdhesionCase> cases = new ArrayList<>();
    for (TypedCase each : typed) {
      AdhesionLaw law =
          each.law()
              .orElseGet(
                  () ->
                      new ShareOf(
                          Objects.requireNonNull(laws.get(each.of().orElseThrow())), each.share()));
      laws.put(each.name(), law);
      cases.add(new AdhesionCase(each.name(), law, each.purpose()));
    }
    return cases;
  }

  static void sharesOfEarlierOnes(Values v) {
    v.find(PolicyTable.ADHESION)
        .ifPresent(
            cases -> {
              Map<String, TypedCase> earlier = new LinkedHashMap<>();
              for (TypedCase each : cases) {
                each.of()
                    .filter(name -> !earlier.containsKey(name))
                    .ifPresent(
                        name ->
                            v.in()
                                .error(
                                    v.in().spot(each, PolicyTables.OF),
                                    earlier.isEmpty()
                                        ? PolicyMistakes.FIRST_CASE_IS_A_SHARE.with(name)
                                        : PolicyMistakes.NO_EARLIER_CASE.with(
                                            name,
                                            earlier.keySet(),
                                            Nearest.to(name, earlier.keySet()))));
                earlier.put(each.name(), each);
              }
            });
  }

  private AdhesionCases() {}
}
