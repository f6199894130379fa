package gradepost.briefing.question;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.drive.DemoPlans;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Plan;
import gradepost.policy.PaperRules;
import gradepost.policy.Subject;
import gradepost.source.Frozen;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: every paper of the frozen pack and of both demo routes can be answered, in one way
 * only.
 */
@Tag("slow")
class QuestionBankTest {
  private static final int SEEDS = Examples.of(60, 1000);

  private record Case(
      String name,
      Plan plan,
      List<Plan> others,
      List<TemporaryRestriction> notices,
      PaperRules rules) {
    QuestionBank bank() {
      Table changes = new Table("changes", "changes", "", "", List.of(), List.of(), "");
      return new QuestionBank(
          new BriefingFacts(plan, Messages.english()),
          "p1",
          new Issued(notices, changes),
          rules,
          others);
    }
  }

  private static final List<Case> CASES = new ArrayList<>();

  @BeforeAll
  static void plan() {
    Path demo = Path.of("routes");
    for (PackFile pack :
        List.of(
            Frozen.valley(),
            Frozen.pack(demo, "ormel-coast/pack-ormel.yaml"),
            Frozen.pack(demo, Frozen.VALLEY))) {
      for (DirectionPart part : pack.directions()) {
        Plan plan = DemoPlans.plan(pack.assignment(part, pack.formations().get(0)));
        PaperRules rules = pack.policy().signOff().orElseThrow().papers();
        String name = pack.route().name() + " " + part.direction();
        List<Plan> others =
            pack.formations().stream()
                .skip(1)
                .map(f -> DemoPlans.plan(pack.assignment(part, f)))
                .toList();
        CASES.add(new Case(name, plan, others, pack.notices(), rules));
      }
    }
  }

  @Test
  void exactlyOneAnswerIsTrueForAThousandSeeds() {
    for (Case each : CASES) {
      QuestionBank bank = each.bank();
      Judge judge = new Judge(each.plan(), each.notices(), each.others());
      Set<String> seen = new HashSet<>();
      Map<String, Boolean> judged = new HashMap<>();
      for (long seed = 1; seed <= SEEDS; seed++) {
        for (Asked asked : bank.paper(seed)) {
          String key = asked.item().ask() + asked.item().right() + Set.copyOf(asked.choices());
          assertThat(asked.choices().get(asked.right())).isEqualTo(asked.item().right());
          if (seen.add(key)) {
            List<String> truths =
                asked.choices().stream().filter(c -> judge.holds(asked, c)).toList();
            assertThat(truths)
                .as("%s, %s: %s", each.name(), asked.item().ask(), asked.choices())
                .containsExactly(asked.item().right());
            assertThat(asked.choices()).doesNotHaveDuplicates().hasSize(4);
            judged.put(asked.item().subject().name(), true);
          }
        }
      }
      assertThat(judged.size()).as(each.name()).isGreaterThanOrEqualTo(12);
    }
  }

  @Test
  void papersAreOfEqualWeightAndDifferFromEachOther() {
    for (Case each : CASES) {
      QuestionBank bank = each.bank();
      Map<Subject, Long> first = weight(bank.paper(1));
      Set<List<Asked>> papers = new HashSet<>();
      for (long seed = 1; seed <= 50; seed++) {
        List<Asked> paper = bank.paper(seed);
        assertThat(paper).hasSize(each.rules().questions());
        assertThat(weight(paper)).isEqualTo(first);
        assertThat(bank.paper(seed)).isEqualTo(paper);
        papers.add(paper);
        Set<String> asks = paper.stream().map(a -> a.item().ask()).collect(Collectors.toSet());
        long handles = paper.stream().filter(a -> a.item().subject() == Subject.HANDLES).count();
        assertThat(asks).hasSize(paper.size() - (int) Math.max(0, handles - 1));
      }
      assertThat(papers).hasSize(50);
    }
  }

  private static Map<Subject, Long> weight(List<Asked> paper) {
    return paper.stream()
        .collect(Collectors.groupingBy(a -> a.item().subject(), Collectors.counting()));
  }

  /** Signals, gaps, crossings, single lines and brake tests of a line are asked after. */
  @Test
  void whatTheRoadHasIsAskedAfter() {
    for (Case each : CASES) {
      assertThat(each.bank().of(Subject.PROTECTING_SIGNAL)).hasSizeGreaterThanOrEqualTo(4);
      assertThat(each.bank().of(Subject.SIGNAL_KIND)).hasSizeGreaterThanOrEqualTo(4);
      assertThat(asks(each, Subject.PASSED_BEFORE))
          .contains("You coast over", "crossing?", "running brake test");
    }
    assertThat(CASES).anyMatch(c -> asks(c, Subject.PROTECTING_SIGNAL).contains("swing bridge"));
    assertThat(CASES).anyMatch(c -> asks(c, Subject.PROTECTING_SIGNAL).contains("both directions"));
    assertThat(CASES).anyMatch(c -> asks(c, Subject.SIGNAL_KIND).contains("token"));
  }

  private static String asks(Case each, Subject subject) {
    return each.bank().of(subject).stream().map(Item::ask).collect(Collectors.joining("; "));
  }

  /** A cue that bears the name of what is asked about would be the answer of whoever can read. */
  @Test
  void noNameTellsWhatIsPassedBefore() {
    for (Case each : CASES) {
      for (Item item : each.bank().of(Subject.PASSED_BEFORE)) {
        for (String word : item.of().split(" ", -1)) {
          assertThat(item.right().split("[ ,]+")).as(item.ask()).doesNotContain(word);
        }
      }
    }
  }

  /** What a paper does not tell, nobody is asked. */
  @Test
  void onlyNoticesOfTheOwnLinesAreAskedAbout() {
    for (Case each : CASES) {
      boolean up = each.name().equals("Thrumble Valley line BACKWARD");
      assertThat(each.bank().of(Subject.CHANGED))
          .noneMatch(i -> up && i.ask().contains("T 26/098"));
    }
  }

  @Test
  void noPositionGivesTheRightAnswerAway() {
    int[] at = new int[4];
    QuestionBank bank = CASES.get(0).bank();
    for (long seed = 1; seed <= 400; seed++) {
      bank.paper(seed).forEach(a -> at[a.right()]++);
    }
    int all = at[0] + at[1] + at[2] + at[3];
    for (int n : at) {
      assertThat(n / (double) all).isBetween(0.22, 0.28);
    }
  }
}
