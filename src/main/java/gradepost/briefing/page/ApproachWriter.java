package gradepost.briefing.page;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Plate;
import gradepost.briefing.Table;
import gradepost.briefing.chart.ApproachChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.PlateRule;
import gradepost.briefing.line.Views;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.SeenWords;
import gradepost.briefing.word.Standing;
import gradepost.briefing.word.Words;
import gradepost.pack.Pictures;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.task.Assignment;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedPassing;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** One approach on one page. */
public final class ApproachWriter {
  /** A curve is named that lies so near before the target, or behind a lower speed, m. */
  private static final double CURVE_BEFORE_M = 500;

  private static final double CURVE_BEHIND_M = 200;

  /** What stays free in the box of the picture, above and below. */
  private static final double AIR_MM = 3;

  private final Plan plan;
  private final Assignment assignment;
  private final Words words;
  private final Lineside lineside;
  private final Standing standing;
  private final ActionWords orders;
  private final SeenWords seen;
  private final CueWriter cues;
  private final LadderWriter ladder;
  private final BySpeedWriter bySpeed;
  private final FasterWriter faster;
  private final FindingWords findings;
  private final PlateWriter plates;
  private final PlateRule rule;
  private final ApproachChartWriter charts;
  private final ShownWriter shown;
  private final Run run;
  private final List<InstructionSheet> sheets;

  /** Without pictures. */
  public ApproachWriter(Plan plan, Lineside lineside, Standing standing) {
    this(plan, lineside, standing, new Views(lineside, Pictures.NONE));
  }

  public ApproachWriter(Plan plan, Lineside lineside, Standing standing, Views views) {
    this.shown = new ShownWriter(views, lineside.words().grid());
    this.standing = standing;
    this.plan = plan;
    this.assignment = plan.assignment();
    this.words = lineside.words();
    this.lineside = lineside;
    this.orders = new ActionWords(words, assignment.stock());
    this.seen = new SeenWords(words);
    this.cues = new CueWriter(words);
    this.ladder = new LadderWriter(words, orders, assignment.policy().noticing().seconds());
    this.bySpeed = new BySpeedWriter(words, orders);
    this.faster = new FasterWriter(words, orders);
    this.findings = new FindingWords(words);
    this.plates = new PlateWriter(words, orders);
    this.rule = new PlateRule(plan, lineside);
    this.run = new Run(plan.trace());
    this.charts = new ApproachChartWriter(plan, lineside, run);
    this.sheets = plan.told().sheets();
  }

  /** The page of one approach, for the part of the briefing with this identity. */
  public ApproachPage page(String part, Approach approach) {
    String id = part + "-a" + approach.number();
    String title = title(approach.target());
    InstructionSheet sheet = sheet(approach);
    String headline = String.join(" ", about(approach, sheet));
    List<ApproachPage.ActionLine> lines = lines(sheet);
    Plate.Grid grid = PlateWriter.grid(sheet);
    ApproachChart chart =
        charts.chart(id + "-chart", approach, title, headline, grid.pictureMm() - AIR_MM);
    List<Table> ladders = ladder.tables(id + "-ladder", sheet);
    List<Table> tables = new ArrayList<>(ladders);
    if (approach.applications().isEmpty()) {
      tables.add(0, new PassingWriter(words, run).table(id, approach, chart.track()));
    }
    List<ApproachPage.Point> points = points(approach, sheet);
    Optional<Plate> plate = Optional.empty();
    if (rule.holds(approach, sheet)) {
      Optional<Table> fails =
          sheet.begun().size() > 1
              ? ladder.inShort(id + "-fails", sheet)
              : ladders.stream().findFirst();
      Plate boxes = plates.plate(sheet, about(approach, sheet), fails, points);
      List<ApproachPage.ActionLine> own =
          lines.subList(Math.min(boxes.firstLine(), lines.size()), lines.size());
      plate =
          Optional.of(
              boxes.with(shown.of(sheet, approach.target().atM(), own, grid, boxes.section())));
    }
    return new ApproachPage(
        id,
        Integer.toString(approach.number()),
        title,
        targetLine(approach.target()),
        headline,
        marks(approach.target()),
        chart,
        lines,
        unbraked(sheet),
        points,
        tables,
        bySpeed.tables(id + "-by-speed", sheet),
        new SpreadWriter(words).says(sheet).stream().toList(),
        sheet.findings().stream().map(findings::of).toList(),
        plate,
        List.of());
  }

