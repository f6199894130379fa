package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.store.Disk;
import gradepost.drive.Planner;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Plan;
import gradepost.reissue.Comparison;
import gradepost.source.Frozen;
import gradepost.source.file.Input;
import gradepost.source.pack.Amendment;
import gradepost.source.pack.PackFile;
import gradepost.task.CeilingStep;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/**
 * Packs before and after a notice, through the readers that a reissue uses; and an invented line
 * with a pack for each direction.
 */
public abstract class Changes {
  @TempDir public Path folder;
  public List<Path> packs = List.of();

  @BeforeEach
  void network() throws IOException {
    packs = new SyntheticNetwork(folder, 2).packs(2, 21);
  }

  public static PackFile pack(Path file) {
    return good(Disk.sources().pack(Disk.name(file)));
  }

  public static PackFile good(Reading<PackFile> reading) {
    assertThat(reading.problems().hasErrors()).as(reading.problems().text()).isFalse();
    return ((Reading.Good<PackFile>) reading).value();
  }

  /** The double line with a single-line stretch. */
  public static PackFile valley() {
    return Frozen.valley();
  }

  /** The pack with these notices taken in, keys and values as they are typed. */
  public PackFile with(PackFile pack, String... entries) throws IOException {
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (String entry : entries) {
      String until = entry.contains("until: ") ? "" : "until: further notice, ";
      String imposed = entry.contains("imposed: ") ? "" : "imposed: 2026-11-24 04:00, ";
      text.append("  - {type: temporary, %s%s%s}%n".formatted(imposed, until, entry));
    }
    Path file = Files.writeString(folder.resolve("n.yaml"), text);
    var notices = Disk.sources().noticeFile(Disk.name(file)).read(pack);
    assertThat(notices.problems().hasErrors()).as(notices.problems().text()).isFalse();
    List<Input> inputs =
        Amendment.withNotices(pack, ((Reading.Good<List<TemporaryRestriction>>) notices).value());
    return good(Disk.sources().pack(inputs));
  }

  public static String at(String from, String to, String way, String more) {
    return "status: in force, from: %s, to: %s, directions: %s, %s".formatted(from, to, way, more);
  }

  public static String km(double metres) {
    return String.format(Locale.ROOT, "%.3f km", metres / 1000);
  }

  public static Plan plan(PackFile pack) {
    return plan(pack, 0);
  }

  public static Plan plan(PackFile pack, int direction) {
    return Planner.plan(
        pack.assignment(pack.directions().get(direction), pack.formations().get(0)));
  }

  public static Comparison compared(PackFile before, PackFile after) {
    return Comparison.of(plan(before), plan(after));
  }

  /** Whether planning one direction of both is needed to tell them apart. */
  public static boolean mayDiffer(PackFile before, PackFile after, int direction) {
    return Comparison.mayDiffer(
        before.assignment(before.directions().get(direction), before.formations().get(0)),
        after.assignment(after.directions().get(direction), after.formations().get(0)));
  }

  /** The permissible speed where the front is so far along the way. */
  public static double ceilingMps(Plan plan, double atM) {
    return plan.ceiling().stream()
        .filter(s -> s.fromM() <= atM && atM < s.toM())
        .mapToDouble(CeilingStep::speedMps)
        .findFirst()
        .orElseThrow();
  }
}
