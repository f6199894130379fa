package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.render.chart.Fonts;
import gradepost.render.chart.TemplateFault;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Property: a paper loads nothing; templates end, and what is wrong with them is one line. */
class LoadsTest {
  private static final Briefing BRIEFING = Papers.briefing(UnitStyle.MILES);

  private static final Markup MARKUP = new Markup(fonts());

  private static Fonts fonts() {
    try {
      return new Fonts();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static TemplateSource with(String name, String text) {
    TemplateSource own = asked -> asked.equals(name) ? Optional.of(text) : Optional.empty();
    return own.orElse(TemplateSource.bundled());
  }

  private static void refused(TemplateSource source, String said) throws IOException {
    Renderer renderer = new Renderer(source, Messages.english());
    assertThatThrownBy(() -> renderer.pdf(BRIEFING, OutputStream.nullOutputStream()))
        .isInstanceOf(TemplateFault.class)
        .hasMessageContaining(said)
        .hasMessageNotContaining("\n");
    assertThatThrownBy(() -> renderer.html(BRIEFING, OutputStream.nullOutputStream()))
        .isInstanceOf(TemplateFault.class)
        .hasMessageNotContaining("\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<img src=\"http://127.0.0.1:9/a.png\"/>",
        "<img src=\"file:///a.png\"/>",
        "<img src=\"../a.png\"/>",
        "<p style=\"background: URL( 'http://127.0.0.1:9/a.png')\">x</p>",
        "<p style=\"background: \\75 rl(http://127.0.0.1:9/a.png)\">x</p>",
        "<p style=\"background: u/**/rl(http://127.0.0.1:9/a.png)\">x</p>",
        "<style>@import 'http://127.0.0.1:9/a.css';</style>",
        "<link rel=\"stylesheet\" href=\"a.css\"/>",
        "<iframe src=\"data:text/html,x\"></iframe>",
        "<script>x</script>",
        "<p onclick=\"x\">x</p>",
        "<object data=\"http://127.0.0.1:9/a\"></object>"
      })
  void nothingIsLoadedFromOutside(String evil) {
    String page = "<html><head><title>x</title></head><body>" + evil + "</body></html>";
    assertThatThrownBy(() -> MARKUP.read(page))
        .isInstanceOf(TemplateFault.class)
        .hasMessageContaining("from outside the paper")
        .hasMessageNotContaining("\n");
    // Its text alone shows it: no paper is made first.
    assertThatThrownBy(() -> TemplateLook.at("own.ftlh", "<#if doc.a gt 1>" + evil + "</#if>"))
        .isInstanceOf(TemplateFault.class)
        .hasMessageStartingWith("own.ftlh: the templates load from outside the paper");
  }

  @Test
  void theTemplatesOfTheProgramArePassed() throws IOException {
    for (Map.Entry<String, String> each : bundled().entrySet()) {
      TemplateLook.at(each.getKey(), each.getValue());
    }
  }

  private static Map<String, String> bundled() throws IOException {
    Map<String, String> texts = new TreeMap<>();
    try (Stream<Path> files = Files.list(Path.of("templates"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        texts.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    assertThat(texts).containsKeys("paper.css", "pack.ftlh");
    return texts;
  }

  @Test
  void aTemplateOrAStyleIsLookedAtBeforeAnythingIsPrinted() throws IOException {
    for (String styles :
        List.of("@import 'a.css';", "p { background: url(../a.png) }", "p { src: url(//a) }")) {
      assertThatThrownBy(() -> TemplateLook.at("paper.css", styles))
          .isInstanceOf(TemplateFault.class)
          .hasMessageStartingWith("paper.css: ");
    }
    TemplateLook.at("own.ftlh", "<img src=\"${x.data}\" alt=\"http://a.invalid\"/>");
    Renderer renderer = new Renderer(with("own.ftlh", "<p><#if></p>"), Messages.english());
    assertThatThrownBy(() -> renderer.look("own.ftlh", "<p><#if></p>"))
        .isInstanceOf(TemplateFault.class)
        .hasMessageContaining("own.ftlh")
        .hasMessageNotContaining("\n");
  }

  @Test
  void theStylesOfADepotAreLookedAtToo() throws IOException {
    String styles = "p { background: url(http://127.0.0.1:9/a.png) }";
    Renderer renderer = new Renderer(with("paper.css", styles), Messages.english());
    assertThatThrownBy(() -> renderer.pdf(BRIEFING, OutputStream.nullOutputStream()))
        .isInstanceOf(TemplateFault.class)
        .hasMessageContaining("127.0.0.1");
  }

  @Test
  void aLinkAndAPictureOfThePageStay() throws IOException {
    String page =
        "<html><head><title>x</title></head><body><a href=\"https://example.invalid\">x</a>"
            + "<img alt=\"x\" src=\"data:image/gif;base64,"
            + "R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7\"/></body></html>";
    Renderer renderer = new Renderer(with(BRIEFING.template(), page), Messages.english());
    assertThat(Papers.html(renderer, BRIEFING)).contains("data:image/gif");
  }

  @Test
  void aTemplateThatCallsItselfIsOneLine() throws IOException {
    refused(with(BRIEFING.template(), "<#macro r><@r/></#macro><@r/>"), "calls itself without end");
  }

  @Test
  void aMistakeInATemplateIsOneLine() throws IOException {
    refused(with(BRIEFING.template(), "<p>${doc.nothing}</p>"), "doc.nothing");
    refused(with(BRIEFING.template(), "<p><#if></p>"), BRIEFING.template());
  }

  private static String filled(Filling filling, String text) throws IOException {
    return new Templates(with(BRIEFING.template(), text), Messages.english(), filling)
        .markup(BRIEFING, "screen", chart -> "");
  }

  /** Every thread that fills a template. */
  private static Stream<Thread> filling() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> thread.getName().equals("template " + BRIEFING.template()));
  }

  @AfterEach
  void noThreadGoesOn() throws InterruptedException {
    for (Thread thread : filling().toList()) {
      thread.join(30_000);
    }
    assertThat(filling()).isEmpty();
  }

  @Test
  void aTemplateEndsAfterATimeAndALength() {
    Filling impatient = new Filling(Duration.ofMillis(200), 100_000);
    for (String endless :
        List.of(
            "<#list 1.. as i><#if i == 0>x</#if></#list>",
            "<#list 1..><#items as i><#assign x = i></#items></#list>",
            "<#macro r><#nested/></#macro><#list 1.. as i><@r></@r></#list>",
            "<#function f n><#list 1.. as i><#if n == i><#return n></#if></#list></#function>"
                + "${f(0)}")) {
      assertThatThrownBy(() -> filled(impatient, endless))
          .as(endless)
          .isInstanceOf(TemplateFault.class)
          .hasMessage("the template " + BRIEFING.template() + " did not end within 0 s");
    }
    for (String empty :
        List.of("<#list 1.. as i></#list>", "<#list 1..>\n<#items as i></#items></#list>")) {
      assertThatThrownBy(() -> filled(impatient, empty))
          .as(empty)
          .isInstanceOf(TemplateFault.class)
          .hasMessageStartingWith(
              "the template %s has a loop with nothing in it in line"
                  .formatted(BRIEFING.template()));
    }
    Filling patient = new Filling(Duration.ofMinutes(1), 100_000);
    assertThatThrownBy(() -> filled(patient, "<#list 1.. as i>more and more</#list>"))
        .isInstanceOf(TemplateFault.class)
        .hasMessageContaining("needs too much memory");
  }
}
