package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.briefing.ApproachPage;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.chart.ApproachChart;
import gradepost.briefing.compose.Leaves.Leaf;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.page.ApproachWriter;
import gradepost.briefing.reissue.Sheets;
import gradepost.briefing.word.Standing;
import gradepost.briefing.word.Words;
import gradepost.drive.DemoPlans;
import gradepost.drive.EvenLine;
import gradepost.drive.HeldLines;
import gradepost.drive.Planner;
import gradepost.drive.RandomLines;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Command;
import gradepost.plan.LatestCurve;
import gradepost.plan.Plan;
import gradepost.policy.AdhesionCase;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.Comparison;
import gradepost.route.BrakeTestPlace;
import gradepost.route.place.Direction;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: of whatever is in a plan, moved by one printed step or by a hair, the page, the
 * comparison of issues and the identity of the sheet say alike whether the driver is told something
 * else.
 */
@Tag("slow")
class OnPaperTest {
  /** Less than any printed step, and more than arithmetic leaves. */
  private static final double HAIR = 1e-9;

  private static final int LEAVES_A_LINE = 12;

  private final List<String> wrong = new ArrayList<>();
  private final Set<String> kinds = new HashSet<>();
  private int differed;
  private int same;
  private final List<String> refused = new ArrayList<>();

  /** Of every value there is in them: several minutes. */
  @Tag("long")
  @Test
  void theDemoPacksSayAlikeWhatDiffers() {
    for (int i : DemoPlans.numbers().toArray()) {
      Plan plan = DemoPlans.plan(i);
      for (Approach approach : plan.approaches()) {
        look("demo " + i, plan, approach, leaves(approach));
      }
    }
    assertThat(wrong).isEmpty();
    assertThat(kinds).contains("M", "Mps", "Pa", "S", "text");
    assertThat(differed).isGreaterThan(1000);
    assertThat(same).isGreaterThan(1000);
    assertThat(refused.size()).isLessThan(differed / 10);
  }

  /** And the share of runs that need full service, by a hundredth and by a hair. */
  @Test
  void whatSetAPointIsOnPaperAndCompared() {
    Plan plan = DemoPlans.plan(0);
    for (Approach approach : plan.approaches()) {
      List<Leaf> some =
          leaves(approach).stream()
              .filter(l -> l.name().endsWith("setBy") || l.name().endsWith("fullShare"))
              .toList();
      look("valley", plan, approach, some);
    }
    assertThat(wrong).isEmpty();
    assertThat(kinds).contains("set by");
    assertThat(differed).isGreaterThan(20);
    assertThat(same).isPositive();
  }

  /** Its place, pressure, time and effect; and for one without room why, and where instead. */
  @Test
  void aRunningBrakeTestIsOnPaperAndCompared() {
    List<BrakeTestPlace> places = new ArrayList<>();
    for (double atM : new double[] {300, 3000, 5300}) {
      places.add(new BrakeTestPlace(EvenLine.at(atM), Direction.FORWARD, new Speed(18), ""));
    }
    Plan plan = Planner.plan(EvenLine.tested(EvenLine.of(0), places));
    assertThat(plan.brakeTests()).extracting(BrakeTest::made).containsExactly(false, true, false);
    Approach approach = plan.approaches().get(0);
    int applied = 0;
    while (!approach.actions().get(applied).command().testsBrake()) {
      applied++;
    }
    List<String> own =
        List.of("findings", "actions[" + applied + "]", "actions[" + (applied + 1) + "]");
    List<Leaf> some =
        leaves(approach).stream()
            .filter(l -> own.stream().anyMatch(n -> l.name().contains(n)))
            .toList();
    look("even", plan, approach, some);
    assertThat(wrong).isEmpty();
    assertThat(kinds).contains("stage TEST", "Mps", "Pa", "M");
    assertThat(differed).isGreaterThan(10);
  }

  /** Both speeds, what it is held with and where that ends. */
  @Test
  void aSpeedThatIsHeldIsOnPaperAndCompared() {
    for (Plan plan : HeldLines.plans()) {
      for (Approach approach : plan.approaches()) {
        List<Leaf> held =
            leaves(approach).stream()
                .filter(l -> l.name().matches(".*command.*(lowerMps|upperMps|untilM|by.*Pa)"))
                .toList();
        look("held", plan, approach, held);
      }
    }
    assertThat(wrong).isEmpty();
    assertThat(kinds).contains("Mps", "M", "Pa");
    assertThat(differed).isGreaterThan(10);
    assertThat(same).isGreaterThan(5);
  }

  @Test
  void madeUpLinesSayAlikeWhatDiffers() {
    int lines = Integer.getInteger("gradepost.paper.lines", Examples.of(6, 40));
    for (int seed = 1; seed <= lines; seed++) {
      Plan plan = Planner.plan(RandomLines.of(seed).assignment());
      Random random = new Random(seed);
      List<Approach> approaches = plan.approaches();
      Approach approach = approaches.get(random.nextInt(approaches.size()));
      List<Leaf> all = leaves(approach);
      List<Leaf> some = random.ints(LEAVES_A_LINE, 0, all.size()).mapToObj(all::get).toList();
      look("line " + seed, plan, approach, some);
    }
    assertThat(wrong).isEmpty();
    assertThat(differed).isGreaterThan(lines);
    assertThat(same).isGreaterThan(lines);
  }

