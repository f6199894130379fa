package gradepost.briefing.signoff;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.policy.DegradedRules;
import gradepost.route.LowAdhesionSite;
import gradepost.stock.BrakeSystem;
import gradepost.task.Call;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What an assessor looks for where a brake or the rail is not as planned. */
final class BrakeKeys {
  private final BriefingFacts taught;
  private final Optional<DegradedRules> degraded;
  private final List<Approach> braked;

  BrakeKeys(BriefingFacts taught, Optional<DegradedRules> degraded) {
    this.degraded = degraded;
    this.taught = taught;
    this.braked = taught.plan().approaches().stream().filter(a -> a.first().isPresent()).toList();
  }

  private String text(String key, Object... holes) {
    return taught.text("degraded-key." + key, holes);
  }

  /** How the brake behind the service brake ends where it is applied after noticing. */
  private record Margin(Approach approach, CaseResult on, FailureAnswer answer, double shortM) {}

  /** The approach where the next brake leaves least, and the last place for it. */
  List<String> leastMargin() {
    return braked.stream()
        .flatMap(a -> margin(a).stream())
        .min(Comparator.comparingDouble(Margin::shortM))
        .map(this::told)
        .orElse(List.of());
  }

  private Optional<Margin> margin(Approach approach) {
    CaseResult on = told(approach).get(0);
    return on.answers().stream()
        .findFirst()
        .flatMap(x -> x.met().endsShortM().map(m -> new Margin(approach, on, x, m)));
  }

  private List<String> told(Margin least) {
    BrakeSystem next = least.answer().brake();
    boolean past = least.shortM() < 0;
    List<String> out = new ArrayList<>();
    out.add(
        text(
            past ? "margin-past" : "margin-short",
            taught.title(least.approach()),
            least.on().adhesion().name(),
            taught.called(next),
            taught.seconds(taught.assignment().policy().noticing().seconds()),
            past ? taught.overrun(-least.shortM()) : taught.room(least.shortM())));
    lastPlace(least.on(), next).ifPresent(out::add);
    return out;
  }

  private Optional<String> lastPlace(CaseResult on, BrakeSystem brake) {
    return last(on, brake)
        .map(
            p ->
                text(
                    "last-place",
                    on.adhesion().name(),
                    taught.called(brake),
                    taught.place(p.printedM())));
  }

  private static List<CaseResult> told(Approach approach) {
    return approach.first().orElseThrow().told();
  }

  private static Optional<Latest.Point> last(CaseResult on, BrakeSystem brake) {
    return on.ladder().stream()
        .filter(r -> r.brake().equals(brake))
        .findFirst()
        .flatMap(r -> r.latest().point());
  }

  /** What the rules permit without the service brake, and where it has to be braked earlier. */
  List<String> serviceOut() {
    List<String> out = new ArrayList<>(clause(DegradedRules::outOfUse));
    taught.assignment().stock().brakes().stream()
        .filter(b -> b.role() == BrakeSystem.Role.FALLBACK)
        .findFirst()
        .ifPresent(next -> out.add(earlier(next)));
    return out;
  }

  private String earlier(BrakeSystem next) {
    String where =
        braked.stream()
            .flatMap(
                a ->
                    last(told(a).get(0), next)
                        .filter(p -> p.printedM() < a.brakingPointM().orElseThrow())
                        .map(p -> text("at", taught.title(a), taught.place(p.printedM())))
                        .stream())
            .collect(Collectors.joining("; "));
    return where.isEmpty()
        ? text("not-earlier", taught.called(next))
        : text("earlier", taught.called(next), where);
  }

  /** What the rules permit with brakes isolated. */
  List<String> isolated() {
    return clause(DegradedRules::isolated);
  }

  private interface Of {
    Optional<DegradedRules.Clause> clause(DegradedRules rules);
  }

  private List<String> clause(Of which) {
    return degraded
        .flatMap(which::clause)
        .map(
            c ->
                c.permit()
                    .map(
                        p ->
                            text(
                                "permitted",
                                c.reference(),
                                p.to(),
                                taught.speed(p.atMost().metresPerSecond())))
                    .orElseGet(() -> text("forbidden", c.reference())))
        .map(List::of)
        .orElseGet(() -> List.of(text("no-clause")));
  }

  /** Where the next brake must be on so that the train stands before the buffer stops. */
  List<String> buffers(Call terminal) {
    List<String> out = new ArrayList<>();
    terminal
        .platform()
        .bufferStops()
        .ifPresent(b -> out.add(text("buffers", taught.place(taught.path().metresAt(b)))));
    if (!braked.isEmpty()) {
      Approach approach = braked.get(braked.size() - 1);
      CaseResult on = told(approach).get(0);
      on.answers().stream()
          .findFirst()
          .map(FailureAnswer::brake)
          .flatMap(next -> lastPlace(on, next))
          .ifPresent(out::add);
    }
    return out;
  }

  /** Where a site of poor rail is, and where to brake that meets it, on the poorest rail told. */
  List<String> poorRail(LowAdhesionSite site) {
    double from = taught.begins(site.extent());
    double to = from + taught.length(site.extent());
    double train = taught.assignment().formation().lengthM();
    List<String> out = new ArrayList<>();
    out.add(text("site", taught.place(from), taught.placePast(to)));
    List<Approach> meet =
        braked.stream()
            .filter(a -> from < a.target().atM() && to > a.brakingPointM().orElseThrow() - train)
            .toList();
    if (meet.isEmpty()) {
      out.add(text("site-no-braking"));
    } else {
      out.add(
          text(
              "site-braking",
              poorest(meet.get(0)).adhesion().name(),
              meet.stream().map(this::onPoorest).collect(Collectors.joining("; "))));
    }
    return out;
  }

  private static CaseResult poorest(Approach approach) {
    List<CaseResult> told = told(approach);
    return told.get(told.size() - 1);
  }

  private String onPoorest(Approach approach) {
    return poorest(approach)
        .plannedM()
        .map(p -> text("at", taught.title(approach), taught.place(p)))
        .orElseGet(() -> text("nowhere", taught.title(approach)));
  }
}
