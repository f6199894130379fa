package gradepost.desk.author;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.author.Checked;
import gradepost.app.author.KeyHelp;
import gradepost.app.author.LineFile;
import gradepost.app.author.LinesDesk;
import gradepost.app.author.OpenText;
import gradepost.app.author.Saved;
import gradepost.app.author.Sides;
import gradepost.app.author.Taken;
import gradepost.app.store.IoErrorText;
import gradepost.desk.page.Asked;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Session;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The files of the folder: each as a text that is checked while it is typed, and saved. */
final class LinesPages {
  private static final String EDITOR = "lines-file";

  /** What was saved, so that an address says so of that text alone. */
  private static final String SAVED = "saved";

  private final ObjectMapper json = new ObjectMapper();
  private final Screens screens;
  private final LinesDesk desk;

  LinesPages(Screens screens, LinesDesk desk) {
    this.screens = screens;
    this.desk = desk;
  }

  /**
   * What stands in the form of the editor.
   *
   * @param base digest of the text that it was begun with
   */
  private record Form(LineFile file, String text, String base) {}

  void list(Context ctx) throws IOException {
    screens.show(ctx, "lines", "Lines", Map.of("files", desk.files()));
  }

  void keys(Context ctx) {
    String kind = Optional.ofNullable(ctx.queryParam("kind")).orElse("route");
    screens.show(
        ctx,
        "lines-keys",
        "Keys",
        Map.of("kind", kind, "kinds", KeyHelp.kinds(), "keys", KeyHelp.of(kind)));
  }

  void keysAsJson(Context ctx) {
    json(ctx, KeyHelp.of(Optional.ofNullable(ctx.queryParam("kind")).orElse("")));
  }

  private void json(Context ctx, Object value) {
    ctx.contentType("application/json; charset=utf-8").result(text(value));
  }

  void open(Context ctx) throws IOException {
    LineFile file = asked(ctx.queryParam("name"));
    OpenText now;
    try {
      now = desk.open(file);
    } catch (IOException e) {
      refused(ctx, e);
      return;
    }
    boolean saved = now.digest().equals(ctx.queryParam(SAVED)) && isLast(file, now);
    show(
        ctx,
        new Form(file, now.text(), now.digest()),
        desk.typed(file, now.text()),
        Map.of("said", saved ? "Saved." : ""));
  }

  /** Whether the last text that was saved is the one that lies in the file. */
  private boolean isLast(LineFile file, OpenText now) throws IOException {
    return desk.saves(file).stream().limit(1).anyMatch(last -> last.digest().equals(now.digest()));
  }

  /** For pages without scripts, and for all packs that use the file. */
  void check(Context ctx) throws IOException {
    Form form = form(ctx);
    show(ctx, form, desk.check(form.file(), form.text()), Map.of("said", "Checked; not saved."));
  }

  void typed(Context ctx) throws IOException {
    Form form = form(ctx);
    Checked checked = desk.typed(form.file(), form.text());
    Map<String, Object> answer = new HashMap<>();
    answer.put("here", checked.here());
    answer.put("elsewhere", checked.elsewhere());
    checked.strip().ifPresent(strip -> answer.put("strip", strip));
    json(ctx, answer);
  }

  void save(Context ctx) throws IOException {
    String name = field(ctx, "name");
    if (desk.file(name).isEmpty()) {
      // Somebody took the file away meanwhile: what was typed is still there to be copied.
      screens.show(
          ctx.status(HttpStatus.GONE),
          "lines-gone",
          "Not saved",
          Map.of("text", LinesDesk.plain(field(ctx, "text"))));
      return;
    }
    Form form = form(ctx);
    Saved saved;
    try {
      saved =
          desk.save(
              form.file(),
              new LinesDesk.Typed(
                  form.text(),
                  form.base(),
                  Session.of(ctx).by(ctx),
                  ctx.formParam("faulty") != null));
    } catch (IOException e) {
      // What was typed is not lost with the disk.
      show(
          ctx.status(HttpStatus.INTERNAL_SERVER_ERROR),
          form,
          desk.typed(form.file(), form.text()),
          Map.of("fault", IoErrorText.inWords(e)));
      return;
    }
    switch (saved.state()) {
      case SAVED, SAME -> done(ctx, form.file(), saved);
      case FAULTY ->
          show(
              ctx.status(HttpStatus.CONFLICT),
              form,
              saved.checked().orElseThrow(),
              Map.of("faulty", true));
      case CHANGED_MEANWHILE -> changed(ctx, form.file(), form.text(), saved.now());
    }
  }

