package gradepost.briefing.signoff;

import gradepost.briefing.LineSheet;
import gradepost.briefing.question.QuestionBank;
import gradepost.briefing.signoff.Sheet.Lined;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.policy.DegradedRules;
import gradepost.policy.StripLayer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Composes the sign-off papers of one course, and apart from them the keys. */
public final class SignOffWriter {
  private final Course course;
  private final KnowledgePapers knowledge;
  private final LearnerSheets learner;

  /**
   * @param seed of the first knowledge paper; each further one takes the next
   * @param pages of the briefing and of its reference, by the anchor of the heading
   * @param degraded the operator's rules for brakes that are not whole; empty where there are none
   */
  public SignOffWriter(
      Course course,
      QuestionBank bank,
      long seed,
      Map<String, TaughtOn> pages,
      Optional<DegradedRules> degraded) {
    this.learner = new LearnerSheets(course, degraded);
    this.course = course;
    this.knowledge = new KnowledgePapers(course, bank, seed, pages);
  }

  /** What the learner, the instructor and the assessor fill in. */
  public Papers papers() {
    RecordSheets record = new RecordSheets(course);
    List<Sheet> sheets = new ArrayList<>();
    sheets.add(record.outcome());
    sheets.add(new ScopeSheet(course).sheet());
    sheets.add(record.priorKnowledge());
    sheets.add(learner.log());
    sheets.add(learner.coverage());
    sheets.add(learner.highRisk());
    sheets.add(learner.degraded());
    sheets.add(new RideSheet(course).sheet());
    sheets.addAll(strip("signoff.strip.title", true));
    sheets.addAll(knowledge.papers());
    return course.papers("signoff.kind", List.of(), sheets);
  }

  /** What only the assessor sees. */
  public Papers keys() {
    List<Sheet> sheets = new ArrayList<>(knowledge.keys());
    sheets.add(learner.degradedKey());
    sheets.addAll(strip("signoff.strip-key.title", false));
    return course.papers("signoff.key.kind", List.of(), sheets);
  }

  /** For the learner at home: each question with its answer behind it. */
  public Papers practice() {
    return course.papers("signoff.practice.kind", List.of(), List.of(knowledge.practice()));
  }

  /** A file to type an assessed ride into. */
  public String rideForm() {
    return RideSheet.form(course);
  }

  private List<Sheet> strip(String titleKey, boolean blank) {
    List<StripLayer> layers = course.rules().papers().blank();
    String left =
        layers.stream()
            .map(l -> course.text("layer." + l.name().toLowerCase(Locale.ROOT)))
            .collect(Collectors.joining(", "));
    BlankStrip without = new BlankStrip(layers, course.text("signoff.strip.space"));
    List<Sheet> out = new ArrayList<>();
    for (LineSheet sheet : course.taught().lineToFillIn("so", course.issue().details())) {
      String says = course.text("signoff.strip.chart", sheet.chart().name(), left);
      out.add(
          new Sheet(
              "so-strip" + (out.isEmpty() ? "" : out.size() + 1),
              course.text(titleKey, sheet.title()),
              List.of(
                  new Words(
                      course.text(blank ? "signoff.strip.says" : "signoff.strip-key.says", left)),
                  new Lined(blank ? without.of(sheet, says) : sheet))));
    }
    return out;
  }
}
