package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.app.MovedClock;
import gradepost.app.account.AccountDesk;
import gradepost.app.store.Store;
import gradepost.desk.entry.DeskFault;
import gradepost.desk.entry.Door;
import gradepost.reissue.register.Account.Role;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** People come in by their accounts, as a browser would, and as an attacker would. */
class SignInTest {
  @TempDir private static Path folder = Path.of("");
  private static MovedClock clock = new MovedClock(Instant.parse("2026-11-25T12:00:00Z"));
  private static Store store = Store.of("none.db", Optional.empty());
  private static DeskServer desk;

  @BeforeAll
  static void open() throws Exception {
    store = People.with(folder, clock);
    desk = start(People.BY_ACCOUNT);
  }

  private static DeskServer start(Door door) throws DeskFault {
    return DeskServer.start(
        new DeskServer.Served(folder, store, folder.resolve("papers"), clock), door, Runnable::run);
  }

  @AfterAll
  static void close() {
    desk.close();
  }

  private static String session(HttpResponse<String> answer) {
    return answer.headers().allValues("Set-Cookie").stream()
        .filter(c -> c.startsWith("gradepost=") && !c.startsWith("gradepost=;"))
        .findFirst()
        .orElse("");
  }

  @Test
  void whoIsNotSignedInIsAskedAndComesBackToWhereHeWanted() throws Exception {
    Browser browser = new Browser(desk);
    HttpResponse<String> asked = browser.get("/register?list=out");
    assertThat(asked.statusCode()).isEqualTo(303);
    assertThat(asked.headers().firstValue("Location"))
        .contains("/sign-in?to=%2Fregister%3Flist%3Dout");
    String form = browser.get("/sign-in?to=%2Fregister%3Flist%3Dout").body();
    assertThat(form).contains("name=\"to\" value=\"/register?list=out\"");
    for (String foreign : List.of("//evil.example", "https://evil.example", "/\\evil.example")) {
      assertThat(browser.get("/sign-in?to=" + Browser.coded(foreign)).body())
          .contains("name=\"to\" value=\"/\"");
    }
    assertThat(browser.post("/register", "token=x").statusCode()).isEqualTo(403);
  }

  @Test
  void aFirstPasswordIsChangedBeforeAnythingElse() throws Exception {
    People.add(store, clock, "N Newcomer", Role.CLERK);
    Browser browser = new Browser(desk);
    HttpResponse<String> in = browser.signIn("N Newcomer", "first of clerk 26187");
    assertThat(in.headers().firstValue("Location")).contains("/account");
    assertThat(browser.get("/packs").headers().firstValue("Location")).contains("/account");
    String token = browser.token("/account");
    assertThat(change(browser, token, "wrong old password", "the heron likes kippers"))
        .contains("the old password is not right");
    assertThat(change(browser, token, "first of clerk 26187", "short"))
        .contains("15 to 256 characters");
    assertThat(change(browser, token, "first of clerk 26187", "passwordpassword"))
        .contains("others guess");
    Browser elsewhere = new Browser(desk);
    elsewhere.signIn("N Newcomer", "first of clerk 26187");
    assertThat(change(browser, token, "first of clerk 26187", "the heron likes kippers"))
        .isEqualTo("Redirected");
    assertThat(browser.get("/packs").statusCode()).isEqualTo(200);
    assertThat(elsewhere.get("/account").statusCode()).isEqualTo(303);
    assertThat(browser.get("/register?list=acts").body())
        .contains("changed the password of N Newcomer")
        .doesNotContain("kippers", "argon2");
  }

  private static String change(Browser browser, String token, String old, String now)
      throws Exception {
    return browser
        .post(
            "/account",
            "token=%s&old=%s&new=%s&again=%s"
                .formatted(token, Browser.coded(old), Browser.coded(now), Browser.coded(now)))
        .body();
  }

  @Test
  void aFirstPasswordThatNobodyUsedLapses() throws Exception {
    MovedClock own = new MovedClock(clock.instant());
    Path other = folder.resolve("other");
    Store kept = Store.of(other.resolve("register.db").toString(), Optional.empty());
    People.add(kept, own, "N Newcomer", Role.CLERK);
    own.forward(Duration.ofDays(15));
    try (DeskServer late =
        DeskServer.start(new DeskServer.Served(folder, kept, other, own), People.BY_ACCOUNT)) {
      HttpResponse<String> in = new Browser(late).signIn("N Newcomer", "first of clerk 26187");
      assertThat(in.statusCode()).isEqualTo(403);
      assertThat(in.body()).contains("too old");
    }
  }

