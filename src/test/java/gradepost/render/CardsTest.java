package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.CabCards;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.Plate;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.Table;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.units.UnitStyle;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Properties of the cab cards. */
@Tag("slow")
class CardsTest {
  private static final double POINTS_PER_MM = 72 / 25.4;

  static List<CabCards.Format> formats() {
    return List.of(
        new CabCards.Format("A5 portrait", 148, 210, 2, 1),
        new CabCards.Format("A5 landscape", 210, 148, 1, 2),
        new CabCards.Format("A6 portrait", 105, 148, 2, 2),
        new CabCards.Format("A6 landscape", 148, 105, 2, 2));
  }

  private static CabCards cards(UnitStyle units, CabCards.Format format) {
    return CabCards.of(Papers.briefing(units), "Cards of the invented line", format);
  }

  private static final Map<List<Object>, byte[]> MADE = new HashMap<>();

  /** Made once for all who only look at it. */
  static byte[] single(UnitStyle units, CabCards.Format format) throws IOException {
    List<Object> key = List.of(units, format.name());
    if (!MADE.containsKey(key)) {
      MADE.put(key, Papers.renderer().cards(cards(units, format)));
    }
    return MADE.get(key).clone();
  }

  static byte[] cut(UnitStyle units, CabCards.Format format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    CabCards cards = cards(units, format);
    Papers.renderer().cut(cards, Papers.renderer().cards(cards), out);
    return out.toByteArray();
  }

  private static void hasSize(PDPage page, double widthMm, double heightMm) {
    assertThat((double) page.getMediaBox().getWidth())
        .isCloseTo(widthMm * POINTS_PER_MM, org.assertj.core.api.Assertions.within(0.8));
    assertThat((double) page.getMediaBox().getHeight())
        .isCloseTo(heightMm * POINTS_PER_MM, org.assertj.core.api.Assertions.within(0.8));
  }

