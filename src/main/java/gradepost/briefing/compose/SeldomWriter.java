package gradepost.briefing.compose;

import gradepost.briefing.Table;
import gradepost.briefing.line.JunctionWays;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.PlateRule;
import gradepost.briefing.page.ApproachWriter;
import gradepost.briefing.page.FindingWords;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.plan.Approach;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.TellingFindings;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.task.Target;
import java.util.Optional;

/** What a driver seldom meets, and the hazards of every run. */
final class SeldomWriter {
  private final Plan plan;
  private final Lineside lineside;
  private final Words words;

  SeldomWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.lineside = lineside;
    this.words = lineside.words();
  }

  /** Routes over junctions that a train of this direction can be given, and is not booked over. */
  Table seldom(String part) {
    Tables table = new Tables(words, part, "seldom");
    JunctionWays ways = new JunctionWays(plan.assignment(), lineside);
    for (Lineside.Over<Junction> o : ways.junctions()) {
      for (JunctionRoute way : o.what().routes()) {
        if (!way.equals(booked(o.what())) && ways.ofThisDirection(way, o)) {
          table.row(
              words.place(o.fromM()),
              words.text(
                  way.diverging() ? "seldom.diverging" : "seldom.other",
                  o.what().name(),
                  way.name(),
                  words.speed(way.speed().metresPerSecond())),
              ways.shown(way, o).map(this::shown).orElse(""));
        }
      }
    }
    return table.build();
  }

  private JunctionRoute booked(Junction junction) {
    return plan.assignment()
        .junctionRoutes()
        .getOrDefault(junction.name(), junction.routes().get(0));
  }

  /** What is met on every run, and must not be taken for granted: of each page of an approach. */
  Table hazards(String part) {
    Tables table = new Tables(words, part, "hazards");
    PlateRule pages = new PlateRule(plan, lineside);
    for (Approach a : plan.approaches().stream().filter(pages::holds).toList()) {
      for (Finding finding : a.findings()) {
        says(a.target(), finding).ifPresent(text -> approach(table, part, a, text));
      }
      a.target().stop().flatMap(this::terminal).ifPresent(text -> approach(table, part, a, text));
    }
    return table.build();
  }

  private Optional<String> terminal(Target.Stop stop) {
    return stop.buffersM()
        .map(b -> words.text("seldom.terminal", title(stop), words.room(b - stop.atM())));
  }

  private void approach(Tables table, String part, Approach a, String text) {
    table.linked(
        part + "-a" + a.number(),
        false,
        words.place(a.target().atM()),
        text,
        words.text("seldom.approach", ApproachWriter.title(words, a.target())));
  }

  private String shown(JunctionWays.Shown shown) {
    return words.text(
        "seldom.signal",
        shown.signal().what().id(),
        words.place(shown.signal().fromM()),
        shown.route().indication());
  }

  /** A finding that belongs here: a big drop, a board that comes late, an unusual platform. */
  private Optional<String> says(Target target, Finding finding) {
    String says = new FindingWords(words).of(new TellingFindings(words.grid()).of(finding));
    return switch (finding.about()) {
      case LOWER_SPEED -> Optional.of(says);
      case PLATFORM -> target.stop().map(stop -> words.text("seldom.platform", title(stop), says));
      case BRAKING, BRAKE_TEST, HANDLES -> Optional.empty();
    };
  }

  private String title(Target.Stop stop) {
    return words.text("approach.stop", stop.name(), stop.call().platform().number());
  }
}
