package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Change;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.Reference;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.Table;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.reissue.Sheets;
import gradepost.units.UnitStyle;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * Properties of the printed pack; what it says is read back by another route than it was written.
 */
@Tag("slow")
public class PdfTest {

  private static List<String> pages(byte[] pdf) throws IOException {
    List<String> out = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setSortByPosition(true);
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        out.add(stripper.getText(document));
      }
    }
    return out;
  }

  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void everyPlateIsOnePage(UnitStyle units) throws IOException {
    List<String> pages = pages(Papers.pdf(units));
    List<ApproachPage> plates = Papers.briefing(units).parts().get(0).plates();
    assertThat(plates).hasSizeGreaterThan(5);
    for (ApproachPage a : plates) {
      String head = a.title();
      long sheets = pages.stream().filter(p -> p.stripLeading().startsWith(head)).count();
      assertThat(sheets).as(head).isEqualTo(1);
    }
  }

  /** Behind the first page, on its side, with chart and table on the one sheet. */
  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void theRoadIsTheSecondPageAndLiesOnItsSide(UnitStyle units) throws IOException {
    byte[] pdf = Papers.pdf(units);
    List<String> pages = pages(pdf);
    assertThat(pages.get(1)).contains("The road on one sheet").contains("BRAKE AT");
    assertThat(pages.stream().filter(p -> p.stripLeading().startsWith("The road on"))).hasSize(1);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (int i = 0; i < document.getNumberOfPages(); i++) {
        var box = document.getPage(i).getMediaBox();
        assertThat(box.getWidth() > box.getHeight()).isEqualTo(i == 1);
      }
    }
  }

  /** All of the first page stands on it, and the first braking point on the next. */
  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void theFirstPageIsOnePage(UnitStyle units) throws IOException {
    List<String> pages = pages(Papers.pdf(units));
    Briefing briefing = Papers.briefing(units);
    assertThat(pages.get(0))
        .contains("What changed", "Brief these first", "Data sources", "Cautions", "Fingerprint")
        .contains("Destroy the sheets that this issue supersedes.");
    assertThat(pages.get(1).replaceAll("\\s+", ""))
        .contains(
            briefing
                .parts()
                .get(0)
                .road()
                .get(0)
                .table()
                .rows()
                .get(0)
                .cells()
                .get(2)
                .replaceAll("\\s+", ""));
  }

  static List<Arguments> changes() {
    return List.of(
            Arguments.of(9, 30, 8),
            Arguments.of(9, 150, 4),
            Arguments.of(3, 900, 0),
            Arguments.of(8, 30, 8),
            Arguments.of(40, 30, 8))
        .subList(0, Examples.of(3, 5));
  }

  /** Up to eight lines, fewer where long ones would push the road off the second page. */
  @ParameterizedTest
  @MethodSource("changes")
  void whatTheFirstPageHasNoRoomForStandsInTheReference(int changes, int letters, int here)
      throws IOException {
    List<Change> all = new ArrayList<>();
    for (int i = 0; i < changes; i++) {
      all.add(new Change("kind " + i, "place " + i, "x ".repeat(letters / 2) + "end" + i + "."));
    }
    Briefing briefing =
        new Composer(Messages.english())
            .compose(
                "", List.of(SamplePlan.of(UnitStyle.MILES)), SampleIssue.issue(), List.copyOf(all));
    List<String> paper = pages(Papers.pdf(briefing));
    List<String> reference =
        pages(Papers.pdf(Papers.reference(SamplePlan.of(UnitStyle.MILES), briefing)));
    assertThat(paper.get(1)).contains("The road on one sheet");
    assertThat(briefing.cover().changes()).isEqualTo(here);
    for (int i = 0; i < changes; i++) {
      String end = "end" + i + ".";
      assertThat(paper.get(0).contains(end)).as(end).isEqualTo(i < here);
      assertThat(String.join("", reference).contains(end)).as(end).isEqualTo(i >= here);
    }
    String more =
        "More changes ("
            + (changes - here)
            + "): see the reference, under “Changes since the last issue”.";
    assertThat(paper.get(0).contains(more)).isEqualTo(here < changes);
  }

  /** Each sheet that can be exchanged is printed in one of the two files, whole and once. */
  @Test
  void paperAndReferencePrintAllThatTheSheetsName() throws IOException {
    Briefing briefing = Papers.briefing(UnitStyle.MILES);
    String paper = Papers.html(Papers.renderer(), briefing);
    String reference = Papers.html(Papers.renderer(), Papers.reference(UnitStyle.MILES));
    Sheets sheets = new Sheets(Messages.english());
    Reference looked = Papers.reference(UnitStyle.MILES);
    assertThat(sheets.of(briefing)).hasSizeGreaterThan(8);
    assertThat(sheets.of(looked))
        .extracting(Sheets.Sheet::key)
        .containsExactly("reading", "runs", "tables Down");
    sheets.of(briefing).forEach(s -> once(s.anchor(), paper, reference));
    sheets.of(looked).forEach(s -> once(s.anchor(), reference, paper));
    assertThat(sheets.of(looked)).allMatch(s -> s.title().startsWith("Reference: "));
    Part part = briefing.parts().get(0);
    once(part.seldom().id(), paper, reference);
    looked.sheets().stream()
        .flatMap(ReferenceSheet::tables)
        .forEach(t -> once(t.id(), reference, paper));
    List<String> tables =
        looked.sheets().stream().flatMap(ReferenceSheet::tables).map(Table::name).toList();
    assertThat(tables).containsAll(names(part.tables()));
    assertThat(tables).containsAll(names(part.train().tables()));
    assertThat(tables).containsAll(names(part.train().leaving()));
    assertThat(tables).contains("assumptions", "practice");
    for (String text : briefing.parts().get(0).notSupplied()) {
      assertThat(reference.replace('\u00a0', ' ')).contains(text.replace("'", "&#39;"));
    }
  }

  private static void once(String id, String here, String notThere) {
    assertThat(here.split(" id=\"" + id + "\"", -1)).as(id).hasSize(2);
    assertThat(notThere.split(" id=\"" + id + "\"", -1)).as(id).hasSize(1);
  }

  private static List<String> names(List<Table> tables) {
    return tables.stream().map(Table::name).toList();
  }

  private static String both(UnitStyle units) throws IOException {
    return String.join("\n", pages(Papers.pdf(units)))
        + String.join("\n", pages(Papers.referencePdf(units)));
  }

  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void everyPageCarriesIssueCautionAndItsNumber(UnitStyle units) throws IOException {
    everyPageCarriesItsMarks(pages(Papers.pdf(units)), 16, 32);
    everyPageCarriesItsMarks(pages(Papers.referencePdf(units)), 6, 12);
  }

  private static void everyPageCarriesItsMarks(List<String> pages, int least, int most) {
    assertThat(pages).hasSizeBetween(least, most);
    for (int i = 0; i < pages.size(); i++) {
      assertThat(pages.get(i))
          .contains("Issue 3 · valid 2026-11-23 04:00 to 2027-02-28 04:00")
          .contains("Training aid.")
          .containsPattern("Page " + (i + 1) + " of " + pages.size() + "\\s")
          .doesNotContain("##");
    }
  }

  @Test
  void answersWhatIfTheServiceBrakeGivesNothing() throws IOException {
    String all = both(UnitStyle.MILES);
    assertThat(all)
        .contains("If the EP brake fails at action 3")
        .contains("Auto full service, immediately.")
        .contains("Emergency, immediately.")
        .contains("last place for Auto full service")
        .contains("Emergency only where nothing less is enough")
        .containsPattern("people may fall\\s+and\\s+wheels\\s+may\\s+slide")
        .contains("What changed since issue 2 is not told here")
        .contains("T 26/104");
  }

  @Test
  void neverMixesUnits() throws IOException {
    String miles = both(UnitStyle.MILES);
    String metric = both(UnitStyle.METRIC);
    assertThat(miles).contains(" mph", " psi", "ch").doesNotContain("km/h", " bar\n", "‰");
    assertThat(metric).contains("km/h", " bar", "‰").doesNotContainPattern("\\d psi|\\dm \\d\\dch");
  }

  @Test
  void sameIssueSameBytesWhereverAndWheneverItIsMade() throws IOException {
    byte[] here = Papers.pdf(UnitStyle.MILES);
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    String ends = System.lineSeparator();
    try {
      System.setProperty("line.separator", "\r\n");
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      assertThat(Papers.pdf(UnitStyle.MILES)).isEqualTo(here);
    } finally {
      System.setProperty("line.separator", ends);
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @ParameterizedTest
  @CsvSource({"PDFA_2_A,MILES", "PDFUA_1,MILES", "PDFA_2_A,METRIC", "PDFUA_1,METRIC"})
  void isArchivalAndAccessible(PDFAFlavour flavour, UnitStyle units) throws Exception {
    complies(Papers.pdf(units), flavour);
    complies(Papers.referencePdf(units), flavour);
  }

  public static void complies(byte[] pdf, PDFAFlavour flavour) throws Exception {
    VeraGreenfieldFoundryProvider.initialise();
    try (PDFAParser parser =
            Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      ValidationResult result = validator.validate(parser);
      assertThat(
              result.getTestAssertions().stream()
                  .filter(a -> a.getStatus() == TestAssertion.Status.FAILED)
                  .map(a -> a.getRuleId().getClause() + " " + a.getMessage())
                  .distinct())
          .isEmpty();
      assertThat(result.isCompliant()).isTrue();
    }
  }

  /** The first page of a paper is one page, and the first braking point stands on the next. */
  public static void roadIsOnPageTwo(byte[] pdf) throws IOException {
    assertThat(pages(pdf).get(0)).contains("Brief these first", "Cautions");
    assertThat(pages(pdf).get(1).stripLeading()).startsWith("The road").contains("BRAKE AT");
  }

  @Test
  void bookmarksLeadToEveryPlate() throws IOException {
    Briefing briefing = Papers.briefing(UnitStyle.MILES);
    List<String> titles = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(Papers.pdf(UnitStyle.MILES))) {
      for (PDOutlineItem item : document.getDocumentCatalog().getDocumentOutline().children()) {
        collect(item, titles);
      }
    }
    assertThat(titles)
        .containsAll(briefing.parts().get(0).plates().stream().map(ApproachPage::title).toList());
    List<String> looked = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(Papers.referencePdf(UnitStyle.MILES))) {
      for (PDOutlineItem item : document.getDocumentCatalog().getDocumentOutline().children()) {
        collect(item, looked);
      }
    }
    assertThat(looked)
        .containsExactly(
            "How to read it; the train", "Runs, and where trains stand", "Tables: Down");
  }

  private static void collect(PDOutlineItem item, List<String> titles) {
    titles.add(item.getTitle());
    item.children().forEach(child -> collect(child, titles));
  }
}
