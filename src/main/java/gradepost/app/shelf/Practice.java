package gradepost.app.shelf;

import gradepost.app.issue.Task;
import gradepost.app.store.Unplanned;
import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.briefing.question.Asked;
import gradepost.briefing.question.Issued;
import gradepost.briefing.question.Item;
import gradepost.briefing.question.QuestionBank;
import gradepost.plan.Plan;
import gradepost.policy.PaperRules;
import gradepost.policy.SignOffRules;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Practice papers, drawn from the questions of a paper. Nothing about whoever answers is kept. */
public final class Practice {
  private static final int KEPT = 16;
  private static final Pattern ANCHOR = Pattern.compile(" id=\"([^\"]+)\"");

  private final Shelf shelf;
  private final OpenPapers papers;
  private final Messages messages = Messages.english();
  private final Map<String, Bank> banks =
      new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bank> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * A question.
   *
   * @param right index of the right choice
   * @param mustPass whether the paper is failed with it, whatever the score
   * @param taught what to look at in the briefing
   * @param anchor where that is in the paper; empty text where it is in the reference of the pack
   */
  public record Question(
      String ask, List<String> choices, int right, boolean mustPass, String taught, String anchor) {
    /** Copies the list. */
    public Question {
      choices = List.copyOf(choices);
    }
  }

  /**
   * A practice paper.
   *
   * @param needed how many right answers pass
   */
  public record Sheet(List<Question> questions, int needed) {
    /** Copies the list. */
    public Sheet {
      questions = List.copyOf(questions);
    }
  }

  /**
   * What can be asked of a paper.
   *
   * @param rows the sheet of the line that has a row, by the anchor of the row
   * @param anchors that the paper has
   */
  private record Bank(
      QuestionBank questions, PaperRules rules, Map<String, String> rows, Set<String> anchors) {
    /** Where the paper teaches it; empty text where it does not itself. */
    String anchor(Item.Reference taught) {
      String sheet =
          rows.getOrDefault(taught.anchor(), rows.getOrDefault(taught.sheet(), taught.sheet()));
      return anchors.contains(sheet) ? sheet : "";
    }
  }

  /** Of the papers of a shelf. */
  public Practice(Shelf shelf, OpenPapers papers) {
    this.shelf = shelf;
    this.papers = papers;
  }

  /**
   * The practice paper of a number; the same number always draws the same paper.
   *
   * @return empty where the paper cannot be made, or its policy has no rules for papers
   */
  public Optional<Sheet> paper(ShelfPack pack, String stem, long number) throws IOException {
    return bank(pack, stem).map(bank -> sheet(bank, number));
  }

  /** Seeds of papers that count are not negative: none of those is drawn here. */
  private static Sheet sheet(Bank bank, long number) {
    List<Question> questions = new ArrayList<>();
    for (Asked asked : bank.questions().paper(-Math.abs(number) - 1)) {
      Item.Reference taught = asked.item().taught();
      questions.add(
          new Question(
              asked.item().ask(),
              asked.choices(),
              asked.right(),
              asked.mustPass(),
              taught.what(),
              bank.anchor(taught)));
    }
    return new Sheet(questions, bank.rules().needed(questions.size()));
  }

  private Optional<Bank> bank(ShelfPack pack, String stem) throws IOException {
    Optional<PackFile> file = shelf.file(pack);
    Optional<PaperRules> rules = file.flatMap(f -> f.policy().signOff()).map(SignOffRules::papers);
    Optional<OpenPapers.Made> made = rules.isEmpty() ? Optional.empty() : papers.made(pack, stem);
    if (made.isEmpty() || made.get().briefing().isEmpty() || made.get().plan().isEmpty()) {
      return Optional.empty();
    }
    String key = pack.whole().orElseThrow().fingerprint() + " " + stem;
    synchronized (banks) {
      Optional<Bank> known = Optional.ofNullable(banks.get(key));
      if (known.isPresent()) {
        return known;
      }
    }
    Briefing briefing = made.get().briefing().get();
    Plan plan = made.get().plan().get();
    QuestionBank questions =
        new QuestionBank(
            new BriefingFacts(plan, messages),
            briefing.parts().get(0).id(),
            new Issued(file.orElseThrow().notices(), briefing.changes()),
            rules.orElseThrow(),
            others(pack, file.orElseThrow(), stem));
    Set<String> anchors = new HashSet<>();
    made.get()
        .paper()
        .file(".html")
        .map(paper -> ANCHOR.matcher(new String(paper.bytes(), StandardCharsets.UTF_8)))
        .ifPresent(found -> found.results().forEach(id -> anchors.add(id.group(1))));
    Bank bank = new Bank(questions, rules.orElseThrow(), rows(briefing), anchors);
    synchronized (banks) {
      banks.put(key, bank);
    }
    return Optional.of(bank);
  }

  private static Map<String, String> rows(Briefing briefing) {
    Map<String, String> out = new HashMap<>();
    for (Part part : briefing.parts()) {
      String line = Item.Reference.LINE_SHEETS.formatted(part.id());
      for (LineSheet sheet : part.line()) {
        out.putIfAbsent(line, sheet.id());
        sheet
            .rows()
            .forEach(row -> out.putIfAbsent(Item.Reference.line(line, row.place()), sheet.id()));
      }
    }
    return out;
  }

  /** Plans of the same direction with other formations: whose points are mistaken for these. */
  private static List<Plan> others(ShelfPack pack, PackFile file, String stem) {
    List<Task> ordinary = Task.of(file).stream().filter(t -> t.assignment().ordinary()).toList();
    Optional<Task> own = ordinary.stream().filter(t -> t.stem().equals(stem)).findFirst();
    List<Plan> out = new ArrayList<>();
    for (Task task : ordinary) {
      boolean other =
          own.filter(
                  o ->
                      o.assignment().direction() == task.assignment().direction()
                          && !o.assignment()
                              .formation()
                              .name()
                              .equals(task.assignment().formation().name()))
              .isPresent();
      if (other) {
        try {
          out.add(task.plan(pack.file()));
        } catch (Unplanned e) {
          // It has no points that could be mistaken.
        }
      }
    }
    return out;
  }
}
