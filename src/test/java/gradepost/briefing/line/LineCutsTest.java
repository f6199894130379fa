package gradepost.briefing.line;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.line.LineCuts.Cut;
import gradepost.briefing.line.LineCuts.Leg;
import gradepost.briefing.line.LineCuts.Place;
import gradepost.briefing.line.LineCuts.Weight;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Property: whatever stands there, no sheet holds more than it has room for. */
class LineCutsTest {
  private static final int ROOM = 900;

  private static List<Weight> even(double fromM, double toM, int count, int heightPx) {
    List<Weight> out = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      out.add(new Weight(fromM + (toM - fromM) * (i + 0.5) / count, false, heightPx));
    }
    return out;
  }

  private static List<Weight> all(List<Weight> a, List<Weight> b) {
    List<Weight> out = new ArrayList<>(a);
    out.addAll(b);
    out.sort(Comparator.comparingDouble(Weight::atM));
    return out;
  }

  private static List<Place> posts(double toM) {
    List<Place> out = new ArrayList<>();
    for (double at = 400; at < toM; at += 400) {
      out.add(new Place(at, false));
    }
    return out;
  }

  private static Leg leg(double fromM, double toM) {
    return new Leg(fromM, toM, false);
  }

  @Test
  void shortLegsShareASheetAndItIsCutAtAStation() {
    List<Leg> legs = List.of(leg(0, 1500), leg(1500, 3000), leg(3000, 4600));
    List<Weight> fixed = even(0, 4600, 18, 16);
    List<Cut> cuts = new LineCuts(legs, fixed, fixed, posts(4600), ROOM).cuts();
    assertThat(cuts).extracting(Cut::toM).containsExactly(3000.0, 4600.0);
  }

  @Test
  void aLongLegIsCutAtAPost() {
    List<Leg> legs = List.of(leg(0, 9000));
    List<Weight> fixed = even(0, 9000, 30, 16);
    List<Cut> cuts = new LineCuts(legs, fixed, fixed, posts(9000), ROOM).cuts();
    assertThat(cuts).hasSize(3);
    assertThat(cuts.get(0).toM() % 400).isZero();
    assertThat(cuts).allMatch(c -> c.toM() - c.fromM() <= LineCuts.MOST_M);
  }

  /** Three legs of which no two fit together: the middle one is shared out between two sheets. */
  @Test
  void aSheetMoreIsDearerThanACutBetweenStations() {
    List<Leg> legs = List.of(leg(0, 2000), leg(2000, 4000), leg(4000, 6000));
    List<Weight> fixed = even(0, 6000, 60, 16);
    List<Cut> cuts = new LineCuts(legs, fixed, fixed, posts(6000), ROOM).cuts();
    assertThat(cuts).hasSize(2);
    assertThat(cuts.get(0).toM()).isStrictlyBetween(2000.0, 4000.0);
    assertThat(cuts.get(0).toM() % 400).isZero();
  }

  /** Of two cuts that leave as many sheets, one at a signal comes before one at a post. */
  @Test
  void aSignalIsABetterPlaceThanAPost() {
    List<Leg> legs = List.of(leg(0, 6000));
    List<Weight> fixed = even(0, 6000, 60, 16);
    List<Place> places = new ArrayList<>(posts(6000));
    places.add(new Place(3100, true));
    List<Cut> cuts = new LineCuts(legs, fixed, fixed, places, ROOM).cuts();
    assertThat(cuts).extracting(Cut::toM).containsExactly(3100.0, 6000.0);
  }

  /** Rows that do not fit cut their own sheet and no other. */
  @Test
  void whatIsNewSomewhereMovesNoCutElsewhere() {
    List<Leg> legs = List.of(leg(0, 1500), leg(1500, 3000), leg(3000, 4600), leg(4600, 6200));
    List<Weight> fixed = even(0, 6200, 24, 16);
    List<Cut> before = new LineCuts(legs, fixed, fixed, posts(6200), ROOM).cuts();
    List<Weight> more = all(fixed, even(200, 1400, 50, 16));
    List<Cut> after = new LineCuts(legs, more, fixed, posts(6200), ROOM).cuts();
    assertThat(before).extracting(Cut::toM).containsExactly(3000.0, 6200.0);
    assertThat(after).extracting(Cut::toM).containsSequence(1500.0, 3000.0, 6200.0);
  }

  /** What does not fit any more goes to the sheet beside it, where that has room. */
  @Test
  void aSheetThatIsTooFullSharesWithTheNext() {
    List<Leg> legs = List.of(leg(0, 4000), leg(4000, 6500));
    List<Weight> fixed = all(even(0, 4000, 42, 16), even(4000, 6500, 12, 16));
    List<Cut> before = new LineCuts(legs, fixed, fixed, posts(6500), ROOM).cuts();
    List<Weight> more = all(fixed, even(3000, 3900, 20, 16));
    List<Cut> after = new LineCuts(legs, more, fixed, posts(6500), ROOM).cuts();
    assertThat(before).extracting(Cut::toM).containsExactly(4000.0, 6500.0);
    assertThat(after).hasSize(2);
    assertThat(after.get(0).toM()).isLessThan(4000);
    assertThat(after).allMatch(c -> c.toM() - c.fromM() <= LineCuts.MOST_M);
  }

  @Test
  void noSheetIsFullerThanItMayBeAndEveryRowIsOnOne() {
    Random random = new Random(1919);
    for (int run = 0; run < 400; run++) {
      List<Leg> legs = new ArrayList<>();
      double end = 0;
      for (int i = 0; i < 1 + random.nextInt(8); i++) {
        double to = end + 300 + random.nextInt(9000);
        legs.add(leg(end, to));
        end = to;
      }
      List<Weight> rows = new ArrayList<>();
      for (int i = 0; i < random.nextInt(500); i++) {
        rows.add(new Weight(random.nextDouble() * end, false, 16 + 14 * random.nextInt(4)));
      }
      for (Leg leg : legs) {
        rows.add(new Weight(leg.fromM(), true, 30));
      }
      rows.sort(Comparator.comparingDouble(Weight::atM));
      List<Weight> fixed = rows.stream().filter(w -> w.heightPx() < 40).toList();
      List<Cut> cuts = new LineCuts(legs, rows, fixed, posts(end), ROOM).cuts();
      int row = 0;
      double at = 0;
      for (Cut cut : cuts) {
        assertThat(cut.fromRow()).isEqualTo(row);
        assertThat(cut.fromM()).isEqualTo(at);
        assertThat(cut.toM()).isGreaterThan(cut.fromM());
        List<Weight> held = rows.subList(cut.fromRow(), cut.toRow());
        assertThat(held.stream().mapToInt(Weight::heightPx).sum()).isLessThanOrEqualTo(ROOM);
        assertThat(held)
            .allMatch(w -> w.atM() >= cut.fromM() - 1e-6 && w.atM() <= cut.toM() + 1e-6);
        row = cut.toRow();
        at = cut.toM();
      }
      assertThat(row).isEqualTo(rows.size());
      assertThat(at).isEqualTo(end);
    }
  }
}
