package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.store.Store;
import gradepost.desk.entry.DeskFault;
import gradepost.desk.entry.Door;
import gradepost.reissue.register.Account.Role;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fields that a proxy adds, and that a browser may add too: whose word is believed. */
class ForwardedTest {
  @TempDir private static Path folder = Path.of("");
  private static Clock clock = Depot.NOON;
  private static Store store = Store.of("none.db", Optional.empty());
  private static DeskServer desk;

  @BeforeAll
  static void open() throws Exception {
    store = Store.of(folder.resolve("register.db").toString(), Optional.empty());
    People.add(store, clock, "F Forger", Role.CLERK);
    People.add(store, clock, "P Proxied", Role.CLERK);
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

  private static String host() {
    return "Host: " + desk.address().replaceFirst("http://", "").replaceFirst("/$", "");
  }

  /** What a browser says of where it comes from is nothing to a desk that it reaches itself. */
  @Test
  void aForwardedAddressIsNotBelieved() throws Exception {
    int last = 0;
    try (DeskServer own = start(People.BY_ACCOUNT)) {
      Browser browser = new Browser(own);
      for (int i = 0; i < 6; i++) {
        String token = browser.token("/sign-in");
        last =
            browser
                .post(
                    "/sign-in",
                    "token=" + token + "&name=F+Forger&password=wrong",
                    "X-Forwarded-For",
                    "10.0.0." + i,
                    "Forwarded",
                    "for=10.0.0." + i,
                    "X-Forwarded-Proto",
                    "https")
                .statusCode();
      }
    }
    assertThat(last).isEqualTo(429);
    assertThat(People.log(store, "refused F Forger"))
        .allMatch(act -> act.contains(" from 127.0.0.1: "));
  }

  /** Behind a proxy too: what the proxy adds comes last, here as a field of its own. */
  @Test
  void behindAProxyTheProxyIsBelievedAlone() throws Exception {
    Door door = new Door("127.0.0.1", 0, true, Optional.empty(), true, Set.of("desk.example"));
    try (DeskServer behind = start(door)) {
      Browser browser = new Browser(behind, behind.port());
      for (int i = 1; i <= 6; i++) {
        String fields = "X-Forwarded-For: 10.0.0.%d\r\nX-Forwarded-For: 192.0.2.9".formatted(i);
        assertThat(tried(browser, "P Proxied", fields))
            .startsWith("HTTP/1.1 " + (i < 6 ? 403 : 429));
      }
    }
    assertThat(People.log(store, "refused P Proxied"))
        .allMatch(act -> act.contains(" from 192.0.2.9: "))
        .isNotEmpty();
  }

  /** A try to sign in through a proxy that adds this field. */
  private static String tried(Browser browser, String name, String told) throws Exception {
    String form = browser.raw("GET /sign-in HTTP/1.1", "Host: desk.example", "Connection: close");
    String body =
        "token=%s&name=%s&password=wrong"
            .formatted(
                form.replaceFirst("(?s).*?name=\"token\" value=\"([^\"]+)\".*", "$1"),
                Browser.coded(name));
    return browser.raw(
        "POST /sign-in HTTP/1.1",
        "Host: desk.example",
        "Cookie: " + form.replaceFirst("(?s).*?Set-Cookie: ([^;]+);.*", "$1"),
        told,
        "Content-Type: application/x-www-form-urlencoded",
        "Content-Length: " + body.length(),
        "Connection: close",
        "",
        body);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "X-Forwarded-Proto: http",
        "X-Forwarded-Proto: https, http",
        "X-Forwarded-Proto: https\r\nX-Forwarded-Proto: http"
      })
  void nobodyClaimsTlsWhereTheProxyHadNone(String field) throws Exception {
    Door door = new Door("127.0.0.1", 0, true, Optional.empty(), true, Set.of("desk.example"));
    try (DeskServer behind = start(door)) {
      Browser browser = new Browser(behind, behind.port());
      assertThat(
              browser.raw(
                  "GET /sign-in HTTP/1.1", "Host: desk.example", field, "Connection: close"))
          .startsWith("HTTP/1.1 403");
    }
    // Of a desk that no proxy stands before, no such field makes a cookie that asks for TLS.
    assertThat(desk(host(), "X-Forwarded-Proto: https", "X-Forwarded-Host: desk.example"))
        .startsWith("HTTP/1.1 200")
        .doesNotContain("; Secure", "Strict-Transport-Security");
    assertThat(desk("Host: desk.example", "X-Forwarded-Host: " + host().substring(6)))
        .startsWith("HTTP/1.1 421");
  }

  private static String desk(String... fields) throws Exception {
    List<String> lines = new ArrayList<>(List.of("GET /sign-in HTTP/1.1"));
    lines.addAll(List.of(fields));
    lines.add("Connection: close");
    return new Browser(desk).raw(lines.toArray(String[]::new));
  }
}
