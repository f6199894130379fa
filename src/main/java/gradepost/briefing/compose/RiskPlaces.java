package gradepost.briefing.compose;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Cover;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.line.JunctionWays;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.word.Words;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Finds the places of what the depot's own words name: the longest name in them that stands
 * somewhere on the run; of two equal ones that of a target comes first.
 */
final class RiskPlaces {
  private final List<Named> named = new ArrayList<>();

  /** Something with a name, where it is met, and the sheet about it, if there is one. */
  private record Named(String name, String place, String anchor) {}

  RiskPlaces(List<Plan> plans, List<Part> parts, Messages messages) {
    for (int i = 0; i < plans.size(); i++) {
      Plan plan = plans.get(i);
      Words words = new Words(messages, plan.assignment().path());
      targets(plan, parts.get(i), words);
      Lineside lineside = new Lineside(plan.assignment(), words);
      lineside.platforms().forEach(p -> add(p.what().station().name(), words.place(p.fromM())));
      lineside.landmarks().forEach(l -> add(l.what().name(), words.place(l.fromM())));
      lineside.lowAdhesion().forEach(l -> add(l.what().name(), words.place(l.fromM())));
      new JunctionWays(plan.assignment(), lineside)
          .junctions()
          .forEach(j -> add(j.what().name(), words.place(j.fromM())));
    }
  }

  private void targets(Plan plan, Part part, Words words) {
    List<String> sheets = part.plates().stream().map(ApproachPage::id).toList();
    String lower = part.lower().isPresent() ? part.id() + "-lower" : "";
    for (Approach approach : plan.approaches()) {
      String sheet = part.id() + "-a" + approach.number();
      Target.OfApproach target = approach.target();
      target
          .match(stop -> Stream.of(stop.name()), r -> Stream.of(r.name(), r.reference()))
          .map(
              name ->
                  new Named(
                      name, words.place(target.atM()), sheets.contains(sheet) ? sheet : lower))
          .forEach(named::add);
    }
  }

  private void add(String name, String place) {
    named.add(new Named(name, place, ""));
  }

  /** The items in their order, each with its place. */
  List<Cover.Risk> of(List<String> items) {
    return items.stream().map(this::of).toList();
  }

  private Cover.Risk of(String item) {
    return longest(item)
        .map(n -> new Cover.Risk(item, holds(item, n.place()) ? "" : n.place(), n.anchor()))
        .orElse(new Cover.Risk(item, "", ""));
  }

  private Optional<Named> longest(String item) {
    return named.stream()
        .filter(n -> !n.name().isBlank())
        .filter(n -> holds(item, n.name()))
        .reduce((a, b) -> b.name().length() > a.name().length() ? b : a);
  }

  /** As words of their own: T 1 is not in T 12. */
  private static boolean holds(String text, String name) {
    return Pattern.compile("(?<![\\p{L}\\p{N}])" + Pattern.quote(name) + "(?![\\p{L}\\p{N}])")
        .matcher(text)
        .find();
  }
}
