package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.BrakeTest;
import gradepost.policy.Subject;
import gradepost.route.Signal;
import gradepost.route.Structure;
import gradepost.task.Call;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is met last before something else: the signal that protects it, or a cue. */
final class BeforeItems {
  /** A cue further back than this does not tell where the thing is. */
  private static final double REACH_M = 800;

  /** Two cues that are closer than this are met together. */
  private static final double APART_M = 40;

  private static final int MOST_CUES = 7;
  private static final Pattern WORD = Pattern.compile("\\p{L}{4,}");

  private final BriefingFacts taught;
  private final References references;

  /**
   * Something with a name that the train comes to.
   *
   * @param atM where it begins for this train, distance run
   * @param ask what is asked of it, its name in it
   */
  private record Thing(String name, double atM, String ask, Item.Reference taughtOn) {}

  BeforeItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
  }

  /** The last signal that can show danger, among those about it, and those of the other way. */
  List<Item> protectingSignals() {
    List<BriefingFacts.At<Signal>> about =
        taught.assignment().route().signals().stream()
            .map(s -> new BriefingFacts.At<>(s, taught.path().metresAt(s.location())))
            .toList();
    List<Item> out = new ArrayList<>();
    for (Thing thing : protectedThings()) {
      Optional<BriefingFacts.At<Signal>> last = taught.protecting(thing.atM());
      if (last.isEmpty() || atOnePlace(thing)) {
        continue;
      }
      String right = last.get().what().id();
      Distractors near = new Distractors(right);
      about.stream()
          .sorted(Comparator.comparingDouble(s -> Math.abs(s.atM() - thing.atM())))
          .limit(MOST_CUES)
          .forEach(s -> near.add(s.what().id()));
      if (near.enough() && out.stream().noneMatch(i -> i.right().equals(right))) {
        out.add(
            new Item(
                Subject.PROTECTING_SIGNAL,
                thing.name(),
                thing.atM(),
                thing.ask(),
                right,
                near.all(),
                references.table("signals")));
      }
    }
    return List.copyOf(out);
  }

  /** Whether a signal stands where the thing is: before it or behind it, nobody can say. */
  private boolean atOnePlace(Thing thing) {
    return taught.signals().stream()
        .anyMatch(s -> Math.abs(s.atM() - thing.atM()) < taught.units().placeStepM());
  }

  /** What hurts most first: a signal is asked for once. */
  private List<Thing> protectedThings() {
    List<Thing> out = new ArrayList<>();
    structures(Structure.Kind.SWING_BRIDGE, "ask.protecting.swing-bridge").forEach(out::add);
    structures(Structure.Kind.LEVEL_CROSSING, "ask.protecting.crossing").forEach(out::add);
    var route = taught.assignment().route();
    route.lines().stream()
        .filter(l -> l.directions().size() > 1 && taught.assignment().lines().contains(l.name()))
        .forEach(
            l ->
                l.extents()
                    .forEach(
                        e ->
                            out.add(
                                thing(
                                    l.name(),
                                    taught.begins(e),
                                    "ask.protecting.single-line",
                                    "signals"))));
    route.junctions().stream()
        .filter(j -> taught.applies(j.applies()))
        .forEach(
            j ->
                out.add(
                    thing(
                        j.name(),
                        taught.begins(j.extent()),
                        "ask.protecting.junction",
                        "signals")));
    return out;
  }

  /**
   * The last cue before a gap in the conductor rail, a crossing, and a running brake test; among
   * signals if it is one.
   */
  List<Item> passed() {
    List<BriefingFacts.At<String>> cues =
        taught.cues().stream().filter(c -> named(c.what()) == 1).toList();
    List<Item> out = new ArrayList<>();
    for (Thing thing : things()) {
      List<BriefingFacts.At<String>> others =
          cues.stream().filter(c -> !sharesWord(c.what(), thing.name())).toList();
      List<BriefingFacts.At<String>> before =
          others.stream().filter(c -> c.atM() <= thing.atM()).toList();
      if (before.isEmpty() || thing.atM() - before.get(before.size() - 1).atM() > REACH_M) {
        continue;
      }
      BriefingFacts.At<String> right = before.get(before.size() - 1);
      Distractors near = new Distractors(right.what());
      others.stream()
          .filter(c -> c.atM() < right.atM() - APART_M || c.atM() > thing.atM() + APART_M)
          .sorted(
              Comparator.comparing(
                      (BriefingFacts.At<String> c) -> signal(c.what()) != signal(right.what()))
                  .thenComparing(c -> Math.abs(c.atM() - thing.atM())))
          .limit(MOST_CUES)
          .forEach(c -> near.add(c.what()));
      if (near.enough()) {
        out.add(
            new Item(
                Subject.PASSED_BEFORE,
                thing.name(),
                thing.atM(),
                thing.ask(),
                right.what(),
                near.all(),
                thing.taughtOn()));
      }
    }
    return SpeedItems.once(out);
  }

  /** Whether the name of one thing points at another. */
  private static boolean sharesWord(String a, String b) {
    Set<String> words = new HashSet<>(words(a));
    words.retainAll(words(b));
    return !words.isEmpty();
  }

  private static Set<String> words(String name) {
    return WORD.matcher(name.toLowerCase(Locale.ROOT))
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toSet());
  }

  private boolean signal(String cue) {
    return taught.signals().stream()
        .anyMatch(s -> taught.text("signal.called", s.what().id()).equals(cue));
  }

  private long named(String name) {
    return taught.cues().stream().filter(c -> c.what().equals(name)).count();
  }

  private List<Thing> things() {
    List<Thing> out = new ArrayList<>();
    taught.assignment().route().railGaps().stream()
        .filter(g -> taught.applies(g.applies()))
        .forEach(
            g -> out.add(thing(g.name(), taught.begins(g.extent()), "ask.before.gap", "gaps")));
    structures(Structure.Kind.LEVEL_CROSSING, "ask.before.crossing").forEach(out::add);
    structures(Structure.Kind.FOOT_CROSSING, "ask.before.crossing").forEach(out::add);
    taught.plan().brakeTests().stream()
        .filter(BrakeTest::made)
        .forEach(t -> brakeTest(t).ifPresent(out::add));
    return out;
  }

  /** By the station that it is made after, where it is the only one before the next. */
  private Optional<Thing> brakeTest(BrakeTest test) {
    List<Call> calls = taught.assignment().calls();
    return calls.stream()
        .filter(c -> begins(c) <= test.atM())
        .reduce((a, b) -> b)
        .filter(
            c ->
                taught.plan().brakeTests().stream()
                        .filter(t -> t.atM() >= begins(c))
                        .filter(
                            t ->
                                calls.stream()
                                    .noneMatch(o -> begins(o) > begins(c) && begins(o) <= t.atM()))
                        .count()
                    == 1)
        .map(c -> thing(c.station().name(), test.atM(), "ask.before.brake-test", "brake-tests"));
  }

  private double begins(Call call) {
    return taught.begins(call.platform().extent());
  }

  private Stream<Thing> structures(Structure.Kind kind, String key) {
    return taught.assignment().route().structures().stream()
        .filter(s -> s.kind() == kind && !s.name().isBlank())
        .map(s -> thing(s.name(), taught.begins(s.extent()), key, "structures"));
  }

  private Thing thing(String name, double atM, String key, String table) {
    return new Thing(name, atM, taught.text(key, name), references.table(table));
  }
}
