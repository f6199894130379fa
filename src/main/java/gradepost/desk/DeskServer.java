package gradepost.desk;

import gradepost.app.account.AccountDesk;
import gradepost.app.account.SignIn;
import gradepost.app.author.LinesDesk;
import gradepost.app.shelf.Bench;
import gradepost.app.shelf.IssueDesk;
import gradepost.app.shelf.NoticeDesk;
import gradepost.app.shelf.OpenPapers;
import gradepost.app.shelf.PeopleDesk;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.Works;
import gradepost.app.store.Store;
import gradepost.desk.author.AuthorRoutes;
import gradepost.desk.entry.DeskFault;
import gradepost.desk.entry.Door;
import gradepost.desk.entry.ElseWhere;
import gradepost.desk.entry.Gate;
import gradepost.desk.entry.Sessions;
import gradepost.desk.entry.SignInPage;
import gradepost.desk.entry.Tls;
import gradepost.desk.page.DeskText;
import gradepost.desk.page.Refused;
import gradepost.desk.page.Screens;
import gradepost.desk.page.SentAgain;
import gradepost.desk.page.Standing;
import gradepost.reissue.register.Account;
import gradepost.reissue.register.RegisterException;
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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.function.IntSupplier;

/** The server of the desk. It keeps nothing: all that lasts is on disk and in the register. */
public final class DeskServer implements AutoCloseable {
  private static final String KEPT = "/gradepost/templates/desk";

  private static final Set<String> KNOWN = Set.of("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE");

