package gradepost.desk.page;

import gradepost.text.Mistake;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A form that came too late, as a page from which it can be sent again: what somebody typed is not
 * lost because the desk was begun again, or the session was over. Nothing is done before that.
 */
public final class SentAgain {
  /** Passwords are typed again. */
  private static final String NOT_KEPT = "/account";

  private static final String FIELDS = "application/x-www-form-urlencoded";
  private static final String FIELDS_AND_FILES = "multipart/form-data";

  /** A field as it was sent; of a file, its name. */
  public record Field(String name, String value) {}

  private SentAgain() {}

  /** Whether it was sent to a page of this desk, which can hold it; files are chosen again. */
  public static boolean canBe(Context ctx) {
    String type = Optional.ofNullable(ctx.contentType()).orElse("");
    return (type.startsWith(FIELDS) || type.startsWith(FIELDS_AND_FILES))
        && !ctx.path().equals(NOT_KEPT)
        && Rights.roles(ctx.method().name(), ctx.path()).isPresent()
        && Optional.ofNullable(ctx.header("X-Form-Token")).isEmpty();
  }

  /** Answers with that page. */
  public static void show(Context ctx, Screens screens, Mistake why) {
    List<Field> fields = new ArrayList<>();
    ctx.formParamMap()
        .forEach(
            (name, values) -> {
              if (!name.equals("token")) {
                values.forEach(value -> fields.add(new Field(name, value)));
              }
            });
    List<Field> files = new ArrayList<>();
    ctx.uploadedFileMap()
        .forEach(
            (name, sent) ->
                sent.stream()
                    .filter(file -> !file.filename().isEmpty())
                    .forEach(file -> files.add(new Field(name, file.filename()))));
    screens.show(
        ctx,
        "again",
        "Not done yet",
        Map.of("why", why.what(), "path", ctx.path(), "fields", fields, "files", files));
  }
}
