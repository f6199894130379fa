package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.ride.Ride;
import gradepost.source.file.SourceFiles;
import gradepost.source.ride.RideAsked;
import gradepost.yaml.Reading;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Recorders' exports are read as they come. */
class ExportsTest {
  private static final Plan PLAN = DemoPlans.plan(0);

  private static Reading<Ride> read(byte[] bytes, String from, String to) {
    RideAsked asked =
        new RideAsked(
            "1",
            "Down",
            "4-car",
            List::of,
            Optional.of(from).filter(f -> !f.isEmpty()),
            Optional.of(to).filter(t -> !t.isEmpty()));
    return new Sources(name -> new SourceFiles.Bytes(bytes)).rideFile("ride.csv").over(PLAN, asked);
  }

  private static List<Ride.Sample> samples(String text) {
    return samples(text.getBytes(StandardCharsets.UTF_8), "", "");
  }

  private static List<Ride.Sample> samples(byte[] bytes, String from, String to) {
    Reading<Ride> reading = read(bytes, from, to);
    assertThat(reading.found()).as(reading.problems().text()).isPresent();
    return ((Ride.Recorded) reading.found().orElseThrow()).samples();
  }

  @Test
  void moreColumnsThanAreUsedAreToldAndLeft() {
    String text =
        "Unit no,Distance (m),Doors,Speed (mph),AWS,Brake pipe (bar)\n7,0,shut,0,,5\n7,9,shut,4,,5\n";
    assertThat(samples(text)).hasSize(2);
    assertThat(read(text.getBytes(StandardCharsets.UTF_8), "", "").problems().text())
        .startsWith(
            "ride.csv:1:1: note: columns not used: Unit no, Doors, Brake pipe (bar); allowed: ");
  }

  @Test
  void linesBeforeTheHeadingsAreLeft() {
    assertThat(
            samples("Download of unit 7\nsince;Monday\n\ndistance (m);speed (mph)\n0;0\n9;4,5\n"))
        .hasSize(2)
        .last()
        .satisfies(s -> assertThat(s.speedMps()).isCloseTo(4.5 * 0.44704, within(1e-9)));
  }

  @Test
  void tabsAndSemicolonsAndDecimalCommas() {
    for (String separator : List.of("\t", ";")) {
      String text =
          "distance (km)|speed [km/h]|notch\n0|0|off\n0,5|36,0|\n".replace("|", separator);
      List<Ride.Sample> all = samples(text);
      assertThat(all.get(1).countedM()).isCloseTo(500, within(1e-9));
      assertThat(all.get(1).speedMps()).isCloseTo(10, within(1e-9));
      assertThat(all.get(0).notch()).contains(-1);
      assertThat(all.get(1).notch()).isEmpty();
    }
  }

  @Test
  void unitsInOtherSpellings() {
    assertThat(samples("distance [miles],speed (MPH)\n0,0\n1,30\n").get(1).countedM())
        .isCloseTo(1609.344, within(1e-6));
  }

  @Test
  void markedAndOtherCodePages() {
    String text = "distance (m),speed (mph),note\n0,0,\n9,4,caf\u00e9\n";
    for (Charset set :
        List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16, Charset.forName("windows-1252"))) {
      String marked = set.equals(StandardCharsets.UTF_8) ? "\uFEFF" + text : text;
      assertThat(samples(marked.getBytes(set), "", "")).as(set.name()).hasSize(2);
    }
  }

  @Test
  void emptyCellsAndSmallNegativesAndShortLines() {
    List<Ride.Sample> all =
        samples("distance (m),speed (mph),pressure (psi)\n0,-0.4,\n5,,12\n9,4,-0.1\nend of file\n");
    assertThat(all).hasSize(2);
    assertThat(all.get(0).speedMps()).isZero();
    assertThat(all.get(0).pressurePa()).isEmpty();
    assertThat(all.get(1).pressurePa()).contains(0.0);
  }

  @Test
  void oneRunIsCutOutOfAShift() {
    String text =
        "time,distance (m),speed (mph)\n"
            + "05:58:00,900,0\n05:59:00,1200,20\n06:00:00,0,0\n06:01:00,300,20\n06:02:00,700,0\n06:09:00,5,0\n";
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    List<Ride.Sample> all = samples(bytes, "06:00", "06:02:30");
    assertThat(all).extracting(Ride.Sample::countedM).containsExactly(0.0, 300.0, 700.0);
    assertThat(read(bytes, "", "").problems().text()).contains("--from and --to");
    assertThat(read(bytes, "07:00", "").problems().text())
        .contains("fewer than two lines lie between the times");
  }

  @Test
  void aClockThatPassesMidnightGoesOn() {
    String text = "time,distance (m),speed (mph)\n23:59:50,0,0\n23:59:58,20,9\n00:00:06,60,12\n";
    assertThat(samples(text).get(2).timeS()).contains(16.0);
    assertThat(samples(text.getBytes(StandardCharsets.UTF_8), "", "00:00:01")).hasSize(2);
  }

  @Test
  void daysAndTimesAndPlacesPassed() {
    String text =
        "time,distance (m),speed (mph),passed\n"
            + "2026-11-23T06:12:03.5,0,0,\n2026-11-23T06:13:00,800,30,2m 20ch\n";
    List<Ride.Sample> all = samples(text);
    assertThat(all.get(1).timeS()).contains(56.5);
    assertThat(all.get(1).passedM()).isPresent();
  }
}
