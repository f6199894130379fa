package gradepost.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.BlockLaw;
import gradepost.stock.law.CastIronKarwatzki;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.FrictionTable;
import gradepost.stock.law.ShareOf;
import gradepost.units.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Friction of blocks and adhesion against published figures. */
class FrictionValidationTest {
  /** Galton's trials, Proc. IMechE 1878–79, by memory; that friction falls with speed was read. */
  @ParameterizedTest
  @CsvSource({"5,0.273", "10,0.242", "20,0.192", "30,0.164", "40,0.140", "50,0.116", "60,0.074"})
  void galton(double mph, double read) {
    double friction = FrictionTable.galton().friction(Speed.ofMph(mph).metresPerSecond());
    assertThat(friction).isCloseTo(read, within(1e-9));
  }

  @Test
  void galton_is_linear_between_and_level_beyond() {
    FrictionTable table = FrictionTable.galton();
    assertThat(table.friction(Speed.ofMph(15).metresPerSecond())).isCloseTo(0.217, within(1e-9));
    assertThat(table.friction(0)).isEqualTo(0.273);
    assertThat(table.friction(Speed.ofMph(90).metresPerSecond())).isEqualTo(0.074);
  }

  /** Karwatzki's shape, from memory. */
  @ParameterizedTest
  @CsvSource({"0,1", "20,0.600", "60,0.400", "120,0.314"})
  void karwatzki(double kmh, double ratio) {
    BlockLaw law = new CastIronKarwatzki();
    assertThat(law.friction(kmh / 3.6) / law.friction(0)).isCloseTo(ratio, within(0.0005));
  }

  /** Curtius and Kniffler, dry, from memory. */
  @ParameterizedTest
  @CsvSource({"0,0.3315", "40,0.2503", "80,0.2215"})
  void dry_adhesion(double kmh, double mu) {
    assertThat(new CurtiusKniffler().mu(kmh / 3.6)).isCloseTo(mu, within(0.00005));
  }

  /** Koffman 1948: wet is about 0.6 of dry; a trade article: dry 0.2 to 0.4, wet 0.1 to 0.2. */
  @Test
  void wet_is_a_share_of_dry() {
    AdhesionLaw dry = new CurtiusKniffler();
    AdhesionLaw wet = new ShareOf(dry, 0.6);
    for (double kmh = 0; kmh <= 100; kmh += 10) {
      assertThat(dry.mu(kmh / 3.6)).isBetween(0.2, 0.4);
      assertThat(wet.mu(kmh / 3.6)).isBetween(0.1, 0.2);
    }
  }

  @Test
  void adhesion_out_of_range_is_refused() {
    assertThatThrownBy(() -> new ConstantAdhesion(0)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> new ShareOf(new CurtiusKniffler(), 1.1)).hasMessageContaining("share");
  }
}
