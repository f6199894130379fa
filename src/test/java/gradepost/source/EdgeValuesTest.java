package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.compose.Composer;
import gradepost.drive.Planner;
import gradepost.drive.TrainAudit;
import gradepost.motion.NoEnd;
import gradepost.plan.Plan;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Key;
import gradepost.yaml.Problem;
import gradepost.yaml.Reading;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: whatever a key takes, at its least and at its most, ends within bounded time in a
 * paper, in a plan that is refused, or in problems at their places.
 */
@Tag("slow")
class EdgeValuesTest {
  private static final int LONGEST_S = 60;

  /** Keys of other laws than those of the fixture's files. */
  private static final String[][] OTHERS = {
    {
      Fixture.STOCK,
      "{law: quadratic,",
      "{law: davis-1926, lead-area: 120 sq ft, trail-area: 40 sq ft}"
    },
    {Fixture.STOCK, "{law: quadratic,", "{law: railcar-1936, frontal-area: 10 m2}"},
    {Fixture.STOCK, "{law: quadratic,", "{law: constant, n-per-tonne: 40 N/t}"},
    {Fixture.STOCK, "{law: rockl}", "{law: degree, pounds-per-ton-per-degree: 0.8}"},
    {Fixture.STOCK, "{law: rockl}", "{law: inverse-radius, k: 700}"},
    {Fixture.STOCK, "{law: ratio,", "{law: boyle, pressure: 70 psi, volume-ratio: 3}"},
    {
      Fixture.PACK,
      "{station: Weir Lane, platform: \"1\"}",
      "{station: Weir Lane, platform: \"1\", dwell: 30 s}"
    },
  };

  private final List<String> faults = new ArrayList<>();
  private int papers;
  private int refused;
  private int rejected;

  /** Each key once, where it is first met; in an ordinary run every sixth of its edges. */
  @Test
  void whatEachKeyTakesAtItsEdgesEndsInAPaperOrAMessage() {
    Set<Key<?>> done = new HashSet<>();
    int edges = 0;
    for (KeyWalk.Met met : all()) {
      if (done.add(met.key()) && Edges.bounded(met.kind())) {
        for (String edge : Edges.of(met)) {
          if (edges++ % Examples.of(12, 1) == 0) {
            tried(met, edge);
          }
        }
      }
    }
    assertThat(faults).isEmpty();
    assertThat(papers).isGreaterThan(15);
    assertThat(refused + rejected).isGreaterThan(3);
  }

  /** Wherever a key is met, words and dates too, in both directions. */
  @Test
  @Tag("long")
  void soDoesWhatItTakesAnywhere() {
    for (KeyWalk.Met met : all()) {
      Edges.of(met).forEach(edge -> tried(met, edge));
    }
    assertThat(faults).isEmpty();
  }

  /** But for the words of groups whose keys are names, and a file that has to be there. */
  @Test
  void noKeyIsLeftOut() {
    Set<String> left = new TreeSet<>();
    KeyWalk.keys().forEach(k -> left.add(k.name()));
    all().forEach(m -> left.remove(m.key().name()));
    assertThat(left).isSubsetOf("none", "changed-from", "picture");
  }

  private static Set<KeyWalk.Met> all() {
    Set<KeyWalk.Met> all = new LinkedHashSet<>(KeyWalk.met());
    for (String[] other : OTHERS) {
      String text = Fixture.good().text(other[0]);
      int from = text.indexOf(other[1]);
      int to = text.indexOf("}", from) + 1;
      all.addAll(KeyWalk.met(other[0], text.substring(0, from) + other[2] + text.substring(to)));
    }
    return all;
  }

  private void tried(KeyWalk.Met met, String edge) {
    String what =
        String.format(
            Locale.ROOT,
            "%s:%d %s %.40s",
            met.file(),
            met.value().getStartMark().getLine() + 1,
            met.key().name(),
            edge);
    ExecutorService one =
        Executors.newSingleThreadExecutor(
            work -> {
              Thread thread = new Thread(work, what);
              thread.setDaemon(true);
              return thread;
            });
    Callable<Boolean> work = () -> works(met, edge);
    Future<Boolean> ends = one.submit(work);
    try {
      ends.get(LONGEST_S, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      faults.add(what + ": not done in " + LONGEST_S + " s");
    } catch (ExecutionException e) {
      faults.add(
          what
              + ": "
              + e.getCause()
              + " at "
              + List.of(e.getCause().getStackTrace()).subList(0, 4));
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    } finally {
      one.shutdownNow();
    }
  }

  /** Read, plan and compose, as a paper is made; what is wrong in the data stands at its place. */
  private boolean works(KeyWalk.Met met, String edge) {
    Reading<PackFile> reading =
        Fixture.good().put(met.file(), met.replaced(edge)).sources().pack(Fixture.PACK);
    for (Problem problem : reading.problems().all()) {
      assertThat(problem.what()).isNotBlank();
      assertThat(problem.spot().line()).isPositive();
      assertThat(problem.spot().column()).isPositive();
    }
    if (!(reading instanceof Reading.Good<PackFile> good)) {
      assertThat(reading.problems().hasErrors()).isTrue();
      rejected++;
      return false;
    }
    PackFile pack = good.value();
    Plan plan;
    try {
      plan = Planner.plan(pack.assignment(pack.directions().get(0), pack.formations().get(0)));
    } catch (NoEnd e) {
      // No search may reach its bound; but a stop mark behind the train ends it with a message.
      assertThat(e).hasMessageEndingWith("is not ahead of it");
      refused++;
      return false;
    }
    assertThat(TrainAudit.of(plan)).allMatch(f -> !f.what().isBlank());
    if (!plan.failures().isEmpty()) {
      refused++;
      return false;
    }
    assertThat(plan.runningTimeS()).isFinite().isPositive();
    new Composer(Messages.english()).compose("edge", List.of(plan), SampleIssue.issue(), List.of());
    papers++;
    return true;
  }
}
