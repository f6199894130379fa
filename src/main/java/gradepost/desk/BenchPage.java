package gradepost.desk;

import gradepost.app.shelf.Bench;
import gradepost.app.shelf.BenchAsked;
import gradepost.app.shelf.BenchShown;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.app.shelf.ShelfPaper;
import gradepost.desk.page.Asked;
import gradepost.desk.page.DeskText;
import gradepost.desk.page.Refused;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Standing;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;

/** What if. All of what is tried is in the address, so that it can be shown to others. */
final class BenchPage {
  private final Screens screens;
  private final Shelf shelf;
  private final Bench bench;
  private final Standing standing;

  BenchPage(Screens screens, Shelf shelf, Bench bench, Standing standing) {
    this.screens = screens;
    this.shelf = shelf;
    this.bench = bench;
    this.standing = standing;
  }

  void show(Context ctx) throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    ShelfPaper paper = Asked.paper(pack, ctx);
    Map<String, String> typed = new HashMap<>();
    ctx.queryParamMap().forEach((name, values) -> typed.put(name, values.get(0)));
    BenchShown shown =
        bench
            .of(pack, paper.stem(), new BenchAsked(typed))
            .orElseThrow(() -> new Refused(HttpStatus.NOT_FOUND, DeskText.NOTHING_THERE));
    screens.show(
        ctx,
        "bench",
        "What if: " + paper.direction() + ", " + paper.train(),
        Map.of(
            "pack",
            pack,
            "paper",
            paper,
            "shown",
            shown,
            "chart",
            new BenchChart(shown),
            "marks",
            standing.marks(pack)));
  }
}
