package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.ride.Measured;
import gradepost.ride.Ride;
import gradepost.source.file.SourceFiles;
import gradepost.source.ride.RideAsked;
import gradepost.units.Speed;
import gradepost.yaml.Reading;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is told of a ride that cannot be read, and where. */
class RideProblemsTest {
  private static final Plan PLAN = DemoPlans.plan(0);

  private static final RideAsked ASKED =
      new RideAsked(
          "1",
          "Down",
          "4-car",
          () -> PLAN.approaches().stream().map(a -> "Approach " + a.number()).toList(),
          Optional.empty(),
          Optional.empty());

  private static Reading<Ride> read(byte[] bytes) {
    return new Sources(name -> new SourceFiles.Bytes(bytes)).rideFile("ride.csv").over(PLAN, ASKED);
  }

  private static Reading<Ride> read(String text) {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          approach,spead\\n1,44 mph | 1:10: error: there is no column "spead"; allowed: approach, name, braked at, speed, first pressure, stop error, over, forbidden movements, note\\n  Maybe speed
          approach,speed,speed\\n1,, | 1:16: error: the column "speed" is given twice; allowed: each once
          name,speed\\nx,44 mph | 1:1: error: the column "approach" is missing; allowed: approach, name, braked at, speed, first pressure, stop error, over, forbidden movements, note
          approach,speed\\n1,44 | 2:3: error: speed "44" has no unit; allowed: a speed, such as 40 mph or 64 km/h\\n  Maybe 44 mph or 44 km/h
          approach,speed\\n1,44 mph,x | 2:1: error: the line has 3 cells; allowed: 2, as many as there are headings
          approach,speed\\n99,44 mph | 2:1: error: there is no approach "99"; allowed: a number from 1 to 16
          approach,speed\\n1,44 mph\\n\\n1,40 mph | 4:1: error: approach 1 is given twice, first on line 2, column 1; allowed: each approach once
          approach,stop error\\n1,4 yd | 2:3: error: stop error "4 yd" does not say which way; allowed: at mark, or a length with short or past, such as 3 yd short\\n  Maybe 4 yd short or 4 yd past
          approach,braked at\\n1,12m 20ch | 2:3: error: braked at "12m 20ch" is not on approach 1; allowed: a mileage from 1m 60ch (Valley) to 3m 20ch
          approach,first pressure\\n13,15 psi | 2:4: error: first pressure is given for approach 13, but that needs no brake; allowed: an empty cell
          approach,stop error\\n5,at mark | 2:3: error: stop error is given for approach 5, but that is not a stop; allowed: an empty cell
          approach,forbidden movements\\n1,few | 2:3: error: forbidden movements "few" is not a count; allowed: none, or how many there were
          approach,speed\\n1, | 1:1: error: nothing was filled in; allowed: one observation at least
          approach,speed | 1:1: error: the file has a line of headings only; allowed: a line of headings, then a line for each approach or sample
          approach,note\\n1,"never closed | 2:3: error: a quotation mark is not closed; allowed: a second one
          distance,speed (mph)\\n0,0\\n9,9 | 1:1: error: the heading "distance" has no unit; allowed: a length, such as 20 m, 60 yd, 7 ch or 64 ft 6 in, as in distance (m)\\n  Maybe distance (m)
          distance (m),speed (psi)\\n0,0\\n9,9 | 1:14: error: the unit "psi" is not known; allowed: a speed, such as 40 mph or 64 km/h, as in speed (mph)
          distance (m),speed (mph)\\n0,0\\n9,-9 | 3:3: error: the speed is below zero; allowed: a speed that is not negative
          distance (m),speed (mph)\\n0,0\\n90,9\\n50,9 | 4:1: error: the distance goes back; allowed: distances that do not decrease; --from and --to cut one run out of an export that holds more
          distance (m),speed (mph)\\n0,0\\n90,fast | 3:4: error: speed "fast" is not a number; allowed: a number in the unit of the heading
          time,distance (m),speed (mph)\\n06:12,0,0\\nsoon,9,9 | 3:1: error: time "soon" is no time; allowed: seconds, such as 1342.5, a time of day, such as 06:12:03, or a day and a time
          approach,name,speed\\n1,Elsewhere,44 mph | 2:3: error: approach 1 is called "Elsewhere" here, but "Approach 1" in the pack; allowed: the form of this issue, direction and formation
          formation,8-car\\napproach,speed\\n1,44 mph | 1:11: error: the form is for formation "8-car", the report for "4-car"; allowed: the same on both
          approach,speed\\n1,420 mph | 2:3: error: speed "420 mph" is impossible; allowed: what a train on this route can do
          distance (m);notch;speed (km/h)\\n0;off;0\\n9;Full;3,5 | 3:3: error: notch "Full" is not known; allowed: off, 0 to 4, or Shunt, Series, Parallel, Weak field
          distance (m),speed (mph)\\n0,0 | 2:1: error: there is one sample only; allowed: two at least
          """)
  void isToldAtItsPlace(String text, String problem) {
    Reading<Ride> reading = read(text.replace("\\n", "\n"));
    assertThat(reading).isInstanceOf(Reading.Rejected.class);
    assertThat(reading.problems().text())
        .isEqualTo("ride.csv:" + problem.replace("\\n", "\n") + "\n");
  }

  @Test
  void anotherCodePageIsToldAndRead() {
    byte[] text = "approach,speed,note\n1,44 mph,caf\u00e9\n".getBytes(StandardCharsets.ISO_8859_1);
    Reading<Ride> reading = read(text);
    assertThat(reading.found()).isPresent();
    assertThat(reading.problems().text())
        .startsWith("ride.csv:1:1: note: the file is not in UTF-8, and is read as Windows-1252\n");
  }

  @Test
  void aSpreadsheetsFileIsReadAsItComes() {
    String text =
        "\uFEFFApproach;Speed;Note\r\n1;\"44 mph\";\"said \"\"late\"\"\r\nby day\"\r\n2;;\r\n";
    Ride.Typed ride = (Ride.Typed) ((Reading.Good<Ride>) read(text)).value();
    assertThat(ride.approaches().get(0).brakedSpeedMps().map(Measured::value))
        .contains(Speed.ofMph(44).metresPerSecond());
    assertThat(ride.approaches().get(1).brakedSpeedMps()).isEmpty();
  }
}
