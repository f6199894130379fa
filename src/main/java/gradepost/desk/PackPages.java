package gradepost.desk;

import gradepost.app.shelf.OpenPaper;
import gradepost.app.shelf.OpenPapers;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.app.shelf.ShelfPaper;
import gradepost.app.store.Answer;
import gradepost.app.store.Paper;
import gradepost.app.store.RegisteredFiles;
import gradepost.app.store.Store;
import gradepost.desk.entry.Headers;
import gradepost.desk.page.Asked;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Standing;
import gradepost.reissue.register.Listing;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Every pack, its papers, and the issues that the register has of it. */
final class PackPages {
  private final Screens screens;
  private final Shelf shelf;
  private final OpenPapers papers;
  private final Store store;
  private final Standing standing;

  /**
   * An issue of the register.
   *
   * @param by who entered it
   * @param checker who checked it; empty text where nobody has
   * @param state that it is recalled, a draft, superseded, not in force yet, expired; empty text
   *     where it is in use
   */
  public record OfRegister(
      String number,
      String issued,
      String from,
      String to,
      String by,
      String checker,
      String state,
      List<String> files) {}

  PackPages(Screens screens, Shelf shelf, OpenPapers papers, Store store, Standing standing) {
    this.screens = screens;
    this.shelf = shelf;
    this.papers = papers;
    this.store = store;
    this.standing = standing;
  }

  void list(Context ctx) throws IOException {
    Shelf.SoFar found = Asked.packs(shelf, ctx);
    screens.show(
        ctx,
        "packs",
        "Packs",
        Map.of(
            "packs",
            found.packs(),
            "unread",
            found.unread(),
            "now",
            shelf.now(),
            "folder",
            shelf.folder().toString()));
  }

  void one(Context ctx) throws IOException {
    one(ctx, Answer.GOOD);
  }

  /** The same, below what came of an act. */
  void one(Context ctx, Answer done) throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    if (!done.good()) {
      ctx.status(HttpStatus.BAD_REQUEST);
    }
    screens.show(
        ctx,
        "pack",
        pack.whole().map(ShelfPack.Whole::title).orElse(pack.id()),
        Map.of(
            "pack",
            pack,
            "marks",
            standing.marks(pack),
            "issues",
            issues(pack),
            "said",
            done.said(),
            "faults",
            done.good() ? List.of() : done.problems(),
            "typed",
            done.good()
                ? Map.of()
                : ctx.formParamMap().entrySet().stream()
                    .collect(Collectors.toMap(Map.Entry::getKey, e -> e.getValue().get(0)))));
  }

  /** A paper in the frame of the desk, which says what it is. */
  void paper(Context ctx) throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    ShelfPaper paper = Asked.paper(pack, ctx);
    OpenPaper open = Asked.open(papers, pack, paper);
    screens.show(
        ctx,
        "paper",
        paper.direction() + ", " + paper.train(),
        Map.of("pack", pack, "paper", paper, "open", open, "marks", standing.marks(pack)));
  }

  /** The paper itself: {@code pdf} or {@code html}. */
  void face(Context ctx) throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    String face = ctx.pathParam("face");
    Paper file =
        Optional.of(face)
            .filter(f -> f.equals("pdf") || f.equals("html"))
            .flatMap(f -> openFile(pack, ctx, "." + f))
            .orElseThrow(Asked::nothing);
    serve(ctx, file.name(), file.bytes());
  }

  /** A file of a registered issue, as the archive has it. */
  void registered(Context ctx) throws IOException {
    String issue = ctx.pathParam("pack") + "/" + ctx.pathParam("issue");
    String name = ctx.pathParam("file");
    byte[] bytes = new RegisteredFiles(store).bytes(issue, name).orElseThrow(Asked::nothing);
    serve(ctx, name, bytes);
  }

  private Optional<Paper> openFile(ShelfPack pack, Context ctx, String ending) {
    try {
      return Asked.open(papers, pack, Asked.paper(pack, ctx)).file(ending);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static void serve(Context ctx, String name, byte[] bytes) {
    Headers.paper(ctx);
    boolean html = name.endsWith(".html");
    boolean pdf = name.endsWith(".pdf");
    ctx.contentType(
        html ? "text/html; charset=utf-8" : pdf ? "application/pdf" : "application/octet-stream");
    if (!html) {
      ctx.header(
          "Content-Disposition",
          (pdf ? "inline" : "attachment")
              + "; filename=\""
              + name.replaceAll("[^\\w.-]", "_")
              + '"');
    }
    ctx.result(bytes);
  }

  private List<OfRegister> issues(ShelfPack pack) {
    List<List<String>> rows = standing.issues(pack);
    List<OfRegister> out = new ArrayList<>();
    RegisteredFiles files = new RegisteredFiles(store);
    for (int i = rows.size() - 1; i >= 0; i--) {
      List<String> row = rows.get(i);
      String state =
          !row.get(5).isEmpty()
              ? row.get(5)
              : i < rows.size() - 1
                  ? "superseded"
                  : row.get(7).equals("DRAFT") ? "DRAFT" : byDate(row.get(2), row.get(3));
      out.add(
          new OfRegister(
              row.get(0).substring(pack.id().length() + 1),
              Listing.moment(row.get(1)),
              Listing.moment(row.get(2)),
              Listing.moment(row.get(3)),
              row.get(4),
              row.get(7).equals("DRAFT") ? "" : row.get(7),
              state,
              files.names(row.get(0))));
    }
    return out;
  }

  /** Both as the register writes moments, which sort as texts do. */
  private String byDate(String from, String to) {
    String now = shelf.now().toString();
    return from.compareTo(now) > 0
        ? "not in force before " + Listing.moment(from)
        : to.compareTo(now) <= 0 ? "expired" : "";
  }
}