  /** The cookie that was there before signing in is worth nothing after it. */
  @Test
  void aSessionCannotBeChosenByAnother() throws Exception {
    Browser browser = new Browser(desk);
    String before = session(browser.signIn("L Moss", People.PASSWORD));
    assertThat(before).contains("HttpOnly", "SameSite=Strict", "Path=/");
    String after = session(browser.signIn("L Moss", People.PASSWORD));
    assertThat(after).isNotEmpty().isNotEqualTo(before);
    String old = before.replaceFirst(";.*", "");
    assertThat(browser.raw("GET /packs HTTP/1.1", host(), "Cookie: " + old, "Connection: close"))
        .startsWith("HTTP/1.1 303");
    assertThat(
            browser.raw(
                "GET /packs HTTP/1.1",
                host(),
                "Cookie: " + after.replaceFirst(";.*", ""),
                "Connection: close"))
        .startsWith("HTTP/1.1 200");
    assertThat(
            browser.raw("GET /packs HTTP/1.1", host(), "Cookie: gradepost=", "Connection: close"))
        .startsWith("HTTP/1.1 303");
  }

  private static String host() {
    return "Host: " + desk.address().replaceFirst("http://", "").replaceFirst("/$", "");
  }

  @Test
  void signingInIsNoFormOfAnotherSite() throws Exception {
    Browser browser = new Browser(desk);
    String form = "name=L+Moss&password=" + Browser.coded(People.PASSWORD) + "&token=";
    assertThat(browser.post("/sign-in", form + "guess").statusCode()).isEqualTo(403);
    String token = browser.token("/sign-in");
    assertThat(new Browser(desk).post("/sign-in", form + token).statusCode()).isEqualTo(403);
    assertThat(browser.post("/sign-in", form + token, "Sec-Fetch-Site", "cross-site").statusCode())
        .isEqualTo(403);
    // A browser asks for an icon too, and may have the form twice.
    browser.get("/sign-in?to=%2Ffavicon.ico");
    assertThat(browser.post("/sign-in", form + token).statusCode()).isEqualTo(303);
  }

  @Test
  void theAnswerIsTheSameWhetherOrNotThereIsSuchAnAccount() throws Exception {
    People.add(store, clock, "S Shut", Role.LEARNER);
    new AccountDesk(store, clock, "root").shut("S Shut");
    String wrong = new Browser(desk).signIn("T Hale", "wrong").body();
    String none = new Browser(desk).signIn("T Hail", "wrong").body();
    String shut = new Browser(desk).signIn("S Shut", "first of learner 26187").body();
    assertThat(said(none).replace("T Hail", "T Hale")).isEqualTo(said(wrong));
    assertThat(said(shut).replace("S Shut", "T Hale")).isEqualTo(said(wrong));
  }

  private static String said(String page) {
    return page.replaceAll("name=\"token\" value=\"[^\"]+\"", "");
  }

  /** One who tries for a minute, as fast as he may, gets few tries; then the right one is taken. */
  @Test
  void manyTriesSlowDown() throws Exception {
    People.add(store, clock, "P Patient", Role.LEARNER);
    Browser browser = new Browser(desk);
    int tries = 0;
    Instant end = clock.instant().plus(Duration.ofMinutes(1));
    HttpResponse<String> answer = browser.signIn("P Patient", "wrong");
    while (clock.instant().isBefore(end)) {
      if (answer.statusCode() == 429) {
        assertThat(answer.body()).contains("Too many wrong tries");
        String wait = answer.headers().firstValue("Retry-After").orElse("0");
        clock.forward(Duration.ofSeconds(Long.parseLong(wait)));
      } else {
        tries++;
      }
      answer = browser.signIn("P Patient", "wrong");
    }
    assertThat(tries).isLessThan(12);
    clock.forward(Duration.ofMinutes(16));
    assertThat(browser.signIn("P Patient", "first of learner 26187").statusCode()).isEqualTo(303);
  }

  /** The log says who came, went and was refused, and nothing of what was typed. */
  @Test
  void theLogHasEverySignIn() throws Exception {
    People.add(store, clock, "Q Logged", Role.LEARNER);
    Browser browser = new Browser(desk);
    browser.signIn("q logged", "typed by mistake");
    browser.signIn("typed as a name", "typed by mistake");
    browser.signIn("Q Logged", "first of learner 26187");
    browser.post("/sign-out", "token=" + browser.token("/account"));
    assertThat(People.log(store, "Q Logged"))
        .containsExactly(
            "root: added the account of Q Logged, learner",
            "desk: refused Q Logged from 127.0.0.1: wrong password (1 in a row)",
            "Q Logged: signed in from 127.0.0.1, failed tries before: 1",
            "Q Logged: signed out");
    assertThat(People.log(store, ""))
        .anyMatch(act -> act.startsWith("desk: refused somebody from 127.0.0.1: no account of"))
        .noneMatch(act -> act.contains("typed") || act.contains("first of learner"));
  }

