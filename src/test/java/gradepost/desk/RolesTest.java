package gradepost.desk;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.store.Store;
import gradepost.desk.page.Rights;
import gradepost.reissue.register.Account.Role;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: each role tries everything that the desk answers to, and may do what is its own. */
class RolesTest {
  /** Of each way: c for clerk, i for instructor, l for learner. */
  private static final Map<String, String> MAY =
      Map.ofEntries(
          entry("GET /", "ci"),
          entry("GET /packs", "cil"),
          entry("GET /packs/{pack}", "cil"),
          entry("GET /packs/{pack}/papers/{paper}", "cil"),
          entry("GET /packs/{pack}/papers/{paper}/{face}", "cil"),
          entry("GET /packs/{pack}/issues/{issue}/{file}", "cil"),
          entry("POST /packs/{pack}/enter", "c"),
          entry("POST /packs/{pack}/checked", "ci"),
          entry("POST /packs/{pack}/recall", "c"),
          entry("POST /packs/{pack}/sign-off", "i"),
          entry("GET /learn/{pack}/{paper}", "cil"),
          entry("GET /bench/{pack}/{paper}", "i"),
          entry("GET /register", "ci"),
          entry("GET /register.csv", "ci"),
          entry("POST /register", "c"),
          entry("POST /register/undo", "c"),
          entry("GET /notice", "c"),
          entry("POST /notice", "c"),
          entry("POST /notice/filled", "c"),
          entry("POST /notice/issue", "c"),
          entry("GET /notice/work/{work}", "c"),
          entry("GET /assets/{file}", "cil"),
          entry("GET /lines", "ci"),
          entry("GET /lines/keys", "ci"),
          entry("GET /lines/keys.json", "ci"),
          entry("GET /lines/file", "ci"),
          entry("GET /lines/saves", "ci"),
          entry("GET /lines/saves/{text}", "ci"),
          entry("POST /lines/check", "c"),
          entry("POST /lines/typed", "c"),
          entry("POST /lines/save", "c"),
          entry("POST /lines/cells", "c"),
          entry("POST /lines/paste", "c"),
          entry("POST /lines/saves/{text}", "c"),
          entry("GET /rides", "i"),
          entry("GET /rides/{ride}", "i"),
          entry("GET /rides/{ride}/{paper}", "i"),
          entry("POST /rides", "i"),
          entry("GET /learn", "cil"),
          entry("GET /bench", "i"),
          entry("GET /learn/{pack}/{paper}/pace", "cil"),
          entry("GET /learn/{pack}/{paper}/practice", "cil"),
          entry("POST /learn/{pack}/{paper}/practice", "cil"),
          entry("GET /account", "cil"),
          entry("POST /account", "cil"));

  /** For whoever is not signed in, or signs out. */
  private static final List<String> ENTRY =
      List.of("GET /enter", "GET /sign-in", "POST /sign-in", "POST /sign-out");

  @TempDir private static Path folder = Path.of("");
  private static DeskServer desk;

  @BeforeAll
  static void open() throws Exception {
    Store store = People.with(folder, Depot.NOON);
    desk =
        DeskServer.start(
            new DeskServer.Served(folder, store, folder.resolve("papers"), Depot.NOON),
            People.BY_ACCOUNT);
  }

  @AfterAll
  static void close() {
    desk.close();
  }

  @Test
  void eachRoleDoesWhatIsItsOwnAndNothingElse() throws Exception {
    List<String> wrong = new ArrayList<>();
    for (Role role : Role.values()) {
      Browser browser = new Browser(desk);
      browser.signIn(People.NAMES.get(role), People.PASSWORD);
      String token = browser.token("/account");
      for (String way : desk.ways()) {
        if (ENTRY.contains(way)) {
          continue;
        }
        String path = way.substring(way.indexOf(' ') + 1).replaceAll("\\{\\w+}", "none");
        HttpResponse<String> answer =
            way.startsWith("GET") ? browser.get(path) : browser.post(path, "token=" + token);
        boolean refused =
            answer.body().contains("Your account is not for this")
                || answer.headers().firstValue("Location").filter("/packs"::equals).isPresent();
        String may = Optional.ofNullable(MAY.get(way)).orElse("nobody has said who may");
        if (refused == may.contains(role.toString().substring(0, 1)) || may.length() > 3) {
          wrong.add("%s, %s: %d, %s".formatted(role, way, answer.statusCode(), may));
        }
        if (refused && answer.statusCode() != 403 && answer.statusCode() != 303) {
          wrong.add("%s, %s: %d".formatted(role, way, answer.statusCode()));
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void whatHasNoRowIsRefusedToEverybody() throws Exception {
    for (String way : desk.ways()) {
      if (!ENTRY.contains(way)) {
        String[] parts = way.split(" ", 2);
        assertThat(Rights.roles(parts[0], parts[1])).as(way).isPresent();
      }
    }
    assertThat(Rights.roles("POST", "/packs")).isEmpty();
    assertThat(Rights.roles("GET", "/packs/")).isPresent();
    assertThat(Rights.roles("DELETE", "/register")).isEmpty();
    assertThat(Rights.roles("GET", "/registers")).isEmpty();
    assertThat(Rights.roles("GET", "/bench/a/b/../../../x")).hasValue(Set.of(Role.INSTRUCTOR));
    Browser browser = new Browser(desk);
    browser.signIn(People.NAMES.get(Role.CLERK), People.PASSWORD);
    String token = browser.token("/account");
    assertThat(browser.post("/nothing", "token=" + token).statusCode()).isEqualTo(404);
    assertThat(browser.get("/enter?key=x").statusCode()).isBetween(403, 404);
  }

  @Test
  void aPageShowsNoButtonThatIsRefused() throws Exception {
    Browser learner = new Browser(desk);
    learner.signIn(People.NAMES.get(Role.LEARNER), People.PASSWORD);
    assertThat(learner.get("/packs").body())
        .contains("L Moss", "Sign out", "href=\"/packs\"")
        .doesNotContain("href=\"/notice\"", "href=\"/register\"", "href=\"/\"");
    Browser instructor = new Browser(desk);
    instructor.signIn(People.NAMES.get(Role.INSTRUCTOR), People.PASSWORD);
    assertThat(instructor.get("/register").body()).doesNotContain("Take it back", "Enter for many");
  }

  /** The name under which something is entered is not taken from the form. */
  @Test
  void anActIsEnteredUnderTheNameOfTheAccount() throws Exception {
    Browser clerk = new Browser(desk);
    clerk.signIn("r clerk", People.PASSWORD);
    String token = clerk.token("/register");
    clerk.post("/register", "token=" + token + "&act=staff&people=A+Driver&by=Somebody+Else");
    assertThat(clerk.get("/register?list=acts").body())
        .contains("A Driver joined the list", "R Clerk")
        .doesNotContain("Somebody Else");
  }
}