  private InstructionSheet sheet(Approach approach) {
    return sheets.stream().filter(s -> s.number() == approach.number()).findFirst().orElseThrow();
  }

  private List<ApproachPage.Point> points(Approach approach, InstructionSheet sheet) {
    List<ApproachPage.Point> out = new ArrayList<>();
    for (PrintedApplication application : sheet.begun()) {
      AnswerWriter answer =
          new AnswerWriter(words, assignment, approach.target(), sheet, application);
      boolean asked = answer.asked();
      out.add(
          new ApproachPage.Point(
              Integer.toString(application.line()),
              asked ? answer.question(assignment.stock().service().shortName()) : "",
              asked ? answer.rail() : "",
              asked ? answer.first() : "",
              asked ? answer.notes(sheet.named()) : List.of(),
              asked ? answer.last() : "",
              asked && answer.grave(),
              cues.goBy(application, application.line())));
    }
    return out;
  }

  /** How a lower speed is met for which no brake is put on; whoever is faster has to brake. */
  private List<String> unbraked(InstructionSheet sheet) {
    return sheet.passing().map(p -> unbraked(sheet, p)).orElse(List.of());
  }

  private List<String> unbraked(InstructionSheet sheet, PrintedPassing passing) {
    PrintedTarget target = sheet.target();
    String met =
        words.text(
            PassingWords.key("approach.unbraked", passing.brake()),
            words.place(target.at(), target),
            target.speed().map(PrintedSpeed::text).orElseThrow(),
            passing.speed().text(),
            passing.since().map(at -> words.place(at, target)).orElse(""),
            passing.sheet().map(this::titleOf).orElse(""));
    List<String> faster = sheet.faster().map(this.faster::sentences).orElse(List.of());
    return faster.size() < 2
        ? List.of((met + " " + String.join(" ", faster)).strip())
        : List.of(met, faster.get(0), String.join(" ", faster.subList(1, faster.size())));
  }

  /** What the page with this number is called. */
  private String titleOf(int number) {
    return plan.approaches().stream()
        .filter(a -> a.number() == number)
        .map(a -> title(a.target()))
        .findFirst()
        .orElseThrow();
  }

  private List<ApproachPage.ActionLine> lines(InstructionSheet sheet) {
    List<ApproachPage.ActionLine> out = new ArrayList<>();
    for (PrintedStep step : sheet.steps()) {
      int number = out.size() + 1;
      Optional<PrintedApplication> begun = sheet.begunBy(number);
      out.add(
          new ApproachPage.ActionLine(
              Integer.toString(number),
              orders.todo(step.order(), begun.filter(b -> sheet.named())),
              orders.when(step.order().on()),
              where(step, sheet.target()),
              see(step, sheet.target()),
              Long.toString(step.speed().number()),
              orders.gauge(step.order()),
              step.sinceLast().map(words::time).orElse(words.text("dash")),
              begun.isPresent()));
    }
    return out;
  }

  private String where(PrintedStep step, PrintedTarget target) {
    String place = words.place(step.where(), target);
    return step.order().on().atItsPlace() ? place : words.text("where.about", place);
  }

  private String see(PrintedStep step, PrintedTarget target) {
    return step.order().does().equals(new PrintedCommand.Stand()) && target.isStop()
        ? target.says()
        : seen.cell(step.seen());
  }

  private String title(Target.OfApproach target) {
    return title(words, target);
  }

  /** What the page of an approach to this target is called. */
  public static String title(Words words, Target.OfApproach target) {
    return target.match(
        stop -> words.text("approach.stop", stop.name(), stop.call().platform().number()),
        lower -> title(words, lower));
  }

  private static String title(Words words, Target.Reduction r) {
    String key =
        switch (r.kind()) {
          case PERMANENT -> "approach.permanent";
          case TEMPORARY -> "approach.temporary";
          case JUNCTION -> "approach.junction";
        };
    return words.text(key, r.name(), words.place(r.atM()));
  }

  private String targetLine(Target.OfApproach target) {
    return target.match(
        stop ->
            words.text(
                "headline.stop",
                stop.markText(),
                words.place(stop.atM()),
                words.hand(lineside.seen(stop.call().platform().side()))),
        this::targetLine);
  }