  @Test
  void whatIsTriedWithoutEndDoesNotFillTheLog() throws Exception {
    People.add(store, clock, "W Wanted", Role.LEARNER);
    People.add(store, clock, "Z Shut", Role.LEARNER);
    new AccountDesk(store, clock, "root").shut("Z Shut");
    try (DeskServer own = start(People.BY_ACCOUNT)) {
      Browser browser = new Browser(own);
      for (int i = 0; i < 40; i++) {
        browser.signIn("W Wanted", "wrong");
      }
      browser.signIn("Z Shut", "first of learner 26187");
    }
    assertThat(People.log(store, "refused W Wanted"))
        .containsExactly(
            "desk: refused W Wanted from 127.0.0.1: wrong password (1 in a row)",
            "desk: refused W Wanted from 127.0.0.1: wrong password (2 in a row)",
            "desk: refused W Wanted from 127.0.0.1: wrong password (4 in a row)",
            "desk: refused W Wanted from 127.0.0.1: not looked at, too soon after others (1 in a row)",
            "desk: refused W Wanted from 127.0.0.1: not looked at, too soon after others (2 in a row)",
            "desk: refused W Wanted from 127.0.0.1: not looked at, too soon after others (4 in a row)",
            "desk: refused W Wanted from 127.0.0.1: not looked at, too soon after others (8 in a row)",
            "desk: refused W Wanted from 127.0.0.1: not looked at, too soon after others (16 in a row)",
            "desk: refused W Wanted from 127.0.0.1: not looked at, too soon after others (32 in a row)");
    assertThat(People.log(store, "refused Z Shut"))
        .singleElement()
        .asString()
        .contains("the account is shut");
  }

  @Test
  void anAccountThatIsShutOrSignedOutElsewhereIsOutAtOnce() throws Exception {
    People.add(store, clock, "E Ended", Role.LEARNER);
    Browser browser = new Browser(desk);
    for (int act = 0; act < 3; act++) {
      browser.signIn("E Ended", "first of learner 26187");
      assertThat(browser.get("/account").statusCode()).isEqualTo(200);
      String token = browser.token("/account");
      AccountDesk desk = new AccountDesk(store, clock, "root");
      if (act == 0) {
        desk.endSessions("E Ended");
      } else if (act == 1) {
        desk.reset("E Ended", "first of learner 26187");
      } else {
        desk.shut("E Ended");
      }
      assertThat(browser.post("/account", "token=" + token).statusCode()).isEqualTo(403);
      assertThat(browser.get("/account").statusCode()).isEqualTo(303);
    }
    assertThat(browser.signIn("E Ended", "first of learner 26187").statusCode()).isEqualTo(403);
  }

  @Test
  void whoSignsOutOrWasAwayIsOut() throws Exception {
    Browser browser = new Browser(desk);
    browser.signIn("L Moss", People.PASSWORD);
    browser.post("/sign-out", "token=" + browser.token("/packs"));
    assertThat(browser.get("/packs").statusCode()).isEqualTo(303);
    browser.signIn("L Moss", People.PASSWORD);
    for (int hour = 0; hour < 11; hour++) {
      clock.forward(Duration.ofHours(1));
      assertThat(browser.get("/packs").statusCode()).isEqualTo(200);
    }
    clock.forward(Duration.ofHours(2));
    assertThat(browser.get("/packs").statusCode()).isEqualTo(303);
  }

  @Test
  void aDeskThatNobodyCouldWorkAtDoesNotStart() {
    Store empty = Store.of(folder.resolve("empty.db").toString(), Optional.empty());
    assertThatThrownBy(
            () ->
                DeskServer.start(
                    new DeskServer.Served(folder, empty, folder, clock), People.BY_ACCOUNT))
        .isInstanceOf(DeskFault.class)
        .hasMessageContaining("no clerk has an account");
  }

  @Test
  void behindAProxyItAnswersToTheProxysNameAlone() throws Exception {
    Door door = new Door("127.0.0.1", 0, true, Optional.empty(), true, Set.of("desk.example"));
    try (DeskServer behind = start(door)) {
      assertThat(behind.address()).isEqualTo("https://desk.example/");
      Browser browser = new Browser(behind, behind.port());
      String form = browser.raw("GET /sign-in HTTP/1.1", "Host: desk.example", "Connection: close");
      assertThat(form)
          .startsWith("HTTP/1.1 200")
          .contains("__Host-gradepost-guest=", "; Secure", "Strict-Transport-Security");
      assertThat(browser.raw("GET /sign-in HTTP/1.1", "Host: evil.example", "Connection: close"))
          .startsWith("HTTP/1.1 421");
      assertThat(
              browser.raw(
                  "GET /sign-in HTTP/1.1",
                  "Host: desk.example",
                  "X-Forwarded-Host: desk.example",
                  "X-Forwarded-Proto: http",
                  "Connection: close"))
          .startsWith("HTTP/1.1 403");
    }
  }
}
