package gradepost.desk.author;

import gradepost.app.author.LineFile;
import gradepost.app.author.LinesDesk;
import gradepost.app.author.OpenText;
import gradepost.app.author.Saved;
import gradepost.app.author.SavedText;
import gradepost.app.author.Sides;
import gradepost.desk.page.Asked;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Session;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Every text that lay in a file, and the way back to any of them. */
final class SavesPages {
  private final Screens screens;
  private final LinesPages lines;
  private final LinesDesk desk;

  /**
   * A row of the list.
   *
   * @param how it came there, in words
   * @param digest of the text
   * @param now whether the file says it now
   */
  public record Row(String when, String how, String by, String digest, boolean now) {}

  SavesPages(Screens screens, LinesPages lines, LinesDesk desk) {
    this.screens = screens;
    this.lines = lines;
    this.desk = desk;
  }

  /** A page that needs the file, or its list of saves, as they lie on the disk. */
  private interface Page {
    void show(Context ctx) throws IOException;
  }

  /** Which of them it is, and why it cannot be read, is said in the place of the page. */
  private void read(Context ctx, Page page) {
    try {
      page.show(ctx);
    } catch (IOException e) {
      lines.refused(ctx, e);
    }
  }

  void list(Context ctx) {
    read(ctx, this::listed);
  }

  void one(Context ctx) {
    read(ctx, this::shown);
  }

  void back(Context ctx) {
    read(ctx, this::taken);
  }

  private void listed(Context ctx) throws IOException {
    LineFile file = lines.asked(ctx.queryParam("name"));
    OpenText now = desk.open(file);
    List<Row> rows = desk.saves(file).stream().map(s -> row(s, now)).toList();
    screens.show(
        ctx, "lines-saves", "Saves of " + file.name(), Map.of("file", file, "saves", rows));
  }

  private static Row row(SavedText one, OpenText now) {
    String how =
        switch (one.how()) {
          case FOUND -> "as it was found";
          case SAVED -> "saved";
          case TAKEN_BACK -> "gone back to";
        };
    return new Row(
        one.when().toString().replace('T', ' '),
        how,
        one.by(),
        one.digest(),
        one.digest().equals(now.digest()));
  }

  private void shown(Context ctx) throws IOException {
    LineFile file = lines.asked(ctx.queryParam("name"));
    String digest = ctx.pathParam("text");
    String text = desk.text(file, digest).orElseThrow(Asked::nothing);
    OpenText now = desk.open(file);
    screens.show(
        ctx,
        "lines-text",
        "An earlier text of " + file.name(),
        Map.of(
            "file",
            file,
            "text",
            text,
            "digest",
            digest,
            "base",
            now.digest(),
            "rows",
            Sides.of(now.text(), text)));
  }

  private void taken(Context ctx) throws IOException {
    LineFile file = lines.asked(ctx.formParam("name"));
    String base = Optional.ofNullable(ctx.formParam("base")).orElse("");
    String digest = ctx.pathParam("text");
    Saved saved =
        desk.back(file, digest, base, Session.of(ctx).by(ctx)).orElseThrow(Asked::nothing);
    if (saved.state() == Saved.State.CHANGED_MEANWHILE) {
      lines.changed(ctx, file, desk.text(file, digest).orElseThrow(), saved.now());
      return;
    }
    lines.done(ctx, file, saved);
  }
}
