package gradepost.desk;

import gradepost.app.shelf.OpenPaper;
import gradepost.app.shelf.OpenPapers;
import gradepost.app.shelf.RoadStep;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.app.shelf.ShelfPaper;
import gradepost.desk.page.Asked;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Standing;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The road from end to end, one place a screen: what is there, and what to do there once the
 * learner asks. Nothing of it is kept.
 */
final class LearnPage {
  private final Screens screens;
  private final Shelf shelf;
  private final OpenPapers papers;
  private final Standing standing;

  LearnPage(Screens screens, Shelf shelf, OpenPapers papers, Standing standing) {
    this.screens = screens;
    this.shelf = shelf;
    this.papers = papers;
    this.standing = standing;
  }

  void show(Context ctx) throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    ShelfPaper paper = Asked.paper(pack, ctx);
    OpenPaper open = Asked.open(papers, pack, paper);
    List<RoadStep> steps = open.road().stream().filter(s -> !s.todo().isEmpty()).toList();
    int at = Math.min(number(ctx, "at"), Math.max(1, steps.size()));
    screens.show(
        ctx,
        "learn",
        "Learn " + paper.direction() + ", " + paper.train(),
        Map.of(
            "pack",
            pack,
            "paper",
            paper,
            "open",
            open,
            "marks",
            standing.marks(pack),
            "at",
            at,
            "of",
            steps.size(),
            "step",
            Optional.of(at).filter(n -> n <= steps.size()).map(n -> steps.get(n - 1)),
            "before",
            at > 1 ? Optional.of(steps.get(at - 2)) : Optional.empty()));
  }

  private static int number(Context ctx, String name) {
    String typed = Optional.ofNullable(ctx.queryParam(name)).orElse("1");
    return typed.matches("[1-9]\\d{0,5}") ? Integer.parseInt(typed) : 1;
  }
}
