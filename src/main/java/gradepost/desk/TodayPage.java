package gradepost.desk;

import gradepost.app.Lists;
import gradepost.app.NoticeList;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.desk.page.Asked;
import gradepost.desk.page.Screens;
import gradepost.reissue.register.Question;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What wants doing, the most pressing first. */
final class TodayPage {
  private static final int PACK_DAYS = 28;
  private static final int SIGN_OFF_DAYS = 30;
  private static final long NOTICE_DAYS = 14;

  private final Screens screens;
  private final Shelf shelf;
  private final DeskServer.Served served;

  /**
   * One thing to do.
   *
   * @param what is the matter
   * @param link to the page where it is done; empty text where it is done at the command line
   * @param command that does it
   */
  public record Todo(String what, String link, String command) {}

  TodayPage(Screens screens, Shelf shelf, DeskServer.Served served) {
    this.screens = screens;
    this.shelf = shelf;
    this.served = served;
  }

  void show(Context ctx) throws IOException {
    List<Todo> todo = new ArrayList<>();
    Shelf.SoFar found = Asked.packs(shelf, ctx);
    List<ShelfPack> packs = found.packs();
    packs.forEach(pack -> faults(pack, todo));
    LocalDateTime now = shelf.now();
    boolean kept = served.store().exists();
    if (kept) {
      of(Question.issues(), todo, TodayPage::drafts);
      notices(todo);
      of(Question.out(), todo, TodayPage::copies);
      of(
          Question.toBrief(now),
          todo,
          each("must be briefed", "gradepost register to-brief", "to-brief"));
    }
    packs.forEach(pack -> validity(pack, now, todo));
    if (kept) {
      of(
          Question.lapsing(now.toLocalDate().plusDays(SIGN_OFF_DAYS)),
          todo,
          each(
              "lapses within %d days".formatted(SIGN_OFF_DAYS),
              "gradepost register lapsing",
              "lapsing"));
    }
    screens.show(
        ctx,
        "today",
        "Today",
        Map.of(
            "todo",
            todo,
            "packs",
            packs.size() + found.unread(),
            "unread",
            found.unread(),
            "folder",
            shelf.folder().toString(),
            "kept",
            kept,
            "register",
            served.store().where(),
            "on",
            now.toLocalDate().toString()));
  }

  private static void faults(ShelfPack pack, List<Todo> todo) {
    long errors = pack.problems().stream().filter(p -> p.contains(": error: ")).count();
    if (errors > 0) {
      todo.add(
          new Todo(
              "%s cannot be used: %d %s found"
                  .formatted(pack.id(), errors, errors == 1 ? "mistake is" : "mistakes are"),
              "/packs/" + pack.id(),
              "gradepost check " + pack.file()));
    }
  }

  private static void validity(ShelfPack pack, LocalDateTime now, List<Todo> todo) {
    pack.whole()
        .filter(whole -> !whole.validTo().isAfter(now.plusDays(PACK_DAYS)))
        .ifPresent(
            whole ->
                todo.add(
                    new Todo(
                        whole.validTo().isAfter(now)
                            ? "%s expires on %s".formatted(pack.id(), whole.validTo().toLocalDate())
                            : "%s expired on %s"
                                .formatted(pack.id(), whole.validTo().toLocalDate()),
                        "/packs/" + pack.id(),
                        "gradepost reissue " + pack.file())));
  }

  private void notices(List<Todo> todo) {
    new NoticeList(served.store(), served.clock())
        .table(Optional.of(NOTICE_DAYS))
        .match(
            rows -> {
              for (List<String> row : rows.listing().rows()) {
                todo.add(
                    new Todo(
                        "Notice %s, %s: %s; %s to %s"
                            .formatted(row.get(0), row.get(2), row.get(6), row.get(4), row.get(5)),
                        "/notice",
                        "gradepost register notices"));
              }
              return 0;
            },
            nothing -> {
              nothing.why().problems().forEach(p -> todo.add(new Todo(p, "", "")));
              return 0;
            });
  }

  private void of(
      Question question, List<Todo> todo, Function<List<List<String>>, List<Todo>> told) {
    new Lists(served.store())
        .list(question)
        .match(
            rows -> todo.addAll(told.apply(rows.listing().rows())),
            nothing -> {
              nothing.why().problems().forEach(p -> todo.add(new Todo(p, "", "")));
              return true;
            });
  }

  /** One thing to do for each row of a list. */
  private static Function<List<List<String>>, List<Todo>> each(
      String what, String command, String list) {
    return rows ->
        rows.stream()
            .map(
                row ->
                    new Todo(
                        "%s, %s: %s".formatted(row.get(0), row.get(1), what),
                        "/register?list=" + list,
                        command))
            .toList();
  }

  /** Issues in force or to come that nobody has checked. */
  private static List<Todo> drafts(List<List<String>> issues) {
    return issues.stream()
        .filter(row -> row.get(5).isEmpty() && row.get(7).equals("DRAFT"))
        .map(
            row ->
                new Todo(
                    "%s is a draft: somebody other than its preparer must check it"
                        .formatted(row.get(0)),
                    "/packs/" + row.get(0).replaceFirst("/\\d+$", ""),
                    "gradepost register checked " + row.get(0) + " --by NAME"))
        .toList();
  }

  /** Copies in somebody's hands of issues that are superseded or recalled, by issue. */
  private static List<Todo> copies(List<List<String>> out) {
    Map<String, Long> byIssue =
        out.stream()
            .filter(row -> !row.get(5).isEmpty())
            .collect(
                Collectors.groupingBy(
                    row -> "%s, %s".formatted(row.get(0), row.get(5)),
                    LinkedHashMap::new,
                    Collectors.counting()));
    return byIssue.entrySet().stream()
        .map(
            one ->
                new Todo(
                    "%s: %d %s still out"
                        .formatted(
                            one.getKey(),
                            one.getValue(),
                            one.getValue() == 1 ? "copy is" : "copies are"),
                    "/register?list=out",
                    "gradepost register out"))
        .toList();
  }
}
