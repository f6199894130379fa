package gradepost.desk.author;

import gradepost.app.author.LinesDesk;
import gradepost.app.shelf.OpenPapers;
import gradepost.app.shelf.Practice;
import gradepost.app.shelf.Shelf;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Standing;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** Where these pages are found. */
public final class AuthorRoutes {
  private static final String RIDES = "/rides";
  private static final int LARGEST_FORM_BYTES = 1 << 20;
  private static final int LARGEST_RIDE_BYTES = 8 << 20;

  /** So much of what is too long is read and dropped. */
  private static final int LARGEST_DROPPED_BYTES = 32 << 20;

  /** A text of 1 MB, in a form that spells some of its letters with three. */
  private static final int LARGEST_TEXT_BYTES = 4 << 20;

  private final Screens screens;
  private final Shelf shelf;
  private final OpenPapers papers;
  private final Standing standing;

  /** Over the packs of a shelf and their papers. */
  public AuthorRoutes(Screens screens, Shelf shelf, OpenPapers papers, Standing standing) {
    this.screens = screens;
    this.shelf = shelf;
    this.papers = papers;
    this.standing = standing;
  }

  /** Turns away what is too long before any of it is read; comes before everything else. */
  public static void bound(JavalinConfig config) {
    config.http.maxRequestSize = LARGEST_TEXT_BYTES;
    config.jetty.multipartConfig.maxTotalRequestSize(LARGEST_RIDE_BYTES, SizeUnit.BYTES);
    // Nothing that is handed in lies on the disk meanwhile.
    config.jetty.multipartConfig.maxInMemoryFileSize(LARGEST_RIDE_BYTES, SizeUnit.BYTES);
    config.routes.before(AuthorRoutes::bound);
  }

  private static void bound(Context ctx) throws IOException {
    boolean text = ctx.path().startsWith("/lines/");
    int most =
        ctx.path().equals(RIDES)
            ? LARGEST_RIDE_BYTES
            : text ? LARGEST_TEXT_BYTES : LARGEST_FORM_BYTES;
    String type = Optional.ofNullable(ctx.contentType()).orElse("");
    boolean endless = ctx.contentLength() < 0 && type.startsWith("multipart/");
    if (endless || ctx.contentLength() > most) {
      if (!endless && ctx.contentLength() <= LARGEST_DROPPED_BYTES) {
        // A browser that is cut off while it sends shows its own words, not ours.
        ctx.req().getInputStream().transferTo(OutputStream.nullOutputStream());
      }
      throw new ContentTooLargeResponse();
    }
  }

  /** Adds them to the routes of the desk. */
  public void add(RoutesConfig routes, LinesDesk desk) {
    routes.get("/assets/{file}", Assets::get);
    LinesPages lines = new LinesPages(screens, desk);
    routes.get("/lines", lines::list);
    routes.get("/lines/keys", lines::keys);
    routes.get("/lines/keys.json", lines::keysAsJson);
    routes.get("/lines/file", lines::open);
    routes.post("/lines/check", lines::check);
    routes.post("/lines/typed", lines::typed);
    routes.post("/lines/save", lines::save);
    routes.post("/lines/cells", lines::cells);
    routes.post("/lines/paste", lines::paste);
    SavesPages saves = new SavesPages(screens, lines, desk);
    routes.get("/lines/saves", saves::list);
    routes.get("/lines/saves/{text}", saves::one);
    routes.post("/lines/saves/{text}", saves::back);
    RidesPages rides = new RidesPages(screens, shelf);
    routes.get(RIDES, rides::empty);
    routes.post(RIDES, rides::assess);
    routes.get(RIDES + "/{ride}", rides::report);
    routes.get(RIDES + "/{ride}/{paper}", rides::paper);
    PracticePages practice =
        new PracticePages(screens, shelf, new Practice(shelf, papers), standing);
    routes.get("/learn", practice::learn);
    routes.get("/bench", practice::bench);
    routes.get("/learn/{pack}/{paper}/pace", new PacePage(screens, shelf, papers, standing)::show);
    routes.get("/learn/{pack}/{paper}/practice", practice::show);
    routes.post("/learn/{pack}/{paper}/practice", practice::mark);
  }
}