  /** The file as it is, which says so where something was saved. */
  void done(Context ctx, LineFile file, Saved saved) throws IOException {
    if (saved.state() == Saved.State.SAVED) {
      String digest = saved.now().digest();
      ctx.redirect(
          "/lines/file?" + SAVED + "=" + digest + "&name=" + coded(file.name()),
          HttpStatus.SEE_OTHER);
      return;
    }
    OpenText now = saved.now();
    show(
        ctx,
        new Form(file, now.text(), now.digest()),
        desk.typed(file, now.text()),
        Map.of("said", "Nothing was saved: the file has this text already."));
  }

  /** Both texts, and a form in which his own is, to be saved upon the other. */
  void changed(Context ctx, LineFile file, String text, OpenText now) throws IOException {
    show(
        ctx.status(HttpStatus.CONFLICT),
        new Form(file, text, now.digest()),
        desk.typed(file, text),
        Map.of("changed", whose(file, now), "rows", Sides.of(now.text(), text)));
  }

  /** Who saved what the file says now, and when; empty text where it was not saved at the desk. */
  private String whose(LineFile file, OpenText now) throws IOException {
    return desk.saves(file).stream()
        .limit(1)
        .filter(s -> s.digest().equals(now.digest()) && !s.by().isEmpty())
        .map(s -> s.by() + ", " + s.when().toString().replace('T', ' '))
        .collect(Collectors.joining());
  }

  void cells(Context ctx) throws IOException {
    Form form = form(ctx);
    String list = listed(ctx, form.file());
    Taken taken = desk.cells(form.file(), form.text(), list);
    if (taken.text().isEmpty()) {
      show(
          ctx,
          form,
          desk.typed(form.file(), form.text()),
          Map.of("fault", "The table cannot be shown while the text has errors."));
      return;
    }
    cells(ctx, form, list, taken.text().get(), List.of());
  }

  void paste(Context ctx) throws IOException {
    Form form = form(ctx);
    String list = listed(ctx, form.file());
    String cells = LinesDesk.plain(field(ctx, "cells"));
    Taken taken = desk.withCells(form.file(), form.text(), list, cells);
    if (taken.text().isEmpty()) {
      cells(ctx, form, list, cells, taken.found());
      return;
    }
    Form filled = new Form(form.file(), taken.text().get(), form.base());
    show(
        ctx,
        filled,
        desk.typed(form.file(), filled.text()),
        Map.of("pasted", list, "rows", Sides.of(form.text(), filled.text())));
  }

  private void cells(Context ctx, Form form, String list, String cells, List<Checked.Found> found) {
    Map<String, Object> model = model(form);
    model.put("list", list);
    model.put("cells", cells);
    model.put("found", found);
    screens.show(ctx, "lines-cells", "The table " + list, model);
  }

  private String listed(Context ctx, LineFile file) {
    return Optional.of(field(ctx, "list"))
        .filter(desk.lists(file)::contains)
        .orElseThrow(Asked::nothing);
  }

  private void show(Context ctx, Form form, Checked checked, Map<String, ?> more) {
    Map<String, Object> model = model(form);
    model.put("checked", checked);
    model.put("lists", desk.lists(form.file()));
    model.put("places", checked.strip().map(s -> text(s.places())).orElse("[]"));
    model.putAll(more);
    screens.show(ctx, EDITOR, form.file().name(), model);
  }

  private String text(Object value) {
    try {
      return json.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private Map<String, Object> model(Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("file", form.file());
    model.put("text", form.text());
    model.put("base", form.base());
    return model;
  }

  private Form form(Context ctx) throws IOException {
    return new Form(
        asked(ctx.formParam("name")), LinesDesk.plain(field(ctx, "text")), field(ctx, "base"));
  }

  private static String field(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse("");
  }

  /** The file that a request names; whatever else it names is not looked for. */
  LineFile asked(@org.jspecify.annotations.Nullable String name) throws IOException {
    return desk.file(Optional.ofNullable(name).orElse("")).orElseThrow(Asked::nothing);
  }

  void refused(Context ctx, IOException e) {
    ctx.status(HttpStatus.CONFLICT);
    screens.show(
        ctx,
        "fault",
        "Not done",
        Map.of("why", List.of(IoErrorText.inWords(e), "Mend it with an editor on the machine.")));
  }

  static String coded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
