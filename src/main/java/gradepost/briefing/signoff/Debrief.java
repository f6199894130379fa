package gradepost.briefing.signoff;

import gradepost.briefing.Fact;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.briefing.signoff.Sheet.Block;
import gradepost.briefing.signoff.Sheet.Drawn;
import gradepost.briefing.signoff.Sheet.Heading;
import gradepost.briefing.signoff.Sheet.Items;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.plan.Approach;
import gradepost.ride.RideResult;
import gradepost.ride.RideResult.Aspect;
import gradepost.ride.RideResult.OfApproach;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One page for the driver: the run over the plan for the whole road, the approaches to work on with
 * what to do differently, and what was done well.
 */
public final class Debrief {
  /** No more can be worked on at a time. */
  private static final int MOST = 3;

  private final Course course;
  private final BriefingFacts taught;
  private final RideFindings findings;

  /** For a ride of this course. */
  public Debrief(Course course) {
    this.course = course;
    this.taught = course.taught();
    findings = new RideFindings(course);
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  /** The page. */
  public Papers of(RideResult result, RideReport.Named named) {
    List<Block> blocks = new ArrayList<>();
    result
        .run()
        .ifPresent(run -> blocks.add(new Drawn(new RunCharts(taught, run, result).whole())));
    blocks.add(new Heading(text("signoff.debrief.work-on")));
    List<OfApproach> lost =
        result.approaches().stream()
            .filter(a -> weight(a) > 0)
            .sorted(Comparator.comparingInt(Debrief::weight).reversed())
            .toList();
    if (lost.isEmpty()) {
      blocks.add(new Words(text("signoff.debrief.nothing")));
    } else {
      lost.stream().limit(MOST).forEach(a -> blocks.add(new Items(toDo(a, result))));
      if (lost.size() > MOST) {
        blocks.add(new Words(text("signoff.debrief.more", lost.size() - MOST)));
      }
    }
    blocks.add(new Heading(text("signoff.debrief.well")));
    blocks.add(new Items(well(result)));
    List<Fact> facts = new ArrayList<>();
    if (!named.driver().isEmpty()) {
      facts.add(new Fact(text("signoff.driver"), named.driver()));
    }
    named.on().ifPresent(day -> facts.add(new Fact(text("signoff.report.day"), day.toString())));
    return course.papers(
        "signoff.debrief.kind",
        facts,
        List.of(new Sheet("so-debrief", text("signoff.debrief.title"), blocks)));
  }

  /** What can hurt someone weighs most. */
  private static int weight(OfApproach a) {
    int sum = 0;
    for (Aspect aspect : Aspect.values()) {
      if (a.outside(aspect)) {
        sum +=
            switch (aspect) {
              case PERMISSIBLE, STOP -> 3;
              case POINT, HANDLES -> 2;
              case SPEED, PRESSURE -> 1;
            };
      }
    }
    return sum;
  }

  private List<String> toDo(OfApproach a, RideResult result) {
    List<String> out = new ArrayList<>(findings.faults(a, result));
    Approach p = a.approach();
    boolean braking =
        a.outside(Aspect.POINT) || a.outside(Aspect.SPEED) || a.outside(Aspect.PRESSURE);
    if (braking) {
      out.add(
          text(
              "signoff.debrief.next-time",
              text(
                  "signoff.debrief.brake-at",
                  taught.place(p.brakingPointM().orElseThrow()),
                  taught.speed(p.brakingSpeedMps()),
                  a.briefedPressurePa().map(taught::pressure).orElse(text("dash")))));
    } else if (a.outside(Aspect.PERMISSIBLE)) {
      out.add(text("signoff.debrief.next-time", text("signoff.debrief.be-down")));
    } else if (a.outside(Aspect.STOP)) {
      out.add(
          text(
              "signoff.debrief.next-time",
              text("signoff.debrief.mark", taught.place(p.target().atM()))));
    } else {
      out.add(text("signoff.debrief.next-time", text("signoff.debrief.handle")));
    }
    return out;
  }

  private List<String> well(RideResult result) {
    List<String> out = new ArrayList<>();
    long brakes = good(result, Aspect.POINT, true);
    long ofBrakes = good(result, Aspect.POINT, true) + good(result, Aspect.POINT, false);
    long kept = good(result, Aspect.PERMISSIBLE, true);
    long ofKept = kept + good(result, Aspect.PERMISSIBLE, false);
    if (ofBrakes > 0) {
      out.add(text("signoff.debrief.well-brakes", brakes, ofBrakes));
    }
    if (ofKept > 0) {
      out.add(text("signoff.debrief.well-speed", kept, ofKept));
    }
    List<String> whole =
        result.approaches().stream()
            .filter(a -> weight(a) == 0 && a.marks().stream().anyMatch(m -> m.good().isPresent()))
            .map(a -> taught.title(a.approach()))
            .toList();
    if (!whole.isEmpty()) {
      out.add(text("signoff.debrief.well-all", String.join(", ", whole)));
    }
    return out;
  }

  private static long good(RideResult result, Aspect aspect, boolean good) {
    return result.approaches().stream()
        .flatMap(a -> a.marks().stream())
        .filter(m -> m.aspect() == aspect && m.good().filter(g -> g == good).isPresent())
        .count();
  }
}
