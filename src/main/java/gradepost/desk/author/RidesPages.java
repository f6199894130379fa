package gradepost.desk.author;

import gradepost.app.ride.RideDesk;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.app.shelf.ShelfPaper;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Paper;
import gradepost.desk.entry.Headers;
import gradepost.desk.page.Asked;
import gradepost.desk.page.Screens;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Takes in a ride and shows its report. What was handed in is not kept; reports are, in memory
 * alone, until so many others were made.
 */
final class RidesPages {
  private static final int KEPT = 20;
  private static final int BYTES = 16;

  private final SecureRandom random = new SecureRandom();
  private final Screens screens;
  private final Shelf shelf;
  private final Map<String, RideDesk.Assessed> kept =
      new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, RideDesk.Assessed> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * A paper that a ride may be laid against.
   *
   * @param value of the choice
   */
  public record Course(String value, String name) {}

  RidesPages(Screens screens, Shelf shelf) {
    this.screens = screens;
    this.shelf = shelf;
  }

  void empty(Context ctx) throws IOException {
    form(ctx, List.of());
  }

  private void form(Context ctx, List<String> problems) throws IOException {
    Map<String, Object> model = new HashMap<>();
    for (String field : List.of("course", "on", "driver", "assessor", "from", "to")) {
      model.put(field, field(ctx, field));
    }
    List<Course> courses = new ArrayList<>();
    for (ShelfPack pack : shelf.packs()) {
      for (ShelfPaper paper : pack.whole().map(ShelfPack.Whole::papers).orElse(List.of())) {
        courses.add(
            new Course(
                pack.id() + "/" + paper.stem(),
                "%s: %s, %s".formatted(pack.id(), paper.direction(), paper.train())));
      }
    }
    model.put("courses", courses);
    model.put("problems", problems);
    screens.show(ctx, "rides", "Rides", model);
  }

  void assess(Context ctx) throws IOException {
    List<String> problems = new ArrayList<>();
    String[] course = field(ctx, "course").split("/", 2);
    Optional<ShelfPack> pack = shelf.pack(course[0]);
    if (pack.isEmpty() || course.length < 2) {
      throw Asked.nothing();
    }
    Optional<String> clash = shelf.clash(course[0]);
    if (clash.isPresent()) {
      form(ctx.status(HttpStatus.CONFLICT), List.of(clash.get()));
      return;
    }
    Optional<UploadedFile> ride = file(ctx, "ride");
    if (ride.isEmpty()) {
      problems.add("No ride was handed in. Choose the export, or the form as it was filled in.");
    }
    Optional<LocalDate> on = Optional.empty();
    try {
      on = Optional.of(field(ctx, "on")).filter(d -> !d.isEmpty()).map(LocalDate::parse);
    } catch (DateTimeParseException e) {
      problems.add("The day is not a date. Allowed: a day such as 2026-11-29.");
    }
    if (!problems.isEmpty()) {
      form(ctx.status(HttpStatus.UNPROCESSABLE_CONTENT), problems);
      return;
    }
    RideDesk.Assessed assessed;
    try {
      assessed = assessed(ctx, pack.get(), course[1], ride.orElseThrow(), on);
    } catch (IOException e) {
      form(ctx.status(HttpStatus.INTERNAL_SERVER_ERROR), List.of(IoErrorText.inWords(e)));
      return;
    }
    if (assessed.papers().isEmpty()) {
      form(ctx.status(HttpStatus.UNPROCESSABLE_CONTENT), assessed.answer().problems());
      return;
    }
    byte[] name = new byte[BYTES];
    random.nextBytes(name);
    String id = Base64.getUrlEncoder().withoutPadding().encodeToString(name);
    synchronized (kept) {
      kept.put(id, assessed);
    }
    ctx.redirect("/rides/" + id, HttpStatus.SEE_OTHER);
  }

  private static RideDesk.Assessed assessed(
      Context ctx, ShelfPack pack, String stem, UploadedFile ride, Optional<LocalDate> on)
      throws IOException {
    Optional<UploadedFile> form = file(ctx, "form");
    RideDesk.Handed handed =
        new RideDesk.Handed(
            ride.filename(),
            bytes(ride),
            form.isPresent() ? Optional.of(bytes(form.get())) : Optional.empty());
    return new RideDesk()
        .of(
            pack.file(),
            stem,
            handed,
            new RideDesk.Told(
                on,
                field(ctx, "driver"),
                field(ctx, "assessor"),
                field(ctx, "from"),
                field(ctx, "to")));
  }

  /** A field for a file that was left empty comes as a file without a name. */
  private static Optional<UploadedFile> file(Context ctx, String field) {
    return Optional.ofNullable(ctx.uploadedFile(field)).filter(f -> f.size() > 0);
  }

  private static byte[] bytes(UploadedFile file) throws IOException {
    try (InputStream in = file.content()) {
      return in.readAllBytes();
    }
  }

  private static String field(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse("").strip();
  }

  private RideDesk.Assessed known(Context ctx) {
    synchronized (kept) {
      return Optional.ofNullable(kept.get(ctx.pathParam("ride"))).orElseThrow(Asked::nothing);
    }
  }

  void report(Context ctx) {
    RideDesk.Assessed assessed = known(ctx);
    screens.show(
        ctx,
        "rides-report",
        "The ride",
        Map.of(
            "ride",
            ctx.pathParam("ride"),
            "said",
            assessed.answer().said(),
            "problems",
            assessed.answer().problems(),
            "papers",
            assessed.papers().stream().map(Paper::name).toList()));
  }

  void paper(Context ctx) {
    String name = ctx.pathParam("paper");
    Paper paper =
        known(ctx).papers().stream()
            .filter(p -> p.name().equals(name))
            .findFirst()
            .orElseThrow(Asked::nothing);
    Headers.paper(ctx);
    boolean html = name.endsWith(".html");
    ctx.contentType(html ? "text/html; charset=utf-8" : "application/pdf");
    if (!html) {
      ctx.header(
          "Content-Disposition", "inline; filename=\"" + name.replaceAll("[^\\w.-]", "_") + '"');
    }
    ctx.result(paper.bytes());
  }
}
