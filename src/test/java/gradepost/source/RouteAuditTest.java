package gradepost.source;

import org.junit.jupiter.api.Test;

/**
 * Each rule of the audit that needs no train, word for word at its place. The bounds are common
 * practice unless a source stands beside them.
 */
class RouteAuditTest {

  @Test
  void aRouteWithoutMistakesHasNoFindings() {
    Expect.finding("name: Small line", "name: Small line", "");
  }

  /** Closure: arithmetic; 70 chains at 1 in 80 fall by 17.6 m. */
  @Test
  void gradientsThatDoNotCloseOnSurveyedHeights() {
    Expect.finding(
        "height: 82.4 m",
        "height: «100 m",
        "warning: from 0m 10ch (Valley) to 1m 00ch the gradients add up to -17.6 m, the heights to"
            + " +0.0 m; allowed: a difference of 2.2 m at most [gradient-closure]");
  }

  @Test
  void heightsWithinTheRoundingOfTheGradientsClose() {
    Expect.finding("height: 82.4 m", "height: 84.0 m", "");
    Expect.finding("height: 82.4 m", "height: 270.3 ft", "");
  }

  @Test
  void aGradientWithADigitLeftOut() {
    Expect.finding(
        "1 in 66 rising",
        "«1 in 26 rising",
        "warning: 1 in 26 rising from 2m 00ch to 0m 60ch (Harbour); allowed: 1 in 30 (33.3"
            + " permille) at most [gradient-steep]");
  }

  @Test
  void sectionsThatNearlyMeet() {
    Expect.among(
        "{name: Mill, from: 12m 20ch, to: 11m 20ch}",
        "{name: Mill, from: 12m 20ch, to: 11m 20ch}\n  - {name: Cut, from: «11m 19ch, to: 10m 70ch}",
        "warning: Mill ends at 11m 20ch and Cut begins at 11m 19ch, 22 yd apart; allowed: one mileage"
            + " at the seam, or an accepted jump [mileage-jump]\n  Maybe 11m 20ch");
  }

  /** 200 m: read in a secondary source (British practice). */
  @Test
  void aSharpCurveWithoutCheckRail() {
    Expect.among(
        "curves:\n",
        "curves:\n  - {from: 0m 62ch, to: 0m 69ch, hand: left, radius: «198 m, cant: 100 mm}\n",
        "warning: the curve from 0m 62ch to 0m 69ch has 198 m radius and no check"
            + " rail; allowed: a check rail on a passenger curve of 200 m or less"
            + " [check-rail-missing]\n  Maybe check-rail: low rail");
  }

  @Test
  void aCheckRailOnTheWrongSideOfTheHand() {
    Expect.finding(
        "radius: 14 ch, cant: 75 mm, check-rail: low rail",
        "radius: 14 ch, cant: 75 mm, check-rail: «high rail",
        "warning: the curve from 1m 10ch to 1m 40ch has its check rail beside the high rail, on the right; allowed: the low rail, the inner one of the curve"
            + " [check-rail-side]\n  Maybe check-rail: low rail");
  }

  /** The curve turns left for the forward train, which comes to it at 1m 10ch. */
  @Test
  void aCheckRailLandmarkThatTheCurveContradicts() {
    String by = "landmarks:\n";
    Expect.finding(
        by,
        by + "  - {name: check rail, at: 1m 11ch, side: «right, night: no, sighting: 50 yd}\n",
        "warning: the landmark check rail at 1m 11ch is on the right, the check rail on the left; allowed: the side of the check rail, forward [check-rail-landmark]\n"
            + "  Maybe side: left");
    Expect.finding(
        by,
        by
            + "  - «{name: check rail begins, at: 1m 10ch, side: left, night: no, sighting: 50 yd}\n",
        "warning: the landmark check rail begins at 1m 10ch is where the check rail ends for a"
            + " train going Up; allowed: a name for each direction [check-rail-landmark]\n"
            + "  Maybe directions: Down");
    Expect.finding(
        by,
        by
            + "  - {name: check rail begins, at: 1m 10ch, side: left, night: no, sighting: 50 yd,"
            + " directions: Down}\n"
            + "  - {name: check rail ends, at: 1m 10ch, side: left, night: no, sighting: 50 yd,"
            + " directions: Up}\n",
        "");
  }

  /** One name for two ends is no mistake where no train meets both. */
  @Test
  void aNameThatEachDirectionMeetsOnce() {
    String by = "landmarks:\n";
    String end = ", side: left, night: no, sighting: 50 yd, directions: ";
    Expect.finding(
        by,
        by
            + "  - {name: wall begins, at: 1m 11ch"
            + end
            + "Down}\n"
            + "  - {name: wall begins, at: 1m 15ch"
            + end
            + "Up}\n",
        "");
    Expect.among(
        by,
        by
            + "  - {name: wall begins, at: 1m 11ch"
            + end
            + "Down}\n"
            + "  - {name: wall begins, at: «1m 15ch"
            + end
            + "both}\n",
        "warning: the landmark wall begins is at 1m 15ch, and at 1m 11ch too; allowed: a name that"
            + " no other landmark has [name-place]");
  }

