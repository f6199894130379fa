package gradepost.reissue;

import gradepost.drive.Approach;
import gradepost.drive.Assignment;
import gradepost.drive.CeilingStep;
import gradepost.drive.Plan;
import gradepost.route.Path;
import gradepost.route.TemporaryRestriction;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What differs between two plans for the same run.
 *
 * @param restrictions of this run, in the order of travel
 * @param speeds where the permissible speed differs, in the order of travel
 * @param approaches that differ in print, those that fell away last
 * @param unchanged numbers, in the later plan, of the approaches that are in print what they were
 */
public record Comparison(
    List<RestrictionChange> restrictions,
    List<SpeedChange> speeds,
    List<ApproachChange> approaches,
    List<Integer> unchanged) {

  public Comparison {
    restrictions = List.copyOf(restrictions);
    speeds = List.copyOf(speeds);
    approaches = List.copyOf(approaches);
    unchanged = List.copyOf(unchanged);
  }

  /** Whether nothing differs that is told to a driver. */
  public boolean isEmpty() {
    return restrictions.isEmpty() && speeds.isEmpty() && approaches.isEmpty();
  }

  /**
   * Whether two runs can be told apart at all, found without planning either: false means that
   * their comparison is empty.
   */
  public static boolean mayDiffer(Assignment before, Assignment after) {
    return !met(before).equals(met(after))
        || !before.withRestrictions(List.of()).equals(after.withRestrictions(List.of()));
  }

  public static Comparison of(Plan before, Plan after) {
    List<SpeedChange> speeds = speeds(before.ceiling(), after.ceiling());
    Map<String, Approach> old = byKey(before);
    List<ApproachChange> changes = new ArrayList<>();
    List<Integer> unchanged = new ArrayList<>();
    Print print = new Print(after.assignment().path());
    for (Map.Entry<String, Approach> entry : byKey(after).entrySet()) {
      Approach now = entry.getValue();
      Optional<Approach> then = Optional.ofNullable(old.remove(entry.getKey()));
      Set<ApproachChange.Aspect> aspects = EnumSet.noneOf(ApproachChange.Aspect.class);
      then.ifPresent(t -> aspects.addAll(aspects(t, now, print)));
      if (then.isPresent() && aspects.isEmpty() && then.get().number() == now.number()) {
        unchanged.add(now.number());
      } else {
        changes.add(
            new ApproachChange(
                then,
                Optional.of(now),
                Set.copyOf(aspects),
                !aspects.contains(ApproachChange.Aspect.TARGET) && outside(now, speeds)));
      }
    }
    old.values()
        .forEach(
            gone ->
                changes.add(
                    new ApproachChange(
                        Optional.of(gone), Optional.empty(), Set.of(), outside(gone, speeds))));
    return new Comparison(
        restrictions(before.assignment(), after.assignment()), speeds, changes, unchanged);
  }

  private static Set<ApproachChange.Aspect> aspects(Approach then, Approach now, Print print) {
    Set<ApproachChange.Aspect> out = EnumSet.noneOf(ApproachChange.Aspect.class);
    for (ApproachChange.Aspect aspect : ApproachChange.Aspect.values()) {
      if (!print.of(then, aspect).equals(print.of(now, aspect))) {
        out.add(aspect);
      }
    }
    return out;
  }

  private static boolean outside(Approach approach, List<SpeedChange> speeds) {
    return speeds.stream()
        .noneMatch(s -> s.fromM() < approach.endM() + 0.5 && s.toM() > approach.fromM());
  }

  private static Map<String, Approach> byKey(Plan plan) {
    Map<String, Approach> out = new LinkedHashMap<>();
    for (Approach approach : plan.approaches()) {
      String key = Print.key(approach.target());
      for (int again = 2; out.containsKey(key); again++) {
        key = Print.key(approach.target()) + " #" + again;
      }
      out.put(key, approach);
    }
    return out;
  }

  /** The restrictions that this train can meet, in the order of travel. */
  private static List<TemporaryRestriction> met(Assignment a) {
    Path path = a.path();
    return a.restrictions().stream()
        .filter(r -> r.applies().to(a.direction(), a.lines()))
        .sorted(
            java.util.Comparator.<TemporaryRestriction>comparingDouble(r -> at(path, r))
                .thenComparing(TemporaryRestriction::reference))
        .toList();
  }

  private static double at(Path path, TemporaryRestriction r) {
    return Math.min(path.metresAt(r.extent().from()), path.metresAt(r.extent().to()));
  }

  private static List<RestrictionChange> restrictions(Assignment before, Assignment after) {
    Map<String, TemporaryRestriction> old = new LinkedHashMap<>();
    met(before).forEach(r -> old.put(r.reference(), r));
    List<RestrictionChange> out = new ArrayList<>();
    for (TemporaryRestriction now : met(after)) {
      Optional<TemporaryRestriction> then = Optional.ofNullable(old.remove(now.reference()));
      Set<RestrictionChange.Kind> kinds = kinds(then, now);
      if (!kinds.isEmpty()) {
        out.add(new RestrictionChange(now.reference(), kinds, then, Optional.of(now)));
      }
    }
    old.values()
        .forEach(
            gone ->
                out.add(
                    new RestrictionChange(
                        gone.reference(),
                        Set.of(RestrictionChange.Kind.WITHDRAWN),
                        Optional.of(gone),
                        Optional.empty())));
    return out;
  }

  static Set<RestrictionChange.Kind> kinds(
      Optional<TemporaryRestriction> before, TemporaryRestriction now) {
    if (before.isEmpty()) {
      return Set.of(RestrictionChange.Kind.ADDED);
    }
    TemporaryRestriction then = before.get();
    Set<RestrictionChange.Kind> kinds = new LinkedHashSet<>();
    if (tighter(then, now)) {
      kinds.add(RestrictionChange.Kind.TIGHTENED);
    }
    if (tighter(now, then)) {
      kinds.add(RestrictionChange.Kind.EASED);
    }
    if (!now.extent().equals(then.extent()) || !now.applies().equals(then.applies())) {
      kinds.add(RestrictionChange.Kind.MOVED);
    }
    if (!now.imposed().equals(then.imposed())
        || !now.until().equals(then.until())
        || !now.hours().equals(then.hours())) {
      kinds.add(RestrictionChange.Kind.RETIMED);
    }
    if (!now.boards().equals(then.boards())) {
      kinds.add(RestrictionChange.Kind.REBOARDED);
    }
    if (kinds.isEmpty() && !now.changedFrom().equals(then.changedFrom())) {
      kinds.add(RestrictionChange.Kind.RETIMED);
    }
    if (kinds.isEmpty() && !now.equals(then)) {
      kinds.add(RestrictionChange.Kind.REWORDED);
    }
    return kinds;
  }

  /** Whether {@code now} is lower for some class of train than {@code then}. */
  private static boolean tighter(TemporaryRestriction then, TemporaryRestriction now) {
    List<List<String>> classes = new ArrayList<>(List.of(List.of()));
    then.differentials().forEach(d -> classes.add(List.of(d.trainClass())));
    now.differentials().forEach(d -> classes.add(List.of(d.trainClass())));
    return classes.stream()
        .anyMatch(
            c -> now.speedFor(c).metresPerSecond() < then.speedFor(c).metresPerSecond() - 1e-9);
  }

  private static List<SpeedChange> speeds(List<CeilingStep> before, List<CeilingStep> after) {
    List<SpeedChange> out = new ArrayList<>();
    for (CeilingStep now : after) {
      for (CeilingStep then : before) {
        double from = Math.max(now.fromM(), then.fromM());
        double to = Math.min(now.toM(), then.toM());
        boolean differs = Math.abs(now.speedMps() - then.speedMps()) > 1e-6;
        if (to - from > Print.GRAIN_M && differs) {
          out.add(new SpeedChange(from, to, then.speedMps(), now.speedMps(), now.cause()));
        }
      }
    }
    return out;
  }
}
