package gradepost.desk;

import gradepost.app.shelf.NoticeDesk;
import gradepost.app.store.Answer;
import gradepost.desk.page.DeskText;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Session;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Takes in a notice: first what it touches, then the issues. */
final class NoticePage {
  private final Screens screens;
  private final NoticeDesk desk;

  NoticePage(Screens screens, NoticeDesk desk) {
    this.screens = screens;
    this.desk = desk;
  }

  void empty(Context ctx) {
    show(ctx, "", Answer.GOOD, "typed");
  }

  void look(Context ctx) throws IOException {
    NoticeDesk.Typed typed = typed(ctx);
    show(ctx, typed.text(), desk.look(typed), "looked");
  }

  void issue(Context ctx) throws IOException {
    NoticeDesk.Typed typed = typed(ctx);
    if (typed.by().isEmpty()) {
      show(ctx, typed.text(), Answer.refused(DeskText.NO_NAME.inWords()), "looked");
      return;
    }
    Answer answer = desk.issue(typed);
    show(ctx, typed.text(), answer, answer.good() ? "issued" : "looked");
  }

  private void show(Context ctx, String text, Answer answer, String state) {
    Map<String, Object> model = new HashMap<>();
    model.put("text", text);
    model.put("said", answer.said());
    model.put("problems", answer.problems());
    model.put("good", answer.good());
    model.put("state", state);
    model.put("confirm", field(ctx, "confirm"));
    model.put("emergency", ctx.formParam("emergency") != null);
    screens.show(ctx, "notice", "Notice", model);
  }

  private static NoticeDesk.Typed typed(Context ctx) {
    Set<String> confirmed =
        Stream.of(field(ctx, "confirm").split(","))
            .map(String::strip)
            .filter(s -> !s.isEmpty())
            .collect(Collectors.toSet());
    return new NoticeDesk.Typed(
        field(ctx, "text").replace("\r\n", "\n"),
        confirmed,
        Session.of(ctx).by(ctx),
        ctx.formParam("emergency") != null);
  }

  private static String field(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse("").strip();
  }
}