  /** Cant of 150 mm at most, 110 mm at platforms: British design practice, secondary source. */
  @Test
  void cantAboveWhatIsUsual() {
    Expect.finding(
        "curves:\n",
        "curves:\n  - {from: 0m 62ch, to: 0m 69ch, hand: left, radius: 30 ch, cant: «160 mm}\n",
        "warning: the curve from 0m 62ch to 0m 69ch has 160 mm of cant; allowed:"
            + " 150 mm at most [cant-high]");
    Expect.finding(
        "curves:\n",
        "curves:\n  - {from: 0m 72ch, to: 0m 78ch, hand: left, radius: 30 ch, cant: «120 mm}\n",
        "warning: the curve from 0m 72ch to 0m 78ch has 120 mm of cant at Weir Lane, platform 1;"
            + " allowed: 110 mm at most [cant-high]");
  }

  /**
   * R 200 m, cant 100 mm, deficiency 90 mm: 56.5 km/h; R 400, 150, 110: 93.5 km/h (from memory; the
   * formula has a test of its own). Here R 20 ch (402.3 m), cant 100 mm: 11.82 · 80.47² / 402.3 −
   * 100 = 90.2 mm is within 110 mm, and at 17 ch (342.0 m) it is 123.8 mm.
   */
  @Test
  void aSpeedThatTheCurveDoesNotBear() {
    Expect.finding(
        "curves:\n",
        "curves:\n  - {from: 0m 62ch, to: 0m 69ch, hand: left, radius: 20 ch, cant: 100 mm}\n",
        "");
    Expect.finding(
        "curves:\n",
        "curves:\n  - «{from: 0m 62ch, to: 0m 69ch, hand: left, radius: 17 ch, cant: 100 mm}\n",
        "warning: the curve from 0m 62ch to 0m 69ch has 342 m radius and 100 mm of cant. 50 mph (Line speed) needs 124 mm of cant deficiency; allowed: 110 mm at most,"
            + " that is 45 mph [curve-speed]");
  }

  @Test
  void anAcceptedFindingComesBackWhenTheDataChange() {
    Expect.finding(
        "radius: 30 ch}",
        "radius: 29 ch}",
        "line/route.yaml:26:5: warning: the curve from 1m 60ch to 1m 70ch has 583 m radius and 0 mm of cant. 50 mph (Line speed) needs 131 mm of cant deficiency; allowed: 110 mm at most,"
            + " that is 45 mph [curve-speed]\n"
            + "line/route.yaml:117:5: warning: curve-speed is accepted here, but no finding has"
            + " these words; allowed: a finding of today, word for word"
            + " [accepted-unfound]\n"
            + "  Maybe the curve from 1m 60ch to 1m 70ch has 583 m radius and 0 mm of cant. 50 mph (Line speed) needs 131 mm of cant deficiency");
  }

  /** A third or 20 mph: FRA Safety Advisory 2015-03. */
  @Test
  void aBigDropWithoutWarningBoard() {
    Expect.finding(
        "      - {kind: warning, at: 0m 65ch, direction: Down}\n",
        "",
        "line/route.yaml:41:7: warning: Down trains drop from 50 mph to 25 mph at 1m 05ch (Mill"
            + " curve) without a warning board; allowed: a warning board for a drop of a third or"
            + " of more than 20 mph (32 km/h) [big-drop]");
  }

  @Test
  void aBoardOnTheWrongSide() {
    Expect.finding(
        "{kind: commencement, at: 1m 05ch,",
        "{kind: commencement, at: «1m 15ch,",
        "warning: the commencement board of Mill curve for Down trains is at 1m 15ch; allowed:"
            + " at 1m 05ch [board-place]");
  }

  @Test
  void aSignalWithoutAwsOnAFittedLine() {
    Expect.finding(
        "landmarks:",
        "  - «{id: WL 14, kind: distant, at: 1m 78ch, direction: Down, line: Down Main}\nlandmarks:",
        "warning: signal WL 14 at 1m 78ch has no AWS, but other signals of Down Main have it; allowed:"
            + " AWS at every signal that can show caution on a fitted line [aws-missing]");
  }

  /** 180 m (200 yd) before the signal is usual. */
  @Test
  void aMagnetOnTheWrongSideOfItsSignal() {
    Expect.finding(
        "aws: 1m 66ch",
        "aws: «1m 78ch",
        "warning: the AWS magnet of signal WL 12 lies 66 yd beyond it; allowed: 109 yd to 328 yd"
            + " before it [aws-place]");
  }

