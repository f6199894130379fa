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
import gradepost.ride.TiedRun;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The report on an assessed ride: briefed against driven. */
public final class RideReport {
  /**
   * Who and when; empty where it was not given.
   *
   * @param on the day of the ride
   */
  public record Named(Optional<LocalDate> on, String driver, String assessor) {}

  private final Course course;
  private final BriefingFacts taught;
  private final RideFindings findings;

  public RideReport(Course course) {
    this.course = course;
    this.taught = course.taught();
    findings = new RideFindings(course);
  }

  /**
   * The report of one ride, sheet by sheet.
   *
   * @param file what the ride was read from, by its name
   * @param named by whom it was driven and assessed, and when, where that was given
   */
  public Papers of(RideResult result, String file, Named named) {
    Optional<LocalDate> on = named.on();
    List<Fact> facts = new ArrayList<>();
    told(facts, "signoff.driver", named.driver());
    told(facts, "signoff.assessor", named.assessor());
    facts.add(new Fact(text("signoff.report.file"), file));
    on.ifPresent(day -> facts.add(new Fact(text("signoff.report.day"), day.toString())));
    List<Sheet> sheets = new ArrayList<>();
    sheets.add(summary(result, named));
    Optional<Sheet> charts = result.run().map(run -> charts(run, result));
    charts.ifPresent(sheets::add);
    return course.papers("signoff.report.kind", facts, sheets);
  }

  private void told(List<Fact> facts, String key, String value) {
    if (!value.isEmpty()) {
      facts.add(new Fact(text(key), value));
    }
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  private Sheet summary(RideResult result, Named named) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Verdict(verdict(result)));
    blocks.add(new Words(text("signoff.report.says")));
    blocks.add(new Grid(table(result), false));
    List<String> faults = findings.faults(result);
    blocks.add(new Heading(text("signoff.report.findings")));
    blocks.add(
        faults.isEmpty() ? new Words(text("signoff.report.no-findings")) : new Items(faults));
    listed(blocks, "signoff.report.slight", findings.slight(result));
    listed(blocks, "signoff.report.unseen", findings.unseen(result));
    result
        .run()
        .ifPresent(
            run -> {
              blocks.add(new Heading(text("signoff.report.scales")));
              blocks.add(new Grid(course.table("scales", findings.scales(run)), false));
            });
    blocks.add(new Words(text(source(result))));
    blocks.add(new Heading(text("signoff.report.rule")));
    blocks.add(new Items(RideSheet.rules(course)));
    List<Fact> fields = new ArrayList<>();
    fields.add(new Fact(text("signoff.driver"), named.driver()));
    fields.add(new Fact(text("signoff.assessor"), named.assessor()));
    boolean passed = result.outcome() == RideResult.Outcome.PASSED;
    if (passed) {
      named
          .on()
          .ifPresent(
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

  private Sheet charts(TiedRun run, RideResult result) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Words(text("signoff.report.chart-says")));
    new RunCharts(taught, run, result).rows().forEach(c -> blocks.add(new Drawn(c)));
    return new Sheet("so-charts", text("signoff.report.charts"), blocks);
  }

  private void listed(List<Block> blocks, String heading, List<String> items) {
    if (!items.isEmpty()) {
      blocks.add(new Heading(text(heading)));
      blocks.add(new Items(items));
    }
  }

  private static String source(RideResult result) {
    return result
        .run()
        .map(run -> run.pressures() ? "signoff.report.recorded" : "signoff.report.no-pressure")
        .orElse("signoff.report.typed");
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
                  + marked(a, Aspect.POINT, o.brakedAtM().map(at -> taught.place(at.value()))),
              p.brakingPointM().map(b -> findings.apart(o.brakedAtM(), b)).orElse(""),
              (p.brakingPointM().isPresent() ? taught.number(p.brakingSpeedMps()) : text("dash"))
                  + "\n"
                  + marked(a, Aspect.SPEED, o.brakedSpeedMps().map(v -> nearest(v.value()))),
              a.briefedPressurePa().map(taught::pressure).orElse(text("dash"))
                  + "\n"
                  + marked(a, Aspect.PRESSURE, o.firstPressurePa().map(taught::pressure)),
              p.target().isStop()
                  ? marked(a, Aspect.STOP, o.stopErrorM().map(findings::stop))
                  : text("dash"),
              marked(a, Aspect.PERMISSIBLE, o.over().map(findings::overCell)),
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
}
