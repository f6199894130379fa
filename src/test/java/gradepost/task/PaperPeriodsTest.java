package gradepost.task;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.page.EditionWriter;
import gradepost.briefing.word.Words;
import gradepost.drive.Mill;
import gradepost.pack.DailyHours;
import gradepost.pack.TemporaryRestriction;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.units.Speed;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Property: what another restriction covers for some hours of the day has a paper for the others.
 */
class PaperPeriodsTest {
  private static final Assignment DOWN = Mill.assignment(Direction.FORWARD, "4-car");
  private static final LocalDateTime FROM = LocalDateTime.of(2026, 11, 29, 4, 0);
  private static final LocalDateTime TO = LocalDateTime.of(2026, 12, 29, 4, 0);
  private static final Optional<DailyHours> NIGHT = hours(22, 5);

  private static Optional<DailyHours> hours(int from, int to) {
    return Optional.of(new DailyHours(LocalTime.of(from, 0), LocalTime.of(to, 0)));
  }

  private static TemporaryRestriction at(
      String reference, double from, double to, double mph, Optional<DailyHours> hours) {
    return until(reference, from, to, mph, hours, TO);
  }

  private static TemporaryRestriction until(
      String reference,
      double from,
      double to,
      double mph,
      Optional<DailyHours> hours,
      LocalDateTime end) {
    return new TemporaryRestriction(
        reference,
        TemporaryRestriction.Kind.TEMPORARY,
        TemporaryRestriction.Status.IN_FORCE,
        new Extent(Mill.at(3, from), Mill.at(3, to)),
        Applies.EVERYWHERE,
        Speed.ofMph(mph),
        List.of(),
        Optional.empty(),
        "",
        FROM.minusDays(1),
        Optional.of(end),
        hours,
        List.of(),
        "");
  }

  private static List<PaperPeriod> periods(TemporaryRestriction... all) {
    return PaperPeriods.of(DOWN.withRestrictions(List.of(all)), FROM, TO);
  }

  private static final TemporaryRestriction DAY = at("T 12", 20, 40, 40, Optional.empty());

  @Test
  void whatIsCoveredByNightHasAPaperForTheDay() {
    TemporaryRestriction night = at("T 15", 15, 30, 20, NIGHT);
    List<PaperPeriod> periods = periods(DAY, night);
    assertThat(periods).hasSize(1);
    PaperPeriod day = periods.get(0);
    assertThat(day.hours()).isEqualTo(List.of(hours(5, 22).orElseThrow()));
    assertThat(day.restrictions()).containsExactly(DAY);
    assertThat(day.uncovered()).containsExactly("T 12");
    assertThat(day.absent()).containsExactly("T 15");
    assertThat(day.from()).isEqualTo(FROM);
    assertThat(day.to()).isEqualTo(TO);
    assertThat(day.name()).isEqualTo("between 05:00 and 22:00");
  }

  @Test
  void whatIsCoveredByDayHasAPaperForTheNight() {
    assertThat(periods(DAY, at("T 15", 15, 30, 20, hours(9, 16))))
        .extracting(PaperPeriod::name)
        .containsExactly("between 16:00 and 09:00");
  }

  @Test
  void twoThatCoverAtDifferentHoursAreThreeStates() {
    // The sheet of the ordinary paper is that of T 15, which does not stand in the afternoon.
    assertThat(
            periods(
                DAY, at("T 15", 15, 30, 20, hours(9, 11)), at("T 16", 15, 30, 20, hours(14, 16))))
        .extracting(PaperPeriod::name)
        .containsExactly(
            "between 11:00 and 14:00, between 16:00 and 09:00", "between 14:00 and 16:00");
  }

  @Test
  void whatCoversNothingNeedsNoPaper() {
    assertThat(periods(DAY, at("T 15", 60, 70, 20, NIGHT))).isEmpty();
    assertThat(periods(at("T 15", 15, 30, 20, NIGHT))).isEmpty();
    // A higher speed hides nothing.
    assertThat(periods(DAY, at("T 15", 20, 40, 45, NIGHT))).isEmpty();
    assertThat(periods(DAY, at("T 15", 15, 30, 20, Optional.empty()))).isEmpty();
  }

  /** The last night is that of the tenth: then the day's paper is not the only other one. */
  @Test
  void hoursThatEndBeforeTheValidityHaveBoth() {
    LocalDateTime end = LocalDateTime.of(2026, 12, 10, 5, 0);
    List<PaperPeriod> periods = periods(DAY, until("T 15", 15, 30, 20, NIGHT, end));
    assertThat(periods)
        .extracting(PaperPeriod::name)
        .containsExactly("from 2026-12-10 05:00", "between 05:00 and 22:00 until 2026-12-10 05:00");
  }

  @Test
  void bothPapersSayWhenToUseWhich() {
    Assignment all = DOWN.withRestrictions(List.of(DAY, at("T 15", 15, 30, 20, NIGHT)));
    List<PaperPeriod> periods = PaperPeriods.of(all, FROM, TO);
    Words words = new Words(Messages.english(), DOWN.path());
    assertThat(new EditionWriter(all.beside(periods), words).facts())
        .containsExactly(
            new Fact(
                "Another paper",
                "Each day between 05:00 and 22:00, use the paper called “between 05:00 and 22:00”:"
                    + " it has the approach to T 12. If the run may last beyond these hours, use"
                    + " this paper. On it, keep to T 15 at all hours."));
    assertThat(new EditionWriter(all.in(periods.get(0)), words).facts())
        .containsExactly(
            new Fact(
                "Use it only",
                "Each day between 05:00 and 22:00. Not in force then: T 15. Brake for T 12 by this"
                    + " paper. If the run may last beyond these hours, use the other paper."));
  }
}
