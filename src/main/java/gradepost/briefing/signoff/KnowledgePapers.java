package gradepost.briefing.signoff;

import static gradepost.briefing.signoff.Course.row;

import gradepost.briefing.Fact;
import gradepost.briefing.question.Asked;
import gradepost.briefing.question.Item;
import gradepost.briefing.question.QuestionBank;
import gradepost.briefing.signoff.Sheet.Block;
import gradepost.briefing.signoff.Sheet.Fields;
import gradepost.briefing.signoff.Sheet.Grid;
import gradepost.briefing.signoff.Sheet.Question;
import gradepost.briefing.signoff.Sheet.Quiz;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.policy.PaperRules;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Papers of questions, and the keys to them. */
final class KnowledgePapers {
  private static final String LETTERS = "ABCD";
  private final Course course;
  private final QuestionBank bank;
  private final long seed;
  private final Map<String, TaughtOn> pages;

  /**
   * @param pages of the briefing and of its reference, by the anchor of the heading
   */
  KnowledgePapers(Course course, QuestionBank bank, long seed, Map<String, TaughtOn> pages) {
    this.course = course;
    this.bank = bank;
    this.seed = seed;
    this.pages = pages;
  }

  private PaperRules rules() {
    return course.rules().papers();
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  private String name(int variant) {
    return text("signoff.paper.name", variant + 1);
  }

  List<Sheet> papers() {
    List<Sheet> out = new ArrayList<>();
    for (int v = 0; v < rules().variants(); v++) {
      List<Asked> asked = bank.paper(seed + v);
      List<Question> questions = new ArrayList<>();
      for (Asked a : asked) {
        questions.add(question(questions.size() + 1, a));
      }
      out.add(
          new Sheet(
              "so-paper" + (v + 1),
              text("signoff.paper.title", name(v), seed + v),
              List.of(
                  new Fields(
                      List.of(
                          new Fact(text("signoff.paper.candidate"), ""),
                          new Fact(text("signoff.paper.date"), ""))),
                  new Words(
                      text(
                          "signoff.paper.says",
                          asked.size(),
                          rules().needed(asked.size()),
                          course.taught().assignment().formation().name())),
                  new Quiz(questions),
                  new Fields(
                      List.of(
                          new Fact(text("signoff.paper.score", asked.size()), ""),
                          new Fact(text("signoff.paper.must-wrong"), ""),
                          new Fact(text("signoff.paper.marked-by"), ""))))));
    }
    return out;
  }

  private Question question(int number, Asked a) {
    List<String> choices = new ArrayList<>();
    for (int i = 0; i < a.choices().size(); i++) {
      choices.add(LETTERS.charAt(i) + "  " + a.choices().get(i));
    }
    return new Question(
        Integer.toString(number),
        a.mustPass() ? text("signoff.paper.must") : "",
        a.item().ask(),
        choices);
  }

  /** Each question with its answer behind it. */
  Sheet practice() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Words(text("signoff.practice.says")));
    int number = 0;
    for (Asked a : bank.paper(-seed)) {
      number++;
      blocks.add(new Quiz(List.of(question(number, a))));
      blocks.add(
          new Words(
              text(
                  "signoff.practice.answer",
                  LETTERS.substring(a.right(), a.right() + 1),
                  a.choices().get(a.right()),
                  taught(a.item().taught()))));
    }
    return new Sheet("so-practice", text("signoff.practice.title"), blocks);
  }

  List<Sheet> keys() {
    List<Sheet> out = new ArrayList<>();
    for (int v = 0; v < rules().variants(); v++) {
      List<List<String>> rows = new ArrayList<>();
      List<Asked> asked = bank.paper(seed + v);
      for (Asked a : asked) {
        rows.add(
            row(
                Integer.toString(rows.size() + 1),
                LETTERS.substring(a.right(), a.right() + 1)
                    + (a.mustPass() ? " " + text("signoff.paper.must") : ""),
                a.choices().get(a.right()),
                text("subject." + a.item().subject().name().toLowerCase(Locale.ROOT)),
                taught(a.item().taught())));
      }
      List<Block> blocks = new ArrayList<>();
      blocks.add(new Words(text("signoff.key.says", rules().needed(asked.size()), asked.size())));
      blocks.add(new Grid(course.table("key", rows), false));
      String missing =
          bank.notAsked().stream()
              .map(s -> text("subject." + s.name().toLowerCase(Locale.ROOT)))
              .collect(Collectors.joining(", "));
      if (!missing.isEmpty()) {
        blocks.add(new Words(text("signoff.key.not-asked", missing)));
      }
      out.add(new Sheet("so-key" + (v + 1), text("signoff.key.title", name(v), seed + v), blocks));
    }
    return out;
  }

  private String taught(Item.Reference reference) {
    Optional<TaughtOn> page = Optional.ofNullable(pages.get(reference.anchor()));
    Optional<TaughtOn> sheet = Optional.ofNullable(pages.get(reference.sheet()));
    return page.map(p -> taught("signoff.key.page", reference, p))
        .or(() -> sheet.map(p -> taught("signoff.key.from-page", reference, p)))
        .orElse(reference.what());
  }

  private String taught(String key, Item.Reference reference, TaughtOn on) {
    return text(on.reference() ? key + ".reference" : key, reference.what(), on.page());
  }
}
