package gradepost.briefing.line;

import gradepost.briefing.word.Words;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Puts what is told of each place into rows: a row for a place, and at a stop one for the stand and
 * one for the start, both at the mark, as the page of the stop has them.
 */
final class LineRows {
  /** Something that is told of a place. */
  record Told(double atM, String text) {}

  /**
   * A row before it is set on a sheet.
   *
   * @param place with its section where another has that mileage too, and {@code within} without
   * @param begun which of what is to do begins an application for a target; −1 where none does
   * @param approach that it belongs to, by its number; 0 where it belongs to none
   * @param starts whether the train leaves a stop
   * @param views of what is there
   */
  record Row(
      double atM,
      String place,
      String within,
      String speed,
      List<String> what,
      List<String> todo,
      int begun,
      int approach,
      boolean heading,
      boolean starts,
      List<Views.View> views) {
    private Row with(Views.View view) {
      List<Views.View> all = new ArrayList<>(views);
      all.add(view);
      return new Row(
          atM,
          place,
          within,
          speed,
          what,
          todo,
          begun,
          approach,
          heading,
          starts,
          List.copyOf(all));
    }

    /** Whether its place is told with its section. */
    boolean inSection() {
      return !place.equals(within);
    }

    /** Its place below that of another row: of the same section, without its name. */
    String placeBelow(Row before) {
      return inSection() && section().equals(before.section()) ? within : place;
    }

    private String section() {
      return place.substring(within.length());
    }
  }

  /** What a train does at one place, one after another. */
  private enum Phase {
    PASSES,
    STANDS,
    STARTS
  }

  /**
   * What is to be done at a place comes after what is seen there.
   *
   * @param approach that it belongs to; 0 where to none
   * @param handledMps the speed at which a handle is moved; empty where none is
   */
  private record Item(
      double atM,
      Phase phase,
      String text,
      boolean todo,
      boolean heading,
      boolean falls,
      boolean begins,
      int approach,
      OptionalDouble handledMps) {}

  private final Words words;
  private final Run run;
  private final List<Approach> approaches;
  private final Stands stands;
  private final double startM;
  private final List<Item> items = new ArrayList<>();
  private final List<Views.View> views = new ArrayList<>();

  LineRows(Plan plan, Words words, Run run) {
    this.words = words;
    this.run = run;
    this.startM = plan.trace().points().get(0).atM();
    this.approaches = plan.approaches();
    this.stands = Stands.of(plan, run);
  }

  void see(double atM, String text, boolean heading) {
    add(atM, Phase.PASSES, text, heading, false, 0);
  }

  /** A lower permissible speed begins. */
  void falls(double atM, String text) {
    add(atM, Phase.PASSES, text, false, true, 0);
  }

  void show(Views.View view) {
    views.add(view);
  }

  void stands(Approach approach, String text) {
    add(approach.target().atM(), Phase.STANDS, text, false, false, approach.number());
  }

  private void add(
      double atM, Phase phase, String text, boolean heading, boolean falls, int approach) {
    items.add(
        new Item(
            Math.max(0, atM),
            phase,
            text,
            false,
            heading,
            falls,
            false,
            approach,
            OptionalDouble.empty()));
  }

  /**
   * An instruction.
   *
   * @param begins whether it begins an application for a target
   */
  void action(Action action, String text, boolean begins) {
    Phase phase = phase(action);
    double at = phase == Phase.PASSES ? action.atM() : Approach.standM(approaches, action.atM());
    OptionalDouble mps = OptionalDouble.of(action.speedMps());
    if (phase == Phase.STARTS) {
      add(at, phase, words.text("line.start"), false, false, 0);
    }
    items.add(
        new Item(Math.max(0, at), phase, text, true, false, false, begins, action.approach(), mps));
  }

  private Phase phase(Action action) {
    boolean starts =
        action.command().isPower() && (action.trigger().isStart() || stands.hold(action.atM()));
    return action.command().isStand() ? Phase.STANDS : starts ? Phase.STARTS : Phase.PASSES;
  }

  List<Told> told() {
    return items.stream().map(i -> new Told(i.atM(), i.text())).toList();
  }

  List<Row> rows() {
    items.sort(
        Comparator.comparingDouble(Item::atM)
            .thenComparing(Item::phase)
            .thenComparing(Item::todo)
            .thenComparing(i -> !i.heading()));
    List<Row> out = new ArrayList<>();
    int i = 0;
    while (i < items.size()) {
      int from = i;
      while (i < items.size() && together(items.subList(from, i), items.get(i))) {
        i++;
      }
      out.add(row(items.subList(from, i)));
    }
    return shown(out);
  }

  /** A picture stands where it is told what is there, nearest to its thing. */
  private List<Row> shown(List<Row> rows) {
    List<Row> out = new ArrayList<>(rows);
    for (Views.View view : views) {
      IntStream.range(0, out.size())
          .filter(i -> !out.get(i).what().isEmpty())
          .boxed()
          .min(Comparator.comparingDouble(i -> Math.abs(out.get(i).atM() - view.atM())))
          .ifPresent(i -> out.set(i, out.get(i).with(view)));
    }
    return out;
  }

  /** A handle movement has a row of its own if its speed differs from that of the row. */
  private boolean together(List<Item> here, Item other) {
    if (here.isEmpty()) {
      return true;
    }
    Item first = here.get(0);
    boolean handled = here.stream().anyMatch(i -> i.handledMps().isPresent());
    boolean ownSpeed = other.handledMps().isPresent() || (other.falls() && handled);
    boolean sameSpeed =
        other.phase() != Phase.PASSES || !ownSpeed || speed(List.of(other)).equals(speed(here));
    return sameSpeed
        && other.phase() == first.phase()
        && other.atM() - first.atM() < words.units().placeStepM()
        && words.place(other.atM()).equals(words.place(first.atM()));
  }

  private Row row(List<Item> here) {
    Item first = here.get(0);
    double end = stands.last().map(Stands.Stand::markM).orElse(words.path().lengthM());
    List<String> todo = here.stream().filter(Item::todo).map(Item::text).toList();
    return new Row(
        first.atM(),
        words.place(first.atM()),
        words.placeWithin(first.atM()),
        first.atM() <= end + 1 ? speed(here) : "",
        here.stream().filter(i -> !i.todo()).map(Item::text).distinct().toList(),
        todo,
        here.stream().filter(Item::begins).findFirst().map(i -> todo.indexOf(i.text())).orElse(-1),
        here.stream().mapToInt(Item::approach).filter(a -> a > 0).findFirst().orElse(0),
        here.stream().anyMatch(Item::heading),
        first.phase() == Phase.STARTS,
        List.of());
  }

  /** Where a lower speed begins, the speed that the train may have there at the worst. */
  private String speed(List<Item> here) {
    Item first = here.get(0);
    boolean stands =
        first.phase() != Phase.PASSES || first.atM() <= startM || this.stands.hold(first.atM());
    if (stands) {
      return words.number(0);
    }
    return here.stream()
        .filter(Item::falls)
        .findFirst()
        .map(i -> words.numberAtMost(run.speedAt(i.atM())))
        .orElseGet(() -> words.number(first.handledMps().orElse(run.speedAt(first.atM()))));
  }
}
