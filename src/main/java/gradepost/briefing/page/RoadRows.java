package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.SeenWords;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedLatest;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedRung;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTarget;
import gradepost.told.Seen;
import java.util.ArrayList;
import java.util.Comparator;
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
    fallback()
        .ifPresent(
            brake -> out.add(new Table.Column(words.text("road.last-place", brake), "place")));
    out.add(new Table.Column(words.text("road.fails", service), "text"));
    return out;
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
   * One for the planned rail, and one for the poorest of those that are told otherwise; one alone
   * where nothing but the last place differs, with the earliest of them.
   *
   * @param link the page that tells it all
   */
  List<Table.Row> rows(RoadWriter.Braked braked, String link) {
    Rails rails = new Rails(braked);
    PrintedCase planned = rails.planned();
    String number = Integer.toString(braked.sheet().number());
    Optional<PrintedCase> earliest = rails.alone();
    String title = title(braked);
    List<Table.Row> out = new ArrayList<>();
    out.add(
        earliest
            .map(c -> row(number, words.text("road.any-rail", title), rails, c, link))
            .orElseGet(() -> row(number, title, rails, planned, link)));
    if (earliest.isEmpty()) {
      rails.poorest().ifPresent(p -> out.add(row("", rails.called(p), rails, p, link)));
    }
    return out;
  }

  private String title(RoadWriter.Braked braked) {
    String title = ApproachWriter.title(words, braked.approach().target());
    PrintedApplication application = braked.application();
    return braked.sheet().forStep(application)
        ? words.text("road.for-step", title, orders.purpose(application))
        : title;
  }

  private static Table.Row row(
      String number, String name, Rails rails, PrintedCase c, String link) {
    Rails.Told told = rails.told(c);
    List<String> cells = new ArrayList<>(List.of(number, name));
    cells.addAll(told.before());
    told.last().ifPresent(cells::add);
    cells.add(told.fails());
    return new Table.Row(cells, false, rails.grave(c), link);
  }

  /** The states of the rail at one application. */
  private final class Rails {
    private final RoadWriter.Braked braked;
    private final PrintedApplication application;
    private final PrintedTarget target;
    private final LadderCells ladder;

    Rails(RoadWriter.Braked braked) {
      this.braked = braked;
      this.application = braked.application();
      this.target = braked.sheet().target();
      this.ladder = new LadderCells(words, orders, braked.sheet(), application);
    }

    /**
     * What the cells behind the name say.
     *
     * @param last the last place for the next brake, where there is a column for it
     */
    record Told(List<String> before, Optional<String> last, String fails) {
      boolean alike(Told other) {
        return before.equals(other.before) && fails.equals(other.fails);
      }
    }

    PrintedCase planned() {
      return application.cases().get(0);
    }

    /** The instruction that begins it on the planned rail. */
    private PrintedStep step() {
      return braked.sheet().steps().get(application.line() - 1);
    }

    private Stream<PrintedCase> others() {
      return application.cases().stream().skip(1);
    }

    /** Where all are told alike but for the last place, that with the earliest. */
    Optional<PrintedCase> alone() {
      return others().findAny().isPresent()
              && others().allMatch(c -> told(c).alike(told(planned())))
          ? application.cases().stream().min(Comparator.comparingDouble(this::lastM))
          : Optional.empty();
    }

    /** Of the others that are told otherwise, the one with no point, or the earliest. */
    Optional<PrintedCase> poorest() {
      return others()
          .filter(c -> !told(c).equals(told(planned())))
          .reduce((p, c) -> pointM(c) <= pointM(p) ? c : p);
    }

    private double pointM(PrintedCase c) {
      return c.point()
          .map(p -> words.grid().metres(p.place(), braked.targetM()))
          .orElse(Double.NEGATIVE_INFINITY);
    }

    private double lastM(PrintedCase c) {
      return latest(c).flatMap(this::atM).orElse(Double.NEGATIVE_INFINITY);
    }

    private Optional<Double> atM(PrintedLatest latest) {
      return latest.match(
          at -> Optional.of(words.grid().metres(at.place(), braked.targetM())),
          nowhere -> Optional.empty());
    }

    /** Which rails its line is for; those that are as the planned one are named as such. */
    String called(PrintedCase poorest) {
      List<String> same = new ArrayList<>();
      List<String> other = new ArrayList<>();
      others()
          .forEach(
              c ->
                  (told(c).equals(told(planned())) ? same : other)
                      .add(c.equals(poorest) ? ladder.head(c) : c.rail()));
      String rails = words.text("road.rails", String.join(words.text("road.or"), other));
      return same.isEmpty()
          ? rails
          : words.text(
              "road.rails-same",
              rails,
              String.join(words.text("road.and"), same),
              planned().rail());
    }

    Told told(PrintedCase c) {
      List<String> cells = new ArrayList<>();
      Optional<PrintedPoint> point = c.point();
      Optional<String> night = point.flatMap(p -> seen.night(cue(p)));
      Optional<String> day = point.flatMap(p -> seen.day(cue(p))).or(() -> night);
      cells.add(
          c.equals(planned())
              ? words.place(application.point(), target)
              : point.map(p -> words.place(p.place(), target)).orElse(words.text("road.no-point")));
      cells.add(day.orElse(words.text("road.none")));
      cells.add(
          night.isPresent() && night.equals(day)
              ? words.text("road.as-by-day")
              : night.orElse(words.text("road.none")));
      cells.add(
          (c.equals(planned()) ? Optional.of(step().speed()) : point.flatMap(PrintedPoint::speed))
              .map(v -> Long.toString(v.number()))
              .orElse(words.text("dash")));
      cells.add(point.map(p -> pressures(c, p)).orElse(words.text("dash")));
      return new Told(
          cells,
          fallback().map(f -> last(c)),
          c.toUse().map(RoadRows.this::does).orElse(words.text("dash")));
    }

    private String last(PrintedCase c) {
      return latest(c)
          .map(
              l ->
                  l.match(
                      at -> words.place(at.place(), target), nowhere -> words.text("road.nowhere")))
          .orElse(words.text("dash"));
    }

    /** Up a terminal platform, for the first step, where that is earlier than for the stand. */
    private Optional<PrintedLatest> latest(PrintedCase c) {
      return c.stepLatest().or(() -> rung(c).map(PrintedRung::latest));
    }

    /** At the place that is told on the planned rail, a train that is no faster has its cue. */
    private Seen cue(PrintedPoint p) {
      boolean same = ladder.samePlace(p) && p.cue().equals(Seen.NOTHING);
      return same ? application.cues().seen() : p.cue();
    }

    /** Of the first application, and of the main one that follows it by the clock. */
    private String pressures(PrintedCase c, PrintedPoint p) {
      List<PrintedOrder> technique = c.equals(planned()) ? List.of(step().order()) : p.technique();
      return technique.stream()
          .takeWhile(o -> o.on().dropped().isEmpty())
          .flatMap(
              o ->
                  Stream.concat(
                      Stream.of(o.does()), o.further().stream().map(PrintedOrder.Further::does)))
          .flatMap(does -> does.brake().stream())
          .map(b -> orders.number(b.pressure()))
          .collect(Collectors.joining(words.text("road.then")));
    }

    /** Whether the train passes its mark or board all the same, or there is no point at all. */
    boolean grave(PrintedCase c) {
      return c.point().isEmpty() || c.toUse().filter(a -> !a.holds()).isPresent();
    }
  }

  /** The brake to use; marked where the train passes its mark or board all the same. */
  private String does(PrintedAnswer answer) {
    String brake = words.called(answer.brake());
    return answer.holds() ? brake : words.text("road.passes", brake);
  }
}