  private static List<Leaf> leaves(Approach approach) {
    return Leaves.of(
            approach,
            type ->
                type != LatestCurve.class
                    && type != AdhesionCase.class
                    && type.getPackage() == Approach.class.getPackage())
        .stream()
        .toList();
  }

  private void look(String where, Plan plan, Approach approach, List<Leaf> leaves) {
    ApproachPage before = page(plan, approach);
    for (Leaf leaf : leaves) {
      for (Object value : others(leaf, plan.assignment().route().units())) {
        String what = where + leaf.name() + " " + leaf.value() + " → " + value;
        try {
          look(what, plan, approach, (Approach) leaf.with().apply(value), before);
        } catch (IllegalArgumentException noPlan) {
          // A length that is printed was made negative: no plan has that.
          refused.add(what);
        }
      }
    }
  }

  private void look(String what, Plan plan, Approach then, Approach now, ApproachPage before) {
    Plan after = with(plan, then, now);
    ApproachPage page = page(after, now);
    boolean paper = !texts(page).equals(texts(before));
    boolean sheet = !Sheets.approach(page).equals(Sheets.approach(before));
    boolean compared =
        !Comparison.of(plan, after).approaches().stream().allMatch(ApproachChange::renumberedOnly);
    if (paper != sheet || paper != compared) {
      wrong.add(
          what
              + ": paper "
              + paper
              + ", sheet "
              + sheet
              + ", comparison "
              + compared
              + (paper ? " " + firstDifference(texts(before), texts(page)) : ""));
    }
    differed += paper ? 1 : 0;
    same += paper ? 0 : 1;
  }

  private static String firstDifference(List<String> a, List<String> b) {
    for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
      if (!a.get(i).equals(b.get(i))) {
        return "\"" + a.get(i) + "\" / \"" + b.get(i) + "\"";
      }
    }
    return a.size() + " texts / " + b.size();
  }

  /** One printed step to either side, and a hair. */
  private List<Object> others(Leaf leaf, UnitStyle units) {
    String name = leaf.name();
    if (leaf.value() instanceof String text) {
      kinds.add("text");
      return List.of(text + " more");
    }
    if (leaf.value() instanceof Application.SetBy setBy) {
      kinds.add("set by");
      return List.copyOf(EnumSet.complementOf(EnumSet.of(setBy)));
    }
    if (leaf.value() instanceof Command.Stage stage) {
      // An application of a target stays one: its ladder belongs to it.
      kinds.add("stage " + stage);
      return stage == Command.Stage.TEST ? List.of(Command.Stage.CHECK) : List.of();
    }
    if (!(leaf.value() instanceof Double number)) {
      return List.of();
    }
    List<Double> steps = new ArrayList<>(List.of(HAIR));
    if (name.endsWith("Mps")) {
      steps.add(units.speedUnitMps());
      kinds.add("Mps");
    } else if (name.endsWith("Pa")) {
      steps.add(units.pressureStepPa());
      kinds.add("Pa");
    } else if (name.endsWith("S")) {
      steps.add(1.0);
      kinds.add("S");
    } else if (name.endsWith("hare")) {
      steps.add(0.01);
    } else {
      steps.add(units.lengthUnitM());
      steps.add(units.placeStepM());
      kinds.add("M");
    }
    List<Object> out = new ArrayList<>();
    for (double step : steps) {
      out.add(number + step);
      out.add(number - step);
    }
    return out;
  }

  private static Plan with(Plan plan, Approach then, Approach now) {
    List<Approach> approaches =
        plan.approaches().stream().map(a -> a.number() == then.number() ? now : a).toList();
    return new Plan(
        plan.assignment(),
        plan.ceiling(),
        approaches,
        plan.actions(),
        plan.trace(),
        plan.runningTimeS(),
        plan.energyJ(),
        plan.handleMovements(),
        plan.fastest(),
        plan.failures(),
        plan.signals(),
        plan.brakeTests(),
        plan.figures());
  }

  private static ApproachPage page(Plan plan, Approach approach) {
    Words words = new Words(Messages.english(), plan.assignment().path());
    Lineside lineside = new Lineside(plan.assignment(), words);
    Standing standing = new Standing(words, SampleIssue.issue().details(), plan.assignment());
    return new ApproachWriter(plan, lineside, standing).page("p1", approach);
  }

  /** What is printed in letters: the chart only draws it. */
  private static List<String> texts(ApproachPage page) {
    return Leaves.of(page, type -> type != ApproachChart.class).stream()
        .map(Leaf::value)
        .filter(String.class::isInstance)
        .map(String.class::cast)
        .toList();
  }
}
