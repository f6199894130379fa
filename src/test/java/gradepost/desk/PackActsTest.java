package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import gradepost.reissue.register.Account.Role;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One issue at the page of its pack: entered, checked by another, signed off on, recalled. */
class PackActsTest {
  @TempDir private Path folder = Path.of("");

  @Test
  void oneEntersAnotherChecksAndNothingIsHandedOutBefore() throws Exception {
    Path routes = folder.resolve("routes");
    Path file = new SyntheticNetwork(routes, 1).packs(1, 3).get(0);
    Files.writeString(file, Files.readString(file).replaceFirst("(?m)^  checked-by:.*\\R", ""));
    Store store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    try (DeskServer desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON), 0)) {
      Browser browser = new Browser(desk).letIn();
      String pack = "/packs/0000";
      String before = browser.get(pack).body();
      assertThat(before).contains("Enter it as the first issue").doesNotContain("Recall an issue");
      String form = "token=" + browser.token(pack);

      assertThat(browser.post(pack + "/enter", form + "&by=").body()).contains("there is no name");
      String entered = browser.post(pack + "/enter", form + "&by=A+Clerk").body();
      assertThat(entered)
          .contains("0000/1 registered", "DRAFT: nobody has checked it", "I have checked issue 1")
          .contains("Prepared by", "gradepost register checked 0000/1");
      assertThat(browser.get("/").body()).contains("0000/1 is a draft: ");
      assertThat(
              browser
                  .post("/register", form + "&by=A+Clerk&act=hand-out&issue=0000/1&people=D+Driver")
                  .body())
          .contains("is a DRAFT");
      String unchecked =
          "&issue=1&person=D+Driver&by=A+Clerk&formation=3-car&direction=Out&lapses=2026-12-24";
      assertThat(browser.post(pack + "/sign-off", form + unchecked).body())
          .contains("nobody is signed off by it");
      // The name is kept with the session, and is the one who entered it.
      assertThat(browser.post(pack + "/checked", form + "&issue=1").body())
          .contains("A Clerk prepared or entered 0000/1 and cannot check it", "DRAFT");
      String checked = browser.post(pack + "/checked", form + "&issue=1&by=C+Checker").body();
      assertThat(checked)
          .contains("0000/1: checked by C Checker", ">C Checker</td>")
          .doesNotContain("DRAFT", "I have checked");
      assertThat(browser.get("/").body()).doesNotContain("is a draft", "still out");

      String handOut = form + "&by=A+Clerk&act=hand-out&issue=0000/1&people=D+Driver";
      assertThat(browser.post("/register", handOut).body()).contains("copy 1 handed out");
      assertThat(browser.post("/register", handOut).body())
          .contains("D Driver already holds copy 1 of 0000/1", "name=\"confirm\"");
      assertThat(
              browser.post("/register", handOut.replace("D+Driver", "E+Driver%0AD+Driver")).body())
          .contains("line 2: error: D Driver already holds copy 1")
          .doesNotContain("people.csv");
      assertThat(browser.post("/register", handOut + "&confirm=yes").body())
          .contains("copy 2 handed out")
          .doesNotContain("name=\"confirm\"");

      String direction =
          checked.replaceFirst("(?s).*?<select name=\"direction\"><option>([^<]+)<.*", "$1");
      String signature =
          form
              + "&issue=1&person=D+Driver&by=T+Hale&formation=3-car&score=21+of+24&direction="
              + Browser.coded(direction);
      assertThat(browser.post(pack + "/sign-off", signature + "&lapses=soon").body())
          .as("what nobody has asked is not confirmed")
          .contains("is not a day", "value=\"21 of 24\"")
          .doesNotContain("name=\"confirm\"");
      assertThat(browser.post(pack + "/sign-off", signature + "&lapses=2026-11-24").body())
          .contains("role=\"alert\"", "2026-11-24");
      assertThat(browser.post(pack + "/sign-off", signature + "&lapses=2026-12-24").body())
          .contains("D Driver signed off");
      assertThat(browser.get("/register?list=signed").body())
          .contains("D Driver", "T Hale", "21 of 24");

      assertThat(browser.post(pack + "/recall", form + "&issue=1&by=A+Clerk&reason=").body())
          .contains("role=\"alert\"");
      assertThat(
              browser.post(pack + "/recall", form + "&issue=1&by=A+Clerk&reason=misprint").body())
          .contains("RECALLED: misprint", "recalled: misprint")
          .contains("warning: nothing of 0000 is in force now");
      assertThat(browser.get("/").body())
          .contains("0000/1, recalled: misprint: 2 copies are still out");
      assertThat(browser.post("/packs/none/recall", form).statusCode()).isEqualTo(404);
    }
  }

  @Test
  void whatIsNotInForceYetOrNoMoreIsNotSaidToBeInUse() throws Exception {
    Path routes = folder.resolve("routes");
    List<Path> packs = new SyntheticNetwork(routes, 1).packs(2, 3);
    dated(packs.get(0), "valid-from", "2026-12-15 04:00");
    dated(packs.get(1), "valid-to", "2026-11-24 04:00");
    Store store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    try (DeskServer desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON), 0)) {
      Browser browser = new Browser(desk).letIn();
      String form = "confirm=yes&by=A+Clerk&token=" + browser.token("/packs/0000");
      String soon = browser.post("/packs/0000/enter", form).body();
      assertThat(soon)
          .contains("0000/1 registered", "NOT IN FORCE before 2026-12-15 04:00. Do not drive by it")
          .contains("<b>not in force before 2026-12-15 04:00</b>")
          .doesNotContain("in use");
      assertThat(browser.post("/packs/0001/enter", form).body())
          .contains("0001/1 registered", "EXPIRED. Do not drive by it", "<b>expired</b>")
          .doesNotContain("in use");
    }
  }

  private static void dated(Path pack, String key, String day) throws Exception {
    String text = Files.readString(pack);
    Files.writeString(pack, text.replaceFirst(key + ": .*", key + ": " + day));
  }

  /** Nobody could say which of the two is meant; a page shows no form, but one may be sent. */
  @Test
  void nothingIsDoneWithOneOfTwoPacksOfOneId() throws Exception {
    Path routes = folder.resolve("routes");
    Path pack = new SyntheticNetwork(routes, 1).packs(1, 3).get(0);
    Path copy = routes.resolve("line-copy");
    Files.createDirectories(copy);
    try (Stream<Path> files = Files.list(Objects.requireNonNull(pack.getParent()))) {
      for (Path file : files.toList()) {
        Files.copy(file, copy.resolve(file.getFileName()));
      }
    }
    Store store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    try (DeskServer desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON), 0)) {
      Browser browser = new Browser(desk).letIn();
      String form = "by=A+Clerk&issue=1&reason=x&course=0000/x&token=" + browser.token("/notice");
      for (String act : List.of("enter", "checked", "recall", "sign-off")) {
        HttpResponse<String> done = browser.post("/packs/0000/" + act, form);
        assertThat(done.statusCode()).as(act).isEqualTo(400);
        assertThat(done.body()).as(act).contains("role=\"alert\"><ul class=\"found\"><li>" + copy);
      }
      HttpResponse<String> ride = browser.post("/rides", form);
      assertThat(ride.statusCode()).isEqualTo(409);
      assertThat(ride.body()).contains("has the same id, 0000");
      assertThat(store.exists()).isFalse();
      Files.delete(copy.resolve(pack.getFileName()));
      assertThat(browser.post("/packs/0000/enter", form).body()).contains("0000/1 registered");
    }
  }

  /** Whoever checked an issue has not checked what was typed since. */
  @Test
  void filesEditedSinceAnIssueArePrintedAsADraft() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 1).packs(1, 3);
    Store store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    try (DeskServer desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON), 0)) {
      Browser browser = new Browser(desk).letIn();
      String pack = browser.get("/packs/0000").body();
      String paper = pack.replaceFirst("(?s).*?href=\"(/packs/0000/papers/[^\"/]+)\".*", "$1");
      String form = "token=" + browser.token("/packs/0000") + "&by=A+Clerk";
      assertThat(browser.post("/packs/0000/enter", form).body()).contains("0000/1 registered");
      assertThat(browser.get(paper + "/html").body())
          .contains("driver instructor")
          .doesNotContain("DRAFT");
      Path route = routes.resolve("line-000/route.yaml");
      String was = Files.readString(route);
      Files.writeString(route, was + "# one more word\n");
      assertThat(browser.get(paper).body()).contains("NOT ISSUED");
      assertThat(browser.get(paper + "/html").body())
          .contains("DRAFT")
          .doesNotContain("driver instructor");
      Files.writeString(route, was);
      assertThat(browser.get(paper + "/html").body()).doesNotContain("DRAFT");
    }
  }

  /** Where files lie on the machine, and what a clerk would type there, is nothing to a learner. */
  @Test
  void aLearnerSeesNoPathOfTheMachine() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 1).packs(1, 3);
    Files.writeString(routes.resolve("pack-broken.yaml"), "gradepost: pack\n");
    Store store = People.with(folder, Depot.NOON);
    try (DeskServer desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON),
            People.BY_ACCOUNT,
            Runnable::run)) {
      for (Role role : List.of(Role.LEARNER, Role.INSTRUCTOR)) {
        Browser browser = new Browser(desk);
        browser.signIn(People.NAMES.get(role), People.PASSWORD);
        for (String page : List.of("/packs", "/packs/0000", "/packs/broken")) {
          String body = browser.get(page).body();
          assertThat(body).as(page).contains("</main>");
          assertThat(body.contains(folder.toString()) || body.contains("<code>gradepost "))
              .as(role + " at " + page)
              .isEqualTo(role == Role.INSTRUCTOR);
        }
      }
    }
  }
}
