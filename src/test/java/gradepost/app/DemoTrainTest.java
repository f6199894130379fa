package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.source.Frozen;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Notch;
import gradepost.stock.Stock;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The valley unit of the demo is nobody's, and what an older unit may well be. */
class DemoTrainTest {
  private static final Stock STOCK = Frozen.pack(Path.of("routes"), Frozen.VALLEY).stock();

  /** Common practice: the notches of older units, and their 70 psi in the pipe, 50 in cylinders. */
  @Test
  void itHasNeitherTheNotchesNorThePressuresOfAKnownFamily() {
    assertThat(notches().stream().map(Notch::name))
        .hasSize(5)
        .doesNotContain("Shunt", "Series", "Parallel", "Weak field");
    for (BrakeSystem brake : STOCK.brakes()) {
      assertThat(brake.full().psi()).isNotCloseTo(50, within(1.0));
      brake.pipe().ifPresent(p -> assertThat(p.pipe().psi()).isNotCloseTo(70, within(1.0)));
    }
  }

  /** Boyle, derived: reservoir 2.25 times the cylinder, charged to 78 psi, equal at 54. */
  @Test
  void itsPipeAndCylinderAreEqualAtFullService() {
    BrakeSystem automatic =
        STOCK.brakes().stream()
            .filter(b -> b.role() == BrakeSystem.Role.FALLBACK)
            .findFirst()
            .orElseThrow();
    double equal = (2.25 * (78 + 14.696) + 14.696) / 3.25 - 14.696;
    assertThat(automatic.full().psi()).isCloseTo(equal, within(0.1));
    assertThat(automatic.pipe().orElseThrow().pipe().psi()).isCloseTo(78, within(1e-9));
  }

  /** From the figures of the file: 2 times 51 kN on 173.6 t and 14 t of rotating mass. */
  @Test
  void itStartsAtHalfAMetreASecondSquared() {
    double kilonewtons = 2 * notches().get(4).effort().get(0).effort().newtons() / 1000;
    assertThat(kilonewtons / (173.6 + 14)).isBetween(0.45, 0.6);
  }

  private static List<Notch> notches() {
    return STOCK.traction().notches();
  }
}
