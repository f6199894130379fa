package gradepost.briefing.line;

import gradepost.briefing.Table;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.plan.SignalBraking;
import gradepost.route.Signal;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.List;

/** Whether each signal at danger can be stood short of from where its caution is given. */
final class CautionTable {
  /** What a speed is over a lower one by to count. */
  private static final double OVER_MPS = 0.1;

  private final Plan plan;
  private final Lineside lineside;
  private final Words words;

  CautionTable(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.lineside = lineside;
    this.words = lineside.words();
  }

  Table table(String part) {
    Tables table = new Tables(words, part, "cautions");
    List<String> brakes =
        plan.signals().stream()
            .flatMap(s -> s.needs().stream())
            .map(n -> n.brake().shortName())
            .distinct()
            .toList();
    brakes.forEach(b -> table.column(words.text("cautions.needs", b), "number"));
    // Signals of which no warning is known are named once, with what is not supplied.
    for (SignalBraking s : plan.signals()) {
      s.caution().ifPresent(c -> row(table, s, c, brakes));
    }
    return plan.assignment().route().signals().isEmpty()
        ? table.build(lineside.observed("signal").orElseGet(() -> words.text("table.signals.none")))
        : plan.signals().isEmpty() ? table.build() : table.build(words.text("cautions.none-known"));
  }

  private void row(Tables table, SignalBraking s, Signal caution, List<String> brakes) {
    List<String> cells = new ArrayList<>();
    cells.add(s.signal().id());
    cells.add(words.text("cautions.by", caution.id(), words.place(s.warnedM())));
    cells.add(words.speed(s.ceilingMps()));
    cells.add(
        s.brakingM()
            .map(b -> last(s, b))
            .orElse(words.text("cautions.at-once", words.speed(s.plannedMps()))));
    cells.add(words.room(Math.max(0, s.availableM())));
    for (String brake : brakes) {
      cells.add(
          s.needs().stream()
              .filter(n -> n.brake().shortName().equals(brake))
              .findFirst()
              .map(n -> need(n, s.availableM()))
              .orElse(""));
    }
    table.row(!s.suffices(), cells.toArray(String[]::new));
  }

  /** A dash where a train that coasts there would break a lower speed on the way. */
  private String last(SignalBraking s, double atM) {
    if (s.technique().isEmpty()) {
      return words.text("cautions.stands");
    }
    double mps = s.technique().get(0).speedMps();
    boolean lower = new Ceiling(plan.ceiling()).lowest(s.warnedM(), atM) < mps - OVER_MPS;
    return lower
        ? words.text("dash")
        : words.text("cautions.brake", words.place(atM), words.speed(mps));
  }

  private String need(SignalBraking.Need need, double available) {
    if (!Double.isFinite(need.needM())) {
      return words.text("cautions.never");
    }
    return (need.needM() > available ? "▲ " : "") + words.overrun(need.needM());
  }
}
