package gradepost.desk;

import gradepost.app.shelf.IssueDesk;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.app.store.Answer;
import gradepost.desk.page.Asked;
import gradepost.desk.page.DeskText;
import gradepost.desk.page.Session;
import gradepost.reissue.register.Signature;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/** What is done with an issue at the page of its pack. */
final class PackActs {
  private final PackPages pages;
  private final Shelf shelf;
  private final IssueDesk desk;

  PackActs(PackPages pages, Shelf shelf, IssueDesk desk) {
    this.pages = pages;
    this.shelf = shelf;
    this.desk = desk;
  }

  /** An act upon an issue of a pack. */
  private interface Act {
    Answer on(ShelfPack pack, String issue, String by);
  }

  void at(RoutesConfig routes) {
    routes.post(
        "/packs/{pack}/enter",
        ctx -> act(ctx, (pack, issue, by) -> desk.enter(pack, by, confirmed(ctx))));
    routes.post(
        "/packs/{pack}/checked", ctx -> act(ctx, (pack, issue, by) -> desk.checked(issue, by)));
    routes.post(
        "/packs/{pack}/recall",
        ctx -> act(ctx, (pack, issue, by) -> desk.recall(issue, Asked.field(ctx, "reason"), by)));
    routes.post(
        "/packs/{pack}/sign-off", ctx -> act(ctx, (pack, issue, by) -> signOff(ctx, issue, by)));
  }

  private void act(Context ctx, Act act) throws IOException {
    ShelfPack pack = Asked.pack(shelf, ctx);
    String by = Session.of(ctx).by(ctx);
    Optional<String> clash = shelf.clash(pack.id());
    pages.one(
        ctx,
        clash.isPresent()
            ? Answer.refused(clash.get())
            : by.isEmpty()
                ? Answer.refused(DeskText.NO_NAME.inWords())
                : act.on(pack, pack.id() + "/" + Asked.field(ctx, "issue"), by));
  }

  private static boolean confirmed(Context ctx) {
    return !Asked.field(ctx, "confirm").isEmpty();
  }

  /** Whoever signs off is the assessor. */
  private Answer signOff(Context ctx, String issue, String by) {
    LocalDate lapses;
    try {
      lapses = LocalDate.parse(Asked.field(ctx, "lapses"));
    } catch (DateTimeParseException e) {
      return Answer.refused(DeskText.NO_DAY.with(Asked.field(ctx, "lapses")).inWords());
    }
    return desk.signOff(
        issue,
        new Signature(
            Asked.field(ctx, "person"),
            Asked.field(ctx, "direction"),
            Asked.field(ctx, "formation"),
            by,
            lapses,
            Asked.field(ctx, "score"),
            Asked.field(ctx, "paper"),
            Asked.field(ctx, "conditions")),
        by,
        confirmed(ctx));
  }
}
