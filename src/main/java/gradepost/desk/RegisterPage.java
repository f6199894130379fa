package gradepost.desk;

import gradepost.app.BatchAct;
import gradepost.app.Found;
import gradepost.app.Lists;
import gradepost.app.export.ListingCsv;
import gradepost.app.shelf.PeopleDesk;
import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.desk.page.DeskText;
import gradepost.desk.page.Refused;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Session;
import gradepost.reissue.register.Listing;
import gradepost.reissue.register.Question;
import gradepost.text.Mistake;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The lists of the register, each to be narrowed, and to be had as CSV. */
final class RegisterPage {
  private static final Map<String, Function<LocalDateTime, Question>> LISTS = lists();
  private static final List<BatchAct> ACTS =
      List.of(BatchAct.HAND_OUT, BatchAct.ACKNOWLEDGE, BatchAct.RETURN, BatchAct.STAFF);

  private final Screens screens;
  private final Store store;
  private final PeopleDesk people;
  private final Clock clock;

  RegisterPage(Screens screens, Store store, PeopleDesk people, Clock clock) {
    this.screens = screens;
    this.store = store;
    this.people = people;
    this.clock = clock;
  }

  private static Map<String, Function<LocalDateTime, Question>> lists() {
    Map<String, Function<LocalDateTime, Question>> lists = new LinkedHashMap<>();
    lists.put("issues", now -> Question.issues());
    lists.put("out", now -> Question.out());
    lists.put("to-brief", Question::toBrief);
    lists.put("signed", now -> Question.signed());
    lists.put("staff", now -> Question.staff());
    lists.put("acts", now -> Question.acts());
    return lists;
  }

  void show(Context ctx) {
    show(ctx, Answer.GOOD);
  }

  /** Enters an act for each person that is named, one a line. */
  void enter(Context ctx) throws IOException {
    List<String> names =
        form(ctx, "people").lines().map(String::strip).filter(n -> !n.isEmpty()).toList();
    BatchAct act =
        ACTS.stream()
            .filter(a -> a.toString().equals(form(ctx, "act")))
            .findFirst()
            .orElseThrow(() -> new Refused(HttpStatus.NOT_FOUND, DeskText.NOTHING_THERE));
    if (names.isEmpty()) {
      mistyped(ctx, DeskText.NO_PEOPLE);
    } else if (Session.of(ctx).by(ctx).isEmpty()) {
      mistyped(ctx, DeskText.NO_NAME);
    } else {
      entered(
          ctx,
          people.enter(
              act,
              form(ctx, "issue"),
              names,
              Session.of(ctx).by(ctx),
              !form(ctx, "confirm").isEmpty()));
    }
  }

  /** Takes an entry back. */
  void undo(Context ctx) {
    String entry = form(ctx, "entry");
    if (!entry.matches("\\d{1,9}")) {
      mistyped(ctx, DeskText.NO_ENTRY.with(entry));
    } else if (Session.of(ctx).by(ctx).isEmpty()) {
      mistyped(ctx, DeskText.NO_NAME);
    } else {
      entered(
          ctx, people.undo(Long.parseLong(entry), form(ctx, "reason"), Session.of(ctx).by(ctx)));
    }
  }

  private void mistyped(Context ctx, Mistake why) {
    show(ctx.status(HttpStatus.BAD_REQUEST), Answer.refused(why.inWords()));
  }

  /** What the register refuses is refused because of what stands in it. */
  private void entered(Context ctx, Answer done) {
    if (!done.good()) {
      ctx.status(HttpStatus.CONFLICT);
    }
    show(ctx, done);
  }

  private static String form(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse("").strip();
  }

  private void show(Context ctx, Answer done) {
    String list = list(ctx);
    Found found = found(ctx, list);
    List<String> problems =
        found.match(rows -> List.<String>of(), nothing -> nothing.why().problems());
    if (!problems.isEmpty() && store.exists()) {
      ctx.status(HttpStatus.BAD_REQUEST);
    }
    screens.show(
        ctx,
        "register",
        "Register",
        Map.ofEntries(
            Map.entry("lists", List.copyOf(LISTS.keySet())),
            Map.entry("acts", ACTS.stream().map(BatchAct::toString).toList()),
            Map.entry("said", done.said()),
            Map.entry("faults", done.problems()),
            Map.entry("people", done.good() ? "" : form(ctx, "people")),
            Map.entry("issue", form(ctx, "issue")),
            Map.entry("act", done.good() ? "" : form(ctx, "act")),
            Map.entry("list", list),
            Map.entry("pack", param(ctx, "pack").orElse("")),
            Map.entry("person", param(ctx, "person").orElse("")),
            Map.entry(
                "columns",
                found.match(rows -> rows.listing().columns(), nothing -> List.<String>of())),
            Map.entry(
                "rows",
                found.match(
                    rows ->
                        rows.listing().rows().stream()
                            .map(row -> row.stream().map(Listing::moment).toList())
                            .toList(),
                    nothing -> List.<List<String>>of())),
            Map.entry("kept", store.exists()),
            Map.entry("register", store.where()),
            Map.entry("problems", problems)));
  }

  void csv(Context ctx) {
    String list = list(ctx);
    String text =
        found(ctx, list)
            .match(
                rows -> ListingCsv.of(rows.listing()),
                nothing -> {
                  throw new Refused(HttpStatus.NOT_FOUND, DeskText.NOTHING_THERE);
                });
    ctx.contentType("text/csv; charset=utf-8")
        .header("Content-Disposition", "attachment; filename=\"" + list + ".csv\"")
        .result(text);
  }

  private Found found(Context ctx, String list) {
    Question question =
        Optional.ofNullable(LISTS.get(list))
            .orElseThrow(() -> new Refused(HttpStatus.NOT_FOUND, DeskText.NOTHING_THERE))
            .apply(LocalDateTime.now(clock));
    return new Lists(store)
        .list(
            question,
            new Listing.Wish(
                param(ctx, "pack"), param(ctx, "person"), Optional.empty(), Optional.empty()));
  }

  private static String list(Context ctx) {
    return param(ctx, "list").orElse("issues");
  }

  private static Optional<String> param(Context ctx, String name) {
    return Optional.ofNullable(ctx.queryParam(name)).map(String::strip).filter(s -> !s.isEmpty());
  }
}
