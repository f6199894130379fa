package gradepost.reissue;

import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.route.Path;
import gradepost.task.Assignment;
import gradepost.task.CeilingStep;
import gradepost.told.InstructionSheet;
import gradepost.told.print.PrintGrid;
import java.util.ArrayList;
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

  /** Stretches shorter than this are none, metres. */
  private static final double SAME_M = 0.01;

  /** A speed that changes this near behind the end of an approach is met on it, metres. */
  private static final double AT_END_M = 0.5;

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

  /** What differs between two plans, as their papers tell them. */
  public static Comparison of(Plan before, Plan after) {
    List<SpeedChange> speeds = speeds(before.ceiling(), after.ceiling());
    Map<String, Told> old = byKey(before);
    List<ApproachChange> changes = new ArrayList<>();
    List<Integer> unchanged = new ArrayList<>();
    for (Map.Entry<String, Told> entry : byKey(after).entrySet()) {
      Told now = entry.getValue();
      Optional<Told> then = Optional.ofNullable(old.remove(entry.getKey()));
      Set<ApproachChange.Aspect> aspects =
          then.map(t -> ApproachChange.Aspect.between(t.sheet(), now.sheet())).orElse(Set.of());
      if (then.filter(t -> t.sheet().equals(now.sheet())).isPresent()) {
        unchanged.add(now.sheet().number());
      } else {
        changes.add(
            new ApproachChange(
                then.map(Told::sheet),
                Optional.of(now.sheet()),
                Set.copyOf(aspects),
                !aspects.contains(ApproachChange.Aspect.TARGET) && now.outside(speeds),
                then.flatMap(t -> moved(t, now))));
      }
    }
    old.values()
        .forEach(
            gone ->
                changes.add(
                    new ApproachChange(
                        Optional.of(gone.sheet()),
                        Optional.empty(),
                        Set.of(),
                        gone.outside(speeds),
                        Optional.empty())));
    return new Comparison(
        restrictions(before.assignment(), after.assignment()), speeds, changes, unchanged);
  }

  /** A sheet, and the approach that it tells. */
  private record Told(InstructionSheet sheet, Approach approach, PrintGrid grid) {
    boolean outside(List<SpeedChange> speeds) {
      return speeds.stream()
          .noneMatch(s -> s.fromM() < approach.endM() + AT_END_M && s.toM() > approach.fromM());
    }

    Optional<Double> pointM() {
      return sheet.brakingPoint().map(p -> grid.metres(p, approach.target().atM()));
    }
  }

  private static Optional<Double> moved(Told then, Told now) {
    return then.sheet().brakingPoint().equals(now.sheet().brakingPoint())
        ? Optional.empty()
        : then.pointM().flatMap(from -> now.pointM().map(to -> to - from));
  }

  private static Map<String, Told> byKey(Plan plan) {
    Map<String, Told> out = new LinkedHashMap<>();
    PrintGrid grid = new PrintGrid(plan.assignment().path());
    List<InstructionSheet> sheets = plan.told().sheets();
    for (int i = 0; i < sheets.size(); i++) {
      InstructionSheet sheet = sheets.get(i);
      String key = sheet.target().key();
      for (int again = 2; out.containsKey(key); again++) {
        key = sheet.target().key() + " #" + again;
      }
      out.put(key, new Told(sheet, plan.approaches().get(i), grid));
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
    return path.span(r.extent()).fromM();
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
        if (to - from > SAME_M && differs) {
          out.add(new SpeedChange(from, to, then.speedMps(), now.speedMps(), now.cause()));
        }
      }
    }
    return out;
  }
}
