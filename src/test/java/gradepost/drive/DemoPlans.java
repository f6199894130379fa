package gradepost.drive;

import gradepost.source.DirectionPart;
import gradepost.source.Frozen;
import gradepost.source.PackFile;
import gradepost.stock.Formation;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The assignments of the packs that tests look at: the frozen valley (0 to 3), the coast of the
 * demo (4 to 7), the valley of the demo (8 to 11); in each the first direction with both
 * formations, then the other. A test with a value of its own takes it from the first.
 */
public final class DemoPlans {
  private static final Path DEMO = Path.of("routes");

  /** All of them. */
  public static List<Assignment> assignments() {
    List<Assignment> all = new ArrayList<>(of(Frozen.valley()));
    all.addAll(of(Frozen.pack(DEMO, "ormel-coast/pack-ormel.yaml")));
    all.addAll(of(Frozen.pack(DEMO, "thrumble-valley/pack-thrumble.yaml")));
    return all;
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
