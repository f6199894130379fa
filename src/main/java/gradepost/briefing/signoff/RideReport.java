package gradepost.briefing.signoff;

import static gradepost.briefing.signoff.Course.row;

import gradepost.briefing.Fact;
import gradepost.briefing.Table;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.briefing.signoff.Sheet.Block;
import gradepost.briefing.signoff.Sheet.Drawn;
import gradepost.briefing.signoff.Sheet.Fields;
import gradepost.briefing.signoff.Sheet.Grid;
import gradepost.briefing.signoff.Sheet.Heading;
import gradepost.briefing.signoff.Sheet.Items;
import gradepost.briefing.signoff.Sheet.Lines;
import gradepost.briefing.signoff.Sheet.Verdict;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.plan.Approach;
import gradepost.ride.Ride;
import gradepost.ride.RideResult;
import gradepost.ride.RideResult.Aspect;
import gradepost.ride.RideResult.OfApproach;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The report on an assessed ride: briefed against driven. */
public final class RideReport {
  private final Course course;
  private final BriefingFacts taught;

  public RideReport(Course course) {
    this.course = course;
    this.taught = course.taught();
  }

  /**
   * The report of one ride, sheet by sheet.
   *
   * @param file what the ride was read from, by its name
   * @param on the day of the ride, where it was given
   */
  public Papers of(Ride ride, RideResult result, String file, Optional<LocalDate> on) {
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact(text("signoff.report.file"), file));
    on.ifPresent(day -> facts.add(new Fact(text("signoff.report.day"), day.toString())));
    List<Sheet> sheets = new ArrayList<>();
    sheets.add(summary(ride, result, on));
    Optional<Sheet> charts =
        ride.match(typed -> Optional.empty(), recorded -> Optional.of(charts(recorded, result)));
    charts.ifPresent(sheets::add);
    return course.papers("signoff.report.kind", facts, sheets);
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  private Sheet summary(Ride ride, RideResult result, Optional<LocalDate> on) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Verdict(verdict(result)));
    blocks.add(new Words(text("signoff.report.says")));
    blocks.add(new Grid(table(result), false));
    List<String> findings = findings(result);
    blocks.add(new Heading(text("signoff.report.findings")));
    if (findings.isEmpty()) {
      blocks.add(new Words(text("signoff.report.no-findings")));
    } else {
      blocks.add(new Items(findings));
    }
    blocks.add(new Words(text(source(ride))));
    blocks.add(new Heading(text("signoff.report.rule")));
    blocks.add(new Items(RideSheet.rules(course)));
    List<Fact> fields = new ArrayList<>();
    fields.add(new Fact(text("signoff.driver"), ""));
    fields.add(new Fact(text("signoff.assessor"), ""));
    boolean passed = result.outcome() == RideResult.Outcome.PASSED;
    if (passed) {
      on.ifPresent(
          day ->
              fields.add(
                  new Fact(
                      text("signoff.lapses-on"),
                      text(
                          "signoff.report.lapses",
                          RecordSheets.lapse(course.rules().currency(), day)))));
    }
    blocks.add(new Fields(fields));
    blocks.add(new Lines(text("signoff.action-plan"), 3));
    return new Sheet("so-report", text("signoff.report.title"), blocks);
  }

  private Sheet charts(Ride.Recorded recorded, RideResult result) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Words(text("signoff.report.chart-says")));
    new RunCharts(taught, recorded, result).rows().forEach(c -> blocks.add(new Drawn(c)));
    return new Sheet("so-charts", text("signoff.report.charts"), blocks);
  }

  private String source(Ride ride) {
    return ride.match(
        typed -> "signoff.report.typed",
        recorded ->
            recorded.pressures() ? "signoff.report.recorded" : "signoff.report.no-pressure");
  }

  private String verdict(RideResult r) {
    String key = "outcome." + r.outcome().name().toLowerCase(Locale.ROOT);
    String share = r.observed() == 0 ? "–" : Course.percent(r.points() / (double) r.observed());
    return text(key, r.points(), r.observed(), share, r.possible());
  }

  private Table table(RideResult result) {
    List<List<String>> rows = new ArrayList<>();
    for (OfApproach a : result.approaches()) {
      Approach p = a.approach();
      Ride.Observed o = a.observed();
      int good = (int) a.marks().stream().filter(m -> m.good().orElse(false)).count();
      int seen = (int) a.marks().stream().filter(m -> m.good().isPresent()).count();
      rows.add(
          row(
              Integer.toString(p.number()),
              taught.title(p),
              p.brakingPointM().map(taught::place).orElse(text("dash"))
                  + "\n"
                  + marked(a, Aspect.POINT, o.brakedAtM().map(taught::place)),
              p.brakingPointM().map(b -> apart(o.brakedAtM(), b)).orElse(""),
              (p.brakingPointM().isPresent() ? taught.number(p.brakingSpeedMps()) : text("dash"))
                  + "\n"
                  + marked(a, Aspect.SPEED, o.brakedSpeedMps().map(this::nearest)),
              a.briefedPressurePa().map(taught::pressure).orElse(text("dash"))
                  + "\n"
                  + marked(a, Aspect.PRESSURE, o.firstPressurePa().map(taught::pressure)),
              p.target().isStop()
                  ? marked(a, Aspect.STOP, o.stopErrorM().map(this::stop))
                  : text("dash"),
              marked(a, Aspect.PERMISSIBLE, o.overMps().map(this::over)),
              marked(a, Aspect.HANDLES, o.forbidden().map(n -> Integer.toString(n))),
              good + "/" + seen));
    }
    return course.table("driven", rows);
  }

  /** A value as driven; a triangle before what lies outside the bounds. */
  private String marked(OfApproach a, Aspect aspect, Optional<String> value) {
    return value.map(v -> (a.outside(aspect) ? "▲ " : "") + v).orElse(text("dash"));
  }

  private String nearest(double mps) {
    return Long.toString(Math.round(taught.speedValue(mps)));
  }

  private String apart(Optional<Double> at, double point) {
    return at.map(
            x -> {
              double by = x - point;
              if (Math.abs(by) < taught.units().lengthUnitM()) {
                return text("signoff.report.on-point");
              }
              String length = taught.nearestLength(Math.abs(by));
              return text(by < 0 ? "signoff.report.early" : "signoff.report.late", length);
            })
        .orElse("");
  }

  private String stop(double error) {
    String length = taught.nearestLength(Math.abs(error));
    return text(error >= 0 ? "signoff.report.short" : "signoff.report.past", length);
  }

  private String over(double mps) {
    return mps < 0.05 ? text("signoff.report.none") : "+" + nearestTenth(mps);
  }

  private String nearestTenth(double mps) {
    return String.format(Locale.ROOT, "%.1f", taught.speedValue(mps));
  }

  private List<String> findings(RideResult result) {
    List<String> out = new ArrayList<>();
    for (OfApproach a : result.approaches()) {
      String name = taught.title(a.approach());
      Ride.Observed o = a.observed();
      if (a.outside(Aspect.PERMISSIBLE)) {
        out.add(
            text(
                "found.over",
                name,
                nearestTenth(o.overMps().orElseThrow()) + " " + taught.units().speedUnit()));
      }
      if (a.outside(Aspect.STOP)) {
        out.add(text("found.stop", name, stop(o.stopErrorM().orElseThrow())));
      }
      if (a.outside(Aspect.HANDLES)) {
        out.add(text("found.handles", name, o.forbidden().orElseThrow()));
      }
      if (a.outside(Aspect.POINT)) {
        out.add(
            text(
                "found.point",
                name,
                apart(o.brakedAtM(), a.approach().brakingPointM().orElseThrow())));
      }
    }
    return out;
  }
}
