package gradepost.briefing.page;

import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.IfFaster;
import gradepost.plan.Rung;
import gradepost.plan.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a train does that comes to a lower speed faster than planned, in sentences. */
final class FasterWriter {
  private final Words words;
  private final ActionWords orders;
  private final CueWriter cues;

  FasterWriter(Words words, ActionWords orders, CueWriter cues) {
    this.words = words;
    this.orders = orders;
    this.cues = cues;
  }

  List<String> sentences(Approach approach) {
    return approach.ifFaster().map(f -> sentences(approach, f)).orElse(List.of());
  }

  private List<String> sentences(Approach approach, IfFaster faster) {
    if (faster.application().isEmpty()) {
      boolean over = faster.mostMps() > approach.target().speedMps();
      String key = faster.nowhere() ? "faster.nowhere" : over ? "faster.over" : "faster.none";
      return List.of(words.text(key, words.speedAtMost(faster.mostMps())));
    }
    Application application = faster.application().get();
    List<String> out = new ArrayList<>();
    double point = application.brakingPointM();
    String see = cues.see(application);
    String place = place(approach, point);
    out.add(
        words.text(
            "faster.brake",
            words.speed(application.brakingSpeedMps()),
            see.equals(words.text("dash")) ? place : words.text("answer.place-see", place, see),
            Step.of(faster.actions()).stream()
                .map(s -> orders.whole(s, List.of()))
                .collect(Collectors.joining("; "))));
    List<CaseResult> cases = application.cases();
    out.add(
        words.text(
            "faster.latest",
            cases.get(0).adhesion().name(),
            cases.get(0).ladder().stream()
                .flatMap(r -> last(approach, r).stream())
                .collect(Collectors.joining(", "))));
    for (CaseResult c : cases.subList(1, cases.size())) {
      out.add(
          c.plannedM()
              .map(
                  at ->
                      words.text(
                          "faster.rail",
                          c.adhesion().name(),
                          place(approach, at),
                          orders.technique(c.actions())))
              .orElse(words.text("faster.rail-none", c.adhesion().name())));
    }
    return out;
  }

  private Optional<String> last(Approach approach, Rung rung) {
    return rung.latest()
        .point()
        .map(
            p ->
                words.text(
                    "faster.latest-one",
                    words.called(rung.brake()),
                    place(approach, p.printedM())));
  }

  private String place(Approach approach, double atM) {
    return words.placeTo(atM, approach.target().atM(), "where.before-reduction");
  }
}
