package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.policy.Subject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where another formation has to be driven otherwise than this one. */
final class FormationItems {
  /** Points of two formations that differ by this many steps of print are told apart. */
  private static final double LEAST_APART_STEPS = 2;

  /** And those that differ by no more than this are the same on paper. */
  private static final double SAME_M = 0.01;

  private final BriefingFacts taught;
  private final References references;
  private final List<Plan> others;

  FormationItems(BriefingFacts taught, References references, List<Plan> others) {
    this.taught = taught;
    this.references = references;
    this.others = List.copyOf(others);
  }

  /**
   * Where another formation brakes earlier than this one, of stops and of lower speeds apart: the
   * kind of a target would tell the answer. What a driver would not tell apart is not asked.
   */
  List<Item> earlier() {
    List<Item> out = new ArrayList<>(earlier(true));
    out.addAll(earlier(false));
    return List.copyOf(out);
  }

  private List<Item> earlier(boolean stops) {
    double least = LEAST_APART_STEPS * taught.units().placeStepM();
    List<Item> out = new ArrayList<>();
    for (Plan other : others) {
      String name = other.assignment().formation().name();
      List<WhichOf.Thing> things = new ArrayList<>();
      for (Approach a : braked(taught.plan())) {
        if (a.target().isStop() != stops) {
          continue;
        }
        String title = taught.title(a);
        Optional<Approach> same =
            only(other, title).filter(o -> only(taught.plan(), title).isPresent());
        double by =
            same.map(o -> a.brakingPointM().orElseThrow() - o.brakingPointM().orElseThrow())
                .orElse(Double.NaN);
        if (by <= SAME_M || by >= least - SAME_M) {
          things.add(
              new WhichOf.Thing(
                  title, a.target().atM(), by >= least - SAME_M, references.formations()));
        }
      }
      out.addAll(
          WhichOf.items(
              Subject.OTHER_FORMATION,
              things,
              taught.text("ask.other-earlier", name),
              Optional.of(taught.text("ask.other-not-earlier", name))));
    }
    return out;
  }

  private static List<Approach> braked(Plan plan) {
    return plan.approaches().stream().filter(a -> a.brakingPointM().isPresent()).toList();
  }

  /** The one braking for a target with this title; empty where there are more of them. */
  private Optional<Approach> only(Plan plan, String title) {
    List<Approach> called =
        braked(plan).stream().filter(a -> taught.title(a).equals(title)).toList();
    return called.size() == 1 ? Optional.of(called.get(0)) : Optional.empty();
  }
}
