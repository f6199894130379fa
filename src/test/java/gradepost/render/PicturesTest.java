package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Plate;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.reissue.Sheets;
import gradepost.pack.Picture;
import gradepost.pack.Pictures;
import gradepost.units.UnitStyle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
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
 * Property: a landmark that is taught as a cue stands on the plate with its picture, told in words
 * too, and no box is moved by it.
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

  private static List<Plate.Shown> shown(Briefing briefing) {
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
    assertThat(plate.pictures()).extracting(Plate.Shown::name).containsExactly(LAMP, BRIDGE);
    for (Plate.Shown one : plate.pictures()) {
      assertThat(one.widthMm()).isBetween(12, 45);
      assertThat(one.heightMm()).isBetween(12, 45);
    }
  }

  @Test
  void onPaperAndOnTheScreenItIsToldInWords() throws Exception {
    Briefing briefing = briefing(picture(LAMP, 90, 60));
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
    assertThat(told).contains("Picture of " + LAMP);
    assertThat(images).isEqualTo(1);
    assertThat(Papers.html(Papers.renderer(), briefing))
        .containsOnlyOnce("<img ")
        .contains("alt=\"Picture of " + LAMP + "\"");
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

  @Test
  void noBoxIsMoved() throws IOException {
    Briefing briefing = briefing(picture(LAMP, 200, 200), picture(BRIDGE, 100, 200));
    assertThat(shown(briefing)).allMatch(s -> s.heightMm() > 0);
    assertThat(PlateGridTest.look(briefing)).isPositive();
  }

  @Test
  void aPictureTooNarrowToShowAnythingStandsOnTheScreenAlone() throws IOException {
    assertThat(shown(briefing(picture(LAMP, 300, 20))))
        .extracting(Plate.Shown::heightMm)
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
