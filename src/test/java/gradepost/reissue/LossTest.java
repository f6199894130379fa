package gradepost.reissue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.DailyHours;
import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Kind;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.route.Differential;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.units.Mileage;
import gradepost.units.Speed;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Property: whatever holds any train back less, anywhere or at any time, is seen; nothing else. */
class LossTest {
  private static final LocalDateTime NOW = LocalDateTime.of(2026, 11, 25, 12, 0);
  private static final LocalDateTime SINCE = LocalDateTime.of(2026, 11, 20, 4, 0);
  private static final Optional<LocalDateTime> END = Optional.of(NOW.plusDays(30));
  private static final Optional<DailyHours> NIGHT =
      Optional.of(new DailyHours(LocalTime.of(22, 0), LocalTime.of(5, 0)));

  private Status status = Status.IN_FORCE;
  private double fromM = 1000;
  private double toM = 1200;
  private Applies applies = new Applies(Set.of(Direction.FORWARD), Set.of("Out Main"));
  private double kmh = 40;
  private List<Differential> differentials = List.of();
  private LocalDateTime imposed = SINCE;
  private Optional<LocalDateTime> until = END;
  private Optional<DailyHours> hours = NIGHT;

  private static Speed speed(double kmh) {
    return Speed.ofKmh(kmh);
  }

  private TemporaryRestriction restriction() {
    return new TemporaryRestriction(
        "T 1",
        Kind.TEMPORARY,
        status,
        new Extent(
            new Location("Main", new Mileage(fromM)), new Location("Main", new Mileage(toM))),
        applies,
        speed(kmh),
        differentials,
        Optional.empty(),
        "wet bed",
        imposed,
        until,
        hours,
        List.of(),
        "");
  }

  private interface Edit {
    void on(LossTest then);
  }

  private static List<Loss> after(Edit edit) {
    TemporaryRestriction then = new LossTest().restriction();
    LossTest now = new LossTest();
    edit.on(now);
    return Loss.between(List.of(then), List.of(now.restriction()), NOW);
  }

  @Test
  void whatHoldsBackAsMuchOrMoreIsNoLoss() {
    List<Edit> edits =
        List.of(
            now -> {},
            now -> now.kmh = 30,
            now -> now.fromM = 900,
            now -> now.toM = 1300,
            now -> now.applies = Applies.EVERYWHERE,
            now -> now.imposed = SINCE.minusDays(1),
            now -> now.imposed = NOW,
            now -> now.until = Optional.of(NOW.plusDays(31)),
            now -> now.until = Optional.empty(),
            now -> now.hours = Optional.empty(),
            now -> now.differentials = List.of(new Differential("MU", speed(40))));
    edits.forEach(e -> assertThat(after(e)).as("edit " + edits.indexOf(e)).isEmpty());
  }

  @Test
  void whatHoldsBackLessAnywhereIsEased() {
    List<Edit> edits =
        List.of(
            now -> now.kmh = 41,
            now -> now.fromM = 1010,
            now -> now.toM = 1190,
            now -> now.applies = new Applies(Set.of(Direction.BACKWARD), Set.of()),
            now -> now.applies = new Applies(Set.of(Direction.FORWARD), Set.of("Out Loop")),
            now -> now.imposed = NOW.plusMinutes(1),
            now -> now.until = Optional.of(NOW.plusDays(29)),
            now -> now.hours = Optional.of(new DailyHours(LocalTime.of(23, 0), LocalTime.of(5, 0))),
            now -> now.differentials = List.of(new Differential("MU", speed(60))));
    for (Edit edit : edits) {
      List<Loss> losses = after(edit);
      assertThat(losses).as("edit " + edits.indexOf(edit)).hasSize(1);
      assertThat(losses.get(0).gone()).isFalse();
    }
  }

  @Test
  void whatIsNoLongerThereOrIsWithdrawnIsGone() {
    TemporaryRestriction then = restriction();
    assertThat(Loss.between(List.of(then), List.of(), NOW))
        .containsExactly(new Loss(then, Optional.empty()));
    assertThat(after(now -> now.status = Status.WITHDRAWN)).hasSize(1).allMatch(Loss::gone);
  }

  @Test
  void whatWasOverCannotBeLost() {
    until = Optional.of(NOW);
    assertThat(Loss.between(List.of(restriction()), List.of(), NOW)).isEmpty();
    assertThat(Loss.between(List.of(restriction()), List.of(), NOW.minusMinutes(1))).hasSize(1);
    until = Optional.empty();
    status = Status.WITHDRAWN;
    assertThat(Loss.between(List.of(restriction()), List.of(), NOW)).isEmpty();
  }
}
