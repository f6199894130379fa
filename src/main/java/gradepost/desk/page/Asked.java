package gradepost.desk.page;

import gradepost.app.shelf.OpenPaper;
import gradepost.app.shelf.OpenPapers;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.app.shelf.ShelfPaper;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.Optional;

/**
 * What a request names, looked up in what the folder holds; whatever else it names is not looked
 * for.
 */
public final class Asked {
  /**
   * The packs for a page that lists them: those that are read so far. While some are not, the page
   * is loaded again every second.
   */
  public static Shelf.SoFar packs(Shelf shelf, Context ctx) throws IOException {
    Shelf.SoFar found = shelf.soFar();
    if (found.unread() > 0) {
      ctx.header("Refresh", "1");
    }
    return found;
  }

  /** The pack that the address names. */
  public static ShelfPack pack(Shelf shelf, Context ctx) throws IOException {
    return shelf.pack(ctx.pathParam("pack")).orElseThrow(Asked::nothing);
  }

  /** The paper of a pack that the address names. */
  public static ShelfPaper paper(ShelfPack pack, Context ctx) {
    String stem = ctx.pathParam("paper");
    return pack.whole().stream()
        .flatMap(whole -> whole.papers().stream())
        .filter(p -> p.stem().equals(stem))
        .findFirst()
        .orElseThrow(Asked::nothing);
  }

  /** A paper, made. */
  public static OpenPaper open(OpenPapers papers, ShelfPack pack, ShelfPaper paper)
      throws IOException {
    return papers.of(pack, paper.stem()).orElseThrow(Asked::nothing);
  }

  /** A field of a form without what stands around it; empty text where it is not there. */
  public static String field(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse("").strip();
  }

  /** What is said of anything that is not there. */
  public static Refused nothing() {
    return new Refused(HttpStatus.NOT_FOUND, DeskText.NOTHING_THERE);
  }

  private Asked() {}
}