  @ParameterizedTest
  @MethodSource("formats")
  void everyApproachHasItsCardOfTheSizeAsked(CabCards.Format format) throws IOException {
    List<ApproachPage> approaches = Papers.briefing(UnitStyle.MILES).parts().get(0).approaches();
    try (PDDocument document = Loader.loadPDF(single(UnitStyle.MILES, format))) {
      if (format.widthMm() * format.heightMm() > 20_000) {
        assertThat(document.getNumberOfPages()).isEqualTo(approaches.size());
      }
      PDFTextStripper stripper = new PDFTextStripper();
      for (PDPage page : document.getPages()) {
        hasSize(page, format.widthMm(), format.heightMm());
      }
      String all = stripper.getText(document).replaceAll("\\s+", " ");
      assertThat(all).contains("Training aid.", "Issue 3", "If the EP brake fails");
      approaches.forEach(a -> assertThat(all).contains(a.title()));
      assertThat(all).contains("Issue 3 to 2027-02-28 04:00, card 1 of ");
      for (ApproachPage a : approaches) {
        if (format.heightMm() > 200 && a.points().size() == 1) {
          assertThat(a.points().get(0).last()).startsWith("Last place for ");
          assertThat(all).contains(a.points().get(0).last());
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("formats")
  void whatOneCardDoesNotHoldGoesOnOnAnotherThatSaysSo(CabCards.Format format) throws IOException {
    List<String> left = pages(single(UnitStyle.MILES, format));
    for (ApproachPage a : Papers.briefing(UnitStyle.MILES).parts().get(0).approaches()) {
      String heading = a.title();
      List<String> own = left.stream().takeWhile(p -> p.contains(heading)).toList();
      assertThat(own).as(heading).isNotEmpty();
      left = left.subList(own.size(), left.size());
      List<String> numbers = new ArrayList<>();
      for (int i = 0; i < own.size(); i++) {
        String piece = " (" + (i + 1) + " of " + own.size() + ")";
        assertThat(own.get(i).contains(heading + piece)).isEqualTo(own.size() > 1);
        assertThat(own.get(i).contains(" mph gauge")).isEqualTo(own.get(i).contains("do, where"));
        for (ApproachPage.ActionLine line : a.actions()) {
          if (own.get(i).contains(" " + line.number() + " " + line.todo())) {
            numbers.add(line.number());
          }
        }
      }
      assertThat(numbers)
          .containsExactlyElementsOf(
              a.actions().stream().map(ApproachPage.ActionLine::number).toList());
      assertThat(own.get(0)).contains(a.target());
      if (a.points().isEmpty()) {
        assertThat(own.get(own.size() - 1))
            .contains(a.unbraked().stream().limit(2).collect(Collectors.joining(" ")));
        passed(a).forEach(r -> assertThat(own.get(own.size() - 1)).contains(plain(row(r))));
      }
    }
    assertThat(left).isEmpty();
  }

  /** Nothing is done on it, and what is said of it is more than one small card holds. */
  @Test
  void aCardWithoutALineGoesOnOnAnotherThatSaysSo() throws IOException {
    CabCards.Format small = formats().get(3);
    Briefing demo =
        new Composer(Messages.english())
            .compose("", List.of(DemoPlans.plan(0)), SampleIssue.issue(), List.of());
    List<CabCards.Card> cards =
        CabCards.of(demo, "Cards", small).cards().stream()
            .filter(c -> c.approach().points().isEmpty())
            .map(c -> new CabCards.Card(c.head(), idle(c.approach()), 1, 1, List.of(), true))
            .toList();
    assertThat(cards).isNotEmpty();
    CabCards draft = CabCards.of(demo, "Cards", small);
    List<String> pages =
        pages(
            Papers.renderer()
                .cards(
                    new CabCards(
                        draft.language(),
                        draft.title(),
                        draft.subject(),
                        draft.issueLine(),
                        draft.validTo(),
                        draft.issue(),
                        small,
                        true,
                        draft.pageMm(),
                        cards.size(),
                        cards)));
    assertThat(pages).hasSize(2 * cards.size());
    for (int i = 0; i < pages.size(); i++) {
      ApproachPage a = cards.get(i / 2).approach();
      assertThat(pages.get(i)).contains(a.title() + " (" + (i % 2 + 1) + " of 2)");
    }
  }

  /** Whatever a card holds to the point, no page is without its title. */
  @Test
  void everyPageHasItsTitleInWhateverHeight() throws IOException {
    Briefing demo =
        new Composer(Messages.english())
            .compose("", List.of(DemoPlans.plan(4)), SampleIssue.issue(), List.of());
    for (int height = 100; height <= 112; height += Examples.of(4, 1)) {
      CabCards.Format format = new CabCards.Format("of " + height, 148, height, 1, 1);
      for (String page : pages(Papers.renderer().cards(CabCards.of(demo, "Cards", format)))) {
        assertThat(demo.parts().get(0).approaches())
            .as(height + " mm: " + page)
            .anyMatch(a -> page.contains(" " + a.title()));
      }
    }
  }

  private static ApproachPage idle(ApproachPage a) {
    String found = "Something that was found here, in as many words as it takes to fill a line. ";
    return new ApproachPage(
        a.id(),
        a.number(),
        a.title(),
        a.target(),
        a.headline(),
        a.marks(),
        a.chart(),
        List.of(),
        a.unbraked(),
        a.points(),
        a.ladders(),
        a.bySpeed(),
        a.spread(),
        List.of(found + found, found + found),
        a.plate(),
        List.of());
  }

  /** Where no brake goes on: the speeds at the last places on the way. */
  private static List<Table.Row> passed(ApproachPage a) {
    List<Table.Row> rows = a.points().isEmpty() ? a.ladders().get(0).rows() : List.<Table.Row>of();
    return rows.subList(Math.max(0, rows.size() - 5), rows.size());
  }

  private static String row(Table.Row row) {
    return String.join(" ", row.cells());
  }

  private static List<String> answers(ApproachPage a) {
    return a.points().stream()
        .map(p -> p.question() + " " + p.rail() + " " + (p.grave() ? "▲ " : "") + p.firstAnswer())
        .toList();
  }

  private static List<String> numbers(ApproachPage a) {
    return a.points().stream().map(ApproachPage.Point::number).toList();
  }

  private static Optional<Plate.BrakeAt> box(ApproachPage a) {
    return a.plate().flatMap(Plate::brakeAt);
  }

  private static Briefing demo(int paper) {
    return new Composer(Messages.english())
        .compose("", List.of(DemoPlans.plan(paper)), SampleIssue.issue(), List.of());
  }

  @ParameterizedTest
  @MethodSource("gradepost.drive.DemoPlans#numbers")
  void aBrakingPointHasAllThatThereIsToGoByOnItsOwnCard(int paper) throws IOException {
    Briefing demo = demo(paper);
    int facts = 0;
    int answered = 0;
    for (CabCards.Format format : formats()) {
      List<String> pages =
          pages(Papers.renderer().cards(CabCards.of(demo, "Cards of the invented line", format)));
      for (ApproachPage a : demo.parts().get(0).approaches()) {
        for (ApproachPage.ActionLine line : a.actions()) {
          String page =
              pages.stream()
                  .filter(p -> p.contains(a.title()))
                  .filter(p -> p.contains(" " + line.number() + " " + line.todo()))
                  .findFirst()
                  .orElseThrow();
          if (line.key() && box(a).isPresent() && numbers(a).indexOf(line.number()) == 0) {
            Plate.BrakeAt box = box(a).get();
            String front =
                pages.stream().filter(p -> p.contains(" " + a.title())).findFirst().orElseThrow();
            assertThat(front).contains(plain("BRAKE AT " + box.place()));
            assertThat(front).contains(plain(String.join(" · ", box.others())));
            for (Fact fact : box.rows()) {
              assertThat(front).contains(plain(fact.label() + " " + fact.value()));
              facts++;
            }
            assertThat(front).contains(answers(a).get(0));
            answered++;
          } else if (line.key()) {
            List<Fact> goBy =
                a.points().stream()
                    .filter(p -> p.number().equals(line.number()))
                    .findFirst()
                    .orElseThrow()
                    .goBy();
            for (int i = 0; i < goBy.size(); i++) {
              Fact fact = goBy.get(i);
              assertThat(page)
                  .contains(plain("· " + (i == 0 ? "" : fact.label() + " ") + fact.value()));
              facts++;
            }
            assertThat(page).contains(answers(a).get(numbers(a).indexOf(line.number())));
            answered++;
          } else if (!line.fromLast().equals("–")) {
            assertThat(page).contains(plain(line.fromLast()));
          }
        }
      }
    }
    assertThat(facts).isGreaterThan(40);
    assertThat(answered).as("on the card of the line").isGreaterThan(20);
  }

  private static String plain(String text) {
    return text.replaceAll("[\\s\u00a0]+", " ");
  }

  private static List<String> pages(byte[] pdf) throws IOException {
    List<String> out = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new PDFTextStripper();
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        out.add(plain(stripper.getText(document)));
      }
    }
    return out;
  }

  @Test
  void aSmallCardHasToGoOn() throws IOException {
    assertThat(pages(single(UnitStyle.MILES, formats().get(3))))
        .anyMatch(p -> p.contains("(2 of 2)"));
  }

  @ParameterizedTest
  @MethodSource("formats")
  void speedsAndPressuresAreOfFourteenPointsAndTheRestOfTwelve(CabCards.Format format)
      throws IOException {
    for (UnitStyle units : UnitStyle.values()) {
      List<String> expected = new ArrayList<>();
      for (ApproachPage a : Papers.briefing(units).parts().get(0).approaches()) {
        a.actions().forEach(x -> expected.add(x.speed()));
        a.actions().forEach(x -> expected.addAll(List.of(x.gauge().split(", ", -1))));
        passed(a).forEach(r -> expected.add(r.cells().get(2)));
      }
      expected.removeIf("–"::equals);
      List<String> key = new ArrayList<>();
      PDFTextStripper stripper =
          new PDFTextStripper() {
            @Override
            protected void writeString(String text, List<TextPosition> positions) {
              TextPosition first = positions.get(0);
              boolean running =
                  first.getYDirAdj() < 34 || first.getYDirAdj() > first.getPageHeight() - 28;
              if (!running) {
                assertThat(first.getYScale()).as(text).isGreaterThanOrEqualTo(11.9f);
                if (first.getYScale() >= 13.9f) {
                  key.add(text.strip());
                }
              }
            }
          };
      try (PDDocument document = Loader.loadPDF(single(units, format))) {
        stripper.getText(document);
      }
      key.removeIf(t -> !t.matches("\\d+|to 0|\\d+ psi|\\d\\.\\d bar"));
      assertThat(key).containsExactlyInAnyOrderElementsOf(expected);
    }
  }

  @ParameterizedTest
  @MethodSource("formats")
  void sheetsToCutHoldEveryCardAndAreArchival(CabCards.Format format) throws Exception {
    byte[] sheets = cut(UnitStyle.MILES, format);
    assertThat(sheets).isEqualTo(cut(UnitStyle.MILES, format));
    try (PDDocument cut = Loader.loadPDF(sheets);
        PDDocument single = Loader.loadPDF(single(UnitStyle.MILES, format))) {
      int each = format.across() * format.down();
      assertThat(cut.getNumberOfPages()).isEqualTo((single.getNumberOfPages() + each - 1) / each);
      for (PDPage page : cut.getPages()) {
        hasSize(page, format.sheetLies() ? 297 : 210, format.sheetLies() ? 210 : 297);
      }
      String first = new PDFTextStripper().getText(cut);
      assertThat(first).contains("If the EP brake fails");
    }
    PdfTest.complies(sheets, PDFAFlavour.PDFA_2_B);
  }

  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void singleCardsAreArchivalAndAccessible(UnitStyle units) throws Exception {
    byte[] pdf = single(units, formats().get(2));
    PdfTest.complies(pdf, PDFAFlavour.PDFA_2_A);
    PdfTest.complies(pdf, PDFAFlavour.PDFUA_1);
  }
}