  @Test
  void aSignalOrPlatformOffItsLine() {
    Expect.finding(
        "landmarks:",
        "  - {id: WL 13, kind: stop, at: 1m 10ch, direction: Up, line: «Siding}\nlandmarks:",
        "warning: signal WL 13 at 1m 10ch is for Siding, but that line does not exist there; allowed: a"
            + " line that exists there [off-line]");
    Expect.finding(
        "lines: [Up Main]\n        side",
        "lines: «[Siding]\n        side",
        "warning: none of the lines of platform 2 of Weir Lane exists there; allowed: a line that"
            + " reaches the platform [off-line]");
  }

  @Test
  void aStopMarkOutsideItsPlatform() {
    Expect.finding(
        "{cars: 8, at: 0m 76ch,",
        "{cars: 8, at: «0m 77ch,",
        "warning: Down: the 8-car mark at 0m 77ch is 22 yd off platform 1 of Weir Lane; allowed: from 0m 70ch to 0m 76ch [mark-off-platform]");
  }

  @Test
  void buffersBeforeTheMark() {
    Expect.finding(
        "buffer-stops: {section: Harbour, at: 0m 58ch}",
        "buffer-stops: «{section: Harbour, at: 0m 56.5ch}",
        "warning: the buffer stops of platform 1 of Harrow Quay are at 0m 57ch (Harbour), within"
            + " the platform; allowed: at or beyond an end of the platform [mark-past-buffers]");
  }

  @Test
  void oneEntryOutOfTheOrderOfItsList() {
    Expect.finding(
        "landmarks:\n",
        "landmarks:\n"
            + "  - {name: ramp, at: 1m 00ch, side: left, night: no, sighting: 300 yd}\n"
            + "  - {name: shed, at: 1m 01ch, side: left, night: no, sighting: 300 yd}\n"
            + "  - {name: hut, at: «0m 75ch, side: left, night: no, sighting: 300 yd}\n"
            + "  - {name: mast, at: 1m 06ch, side: left, night: no, sighting: 300 yd}\n",
        "warning: the landmark hut at 0m 75ch is listed between 1m 01ch and 1m 06ch; allowed: a"
            + " mileage in the order of the list [out-of-order]");
  }

  @Test
  void aLandmarkThatDisagreesWithAnotherMention() {
    Expect.finding(
        "landmarks:\n",
        "landmarks:\n  - {name: signal WL 12, at: «1m 15ch, side: left, night: yes, sighting: 9 yd}\n",
        "warning: the landmark signal WL 12 is at 1m 15ch, the signal WL 12 at 1m 75ch; allowed:"
            + " within 55 yd [name-place]");
    Expect.finding(
        "landmarks:\n",
        "landmarks:\n"
            + "  - {name: mast, at: 1m 01ch, side: left, night: no, sighting: 300 yd}\n"
            + "  - {name: mast, at: «1m 06ch, side: left, night: no, sighting: 300 yd}\n",
        "warning: the landmark mast is at 1m 06ch, and at 1m 01ch too; allowed: a name that no other"
            + " landmark has [name-place]");
  }

  @Test
  void twoNamesForOnePlaceAndTwoSpellings() {
    Expect.finding(
        "structures:\n",
        "structures:\n  - {kind: tunnel, name: Weir tunnel, from: 1m 50ch, to: 1m 58ch}\n",
        "line/route.yaml:97:26: warning: \"Weir tunnel\" and \"Weir Tunnel\" are at one place, 1m"
            + " 50ch; allowed: one name for one thing [two-names]\n"
            + "line/route.yaml:97:26: warning: \"Weir Tunnel\" is spelt \"Weir tunnel\" elsewhere;"
            + " allowed: one spelling [two-names]\n  Maybe Weir tunnel");
  }

  @Test
  void oneKeyInTwoSystemsOfUnits() {
    Expect.finding(
        "landmarks:\n",
        "landmarks:\n  - {name: mast, at: 1m 01ch, side: left, night: no, sighting: «300 m}\n",
        "warning: sighting \"300 m\" is in other units than \"300 yd\" on line 95, column 91; allowed:"
            + " one system of units for all values of a key [units-mixed]");
  }

  @Test
  void whatIsEmptyHasToBeObserved() {
    Expect.finding(
        "low-adhesion:\n  - {name: Weir wood, from: 1m 42ch, to: 1m 50ch, note: leaf fall}\n",
        "",
        "line/route.yaml:1:1: note: no low-adhesion sites; allowed: entries, or an observation"
            + " of low-adhesion sites, such as \"none known, checked on 2026-10-01\" [not-supplied]");
    Expect.finding(
        "\"as surveyed on 2026-10-01\"",
        "«as surveyed",
        "warning: the observation of speed boards has no date; allowed: a statement with a date,"
            + " such as \"none known, checked on 2026-10-01\" [observation-undated]");
  }
}
