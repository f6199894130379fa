package gradepost.desk;

import gradepost.app.shelf.NoticeDesk;
import gradepost.app.shelf.NoticeFields;
import gradepost.app.shelf.NoticeLine;
import gradepost.app.shelf.NoticeLines;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.Work;
import gradepost.app.shelf.Works;
import gradepost.app.store.Answer;
import gradepost.desk.page.Asked;
import gradepost.desk.page.DeskText;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Session;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Takes in a notice: first what it touches, then the issues, which are made while nobody waits. */
final class NoticePage {
  static final String FILLED = "/notice/filled";

  private final Screens screens;
  private final NoticeDesk desk;
  private final Works works;

  /** The field of the form that says from when the issues are valid. */
  private static final String VALID = "valid";

  private final NoticeLines lines;

  NoticePage(Screens screens, Shelf shelf, NoticeDesk desk, Works works) {
    this.screens = screens;
    this.lines = new NoticeLines(shelf);
    this.desk = desk;
    this.works = works;
  }

  /** An approach that is touched, and its drawing. */
  public record Drawn(
      String pack,
      String paper,
      String approach,
      String state,
      BenchChart chart,
      List<Line> lines) {}

  /** One run of a drawing. */
  public record Line(String kind, String points) {}

  void empty(Context ctx) throws IOException {
    show(ctx, "", new NoticeDesk.Looked(Answer.GOOD, List.of()), "typed");
  }

  /** What was filled in field by field is made a text, and looked at like one that was pasted. */
  void filled(Context ctx) throws IOException {
    Map<String, String> typed = new HashMap<>();
    Stream.concat(NoticeFields.KEYS.stream(), NoticeFields.WARNINGS.stream())
        .forEach(key -> typed.put(key, Asked.field(ctx, key)));
    NoticeLine line =
        lines.all().stream()
            .filter(l -> l.name().equals(Asked.field(ctx, "route")))
            .findFirst()
            .orElseThrow(Asked::nothing);
    look(ctx, new NoticeFields(typed).yaml(line));
  }

  /** What was pasted, or lies in a file. */
  void look(Context ctx) throws IOException {
    Optional<UploadedFile> file =
        Optional.ofNullable(ctx.uploadedFile("file")).filter(f -> f.size() > 0);
    if (file.isPresent()) {
      try (InputStream in = file.get().content()) {
        look(ctx, NoticeDesk.text(in.readAllBytes()));
      }
    } else {
      look(ctx, text(ctx));
    }
  }

  private void look(Context ctx, String text) throws IOException {
    Optional<String> wrong = wrong(ctx, text);
    if (wrong.isPresent()) {
      show(ctx.status(HttpStatus.BAD_REQUEST), text, refused(wrong.get()), "looked");
      return;
    }
    NoticeDesk.Looked looked = desk.look(typed(ctx, text));
    if (!looked.answer().good()) {
      ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
    }
    show(ctx, text, looked, "looked");
  }

  void issue(Context ctx) throws IOException {
    String text = text(ctx);
    Optional<String> wrong =
        Session.of(ctx).by(ctx).isEmpty()
            ? Optional.of(DeskText.NO_NAME.inWords())
            : wrong(ctx, text);
    if (wrong.isPresent()) {
      show(ctx.status(HttpStatus.BAD_REQUEST), text, refused(wrong.get()), "looked");
      return;
    }
    NoticeDesk.Typed typed = typed(ctx, text);
    ctx.redirect("/notice/work/" + works.begin(typed), HttpStatus.SEE_OTHER);
  }

  /** How far an issue is: looked at again every two seconds while it goes on. */
  void work(Context ctx) {
    Work work = works.of(ctx.pathParam("work")).orElseThrow(Asked::nothing);
    if (work.state() == Work.State.AT_WORK) {
      ctx.header("Refresh", "2");
    }
    screens.show(ctx, "notice-work", "Notice", Map.of("work", work));
  }

