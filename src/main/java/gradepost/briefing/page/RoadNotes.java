package gradepost.briefing.page;

import gradepost.briefing.line.PlateRule;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.policy.AdhesionCase;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedCommand.Stage;
import gradepost.told.PrintedStep;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What stands beside the rows of a road sheet: what each other rail is, where the speed is checked
 * with the brake, and what has a page of its own without a braking point.
 */
final class RoadNotes {
  private final Plan plan;
  private final Words words;
  private final ActionWords orders;
  private final PlateRule rule;

  RoadNotes(Plan plan, Words words, PlateRule rule) {
    this.plan = plan;
    this.words = words;
    this.orders = new ActionWords(words, plan.assignment().stock());
    this.rule = rule;
  }

  /** What the lines of a row are for, and what each other state of the rail is. */
  String rails() {
    List<AdhesionCase> rails = plan.assignment().policy().adhesion();
    String planned = words.text("road.planned", rails.get(0).name());
    return Stream.concat(
            Stream.of(planned),
            rails.stream()
                .skip(1)
                .filter(rail -> !rail.note().isEmpty())
                .map(rail -> words.text("road.rail", rail.name(), rail.note())))
        .collect(Collectors.joining(" "));
  }

  /**
   * For the targets behind one place, up to another, metres run.
   *
   * @param grave whether a brake to use is marked
   */
  List<String> below(double fromM, double toM, boolean grave) {
    List<String> checks = new ArrayList<>();
    List<String> pages = new ArrayList<>();
    List<InstructionSheet> sheets = plan.told().sheets();
    for (int i = 0; i < sheets.size(); i++) {
      Approach approach = plan.approaches().get(i);
      InstructionSheet sheet = sheets.get(i);
      double atM = approach.target().atM();
      if (atM > fromM && atM <= toM) {
        List<String> own = checks(approach, sheet);
        checks.addAll(own);
        if (own.isEmpty() && sheet.begun().isEmpty() && rule.holds(approach, sheet)) {
          pages.add(ApproachWriter.title(words, approach.target()));
        }
      }
    }
    List<String> out = new ArrayList<>();
    if (grave) {
      out.add(words.text("road.grave"));
    }
    told("road.checks", checks).forEach(out::add);
    told("road.pages", pages).forEach(out::add);
    return out;
  }

  private List<String> checks(Approach approach, InstructionSheet sheet) {
    return sheet.steps().stream()
        .filter(s -> s.order().does().brake().filter(b -> b.stage() == Stage.CHECK).isPresent())
        .map(
            s ->
                words.text(
                    "road.check",
                    ApproachWriter.title(words, approach.target()),
                    orders.gauge(s.order().does()),
                    where(s, sheet),
                    s.speed().text()))
        .toList();
  }

  private String where(PrintedStep step, InstructionSheet sheet) {
    String place = words.place(step.where(), sheet.target());
    return step.order().on().atItsPlace() ? place : words.text("where.about", place);
  }

  private Stream<String> told(String key, List<String> items) {
    return items.isEmpty()
        ? Stream.empty()
        : Stream.of(
            words.text(key, items.stream().collect(Collectors.joining(words.text("road.next")))));
  }
}
