package gradepost.briefing.question;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.policy.PaperRules;
import gradepost.policy.Subject;
import gradepost.source.Frozen;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: whoever sees only the four answers does hardly better than by chance. */
@Tag("slow")
class GuessersTest {
  /** Chance is one in four. */
  private static final double MOST = 0.30;

  private static final List<QuestionBank> BANKS = new ArrayList<>();
  private static final List<Judge> JUDGES = new ArrayList<>();
  private static final List<Asked> ASKED = new ArrayList<>();

  @BeforeAll
  static void ask() {
    Path demo = Path.of("routes");
    for (PackFile pack :
        List.of(
            Frozen.pack(demo, "ormel-coast/pack-ormel.yaml"),
            Frozen.pack(demo, Frozen.VALLEY),
            Frozen.valley())) {
      PaperRules rules = pack.policy().signOff().orElseThrow().papers();
      for (DirectionPart part : pack.directions()) {
        List<Plan> plans =
            pack.formations().stream().map(f -> DemoPlans.plan(pack.assignment(part, f))).toList();
        for (Plan plan : plans) {
          JUDGES.add(new Judge(plan, pack.notices(), plans));
          BANKS.add(
              new QuestionBank(
                  new BriefingFacts(plan, Messages.english()),
                  "p1",
                  new Issued(
                      pack.notices(),
                      new Table("changes", "changes", "", "", List.of(), List.of(), "")),
                  rules,
                  plans.stream().filter(p -> !p.equals(plan)).toList()));
        }
      }
    }
    for (long seed = 1; ASKED.size() < 3000; seed++) {
      for (QuestionBank bank : BANKS) {
        ASKED.addAll(bank.paper(seed));
      }
    }
  }

  /** The number that an answer begins with, a mileage in chains; else how long it is. */
  private static double number(String answer) {
    Matcher m = Pattern.compile("^(\\d+)m (\\d+)ch.*").matcher(answer);
    if (m.matches()) {
      return 80 * Double.parseDouble(m.group(1)) + Double.parseDouble(m.group(2));
    }
    Matcher n = Pattern.compile("-?\\d+(\\.\\d+)?").matcher(answer);
    return n.find() ? Double.parseDouble(n.group()) : answer.length();
  }

  private static int best(List<String> choices, ToDoubleFunction<Integer> score, Random random) {
    List<Integer> all = new ArrayList<>(IntStream.range(0, choices.size()).boxed().toList());
    java.util.Collections.shuffle(all, random);
    return all.stream().max(Comparator.comparingDouble(score)).orElseThrow();
  }

  private static double mean(List<String> choices) {
    return choices.stream().mapToDouble(GuessersTest::number).average().orElseThrow();
  }

  private static Set<String> words(String answer) {
    return new HashSet<>(List.of(answer.split("[ ,;]+")));
  }

  /** How much an answer shares with the others: words, and how near its number is. */
  private static double shared(List<String> choices, int i) {
    double sum = 0;
    for (int k = 0; k < choices.size(); k++) {
      if (k != i) {
        Set<String> both = words(choices.get(i));
        both.retainAll(words(choices.get(k)));
        sum += both.size();
      }
    }
    return sum;
  }

  private static double apart(List<String> choices, int i) {
    return IntStream.range(0, choices.size())
        .filter(k -> k != i)
        .mapToDouble(k -> Math.abs(number(choices.get(i)) - number(choices.get(k))))
        .min()
        .orElseThrow();
  }

  private static Map<String, Function<List<String>, Integer>> guessers() {
    Random random = new Random(7);
    Map<String, Function<List<String>, Integer>> all = new LinkedHashMap<>();
    all.put("greatest", c -> best(c, i -> number(c.get(i)), random));
    all.put("least", c -> best(c, i -> -number(c.get(i)), random));
    all.put("extreme", c -> best(c, i -> Math.abs(number(c.get(i)) - mean(c)), random));
    all.put(
        "nearest to the mean", c -> best(c, i -> -Math.abs(number(c.get(i)) - mean(c)), random));
    all.put("stands alone", c -> best(c, i -> apart(c, i), random));
    all.put("is in the thick", c -> best(c, i -> -apart(c, i), random));
    all.put("odd one out", c -> best(c, i -> -shared(c, i), random));
    all.put("most alike", c -> best(c, i -> shared(c, i), random));
    all.put("longest", c -> best(c, i -> c.get(i).length(), random));
    all.put("shortest", c -> best(c, i -> -c.get(i).length(), random));
    return all;
  }

