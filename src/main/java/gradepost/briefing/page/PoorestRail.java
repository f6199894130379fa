package gradepost.briefing.page;

import gradepost.briefing.line.Lineside;
import gradepost.plan.Application;
import gradepost.plan.CaseResult;
import gradepost.plan.FailureAnswer;
import gradepost.route.LowAdhesionSite;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The state of the rail that is told first at one braking point. It is the planned one, unless the
 * braking passes a low-adhesion site: then it is the one in which the first fallback does worst.
 *
 * @param index of the state, among those of the policy
 * @param site the first of those sites; empty where there is none
 */
record PoorestRail(int index, Optional<String> site) {

  static PoorestRail of(Lineside lineside, Application application, double trainM, double targetM) {
    List<CaseResult> cases = application.told();
    int worst = 0;
    for (int i = 1; i < cases.size(); i++) {
      if (site(lineside, cases.get(i), trainM, targetM).isPresent()
          && !better(cases.get(i), cases.get(worst))) {
        worst = i;
      }
    }
    return new PoorestRail(
        worst, worst == 0 ? Optional.empty() : site(lineside, cases.get(worst), trainM, targetM));
  }

  /** The first site that the train stands on between its braking point and the target. */
  private static Optional<String> site(
      Lineside lineside, CaseResult result, double trainM, double targetM) {
    if (result.plannedM().isEmpty() || result.answers().isEmpty()) {
      return Optional.empty();
    }
    double rear = result.plannedM().get() - trainM;
    return lineside.lowAdhesion().stream()
        .filter(o -> o.fromM() < targetM && o.toM() > rear)
        .min(Comparator.comparingDouble(Lineside.Over::fromM))
        .map(Lineside.Over::what)
        .map(LowAdhesionSite::name);
  }

  /** Whether the first fallback does better on one rail than on another. */
  private static boolean better(CaseResult one, CaseResult other) {
    if (other.answers().isEmpty()) {
      return false;
    }
    FailureAnswer a = one.answers().get(0);
    FailureAnswer b = other.answers().get(0);
    double aM = a.met().endsShortM().orElse(Double.NEGATIVE_INFINITY);
    double bM = b.met().endsShortM().orElse(Double.NEGATIVE_INFINITY);
    return aM > bM || (aM == bM && a.speedAtTargetMps() < b.speedAtTargetMps());
  }
}
