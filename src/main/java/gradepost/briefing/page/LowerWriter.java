package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.PlateRule;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.SeenWords;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedFaster;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedPassing;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The lower speeds that are met without a brake and have no page: a row each. */
public final class LowerWriter {
  private final Plan plan;
  private final Words words;
  private final ActionWords orders;
  private final SeenWords seen;
  private final PlateRule rule;

  /** For one plan. */
  public LowerWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.words = lineside.words();
    this.orders = new ActionWords(words, plan.assignment().stock());
    this.seen = new SeenWords(words);
    this.rule = new PlateRule(plan, lineside);
  }

  /** The table, for the part of the briefing with this identity; empty where there is no row. */
  public Optional<Table> table(String part) {
    Tables table = new Tables(words, part + "-lower-table", "lower");
    boolean any = false;
    List<InstructionSheet> sheets = plan.told().sheets();
    for (int i = 0; i < sheets.size(); i++) {
      Approach approach = plan.approaches().get(i);
      InstructionSheet sheet = sheets.get(i);
      if (!rule.holds(approach, sheet) && sheet.passing().isPresent()) {
        row(table, approach, sheet, sheet.passing().get());
        any = true;
      }
    }
    return any ? Optional.of(table.build()) : Optional.empty();
  }

  private void row(Tables table, Approach approach, InstructionSheet sheet, PrintedPassing met) {
    PrintedTarget target = sheet.target();
    Optional<PrintedFaster> faster = sheet.faster();
    Optional<PrintedApplication> brake = faster.flatMap(PrintedFaster::application);
    table.row(
        faster.filter(f -> f.verdict() == PrintedFaster.Verdict.NOWHERE).isPresent(),
        ApproachWriter.title(words, approach.target()),
        target.speed().map(PrintedSpeed::text).orElse(""),
        met.speed().text(),
        faster.flatMap(this::most).orElse(""),
        faster.map(f -> where(f, target)).orElse(""),
        brake.map(a -> others(a, target)).orElse(""),
        brake.map(this::fails).orElse(""));
  }

  /** The fastest that the train can be and may be there. */
  private Optional<String> most(PrintedFaster faster) {
    return faster
        .most()
        .or(() -> faster.application().flatMap(PrintedApplication::speed))
        .map(PrintedSpeed::text);
  }

  private String where(PrintedFaster faster, PrintedTarget target) {
    return switch (faster.verdict()) {
      case NOWHERE -> words.text("lower.nowhere");
      case OVER -> words.text("lower.over");
      case NEVER -> words.text("lower.never");
      case BRAKES -> brakes(faster, faster.application().orElseThrow(), target);
    };
  }

  private String brakes(PrintedFaster faster, PrintedApplication a, PrintedTarget target) {
    String place = words.place(a.point(), target);
    List<PrintedOrder> all = faster.orders();
    return words.text(
        "lower.brake",
        seen.both(a.cues().seen())
            .map(cue -> words.text("answer.place-see", place, cue))
            .orElse(place),
        orders.technique(all));
  }

  /** The point and the technique on the other rails; those that are told alike together. */
  private String others(PrintedApplication a, PrintedTarget target) {
    Map<Optional<List<String>>, List<String>> rails = new LinkedHashMap<>();
    a.cases().stream()
        .skip(1)
        .forEach(c -> rails.computeIfAbsent(told(c, target), p -> new ArrayList<>()).add(c.rail()));
    return rails.entrySet().stream()
        .map(r -> other(String.join(words.text("plate.and"), r.getValue()), r.getKey()))
        .collect(Collectors.joining("\n"));
  }

  /** Place and technique. */
  private Optional<List<String>> told(PrintedCase c, PrintedTarget target) {
    return c.point()
        .map(p -> List.of(words.place(p.place(), target), orders.technique(p.technique())));
  }

  private String other(String rail, Optional<List<String>> told) {
    return told.map(t -> words.text("lower.rail", rail, t.get(0), t.get(1)))
        .orElseGet(() -> words.text("lower.rail-none", rail));
  }

  private String fails(PrintedApplication a) {
    return a.told()
        .toUse()
        .map(PrintedAnswer::brake)
        .map(b -> words.text("answer.at-once", words.called(b)))
        .orElse("");
  }
}
