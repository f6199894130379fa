package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.grid.ControlProfile.PowerPhase;
import gradepost.drive.grid.GuideChange;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Validation, by hand: of the changes of a way that takes 1 MJ, with a movement worth 3 % (29.56
 * kJ), those are made together that save most.
 */
class ChangeSetsTest {
  private static final double ENERGY_J = 1e6;

  /** Along a hundred metres from there. */
  private static ChangeEffect effect(double fromM, double joules, double seconds, long moves) {
    return effect(fromM, fromM + 100, joules, seconds, moves, 0);
  }

  private static ChangeEffect effect(
      double fromM, double toM, double joules, double seconds, long moves, long idle) {
    PowerPhase power = new PowerPhase(fromM, List.of(), toM, joules);
    return new ChangeEffect(
        new GuideChange.NoPower(power), fromM, toM, joules, seconds, moves, idle);
  }

  private static List<List<ChangeEffect>> sets(double spareS, ChangeEffect... effects) {
    return new ChangeSets(ENERGY_J, 0.03, spareS).of(List.of(effects));
  }

  @Test
  void twoChangesAreApartWhereOneEndsBeforeTheOtherBegins() {
    ChangeEffect here = effect(100, -1, 0, 0);
    assertThat(here.apartFrom(effect(200, -1, 0, 0))).isTrue();
    assertThat(here.apartFrom(effect(0, -1, 0, 0))).isTrue();
    assertThat(here.apartFrom(effect(199, -1, 0, 0))).isFalse();
    assertThat(here.apartFrom(effect(1, -1, 0, 0))).isFalse();
    assertThat(here.apartFrom(here)).isFalse();
  }

  @Test
  void changesThatLieApartAreMadeTogetherTheMostGainfulFirst() {
    ChangeEffect most = effect(1000, -50e3, 1, 0);
    ChangeEffect beside = effect(1050, -40e3, 1, 0);
    ChangeEffect apart = effect(3000, -10e3, 1, 0);
    assertThat(sets(10, apart, beside, most)).containsExactly(List.of(most, apart));
  }

  @Test
  void whatSavesNothingIsNotMade() {
    assertThat(sets(10, effect(0, 0, 0, 0), effect(500, 1, -5, 0))).containsExactly(List.of());
    assertThat(sets(10, ChangeEffect.none(effect(0, 0, 0, 0).change(), 0, 100)))
        .containsExactly(List.of());
  }

  /** ln 1.03 of 1 MJ. */
  @Test
  void aMovementIsWorthItsShareOfTheEnergy() {
    ChangeEffect dearer = effect(0, -29_558, 0, 1);
    ChangeEffect gains = effect(0, -29_559, 0, 1);
    assertThat(sets(10, dearer)).containsExactly(List.of());
    assertThat(sets(10, gains)).containsExactly(List.of(gains));
    ChangeEffect fewer = effect(0, 29_558, 0, -1);
    assertThat(sets(10, fewer)).containsExactly(List.of(fewer));
    assertThat(sets(10, effect(0, 29_559, 0, -1))).containsExactly(List.of());
  }

  /** It is worth all the energy. */
  @Test
  void aMovementForAMomentIsWorthNothing() {
    assertThat(sets(10, effect(0, 100, -0.99e6, 0, 0, 1))).containsExactly(List.of());
    ChangeEffect without = effect(0, 100, 0.99e6, 0, 0, -1);
    assertThat(sets(10, without)).containsExactly(List.of(without));
  }

  /**
   * With 10 s to spare: the two that save most in the time that is left; and at the least price of
   * time that leaves the rest in time, 4 kW, the two that are slower by less than they save.
   */
  @Test
  void whereNotAllAreInTimeThoseAreMadeThatSaveMostAndThoseThatAreWorthTheirTime() {
    ChangeEffect slow = effect(0, -40e3, 10, 0);
    ChangeEffect quick = effect(1000, -30e3, 3, 0);
    ChangeEffect other = effect(2000, -28e3, 4, 0);
    assertThat(sets(10, slow, quick, other)).containsExactly(List.of(slow), List.of(quick, other));
    assertThat(sets(17, slow, quick, other)).containsExactly(List.of(slow, quick, other));
    assertThat(sets(16.9, slow, quick, other))
        .containsExactly(List.of(slow, quick), List.of(quick, other));
  }

  /** It has to become 5 s quicker: the cheapest change that does it, at a price of 4 kW. */
  @Test
  void aWayThatIsTooSlowIsMadeQuicker() {
    ChangeEffect slower = effect(0, -30e3, 4, 0);
    ChangeEffect cheap = effect(1000, 20e3, -5, 0);
    ChangeEffect dear = effect(2000, 60e3, -5, 0);
    assertThat(sets(-5, slower, cheap, dear)).containsExactly(List.of(cheap));
  }
}