  private final Javalin javalin;
  private final Gate gate;
  private final Shelf shelf;
  private final IntSupplier port;
  private final Works works;
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
    return start(served, Door.here(port));
  }

  /**
   * Starts to listen.
   *
   * @throws DeskFault where there is nothing to serve, nobody who could come in, or the port is
   *     another's
   */
  public static DeskServer start(Served served, Door door) throws DeskFault {
    return start(served, door, DeskServer::begin);
  }

  /** The same; what nobody waits for is done by this one beside the answers. */
  static DeskServer start(Served served, Door door, Executor beside) throws DeskFault {
    if (!Files.isDirectory(served.folder())) {
      throw new DeskFault(DeskText.NO_FOLDER.with(served.folder().toString()));
    }
    String at = door.host() + ":" + door.port();
    try {
      requireClerk(served, door);
      DeskServer desk = new DeskServer(served, door, beside);
      if (door.tls().isPresent()) {
        desk.javalin.start();
      } else {
        desk.javalin.start(door.host(), door.port());
      }
      // Not before: what is read takes the time of whoever wants a first page.
      desk.shelf.readAhead(beside);
      return desk;
    } catch (JavalinBindException e) {
      throw new DeskFault(DeskText.PORT_TAKEN.with(at, String.valueOf(e.getMessage())));
    } catch (IOException | RegisterException e) {
      throw new DeskFault(DeskText.WENT_WRONG.with(String.valueOf(e.getMessage())));
    }
  }

  /** Where people come in by accounts, somebody must be able to work. */
  private static void requireClerk(Served served, Door door) throws DeskFault, RegisterException {
    if (door.accounts()
        && new AccountDesk(served.store(), served.clock(), "desk")
            .all().stream().noneMatch(a -> a.role() == Account.Role.CLERK && !a.shut())) {
      throw new DeskFault(DeskText.NO_CLERK);
    }
  }

  private static void begin(Runnable work) {
    Thread thread = new Thread(work, "beside");
    thread.setDaemon(true);
    thread.start();
  }

  private DeskServer(Served served, Door door, Executor beside) throws IOException, DeskFault {
    shelf = new Shelf(served.folder(), served.clock());
    Standing standing = new Standing(shelf, served.store());
    OpenPapers papers = new OpenPapers(shelf, standing::edited);
    TodayPage today = new TodayPage(screens, shelf, served);
    PackPages packs = new PackPages(screens, shelf, papers, served.store(), standing);
    LearnPage learn = new LearnPage(screens, shelf, papers, standing);
    BenchPage bench = new BenchPage(screens, shelf, new Bench(papers), standing);
    RegisterPage register =
        new RegisterPage(
            screens,
            served.store(),
            new PeopleDesk(served.store(), served.clock()),
            served.clock());
    NoticeDesk notices =
        new NoticeDesk(served.folder(), served.store(), served.out(), served.clock());
    works = new Works(notices, served.out().resolve(".at-work"), served.clock());
    NoticePage notice = new NoticePage(screens, shelf, notices, works);
    SignIn signIn = new SignIn(served.store(), served.clock(), beside);
    Sessions sessions = new Sessions(door.secure(), served.clock());
    SignInPage people =
        new SignInPage(screens, door, signIn, sessions, served.store(), served.clock());
    Optional<Tls> tls = door.tls().isPresent() ? Optional.of(Tls.of(door)) : Optional.empty();
    AuthorRoutes author = new AuthorRoutes(screens, shelf, papers, standing);
    LinesDesk lines = new LinesDesk(served.folder(), served.store(), served.clock());
    javalin =
        Javalin.create(
            config -> {
              tls.ifPresent(t -> t.at(config.jetty));
              configure(config);
              routes(config.routes, today, packs, learn, bench);
              new PackActs(
                      packs, shelf, new IssueDesk(served.store(), served.out(), served.clock()))
                  .at(config.routes);
              config.routes.get("/register", register::show);
              config.routes.post("/register", register::enter);
              config.routes.post("/register/undo", register::undo);
              config.routes.get("/register.csv", register::csv);
              config.routes.get("/notice", notice::empty);
              config.routes.post("/notice", notice::look);
              config.routes.post(NoticePage.FILLED, notice::filled);
              config.routes.post("/notice/issue", notice::issue);
              config.routes.get("/notice/work/{work}", notice::work);
              if (door.accounts()) {
                people(config.routes, people);
              }
              author.add(config.routes, lines);
            });
    port = () -> tls.map(Tls::port).orElseGet(javalin::port);
    gate = new Gate(door, signIn, sessions, port);
  }

  private static void people(RoutesConfig routes, SignInPage people) {
    routes.get(Gate.SIGN_IN, people::form);
    routes.post(Gate.SIGN_IN, people::enter);
    routes.post("/sign-out", people::leave);
    routes.get("/account", people::account);
    routes.post("/account", people::change);
  }

  private void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.http.strictContentTypes = true;
    RoutesConfig routes = config.routes;
    AuthorRoutes.bound(config);
    routes.before(ctx -> gate.check(ctx));
    routes.get(Gate.ENTER, this::enter);
    routes.get(Gate.STYLE, ctx -> kept(ctx, Gate.STYLE, "text/css; charset=utf-8"));
    routes.get(Gate.LIVE, ctx -> kept(ctx, Gate.LIVE, "text/javascript; charset=utf-8"));
    routes.exception(Refused.class, this::refused);
    routes.exception(ElseWhere.class, (e, ctx) -> ctx.redirect(e.path(), HttpStatus.SEE_OTHER));
    routes.exception(
        Exception.class,
        (e, ctx) ->
            fault(
                ctx,
                HttpStatus.INTERNAL_SERVER_ERROR,
                DeskText.WENT_WRONG.with(String.valueOf(e.getMessage()))));
    routes.error(404, ctx -> notFound(ctx));
    routes.error(413, ctx -> fault(ctx, HttpStatus.CONTENT_TOO_LARGE, DeskText.TOO_LONG));
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

  /** The address that lets in whoever has it, or that asks for name and password. */
  public String address() {
    return gate.address();
  }

  /** The port on which it listens. */
  int port() {
    return port.getAsInt();
  }

  /** Everything that it answers to, such as {@code GET /packs}, but for the style of pages. */
  List<String> ways() {
    return javalin.unsafe.internalRouter.allHttpHandlers().stream()
        .map(e -> e.endpoint)
        .filter(e -> KNOWN.contains(e.method.name()) && !Gate.isOpen(e.path))
        .map(e -> e.method.name() + " " + e.path)
        .toList();
  }

  @Override
  public void close() {
    javalin.stop();
    works.close();
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
    if (e.maySendAgain() && SentAgain.canBe(ctx)) {
      ctx.status(e.status());
      SentAgain.show(ctx, screens, e.why());
    } else {
      fault(ctx, e.status(), e.why());
    }
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
