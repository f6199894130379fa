package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.Plate;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.Shown;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.Views;
import gradepost.briefing.reissue.Sheets;
import gradepost.briefing.word.Words;
import gradepost.pack.Picture;
import gradepost.pack.Pictures;
import gradepost.plan.Plan;
import gradepost.told.Seen;
import gradepost.units.UnitStyle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/**
 * Property: a landmark, signal or station that is taught as a cue stands on the plate with its
 * picture, any other on the sheet of the line; told in words too, and no box is moved by it.
 */
@Tag("slow")
class PicturesTest {
  private static final String LAMP = "lamp standard 4";
  private static final String BRIDGE = "far parapet of the canal bridge 4";

  private static Picture picture(String landmark, int across, int down) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(across, down, BufferedImage.TYPE_INT_RGB), "png", out);
    String data = Base64.getEncoder().encodeToString(out.toByteArray());
    return new Picture(landmark + ".png", "data:image/png;base64," + data, across, down);
  }

  private static Briefing briefing(Picture... pictures) {
    return new Composer(Messages.english())
        .compose(
            "",
            List.of(SamplePlan.of(UnitStyle.MILES)),
            SampleIssue.issue(),
            List.of(),
            List.of(),
            List.of(),
            new Pictures(List.of(pictures)));
  }

  private static List<Shown> shown(Briefing briefing) {
    return briefing.parts().get(0).approaches().stream()
        .flatMap(a -> a.plate().stream())
        .flatMap(p -> p.pictures().stream())
        .toList();
  }

  @Test
  void theCuesOfAPlateAreShownThere() throws IOException {
    Briefing briefing = briefing(picture(LAMP, 90, 60), picture(BRIDGE, 60, 60));
    List<ApproachPage> with =
        briefing.parts().get(0).approaches().stream()
            .filter(a -> a.plate().filter(p -> !p.pictures().isEmpty()).isPresent())
            .toList();
    assertThat(with).hasSize(1);
    ApproachPage page = with.get(0);
    Plate plate = page.plate().orElseThrow();
    assertThat(plate.brakeAt().orElseThrow().rows().toString()).contains(LAMP);
    assertThat(plate.pictures()).extracting(Shown::name).containsExactly(LAMP, BRIDGE);
    for (Shown one : plate.pictures()) {
      assertThat(one.widthMm()).isBetween(12, 45);
      assertThat(one.heightMm()).isBetween(12, 45);
    }
  }

  @Test
  void onPaperAndOnTheScreenItIsToldInWords() throws Exception {
    Briefing briefing = briefing(picture(LAMP, 90, 60), picture("WL 12", 90, 60));
    List<String> told = new ArrayList<>();
    int images = 0;
    byte[] pdf = Papers.pdf(briefing);
    PdfTest.complies(pdf, PDFAFlavour.PDFA_2_A);
    PdfTest.complies(pdf, PDFAFlavour.PDFUA_1);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      figures(document.getDocumentCatalog().getStructureTreeRoot(), told);
      for (PDPage page : document.getPages()) {
        for (var name : page.getResources().getXObjectNames()) {
          images += page.getResources().getXObject(name) instanceof PDImageXObject ? 1 : 0;
        }
      }
    }
    assertThat(told).contains("Picture of " + LAMP, "Picture of signal WL 12");
    assertThat(images).isEqualTo(2);
    assertThat(Papers.html(Papers.renderer(), briefing))
        .containsOnlyOnce("alt=\"Picture of " + LAMP + "\"")
        .containsOnlyOnce("alt=\"Picture of signal WL 12\"");
  }

  private static void figures(PDStructureNode node, List<String> told) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        if (element.getAlternateDescription() != null) {
          told.add(element.getAlternateDescription());
        }
        figures(element, told);
      }
    }
  }

  private static List<Shown> onTheLine(Briefing briefing) {
    return briefing.parts().get(0).line().stream()
        .flatMap(sheet -> sheet.rows().stream())
        .flatMap(row -> row.pictures().stream())
        .toList();
  }

  /** Its row tells it in words; the sheet ends where it ended. */
  @Test
  void whatIsNoCueOfAPlateStandsInItsRowOfTheLine() throws IOException {
    Briefing bare = briefing();
    Briefing briefing =
        briefing(picture(LAMP, 90, 60), picture("WL 12", 90, 60), picture("Millbeck", 60, 90));
    assertThat(shown(briefing)).extracting(Shown::name).containsExactly(LAMP);
    for (LineSheet sheet : briefing.parts().get(0).line()) {
      for (LineSheet.Row row : sheet.rows()) {
        row.pictures().forEach(s -> assertThat(row.what().toString()).contains(s.name()));
      }
    }
    assertThat(onTheLine(briefing))
        .extracting(Shown::name)
        .containsExactly("signal WL 12", "Millbeck");
    assertThat(onTheLine(briefing)).allMatch(Shown::onPaper);
    assertThat(briefing.parts().get(0).line())
        .extracting(LineSheet::title)
        .isEqualTo(bare.parts().get(0).line().stream().map(LineSheet::title).toList());
  }

  @Test
  void aSignalOrAStationThatIsTheCueIsShownOnItsPlate() throws IOException {
    Plan plan = SamplePlan.of(UnitStyle.MILES);
    Words words = new Words(Messages.english(), plan.assignment().path());
    Lineside lineside = new Lineside(plan.assignment(), words);
    Views views =
        new Views(
            lineside, new Pictures(List.of(picture("WL 12", 90, 60), picture("Millbeck", 60, 90))));
    double rampM =
        lineside.platforms().stream()
            .filter(o -> o.what().station().name().equals("Millbeck"))
            .findFirst()
            .orElseThrow()
            .fromM();
    assertThat(views.cue(thing(Seen.Kind.SIGNAL, "WL 12"), 0))
        .map(Views.View::name)
        .contains("signal WL 12");
    assertThat(views.cue(thing(Seen.Kind.RAMP, "1"), rampM + 20))
        .map(Views.View::name)
        .contains("Millbeck");
    assertThat(views.cue(thing(Seen.Kind.RAMP, "1"), rampM - 200)).as("before it").isEmpty();
    assertThat(views.cue(thing(Seen.Kind.MAGNET, "WL 12"), 0)).as("heard, not seen").isEmpty();
    assertThat(views.cue(thing(Seen.Kind.SIGNAL, "WL 13"), 0)).isEmpty();
  }

  private static Seen.Thing thing(Seen.Kind kind, String name) {
    return new Seen.Thing(kind, name, Optional.empty(), Optional.empty());
  }

  @Test
  void noBoxIsMoved() throws IOException {
    Briefing briefing = briefing(picture(LAMP, 200, 200), picture(BRIDGE, 100, 200));
    assertThat(shown(briefing)).allMatch(s -> s.heightMm() > 0);
    assertThat(PlateGridTest.look(briefing)).isPositive();
  }

  @Test
  void aPictureTooNarrowToShowAnythingStandsOnTheScreenAlone() throws IOException {
    assertThat(shown(briefing(picture(LAMP, 300, 20))))
        .extracting(Shown::heightMm)
        .containsExactly(0);
  }

  @Test
  void aPictureThatChangesMakesItsOwnSheetNew() throws IOException {
    Sheets sheets = new Sheets(Messages.english());
    List<Sheets.Sheet> none = sheets.of(briefing());
    List<Sheets.Sheet> one = sheets.of(briefing(picture(LAMP, 90, 60)));
    List<Sheets.Sheet> other = sheets.of(briefing(picture(LAMP, 91, 60)));
    assertThat(none).isEqualTo(sheets.of(Papers.briefing(UnitStyle.MILES)));
    assertThat(one.stream().filter(s -> !none.contains(s))).hasSize(1);
    assertThat(other.stream().filter(s -> !one.contains(s))).hasSize(1);
  }
}
