package gradepost.desk;

import gradepost.app.shelf.Bench;
import gradepost.app.shelf.NoticeDesk;
import gradepost.app.shelf.OpenPapers;
import gradepost.app.shelf.PeopleDesk;
import gradepost.app.shelf.Shelf;
import gradepost.app.store.Store;
import gradepost.text.Mistake;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The server of the desk. It keeps nothing: all that lasts is on disk and in the register. */
public final class DeskServer implements AutoCloseable {
  private static final int LARGEST_BYTES = 1 << 20;
  private static final int LAST_PORT = 65_535;
  private static final String STYLE = "/desk.css";
  private static final String LIVE = "/live.js";
  private static final Set<String> OPEN = Set.of(STYLE, LIVE);
  private static final String KEPT = "/gradepost/templates/desk";

  private final Javalin javalin;
  private final Gate gate;
  private final Screens screens = new Screens();

  /**
   * What is served.
   *
   * @param folder below which the packs lie
   * @param store the register and its archive; neither need be there
   * @param out where the papers of new issues go
   * @param clock by which a pack is valid or expired
   */
  public record Served(Path folder, Store store, Path out, Clock clock) {}

  /**
   * Starts to listen on this machine, and on no other address.
   *
   * @param port 0 for any that is free
   * @throws DeskFault where there is nothing to serve, or the port is another's
   */
  public static DeskServer start(Served served, int port) throws DeskFault {
    if (!Files.isDirectory(served.folder())) {
      throw new DeskFault(DeskText.NO_FOLDER.with(served.folder().toString()));
    }
    try {
      DeskServer desk = new DeskServer(served);
      desk.javalin.start("127.0.0.1", port);
      return desk;
    } catch (JavalinBindException e) {
      throw new DeskFault(
          DeskText.PORT_TAKEN.with("127.0.0.1:" + port, String.valueOf(e.getMessage())));
    } catch (IOException e) {
      throw new DeskFault(DeskText.WENT_WRONG.with(String.valueOf(e.getMessage())));
    }
  }

  /**
   * The port of an address at which the desk may listen.
   *
   * @param listen such as {@code 127.0.0.1:8384}
   * @throws DeskFault for any address but this machine's own
   */
  public static int port(String listen) throws DeskFault {
    String digits = listen.replaceFirst("^(127\\.0\\.0\\.1|localhost):", "");
    if (!digits.equals(listen) && digits.matches("\\d{1,5}")) {
      int port = Integer.parseInt(digits);
      if (port <= LAST_PORT) {
        return port;
      }
    }
    throw new DeskFault(DeskText.LISTEN.with(listen));
  }

  private DeskServer(Served served) throws IOException {
    Shelf shelf = new Shelf(served.folder(), served.clock());
    OpenPapers papers = new OpenPapers(shelf);
    Standing standing = new Standing(shelf, served.store());
    TodayPage today = new TodayPage(screens, shelf, served);
    PackPages packs = new PackPages(screens, shelf, papers, served.store(), standing);
    LearnPage learn = new LearnPage(screens, shelf, papers, standing);
    BenchPage bench = new BenchPage(screens, shelf, new Bench(papers), standing);
    RegisterPage register =
        new RegisterPage(screens, served.store(), new PeopleDesk(served.store(), served.clock()));
    NoticePage notice =
        new NoticePage(
            screens, new NoticeDesk(served.folder(), served.store(), served.out(), served.clock()));
    javalin =
        Javalin.create(
            config -> {
              configure(config);
              routes(config.routes, today, packs, learn, bench);
              config.routes.get("/register", register::show);
              config.routes.post("/register", register::enter);
              config.routes.post("/register/undo", register::undo);
              config.routes.get("/register.csv", register::csv);
              config.routes.get("/notice", notice::empty);
              config.routes.post("/notice", notice::look);
              config.routes.post("/notice/issue", notice::issue);
            });
    gate = new Gate(javalin::port);
  }

  private void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.http.maxRequestSize = LARGEST_BYTES;
    config.http.strictContentTypes = true;
    RoutesConfig routes = config.routes;
    routes.before(ctx -> gate.check(ctx));
    routes.get(Gate.ENTER, this::enter);
    routes.get(STYLE, ctx -> kept(ctx, STYLE, "text/css; charset=utf-8"));
    routes.get(LIVE, ctx -> kept(ctx, LIVE, "text/javascript; charset=utf-8"));
    routes.exception(Refused.class, this::refused);
    routes.exception(
        Exception.class,
        (e, ctx) ->
            fault(
                ctx,
                HttpStatus.INTERNAL_SERVER_ERROR,
                DeskText.WENT_WRONG.with(String.valueOf(e.getMessage()))));
    routes.error(404, ctx -> notFound(ctx));
  }

  private static void routes(
      RoutesConfig routes, TodayPage today, PackPages packs, LearnPage learn, BenchPage bench) {
    routes.get("/", today::show);
    routes.get("/packs", packs::list);
    routes.get("/packs/{pack}", packs::one);
    routes.get("/packs/{pack}/papers/{paper}", packs::paper);
    routes.get("/packs/{pack}/papers/{paper}/{face}", packs::face);
    routes.get("/packs/{pack}/issues/{issue}/{file}", packs::registered);
    routes.get("/learn/{pack}/{paper}", learn::show);
    routes.get("/bench/{pack}/{paper}", bench::show);
  }

  /** Whether a path is the same for everybody, and shown to whoever asks. */
  static boolean isOpen(String path) {
    return OPEN.contains(path);
  }

  /** The address that lets in whoever has it. */
  public String address() {
    return gate.address();
  }

  @Override
  public void close() {
    javalin.stop();
  }

  /** A file that the program brings. */
  private static void kept(Context ctx, String name, String type) throws IOException {
    try (InputStream in =
        Optional.ofNullable(DeskServer.class.getResourceAsStream(KEPT + name))
            .orElseThrow(() -> new IOException(name))) {
      ctx.contentType(type).result(in.readAllBytes());
    }
  }

  private void enter(Context ctx) {
    gate.enter(ctx);
    screens.show(ctx, "entered", "Come in", Map.of());
  }

  private void refused(Refused e, Context ctx) {
    fault(ctx, e.status(), e.why());
  }

  private void notFound(Context ctx) {
    if (ctx.attribute("told") == null) {
      fault(ctx, HttpStatus.NOT_FOUND, DeskText.NOTHING_THERE);
    }
  }

  private void fault(Context ctx, HttpStatus status, Mistake why) {
    ctx.attribute("told", true);
    ctx.status(status);
    screens.show(ctx, "fault", "Not done", Map.of("why", why.inWords().lines().toList()));
  }
}
