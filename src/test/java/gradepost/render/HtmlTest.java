package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Printable;
import gradepost.briefing.Reference;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.render.chart.MissingGlyphException;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class HtmlTest {
  private static final Briefing BRIEFING = Papers.briefing(UnitStyle.MILES);

  private static final Reference REFERENCE = Papers.reference(UnitStyle.MILES);

  private static Document parsed(String html) throws Exception {
    String xml = html.substring("<!DOCTYPE html>\n".length());
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(xml)));
  }

  @Test
  void everyChartHasTitleAndDescription() throws Exception {
    int approaches = BRIEFING.parts().get(0).approaches().size();
    everyChartHasTitleAndDescription(BRIEFING, approaches + 2);
    everyChartHasTitleAndDescription(REFERENCE, 1);
  }

  private static void everyChartHasTitleAndDescription(Printable of, int more) throws Exception {
    Document page = parsed(Papers.html(Papers.renderer(), of));
    NodeList charts = page.getElementsByTagName("svg");
    assertThat(charts.getLength()).isGreaterThan(more);
    for (int i = 0; i < charts.getLength(); i++) {
      Element svg = (Element) charts.item(i);
      assertThat(svg.getFirstChild().getNodeName()).isEqualTo("title");
      assertThat(svg.getFirstChild().getNextSibling().getTextContent()).hasSizeGreaterThan(20);
    }
  }

  /** A number and its unit, a mileage, a date and its hour stay on one line. */
  @Test
  void noQuantityIsBrokenOverLines() throws Exception {
    String text =
        parsed(Papers.html(Papers.renderer(), BRIEFING)).getDocumentElement().getTextContent();
    assertThat(text).contains("15\u00a0psi").contains("15\u00a0mph");
    assertThat(text).containsPattern("\\d{4}-\\d\\d-\\d\\d\u00a0\\d\\d:\\d\\d");
    assertThat(ScreenText.whole("<p title=\"29 psi\">brake 29 psi at 5m 04ch</p>"))
        .isEqualTo("<p title=\"29 psi\">brake 29\u00a0psi at 5m\u00a004ch</p>");
    assertThat(ScreenText.whole("<style>a { width: 3 mm }</style><svg><text>3 mm</text></svg>"))
        .doesNotContain("\u00a0");
  }

  /** Without pictures a paper is no more than 600 kB. */
  @Test
  void aPaperOnTheScreenIsSmall() throws IOException {
    for (int paper : DemoPlans.numbers().toArray()) {
      Briefing briefing =
          new Composer(Messages.english())
              .compose("", List.of(DemoPlans.plan(paper)), SampleIssue.issue(), List.of());
      assertThat(Papers.html(Papers.renderer(), briefing).length()).isLessThan(600_000);
    }
  }

  @Test
  void needsNoNetworkAndRunsNothing() throws Exception {
    assertThat(Papers.html(Papers.renderer(), BRIEFING))
        .doesNotContain("<script", "<link", "@import", "url(http")
        .doesNotContainPattern("(?:src|href)=\"(?!#)");
    assertThat(Papers.html(Papers.renderer(), REFERENCE))
        .doesNotContain("<script", "<link", "@import", "url(http")
        .doesNotContainPattern("(?:src|href)=\"(?!#|a%20b\\.html\")");
  }

  /** A paper that is filed leads to its reference beside it, and that one back; to nothing else. */
  @Test
  void paperAndReferenceLeadToEachOther() throws IOException {
    Briefing filed = BRIEFING.filed(new Reference.Files("a b", "pack-reference"));
    assertThat(Papers.html(Papers.renderer(), filed).split("href=\"(?!#)", -1))
        .hasSize(2)
        .anyMatch(s -> s.startsWith("pack-reference.html\""));
    assertThat(Papers.html(Papers.renderer(), REFERENCE).split("href=\"(?!#)", -1))
        .hasSize(2)
        .anyMatch(s -> s.startsWith("a%20b.html\""));
  }

  @Test
  void everyLinkLeadsSomewhere() throws Exception {
    everyLinkLeadsSomewhere(BRIEFING);
    everyLinkLeadsSomewhere(REFERENCE);
  }

  private static void everyLinkLeadsSomewhere(Printable of) throws Exception {
    Document page = parsed(Papers.html(Papers.renderer(), of));
    List<String> ids = new java.util.ArrayList<>();
    NodeList all = page.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      String id = ((Element) all.item(i)).getAttribute("id");
      if (!id.isEmpty()) {
        ids.add(id);
      }
    }
    assertThat(ids).doesNotHaveDuplicates();
    NodeList links = page.getElementsByTagName("a");
    for (int i = 0; i < links.getLength(); i++) {
      String href = ((Element) links.item(i)).getAttribute("href");
      if (!href.equals("a%20b.html")) {
        assertThat(ids).contains(href.substring(1));
      }
    }
  }

  @Test
  void textOfTheDataIsNeverMarkup() throws Exception {
    Briefing briefing =
        new Composer(Messages.english())
            .compose(
                "<b onclick='x'>& \"quoted\"",
                List.of(SamplePlan.of(UnitStyle.MILES)),
                SampleIssue.issue(),
                List.of());
    Document page = parsed(Papers.html(Papers.renderer(), briefing));
    assertThat(page.getElementsByTagName("h1").item(0).getTextContent())
        .isEqualTo("<b onclick='x'>& \"quoted\"");
  }

  @Test
  void namesTheCharacterThatTheFontLacks() throws IOException {
    Briefing briefing =
        new Composer(Messages.english())
            .compose(
                "Line 漢", List.of(SamplePlan.of(UnitStyle.MILES)), SampleIssue.issue(), List.of());
    assertThatThrownBy(() -> Papers.renderer().pdf(briefing, OutputStream.nullOutputStream()))
        .isInstanceOf(MissingGlyphException.class)
        .hasMessageContaining("漢 (U+6F22)");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "${doc.class}",
        "${doc.getClass()}",
        "${doc?api.title}",
        "${\"freemarker.template.utility.Execute\"?new()(\"id\")}",
        "${.data_model?keys?first}${doc.issue.hashCode()}",
        "<#include \"../../secret\">",
        "<#include \"/secret\">",
        "<#include \"file:///secret\">",
        "<#import \"http://localhost/secret\" as s>",
        "${\"freemarker.template.utility.ObjectConstructor\"?new()(\"java.io.File\", \"/\")}",
        "<#assign x = \"freemarker.template.utility.JythonRuntime\"?new()>",
        "${\"doc.class\"?eval}",
        "<#assign f = \"<#include '/secret'>\"?interpret><@f/>",
        "${m(\"no.such.text\")}"
      })
  void aTemplateReachesNothingButValues(String evil) throws IOException {
    TemplateSource source =
        name -> name.equals("pack.ftlh") ? Optional.of("<p>" + evil + "</p>") : Optional.empty();
    Renderer renderer = new Renderer(source.orElse(TemplateSource.bundled()), Messages.english());
    assertThatThrownBy(() -> renderer.html(BRIEFING, OutputStream.nullOutputStream()))
        .isInstanceOf(IOException.class);
  }

  @Test
  void aDepotReplacesOnlyWhatItWants() throws IOException {
    TemplateSource own =
        name ->
            name.equals("line.ftlh")
                ? Optional.of("<p id=\"${part.id}-line\">our own line</p>")
                : Optional.empty();
    Renderer renderer = new Renderer(own.orElse(TemplateSource.bundled()), Messages.english());
    assertThat(Papers.html(renderer, BRIEFING))
        .contains("our own line", "If the EP brake fails at action\u00a03:");
  }
}
