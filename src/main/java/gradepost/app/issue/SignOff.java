package gradepost.app.issue;

import gradepost.app.store.Paper;
import gradepost.briefing.Briefing;
import gradepost.briefing.Cover;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Part;
import gradepost.briefing.Reference;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.briefing.question.Issued;
import gradepost.briefing.question.Item;
import gradepost.briefing.question.QuestionBank;
import gradepost.briefing.signoff.Course;
import gradepost.briefing.signoff.SignOffWriter;
import gradepost.briefing.signoff.TaughtOn;
import gradepost.pack.PaperKind;
import gradepost.plan.Plan;
import gradepost.policy.SignOffRules;
import gradepost.render.PageIndex;
import gradepost.render.PageTexts;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Makes the sign-off papers that belong to a briefing. */
public final class SignOff {
  /** Knowledge papers of one issue count on from here unless a seed is given. */
  private static final int SEEDS_PER_ISSUE = 100;

  private final Layout layout;

  public SignOff(Layout layout) {
    this.layout = layout;
  }

  /** From where the questions of this issue are drawn: each issue has its own. */
  public static long seed(PackFile pack) {
    return (long) SEEDS_PER_ISSUE * pack.issue().number() + 1;
  }

  /**
   * A reference, and how it was laid out.
   *
   * @param pages PDF first
   */
  public record Looked(Reference reference, List<Paper> pages) {
    /** Copies the list. */
    public Looked {
      pages = List.copyOf(pages);
    }
  }

  /**
   * The papers to sign a driver off with.
   *
   * @param briefing that teaches the plan, and {@code pages} as it was laid out, PDF first
   * @param looked the reference of its pack
   * @param wanted which of them
   * @param others plans of the same direction with other formations
   */
  public List<Paper> papers(
      String stem,
      Plan plan,
      PackFile pack,
      SignOffRules rules,
      long seed,
      Briefing briefing,
      List<Paper> pages,
      Looked looked,
      List<Plan> others,
      Set<PaperKind> wanted)
      throws IOException {
    BriefingFacts taught = new BriefingFacts(plan, layout.messages());
    QuestionBank bank =
        new QuestionBank(
            taught,
            briefing.parts().get(0).id(),
            new Issued(pack.notices(), briefing.changes()),
            rules.papers(),
            others);
    SignOffWriter writer =
        new SignOffWriter(
            new Course(taught, briefing, rules),
            bank,
            seed,
            pages(stem, briefing, pages, looked),
            pack.policy().degraded());
    List<Paper> out = new ArrayList<>();
    if (wanted.contains(PaperKind.SIGN_OFF)) {
      out.addAll(layout.papers(stem + "-sign-off", writer.papers()));
      out.addAll(layout.papers(stem + "-sign-off-keys", writer.keys()));
      out.add(new Paper(stem + "-ride.csv", writer.rideForm().getBytes(StandardCharsets.UTF_8)));
    }
    if (wanted.contains(PaperKind.PRACTICE)) {
      out.addAll(layout.papers(stem + "-practice", writer.practice()));
    }
    return out;
  }

  /** Where each sheet is taught, in the paper or in the reference, by its anchor. */
  private static Map<String, TaughtOn> pages(
      String stem, Briefing briefing, List<Paper> pages, Looked looked) throws IOException {
    Map<String, Integer> read = begins(briefing.cover().contents(), pages.get(0).bytes());
    for (Part part : briefing.parts()) {
      for (LineSheet sheet : part.line()) {
        Optional.ofNullable(read.get(sheet.id())).ifPresent(page -> line(part, sheet, page, read));
      }
    }
    Map<String, TaughtOn> out = new HashMap<>();
    for (Part part : briefing.parts()) {
      looked(stem, part, looked).forEach((id, page) -> out.put(id, new TaughtOn(page, true)));
    }
    read.forEach((anchor, page) -> out.put(anchor, new TaughtOn(page, false)));
    out.put(Item.Reference.CHANGES, new TaughtOn(1, false));
    return out;
  }

  /**
   * The pages of the reference on which the tables of a part stand, and what is told of its train.
   */
  private static Map<String, Integer> looked(String stem, Part part, Looked looked)
      throws IOException {
    byte[] pdf = looked.pages().get(0).bytes();
    Map<String, Integer> begins = begins(looked.reference().contents(), pdf);
    PageTexts texts = PageTexts.of(pdf);
    Map<String, Integer> out = new HashMap<>();
    for (ReferenceSheet sheet : looked.reference().sheets()) {
      int from = begins.getOrDefault(sheet.id(), 1);
      if (sheet.papers().contains(stem)) {
        sheet
            .tables()
            .forEach(
                t ->
                    texts
                        .lineFrom(from, t.title())
                        .ifPresent(page -> out.putIfAbsent(part.id() + "-" + t.name(), page)));
        if (sheet.key().equals(ReferenceSheet.READING)) {
          sheet.blocks().stream()
              .flatMap(b -> b.begins().stream())
              .findFirst()
              .flatMap(title -> texts.lineFrom(from, title + "\n"))
              .ifPresent(page -> out.put(part.id() + "-train-page", page));
        }
      }
    }
    return out;
  }

  /** The bookmarks are the page list, in its order. */
  private static Map<String, Integer> begins(List<Cover.Entry> contents, byte[] pdf)
      throws IOException {
    List<Integer> pages = PageIndex.pages(pdf);
    Map<String, Integer> out = new HashMap<>();
    for (int i = 0; i < Math.min(pages.size(), contents.size()); i++) {
      out.put(contents.get(i).anchor(), pages.get(i));
    }
    return out;
  }

  /** A sheet of the line is one page; the places on it, and the first of all for any other. */
  private static void line(Part part, LineSheet sheet, int page, Map<String, Integer> out) {
    String line = Item.Reference.LINE_SHEETS.formatted(part.id());
    out.putIfAbsent(line, page);
    sheet.rows().forEach(r -> out.putIfAbsent(Item.Reference.line(line, r.place()), page));
  }
}
