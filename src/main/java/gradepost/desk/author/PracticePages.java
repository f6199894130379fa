package gradepost.desk.author;

import gradepost.app.shelf.Practice;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.app.shelf.ShelfPaper;
import gradepost.desk.page.Asked;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Standing;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Papers to choose from, and practice papers, marked immediately. Nothing of a learner is kept. */
final class PracticePages {
  private static final int ANSWERS = 4;
  private final Screens screens;
  private final Shelf shelf;
  private final Practice practice;
  private final Standing standing;

  /**
   * A question as it was answered.
   *
   * @param answer index of the choice; -1 where none was made
   */
  public record Marked(Practice.Question question, int answer) {
    /** Whether it is right. */
    public boolean right() {
      return answer == question.right();
    }
  }

  PracticePages(Screens screens, Shelf shelf, Practice practice, Standing standing) {
    this.screens = screens;
    this.shelf = shelf;
    this.practice = practice;
    this.standing = standing;
  }

  void learn(Context ctx) throws IOException {
    choose(ctx, "learn", "Learn");
  }

  void bench(Context ctx) throws IOException {
    choose(ctx, "bench", "Bench");
  }

  private void choose(Context ctx, String what, String title) throws IOException {
    Shelf.SoFar found = Asked.packs(shelf, ctx);
    screens.show(
        ctx, what + "-choose", title, Map.of("packs", found.packs(), "unread", found.unread()));
  }

  /** The paper of the number in the address. */
  void show(Context ctx) throws IOException {
    Optional<Practice.Sheet> sheet = sheet(ctx, number(ctx.queryParam("number")));
    page(ctx, sheet, List.of());
  }

  void mark(Context ctx) throws IOException {
    Optional<Practice.Sheet> sheet = sheet(ctx, number(ctx.formParam("number")));
    List<Marked> marked = new ArrayList<>();
    for (Practice.Question question : sheet.map(Practice.Sheet::questions).orElse(List.of())) {
      String typed = Optional.ofNullable(ctx.formParam("q" + marked.size())).orElse("");
      int answer = typed.matches("\\d") ? Integer.parseInt(typed) : -1;
      marked.add(new Marked(question, answer < ANSWERS ? answer : -1));
    }
    page(ctx, sheet, marked);
  }

  private Optional<Practice.Sheet> sheet(Context ctx, int number) throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    return practice.paper(pack, Asked.paper(pack, ctx).stem(), number);
  }

  private void page(Context ctx, Optional<Practice.Sheet> sheet, List<Marked> marked)
      throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    ShelfPaper paper = Asked.paper(pack, ctx);
    long right = marked.stream().filter(Marked::right).count();
    int needed = sheet.map(Practice.Sheet::needed).orElse(0);
    boolean must = marked.stream().allMatch(m -> m.right() || !m.question().mustPass());
    Map<String, Object> model = new HashMap<>();
    model.put("pack", pack);
    model.put("paper", paper);
    model.put("marks", standing.marks(pack));
    model.put(
        "number",
        number(Optional.ofNullable(ctx.formParam("number")).orElse(ctx.queryParam("number"))));
    model.put("questions", sheet.map(Practice.Sheet::questions).orElse(List.of()));
    model.put("needed", needed);
    model.put("marked", marked);
    model.put("right", right);
    model.put("must", must);
    model.put("passed", right >= needed && must);
    screens.show(
        ctx, "learn-practice", "Practice " + paper.direction() + ", " + paper.train(), model);
  }

  private static int number(@org.jspecify.annotations.Nullable String typed) {
    String text = Optional.ofNullable(typed).orElse("");
    return text.matches("[1-9]\\d{0,5}") ? Integer.parseInt(text) : 1;
  }
}
