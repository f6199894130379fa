package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Fact;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Table;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Approach;
import gradepost.route.Junction;
import gradepost.route.Route;
import gradepost.route.place.Section;
import gradepost.task.CeilingStep;
import gradepost.units.Mileage;
import gradepost.units.Parsed;
import gradepost.units.QuantityKind;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: what the papers of the small lines say is so by the data, worked out here without the
 * code that says it.
 */
@Tag("slow")
class SaysWhatIsSoTest {
  private static final Pattern MILEAGE =
      Pattern.compile("(\\d+m \\d\\d(\\.\\d)?ch|\\d+\\.\\d+ km)");

  /** The posts along a chart are those of the page that it stands on. */
  private static boolean onAScale(Said said) {
    return said.where().contains("/ticks/");
  }

  /** One line of a place that is told whole: {@link LineSheetsTest} puts them together again. */
  private static boolean lineOfARow(Said said) {
    return said.where().contains("/set/place/");
  }

  @Test
  void aMileageThatTheLineHasTwiceIsToldWithItsSection() {
    int twice = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      Route route = paper.pack().route();
      for (Said said : Said.of(paper.part())) {
        if (lineOfARow(said)) {
          continue;
        }
        Matcher m = MILEAGE.matcher(said.text());
        while (m.find() && !onAScale(said)) {
          Mileage mileage = ((Parsed.Ok<Mileage>) QuantityKind.MILEAGE.parse(m.group())).value();
          List<String> on =
              route.sections().stream().filter(s -> s.holds(mileage)).map(Section::name).toList();
          String after = said.text().substring(m.end());
          boolean named = on.stream().anyMatch(s -> after.startsWith(" (" + s + ")"));
          assertThat(named).as("%s: %s", paper.name(), said).isEqualTo(on.size() > 1);
          twice += named ? 1 : 0;
        }
      }
    }
    assertThat(twice).isGreaterThan(200);
  }

  /** Every text of one paper of a line. */
  private static List<String> texts(Object part) {
    return Said.of(part).stream().map(Said::text).toList();
  }

  /** What the sheets of the line tell in their rows, and say of their drawings. */
  private static List<String> line(SmallLines.Paper paper) {
    List<String> out = new ArrayList<>();
    for (LineSheet sheet : paper.part().line()) {
      out.add(sheet.chart().says());
      sheet.chart().track().signs().forEach(s -> out.add(s.kind() + " " + s.text()));
      sheet.rows().forEach(r -> out.addAll(r.what()));
      sheet.rows().forEach(r -> out.addAll(r.todo()));
    }
    return out;
  }

  private static Table table(SmallLines.Paper paper, String name) {
    return paper.part().tables().stream()
        .filter(t -> t.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void whereNoSignalIsListedNothingIsSaidOfAny() {
    int bare = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      if (!paper.pack().route().signals().isEmpty()) {
        continue;
      }
      bare++;
      assertThat(texts(paper.part().approaches()))
          .noneMatch(
              t -> t.replace("do not say whether a signal comes first", "").contains("signal"));
      assertThat(line(paper)).noneMatch(t -> t.contains("signal"));
      assertThat(texts(paper.part().seldom())).noneMatch(t -> t.contains("signal"));
      assertThat(table(paper, "signals").whenEmpty()).isEqualTo("NONE supplied");
      assertThat(table(paper, "cautions").whenEmpty()).isEqualTo("NONE supplied");
    }
    assertThat(bare).isEqualTo(7);
  }

  /** What somebody looked for and did not find is no gap in the data. */
  @Test
  void whatWasLookedForIsNotToldAsNotSupplied() {
    int observed = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      boolean looked = !paper.pack().route().observations().isEmpty();
      boolean told =
          paper.part().notSupplied().contains("Gaps in the conductor rail: none in the data.");
      assertThat(told)
          .as(paper.name())
          .isEqualTo(paper.pack().route().railGaps().isEmpty() && !looked);
      if (looked) {
        observed++;
        assertThat(table(paper, "gaps").whenEmpty())
            .isEqualTo("NONE: none, checked on 2026-02-01.");
      }
    }
    assertThat(observed).isEqualTo(4);
  }

  /** The way's own speed is no leave to run at it where a lower one stands. */
  @Test
  void overPointsNoMoreIsToldThanIsPermissibleThere() {
    Pattern over = Pattern.compile(", (\\d+) (mph|km/h) over the points");
    int met = 0;
    int lower = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      for (Junction junction : paper.pack().route().junctions()) {
        String told =
            line(paper).stream()
                .filter(t -> t.startsWith(junction.name() + ": "))
                .findFirst()
                .orElseThrow();
        Matcher m = over.matcher(told);
        assertThat(m.find()).as(told).isTrue();
        double way = junction.routes().get(0).speed().metresPerSecond();
        double least = Math.min(way, Lowest.over(paper, junction.extent()));
        assertThat(Double.parseDouble(m.group(1)))
            .as("%s: %s", paper.name(), told)
            .isEqualTo(
                Math.floor(least / paper.plan().assignment().path().units().speedUnitMps() + 1e-6));
        met++;
        lower += least < way - 0.1 ? 1 : 0;
      }
    }
    assertThat(met).isEqualTo(8);
    assertThat(lower).isGreaterThanOrEqualTo(2);
  }

  /** A thing is told as a cue by night only where the data say that it serves by night. */
  @Test
  void aCueByNightIsOneThatTheDataGiveForTheNight() {
    int night = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      Route route = paper.pack().route();
      Set<String> lit = new TreeSet<>();
      route.landmarks().stream().filter(l -> l.night()).forEach(l -> lit.add(l.name()));
      route.signals().forEach(s -> lit.add("signal " + s.id()));
      for (ApproachPage page : paper.part().approaches()) {
        for (ApproachPage.Point point : page.points()) {
          for (Fact fact : point.goBy()) {
            boolean too = fact.value().endsWith(", by night or in fog too");
            if (too
                || (fact.label().equals("by night or in fog") && !fact.value().equals("NONE"))) {
              assertThat(lit)
                  .as("%s, %s: %s", paper.name(), page.title(), fact)
                  .anyMatch(name -> fact.value().contains(name));
              night++;
            }
          }
        }
      }
    }
    assertThat(night).isGreaterThan(3);
  }

  @Test
  void approachesSaidToHaveNoCueByNightAreThoseWhosePagesSayNone() {
    String begins = "Cues by night or in fog: none near a braking point of ";
    for (SmallLines.Paper paper : SmallLines.papers()) {
      List<String> said =
          paper.part().notSupplied().stream()
              .filter(t -> t.startsWith(begins))
              .flatMap(t -> Stream.of(t.substring(begins.length(), t.length() - 1).split("; ", -1)))
              .toList();
      List<String> expected = new ArrayList<>();
      for (ApproachPage page : paper.part().approaches()) {
        List<String> without = new ArrayList<>();
        for (ApproachPage.Point point : page.points()) {
          if (point.goBy().contains(new Fact("by night or in fog", "NONE"))) {
            without.add(point.number());
          }
        }
        if (!without.isEmpty()) {
          boolean all = without.size() == page.points().size();
          String some = " (action " + String.join(", ", without) + ")";
          expected.add(all ? page.title() : page.title() + some);
        }
      }
      assertThat(said).as(paper.name()).containsExactlyElementsOf(expected);
    }
  }

  /** A brake stands in the table of the page that speaks of it, with what is done if it fails. */
  @Test
  void everyApplicationIsToldOnThePageOfItsTarget() {
    int met = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      for (int i = 0; i < paper.part().approaches().size(); i++) {
        ApproachPage page = paper.part().approaches().get(i);
        Approach approach = paper.plan().approaches().get(i);
        assertThat(page.points())
            .as("%s, %s", paper.name(), page.title())
            .hasSameSizeAs(approach.applications());
        boolean braked = page.headline().contains(" Braking from ");
        assertThat(braked)
            .as("%s, %s: %s", paper.name(), page.title(), page.headline())
            .isEqualTo(page.actions().stream().anyMatch(a -> a.todo().contains("application")));
        met += page.points().size();
      }
    }
    assertThat(met).isGreaterThan(30);
  }

  /** Along the whole of its row, and nowhere a lower one. */
  @Test
  void aPermissibleSpeedIsTheLowestOfAllAndIsSetByWhatItsRowNames() {
    Pattern row = Pattern.compile("(?:rear clear: )?permissible speed (\\d+) [a-z/]+(?:: (.*))?");
    int rows = 0;
    int handedOn = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      double unit = paper.plan().assignment().path().units().speedUnitMps();
      List<Lowest> limits = Lowest.limits(paper);
      List<CeilingStep> steps = paper.plan().ceiling();
      List<Matcher> told =
          paper.part().line().stream()
              .flatMap(sheet -> sheet.rows().stream())
              .flatMap(r -> r.what().stream())
              .map(row::matcher)
              .filter(Matcher::matches)
              .toList();
      assertThat(told).hasSameSizeAs(steps);
      for (int i = 0; i < told.size(); i++) {
        Optional<String> setBy = Optional.ofNullable(told.get(i).group(2));
        double speed = Double.parseDouble(told.get(i).group(1));
        CeilingStep step = steps.get(i);
        double length = step.toM() - step.fromM();
        for (double at = step.fromM() + 0.01; at < step.toM(); at += Math.max(0.5, length / 300)) {
          double here = at;
          double lowest = Lowest.at(limits, here);
          assertThat(Math.floor(lowest / unit + 1e-6))
              .as("%s: %s at %.1f", paper.name(), told.get(i).group(), here)
              .isEqualTo(speed);
          assertThat(limits.stream().filter(l -> l.holds(here) && l.mps() <= lowest + 1e-9))
              .as("%s: %s at %.1f", paper.name(), told.get(i).group(), here)
              .anyMatch(l -> setBy.map(by -> by.contains(l.name())).orElse(true));
        }
        rows++;
        handedOn += setBy.filter(by -> by.contains(", then ")).isPresent() ? 1 : 0;
      }
    }
    assertThat(rows).isGreaterThan(60);
    assertThat(handedOn).isGreaterThanOrEqualTo(4);
  }

  /** A notice that begins after the paper does, or holds by night, is told with its time. */
  @Test
  void nothingIsToldAsInForceBeforeItsHour() {
    int later = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      for (TemporaryRestriction r : paper.plan().assignment().restrictions()) {
        boolean begins = r.imposed().isAfter(paper.pack().issue().validFrom());
        for (ApproachPage page : paper.part().approaches()) {
          if (page.target().contains("notice " + r.reference())) {
            assertThat(page.target().contains("(from " + moment(r.imposed())))
                .as("%s: %s", paper.name(), page.target())
                .isEqualTo(begins);
            later += begins ? 1 : 0;
          }
        }
        for (String text : line(paper)) {
          if (text.contains(": " + r.reference()) && text.startsWith("permissible speed")) {
            assertThat(text.contains("from " + moment(r.imposed())))
                .as("%s: %s", paper.name(), text)
                .isEqualTo(begins);
            assertThat(text.contains("between ")).isEqualTo(r.hours().isPresent());
          }
        }
      }
    }
    assertThat(later).isGreaterThanOrEqualTo(6);
  }

  private static String moment(LocalDateTime moment) {
    return moment.toString().replace('T', ' ');
  }

  /** Whole cars are isolated, rounded up: a fifth of two is one. */
  @Test
  void theCarsThatAreTakenAsIsolatedAreCounted() {
    int cut = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      double share = paper.plan().assignment().policy().safeSide().isolatedShare();
      int cars = paper.plan().assignment().formation().vehicles().size();
      List<String> reading = texts(paper.briefing().reading());
      if (share == 0) {
        assertThat(reading).noneMatch(t -> t.matches(".*here \\d+ of \\d+ cars.*"));
        continue;
      }
      cut++;
      String told = "20 %, here " + (int) Math.ceil(0.2 * cars) + " of " + cars + " cars";
      assertThat(reading).contains(told).anyMatch(t -> t.contains("Brakes isolated: " + told));
    }
    assertThat(cut).isEqualTo(11);
  }

  /** Where the brake is on for a lower speed beyond, nothing is told for this one alone. */
  @Test
  void aFasterTrainIsNotToldToBrakeForABoardWhenTheNextOneNeedsItEarlier() {
    int met = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      for (ApproachPage page : paper.part().approaches()) {
        String said = String.join(" ", page.unbraked());
        Matcher on = Pattern.compile("braking since .+ \\(see (.+?)\\)\\. If").matcher(said);
        Optional<ApproachPage> after =
            on.find() ? later(paper.part().approaches(), page, on.group(1)) : Optional.empty();
        if (after.isPresent()) {
          met++;
          assertThat(said)
              .as(page.title())
              .contains("braking since " + after.get().actions().get(0).where() + " (see ");
          assertThat(said)
              .as(page.title())
              .doesNotContain("the fastest possible and permitted here");
        }
      }
    }
    assertThat(met).isGreaterThanOrEqualTo(3);
  }

  private static Optional<ApproachPage> later(
      List<ApproachPage> pages, ApproachPage page, String title) {
    return pages.stream()
        .skip(pages.indexOf(page) + 1)
        .filter(p -> p.title().equals(title))
        .findFirst();
  }

  /** A train that is longer than its platform never stands within it: what is told is its front. */
  @Test
  void onlyTheFrontIsToldToBeWithinThePlatform() {
    int met = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      for (String text : texts(paper.part().approaches())) {
        if (text.contains("within the platform")) {
          assertThat(text).as(paper.name()).containsPattern("front .*within the platform");
          met++;
        }
      }
    }
    assertThat(met).isPositive();
  }
}
