package gradepost.drive;

import gradepost.Examples;
import gradepost.plan.Plan;
import gradepost.source.Frozen;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import gradepost.stock.Formation;
import gradepost.task.Assignment;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The assignments of the packs that tests look at: the frozen valley (0 to 3), the coast of the
 * demo (4 to 7), the valley of the demo (8 to 11); in each the first direction with both
 * formations, then the other. A test with a value of its own takes it from the first.
 */
public final class DemoPlans {
  private static final Path DEMO = Path.of("routes");
  private static final List<Assignment> ALL = all();
  private static final List<Assignment> TRIED = Stream.of(0, 7).map(ALL::get).toList();
  private static final Map<Assignment, Plan> PLANS = new ConcurrentHashMap<>();

  /** All of them. */
  public static List<Assignment> assignments() {
    return ALL;
  }

  /**
   * Those that a property over all of them is tried with: in an ordinary run two that differ in
   * line, direction, formation and units.
   */
  public static List<Assignment> tried() {
    return Examples.of(0, 1) == 1 ? ALL : TRIED;
  }

  /** The numbers of the same. */
  public static IntStream numbers() {
    return tried().stream().mapToInt(ALL::indexOf);
  }

  /** The plan of one of them, made once for all tests. */
  public static Plan plan(int index) {
    return plan(ALL.get(index));
  }

  /** The plan of an assignment, made once for all tests. */
  public static Plan plan(Assignment assignment) {
    return PLANS.computeIfAbsent(assignment, Planner::plan);
  }

  private static List<Assignment> all() {
    List<Assignment> all = new ArrayList<>(of(Frozen.valley()));
    all.addAll(of(Frozen.pack(DEMO, "ormel-coast/pack-ormel.yaml")));
    all.addAll(of(Frozen.pack(DEMO, "thrumble-valley/pack-thrumble.yaml")));
    return List.copyOf(all);
  }

  /** The frozen valley under the policy whose last places lean further. */
  public static List<Assignment> leaning() {
    return of(Frozen.leaning());
  }

  /** The frozen valley with two-pipe stock. */
  public static List<Assignment> twoPipe() {
    return of(Frozen.twoPipe());
  }

  private static List<Assignment> of(PackFile pack) {
    List<Assignment> all = new ArrayList<>();
    for (DirectionPart part : pack.directions()) {
      for (Formation formation : pack.formations()) {
        all.add(pack.assignment(part, formation));
      }
    }
    return all;
  }

  private DemoPlans() {}
}
