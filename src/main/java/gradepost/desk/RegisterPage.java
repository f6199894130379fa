package gradepost.desk;

import gradepost.app.Found;
import gradepost.app.Lists;
import gradepost.app.export.ListingCsv;
import gradepost.app.store.Store;
import gradepost.reissue.register.Listing;
import gradepost.reissue.register.Question;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** The lists of the register, each to be narrowed, and to be had as CSV. */
final class RegisterPage {
  private static final Map<String, Supplier<Question>> LISTS = lists();

  private final Screens screens;
  private final Store store;

  RegisterPage(Screens screens, Store store) {
    this.screens = screens;
    this.store = store;
  }

  private static Map<String, Supplier<Question>> lists() {
    Map<String, Supplier<Question>> lists = new LinkedHashMap<>();
    lists.put("issues", Question::issues);
    lists.put("out", Question::out);
    lists.put("to-brief", Question::toBrief);
    lists.put("signed", Question::signed);
    lists.put("staff", Question::staff);
    lists.put("acts", Question::acts);
    return lists;
  }

  void show(Context ctx) {
    String list = list(ctx);
    Found found = found(ctx, list);
    screens.show(
        ctx,
        "register",
        "Register",
        Map.of(
            "lists",
            List.copyOf(LISTS.keySet()),
            "list",
            list,
            "pack",
            param(ctx, "pack").orElse(""),
            "person",
            param(ctx, "person").orElse(""),
            "columns",
            found.match(rows -> rows.listing().columns(), nothing -> List.<String>of()),
            "rows",
            found.match(
                rows ->
                    rows.listing().rows().stream()
                        .map(row -> row.stream().map(Listing::moment).toList())
                        .toList(),
                nothing -> List.<List<String>>of()),
            "problems",
            found.match(rows -> List.<String>of(), nothing -> nothing.why().problems())));
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
            .get();
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
