package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.Planner;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.route.Path;
import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import gradepost.stock.Formation;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: wherever a notice puts a low speed on the demo routes, every train of them has a plan
 * that stands its own rerun; or it stalls, and is told so: a train that may enter a gap of the
 * conductor rail at 10 mph only may not come out of it.
 */
@Tag("slow")
class DemoRestrictionsTest extends Changes {

  @Test
  void aFewStandTheirRerun() throws IOException {
    assertThat(faults(1, 1)).isEmpty();
  }

  @Test
  @Tag("long")
  void manyStandTheirRerun() throws IOException {
    assertThat(faults(2, Integer.getInteger("gradepost.restrictions", 150))).isEmpty();
  }

  private List<String> faults(long seed, int restrictions) throws IOException {
    Random random = new Random(seed);
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < restrictions; i++) {
      PackFile none = i % 2 == 0 ? valley() : coast();
      String entry = anywhere(random, none);
      PackFile one = with(none, entry);
      for (DirectionPart part : one.directions()) {
        for (Formation formation : one.formations()) {
          Plan plan = Planner.plan(one.assignment(part, formation));
          plan.failures().stream()
              .filter(f -> !(f instanceof PlanFailure.Stalls))
              .forEach(
                  f ->
                      faults.add(
                          "%s %s, %s: %s".formatted(part.direction(), formation.name(), entry, f)));
        }
      }
    }
    return faults;
  }

  private static PackFile coast() {
    return good(
        new Sources(new DiskFiles(java.nio.file.Path.of("routes")))
            .pack("ormel-coast/pack-ormel.yaml"));
  }

  /** From one to forty steps of the print grid long, from 10 to 30 mph or 15 to 50 km/h. */
  private static String anywhere(Random random, PackFile pack) {
    Path path = new Path(pack.route(), Direction.FORWARD);
    double step = path.units().placeStepM();
    double from = Math.floor(random.nextDouble() * (path.lengthM() - 900) / step) * step;
    double to = Math.min(path.lengthM(), from + step * (1 + random.nextInt(40)));
    String speed =
        path.units() == UnitStyle.MILES
            ? 10 + 5 * random.nextInt(5) + " mph"
            : 15 + 5 * random.nextInt(8) + " km/h";
    return "status: in force, from: %s, to: %s, reference: Z, speed: %s"
        .formatted(place(path, from), place(path, to), speed);
  }

  private static String place(Path path, double atM) {
    Location at = path.locationAt(atM);
    String mileage = path.text(atM).replaceAll(" \\(.*", "");
    return "{section: %s, at: %s}".formatted(at.section(), mileage);
  }
}
