package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.SeenWords;
import gradepost.briefing.word.Words;
import gradepost.plan.Application;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.plan.fallback.Latest;
import gradepost.stock.BrakeSystem;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedCommand.Stage;
import gradepost.told.PrintedLatest;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedRung;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A row of the road sheet for each approach with a braking point: all that is told elsewhere. */
final class RoadRows {
  private final Words words;
  private final ActionWords orders;
  private final SeenWords seen;
  private final String service;
  private final List<InstructionSheet> sheets;

  RoadRows(Plan plan, Words words) {
    this.words = words;
    this.orders = new ActionWords(words, plan.assignment().stock());
    this.seen = new SeenWords(words);
    this.service = plan.assignment().stock().service().shortName();
    this.sheets = plan.told().sheets();
  }

  List<Table.Column> columns() {
    List<Table.Column> out = new ArrayList<>();
    out.add(column("road.number", "number"));
    out.add(column("road.for", "text"));
    out.add(column("road.brake-at", "place"));
    out.add(column("road.day", "text"));
    out.add(column("road.night", "text"));
    out.add(new Table.Column(words.units().speedUnit(), "number"));
    out.add(new Table.Column(words.units().pressureUnit(), "number"));
    others().forEach(r -> out.add(new Table.Column(words.text("road.other-rail", r), "place")));
    fallback()
        .ifPresent(
            brake ->
                out.add(
                    new Table.Column(words.text("road.last-place", brake, planned()), "place")));
    out.add(new Table.Column(words.text("road.fails", service), "text"));
    return out;
  }

  /** The rail that the points are planned on. */
  private String planned() {
    return first().map(a -> a.cases().get(0).rail()).orElse("");
  }

  /** The other states of the rail. */
  private List<String> others() {
    return first()
        .map(a -> a.cases().stream().skip(1).map(PrintedCase::rail).toList())
        .orElse(List.of());
  }

  private Table.Column column(String key, String kind) {
    return new Table.Column(words.text(key), kind);
  }

  private Optional<PrintedApplication> first() {
    return sheets.stream().flatMap(s -> s.begun().stream()).findFirst();
  }

  /** What the brake is called that the first of several gives way to; the same on every sheet. */
  private Optional<String> fallback() {
    return first().flatMap(a -> rung(a.cases().get(0))).map(r -> r.brake().called());
  }

  private static Optional<PrintedRung> rung(PrintedCase c) {
    return c.ladder().stream()
        .filter(r -> r.brake().kind() == PrintedBrake.Kind.FALLBACK)
        .findFirst();
  }

  /**
   * @param link the page that tells it all
   */
  Table.Row row(RoadWriter.Braked braked, String link) {
    InstructionSheet sheet = braked.sheet();
    PrintedApplication application = braked.application();
    PrintedTarget target = sheet.target();
    PrintedStep step = sheet.steps().get(application.line() - 1);
    Optional<String> day = seen.day(application.cues().seen());
    Optional<String> night = seen.night(application.cues().seen());
    List<String> cells = new ArrayList<>();
    cells.add(Integer.toString(sheet.number()));
    String title = ApproachWriter.title(words, braked.approach().target());
    cells.add(
        sheet.forStep(application)
            ? words.text("road.for-step", title, orders.purpose(application))
            : title);
    cells.add(words.place(application.point(), target));
    cells.add(day.orElse(words.text("road.none")));
    cells.add(
        night.isPresent() && night.equals(day)
            ? words.text("road.as-by-day")
            : night.orElse(words.text("road.none")));
    cells.add(Long.toString(step.speed().number()));
    cells.add(pressures(step.order()));
    LadderCells alike = new LadderCells(words, orders, sheet, application);
    application.cases().stream()
        .skip(1)
        .map(c -> otherRail(application, c, target, alike))
        .forEach(cells::add);
    if (fallback().isPresent()) {
      cells.add(
          ofStep(braked)
              .or(() -> rung(application.cases().get(0)).map(r -> last(r.latest(), target)))
              .orElse(words.text("dash")));
    }
    Optional<PrintedAnswer> answer = application.told().toUse();
    cells.add(answer.map(a -> fails(application, a)).orElse(words.text("dash")));
    return new Table.Row(cells, false, answer.filter(a -> !a.suffices()).isPresent(), link);
  }

  /**
   * The point on another rail, told where it or its pressures are others; grave where there is
   * none, or where the brake to use is too late if the service brake fails there.
   */
  private String otherRail(
      PrintedApplication application, PrintedCase c, PrintedTarget target, LadderCells alike) {
    if (c.point().isEmpty()) {
      return words.text("road.other-none");
    }
    PrintedPoint point = c.point().get();
    boolean grave = grave(c);
    if (point.place().equals(application.point()) && alike.taughtAlike(point)) {
      return words.text(grave ? "road.other-same-grave" : "road.other-same");
    }
    return words.text(
        grave ? "road.other-at-grave" : "road.other-at", words.place(point.place(), target));
  }

  /** Whether on another rail the brake to use is too late if the service brake fails there. */
  static boolean anyGrave(RoadWriter.Braked braked) {
    return braked.application().cases().stream()
        .skip(1)
        .anyMatch(c -> c.point().isPresent() && grave(c));
  }

  private static boolean grave(PrintedCase c) {
    return c.toUse().filter(a -> !a.holds()).isPresent();
  }

  /** Of the first application, and of the main one that follows it. */
  private String pressures(PrintedOrder order) {
    return Stream.concat(
            Stream.of(order.does()), order.further().stream().map(PrintedOrder.Further::does))
        .flatMap(does -> does.brake().stream())
        .filter(b -> b.stage() == Stage.FIRST || b.stage() == Stage.MAIN)
        .map(b -> orders.number(b.pressure()))
        .collect(Collectors.joining(words.text("road.then")));
  }

  /**
   * Up a terminal platform, the last place at which the first step is still kept, where that is
   * earlier than the one for the stand.
   */
  private Optional<String> ofStep(RoadWriter.Braked braked) {
    return braked
        .approach()
        .first()
        .filter(Application::forStep)
        .flatMap(a -> earlier(a.cases().get(0), a.toStand().get(0)))
        .map(atM -> words.placeTo(atM, braked.approach().target()));
  }

  private static Optional<Double> earlier(CaseResult step, CaseResult stand) {
    return fallbackM(step).filter(atM -> fallbackM(stand).filter(standM -> standM < atM).isEmpty());
  }

  private static Optional<Double> fallbackM(CaseResult result) {
    return result.ladder().stream()
        .filter(r -> r.brake().role() == BrakeSystem.Role.FALLBACK)
        .findFirst()
        .flatMap(r -> r.latest().point())
        .map(Latest.Point::printedM);
  }

  private String last(PrintedLatest latest, PrintedTarget target) {
    return latest.match(
        at -> words.place(at.place(), target),
        nowhere -> words.text("road.nowhere", words.text(Reasons.key(nowhere.why()))));
  }

  /** On the rail that is told first, which is named where it is not the one planned on. */
  private String fails(PrintedApplication application, PrintedAnswer answer) {
    String does = does(answer);
    boolean onAny =
        application.cases().stream()
            .allMatch(c -> c.toUse().map(this::does).filter(does::equals).isPresent());
    return application.poorest() == 0 || onAny
        ? does
        : words.text("road.on-rail", application.told().rail(), does);
  }

  private String does(PrintedAnswer answer) {
    String brake = words.called(answer.brake());
    return answer
        .atTarget()
        .map(PrintedSpeed::text)
        .map(v -> words.text("road.passes", brake, v))
        .orElse(brake);
  }
}
