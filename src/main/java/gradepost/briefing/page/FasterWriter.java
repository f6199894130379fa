package gradepost.briefing.page;

import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.SeenWords;
import gradepost.briefing.word.Words;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedFaster;
import gradepost.told.PrintedRung;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a train does that comes to a lower speed faster than planned, spelt. */
final class FasterWriter {
  private final Words words;
  private final ActionWords orders;
  private final SeenWords seen;

  FasterWriter(Words words, ActionWords orders) {
    this.words = words;
    this.orders = orders;
    this.seen = new SeenWords(words);
  }

  List<String> sentences(PrintedFaster faster) {
    String most = faster.most().map(PrintedSpeed::text).orElse("");
    return switch (faster.verdict()) {
      case NOWHERE -> List.of(words.text("faster.nowhere", most));
      case OVER -> List.of(words.text("faster.over", most));
      case NEVER -> List.of(words.text("faster.none", most));
      case BRAKES -> brakes(faster, faster.application().orElseThrow());
    };
  }

  private List<String> brakes(PrintedFaster faster, PrintedApplication application) {
    List<String> out = new ArrayList<>();
    String place = place(application.point());
    out.add(
        words.text(
            "faster.brake",
            application.speed().map(PrintedSpeed::text).orElseThrow(),
            seen.both(application.cues().seen())
                .map(see -> words.text("answer.place-see", place, see))
                .orElse(place),
            faster.orders().stream()
                .map(o -> orders.whole(o, Optional.empty()))
                .collect(Collectors.joining("; "))));
    List<PrintedCase> cases = application.cases();
    out.add(
        words.text(
            "faster.latest",
            cases.get(0).rail(),
            cases.get(0).ladder().stream()
                .flatMap(r -> last(r).stream())
                .collect(Collectors.joining(", "))));
    for (PrintedCase c : cases.subList(1, cases.size())) {
      out.add(
          c.point()
              .map(
                  p ->
                      words.text(
                          "faster.rail",
                          c.rail(),
                          place(p.place()),
                          orders.technique(p.technique())))
              .orElse(words.text("faster.rail-none", c.rail())));
    }
    return out;
  }

  private Optional<String> last(PrintedRung rung) {
    return rung.latest()
        .match(
            at ->
                Optional.of(
                    words.text("faster.latest-one", words.called(rung.brake()), place(at.place()))),
            nowhere -> Optional.empty());
  }

  private String place(PrintedPlace place) {
    return words.spelt(place, "where.before-reduction");
  }
}