  @Test
  void nobodyGuessesFromTheAnswersAlone() {
    Map<String, Double> found = new LinkedHashMap<>();
    guessers()
        .forEach(
            (name, guess) ->
                found.put(
                    name,
                    ASKED.stream().filter(a -> guess.apply(a.choices()) == a.right()).count()
                        / (double) ASKED.size()));
    System.out.println(ASKED.size() + " questions: " + found);
    assertThat(found.values()).allSatisfy(share -> assertThat(share).isLessThan(MOST));
  }

  /** The word of a subject that is in most right answers, learnt from half of the papers. */
  @Test
  void noWordOfASubjectTellsTheRightAnswer() {
    Map<Subject, Map<String, Integer>> learnt = new HashMap<>();
    List<Asked> first = ASKED.subList(0, ASKED.size() / 2);
    for (Asked a : first) {
      Map<String, Integer> words = learnt.computeIfAbsent(a.item().subject(), s -> new HashMap<>());
      for (int i = 0; i < a.choices().size(); i++) {
        int by = i == a.right() ? 3 : -1;
        words(a.choices().get(i)).stream()
            .filter(w -> !w.matches(".*\\d.*") && Character.isLowerCase(w.charAt(0)))
            .forEach(w -> words.merge(w, by, Integer::sum));
      }
    }
    Random random = new Random(11);
    List<Asked> rest = ASKED.subList(ASKED.size() / 2, ASKED.size());
    long right = 0;
    for (Asked a : rest) {
      Map<String, Integer> words = learnt.getOrDefault(a.item().subject(), Map.of());
      int guess =
          best(
              a.choices(),
              i -> words(a.choices().get(i)).stream().mapToInt(w -> words.getOrDefault(w, 0)).sum(),
              random);
      right += guess == a.right() ? 1 : 0;
    }
    System.out.printf("by a word: %.3f%n", right / (double) rest.size());
    assertThat(right / (double) rest.size()).isLessThan(MOST);
  }

  /** About one place no question has the answer of another in it. */
  @Test
  void noQuestionGivesAnotherAway() {
    int pairs = 0;
    for (QuestionBank bank : BANKS) {
      for (long seed = 1; seed <= 15; seed++) {
        List<Asked> paper = bank.paper(seed);
        for (Asked a : paper) {
          for (Asked b : paper) {
            boolean near = Math.abs(a.item().atM() - b.item().atM()) < 400;
            boolean figure = b.item().right().matches("\\d.*");
            if (!a.equals(b) && near && figure) {
              pairs++;
              assertThat(a.item().ask()).doesNotContain(b.item().right());
            }
          }
        }
      }
    }
    assertThat(pairs).isPositive();
  }

  /** Where another formation brakes elsewhere, and all four answers are of one kind. */
  @Test
  void anotherFormationIsAskedAfter() {
    int asked = 0;
    for (int i = 0; i < BANKS.size(); i++) {
      Random random = new Random(i);
      for (Item item : BANKS.get(i).of(Subject.OTHER_FORMATION)) {
        List<String> wrong = Choices.wrong(item, random);
        Judge judge = JUDGES.get(i);
        assertThat(judge.holds(new Asked(item, wrong, 0, false), item.right())).isTrue();
        assertThat(wrong).noneMatch(w -> judge.holds(new Asked(item, wrong, 0, false), w));
        boolean stop = item.right().contains("platform");
        assertThat(wrong).allMatch(w -> w.contains("platform") == stop);
        asked++;
      }
    }
    assertThat(asked).isPositive();
  }

  /** What is the same wherever one drives is no knowledge of the road. */
  @Test
  void noQuestionAsksForAConstantOfThePolicy() {
    for (QuestionBank bank : BANKS) {
      Set<String> rights = new HashSet<>();
      bank.of(Subject.FIRST_PRESSURE).forEach(i -> rights.add(i.right()));
      assertThat(rights).doesNotContain("15 psi", "1.4 bar");
    }
  }
}
