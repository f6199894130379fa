package gradepost.desk.author;

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

/** The road at the true pace of the planned run. */
final class PacePage {
  private static final int MINUTE = 60;
  private final Screens screens;
  private final Shelf shelf;
  private final OpenPapers papers;
  private final Standing standing;

  /**
   * A place where there is something to do.
   *
   * @param seconds of the run at which it is met, cut to whole ones: never later than it is
   * @param clock the same as minutes and seconds
   */
  public record At(RoadStep step, int seconds, String clock) {}

  PacePage(Screens screens, Shelf shelf, OpenPapers papers, Standing standing) {
    this.screens = screens;
    this.shelf = shelf;
    this.papers = papers;
    this.standing = standing;
  }

  void show(Context ctx) throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    ShelfPaper paper = Asked.paper(pack, ctx);
    OpenPaper open = Asked.open(papers, pack, paper);
    List<At> steps =
        open.road().stream().filter(s -> !s.todo().isEmpty()).map(PacePage::at).toList();
    screens.show(
        ctx,
        "learn-pace",
        "At its pace: " + paper.direction() + ", " + paper.train(),
        Map.of("pack", pack, "paper", paper, "steps", steps, "marks", standing.marks(pack)));
  }

  private static At at(RoadStep step) {
    int seconds = (int) step.atS();
    return new At(step, seconds, "%d:%02d".formatted(seconds / MINUTE, seconds % MINUTE));
  }
}