  private String targetLine(Target.Reduction r) {
    String key =
        r.kind() == Target.Reduction.Kind.TEMPORARY ? "headline.temporary" : "headline.reduction";
    return words.text(
        key,
        words.speed(r.fromMps()),
        words.speed(r.speedMps()),
        words.place(r.atM()),
        standing
            .beginsText(r.reference())
            .map(when -> words.text("cause.when", r.reference(), when))
            .orElse(r.reference()));
  }

  /** What it is, where, from what speed, on what track: a sentence each. */
  private List<String> about(Approach approach, InstructionSheet sheet) {
    Target.OfApproach target = approach.target();
    List<String> parts = new ArrayList<>();
    parts.add(targetLine(target));
    Optional<String> warned =
        target.match(
            stop -> Optional.empty(),
            lower ->
                Optional.of(
                    lower
                        .warningM()
                        .map(w -> words.text("headline.warned", words.place(w)))
                        .orElse(words.text("headline.not-warned"))));
    warned.ifPresent(parts::add);
    double from = words.grid().metres(sheet.from(), target.atM());
    sheet.speed().ifPresent(v -> parts.add(words.text("headline.from", v.text())));
    steepest(from, target.atM()).ifPresent(parts::add);
    double behind = target.isLowerSpeed() ? CURVE_BEHIND_M : 0;
    bends(Math.max(from, target.atM() - CURVE_BEFORE_M), target.atM() + behind)
        .min(
            Comparator.comparing((TrackStrip.Bend b) -> !(b.checkLeft() || b.checkRight()))
                .thenComparingDouble(TrackStrip.Bend::radiusM))
        .ifPresent(
            b ->
                parts.add(
                    words.text(
                        b.checkLeft() || b.checkRight()
                            ? "headline.curve-checked"
                            : "headline.curve",
                        b.text(),
                        words.text(b.left() ? "hand.left" : "hand.right"),
                        words.place(b.fromM()))));
    tests(approach).stream()
        .filter(BrakeTest::made)
        .forEach(
            t ->
                parts.add(
                    words.text(
                        "headline.brake-test",
                        words.place(t.atM()),
                        words.speed(t.plannedMps()),
                        words.speed(t.speedAfterMps()))));
    return parts;
  }

  private Stream<TrackStrip.Bend> bends(double fromM, double toM) {
    return lineside.bends().stream().filter(b -> b.toM() > fromM && b.fromM() < toM);
  }

  /** The steepest fall and the steepest rise of a stretch. */
  private Optional<String> steepest(double fromM, double toM) {
    DoubleSummaryStatistics permille =
        lineside.slopes().stream()
            .filter(s -> s.toM() > fromM && s.fromM() < toM)
            .mapToDouble(s -> s.permille())
            .summaryStatistics();
    if (permille.getCount() == 0) {
      return Optional.empty();
    }
    String level = words.text("gradient.level.short");
    String fall = permille.getMin() < 0 ? words.slope(permille.getMin()) : level;
    String rise = permille.getMax() > 0 ? words.slope(permille.getMax()) : level;
    String key =
        fall.equals(level)
            ? rise.equals(level) ? "headline.slope-level" : "headline.slope-rise"
            : rise.equals(level) ? "headline.slope-fall" : "headline.slope-both";
    return Optional.of(words.text(key, words.place(fromM), fall, rise));
  }

  /** The running brake tests between the target before this one and this one. */
  private List<BrakeTest> tests(Approach approach) {
    double from =
        plan.approaches().stream()
            .filter(a -> a.number() < approach.number())
            .mapToDouble(a -> a.target().atM())
            .max()
            .orElse(0);
    return plan.brakeTests().stream()
        .filter(t -> t.atM() > from && t.atM() <= approach.target().atM())
        .toList();
  }

  private String marks(Target target) {
    return target.stop().map(this::marks).orElse("");
  }

  private String marks(Target.Stop stop) {
    String marks =
        Stops.marks(assignment, stop.call().platform()).stream()
            .map(
                m ->
                    words.text(
                        "stop-mark.at", m.cars(), words.place(words.path().metresAt(m.location()))))
            .collect(Collectors.joining("; "));
    String out = marks.isEmpty() ? words.text("stop-mark.none") : marks;
    return stop.buffersM()
        .map(b -> words.text("stop-mark.buffers", out, words.room(b - stop.atM())))
        .orElse(out);
  }
}
