package gradepost.briefing.line;

import gradepost.briefing.Cue;
import gradepost.briefing.word.Words;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.told.print.PrintedTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Puts what is told of each place into lines: a line for a place, and at a stop one for the stand
 * and one for the start, both at the mark, as the page of the stop has them.
 */
final class StoryRows {
  /** Something that is told of a place. */
  record Told(double atM, String text) {}

  /** What a train does at one place, one after another. */
  private enum Phase {
    PASSES,
    STANDS,
    STARTS
  }

  /**
   * What is to be done at a place comes after what is seen there.
   *
   * @param handledMps the speed at which a handle is moved; empty where none is
   */
  private record Item(
      double atM,
      Phase phase,
      String text,
      boolean todo,
      boolean heading,
      boolean falls,
      OptionalDouble handledMps) {}

  private final Words words;
  private final Run run;
  private final List<Approach> approaches;
  private final Stands stands;
  private final double startM;
  private final List<Item> items = new ArrayList<>();

  StoryRows(Plan plan, Words words, Run run) {
    this.words = words;
    this.run = run;
    this.startM = plan.trace().points().get(0).atM();
    this.approaches = plan.approaches();
    this.stands = Stands.of(plan, run);
  }

  void see(double atM, String text, boolean heading) {
    add(atM, Phase.PASSES, text, false, heading, false);
  }

  /** A lower permissible speed begins. */
  void falls(double atM, String text) {
    add(atM, Phase.PASSES, text, false, false, true);
  }

  void todo(double atM, String text) {
    add(atM, Phase.PASSES, text, true, false, false);
  }

  void stands(Approach approach, String text) {
    add(approach.target().atM(), Phase.STANDS, text, false, false, false);
  }

  void action(Action action, String text) {
    boolean starts =
        action.command().isPower() && (action.trigger().isStart() || stands.hold(action.atM()));
    Phase phase = action.command().isStand() ? Phase.STANDS : starts ? Phase.STARTS : Phase.PASSES;
    double at = phase == Phase.PASSES ? action.atM() : Approach.standM(approaches, action.atM());
    OptionalDouble mps = OptionalDouble.of(action.speedMps());
    items.add(new Item(Math.max(0, at), phase, text, true, false, false, mps));
  }

  private void add(
      double atM, Phase phase, String text, boolean todo, boolean heading, boolean falls) {
    items.add(
        new Item(Math.max(0, atM), phase, text, todo, heading, falls, OptionalDouble.empty()));
  }

  List<Told> told() {
    return items.stream().map(i -> new Told(i.atM(), i.text())).toList();
  }

  List<Cue> cues() {
    items.sort(
        Comparator.comparingDouble(Item::atM)
            .thenComparing(Item::phase)
            .thenComparing(Item::todo)
            .thenComparing(i -> !i.heading()));
    List<Cue> out = new ArrayList<>();
    Optional<Item> last = Optional.empty();
    int i = 0;
    while (i < items.size()) {
      Item first = items.get(i);
      int from = i;
      while (i < items.size() && together(items.subList(from, i), items.get(i))) {
        i++;
      }
      out.add(cue(items.subList(from, i), last));
      last = Optional.of(first);
    }
    return out;
  }

  /** A handle movement has a line of its own if its speed differs from that of the line. */
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

  private Cue cue(List<Item> here, Optional<Item> last) {
    Item first = here.get(0);
    double end = stands.last().map(Stands.Stand::markM).orElse(words.path().lengthM());
    boolean ridden = first.atM() <= end + 1;
    boolean waited = last.isPresent() && last.get().phase() == Phase.STANDS;
    boolean starts = first.phase() == Phase.STARTS && waited;
    return new Cue(
        words.place(first.atM()),
        last.isEmpty() || starts || !ridden ? "" : seconds(last.get(), first),
        ridden ? speed(here) : "",
        here.stream().filter(i -> !i.todo()).map(Item::text).distinct().toList(),
        here.stream().filter(Item::todo).map(Item::text).distinct().toList(),
        here.stream().anyMatch(Item::heading));
  }

  /** Between the whole seconds of the run, so that all of them add up to its time. */
  private String seconds(Item from, Item to) {
    return words.time(
        new PrintedTime(
            words.grid().time(timeS(to)).seconds() - words.grid().time(timeS(from)).seconds()));
  }

  private double timeS(Item item) {
    return stands.all().stream()
        .filter(s -> item.phase() == Phase.PASSES ? s.holds(item.atM()) : s.markM() == item.atM())
        .mapToDouble(Stands.Stand::timeS)
        .findFirst()
        .orElseGet(() -> run.timeAt(item.atM()));
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