  private void show(Context ctx, String text, NoticeDesk.Looked looked, String state)
      throws IOException {
    Answer answer = looked.answer();
    Map<String, Object> model = new HashMap<>();
    model.put("text", text);
    model.put("said", answer.said());
    model.put("problems", answer.problems());
    model.put("good", answer.good());
    model.put("state", state);
    model.put("filled", ctx.path().equals(FILLED));
    model.put("confirm", Asked.field(ctx, "confirm"));
    model.put("valid", Asked.field(ctx, VALID));
    model.put("edits", edits(ctx));
    model.put("emergency", ctx.formParam("emergency") != null);
    model.put("recent", works.recent());
    model.put("kept", desk.keepsRegister());
    model.put("register", desk.register());
    model.put(
        "drawn",
        looked.runs().stream()
            .map(
                run -> {
                  BenchChart chart = new BenchChart(run.drawn());
                  return new Drawn(
                      run.pack(),
                      run.paper(),
                      run.approach(),
                      run.state(),
                      chart,
                      run.drawn().lines().stream()
                          .map(line -> new Line(line.kind(), chart.points(line)))
                          .toList());
                })
            .toList());
    model.put(
        "units",
        looked.runs().stream()
            .findFirst()
            .map(run -> List.of(run.drawn().speedUnit(), run.drawn().distanceUnit()))
            .orElse(List.of("", "")));
    form(ctx, model);
    screens.show(ctx, "notice", "Notice", model);
  }

  /** The form of the line that was chosen; of the first where none was. */
  private void form(Context ctx, Map<String, Object> model) throws IOException {
    List<NoticeLine> all = lines.all();
    String route = Optional.ofNullable(ctx.queryParam("route")).orElse(Asked.field(ctx, "route"));
    Map<String, String> fields = new HashMap<>();
    Stream.concat(NoticeFields.KEYS.stream(), NoticeFields.WARNINGS.stream())
        .forEach(key -> fields.put(key, Asked.field(ctx, key)));
    model.put("routes", all.stream().map(NoticeLine::name).toList());
    model.put(
        "line",
        all.stream()
            .filter(l -> l.name().equals(route))
            .findFirst()
            .or(() -> all.stream().findFirst()));
    model.put("fields", fields);
  }

  private static boolean edits(Context ctx) {
    return Asked.field(ctx, "edits").equals("yes");
  }

  private static NoticeDesk.Looked refused(String why) {
    return new NoticeDesk.Looked(Answer.refused(why), List.of());
  }

  /** Why nothing can be made of what came; that no notice came is meant where files were edited. */
  private static Optional<String> wrong(Context ctx, String text) {
    if (text.isBlank() && !edits(ctx)) {
      return Optional.of(DeskText.NO_NOTICE.inWords());
    }
    try {
      validFrom(ctx);
      return Optional.empty();
    } catch (DateTimeParseException e) {
      return Optional.of(DeskText.NO_MOMENT.with(Asked.field(ctx, VALID)).inWords());
    }
  }

  private static Optional<LocalDateTime> validFrom(Context ctx) {
    return Optional.of(Asked.field(ctx, VALID).strip().replace(' ', 'T'))
        .filter(moment -> !moment.isEmpty())
        .map(LocalDateTime::parse);
  }

  private static String text(Context ctx) {
    return Asked.field(ctx, "text").replace("\r\n", "\n");
  }

  private static NoticeDesk.Typed typed(Context ctx, String text) {
    Set<String> confirmed =
        Stream.of(Asked.field(ctx, "confirm").split(","))
            .map(String::strip)
            .filter(s -> !s.isEmpty())
            .collect(Collectors.toSet());
    return new NoticeDesk.Typed(
        edits(ctx) ? "" : text,
        confirmed,
        Session.of(ctx).by(ctx),
        ctx.formParam("emergency") != null,
        validFrom(ctx));
  }
}
