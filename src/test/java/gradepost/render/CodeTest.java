package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import gradepost.briefing.Briefing;
import gradepost.units.UnitStyle;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The code on the cover, read back as a telephone would: from a picture of the printed page. */
@Tag("slow")
class CodeTest {
  private static final Briefing BRIEFING = Papers.briefing(UnitStyle.MILES);

  @Test
  void theCodeOnTheCoverHoldsTheFingerprint() throws Exception {
    BufferedImage page;
    try (PDDocument document = Loader.loadPDF(Papers.pdf(UnitStyle.MILES))) {
      page = new PDFRenderer(document).renderImageWithDPI(0, 200);
    }
    int[] pixels = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
    BinaryBitmap bitmap =
        new BinaryBitmap(
            new HybridBinarizer(new RGBLuminanceSource(page.getWidth(), page.getHeight(), pixels)));
    String text =
        new QRCodeReader().decode(bitmap, Map.of(DecodeHintType.TRY_HARDER, true)).getText();
    assertThat(text).isEqualTo("gradepost issue 3 " + BRIEFING.issue().fingerprint());
  }

  @Test
  void thePrintedFingerprintIsReadFromBothFaces() throws IOException {
    assertThat(Fingerprints.ofPdf(Papers.pdf(UnitStyle.MILES)))
        .contains(BRIEFING.issue().fingerprint());
    assertThat(Fingerprints.ofHtml(Papers.html(Papers.renderer(), BRIEFING)))
        .contains(BRIEFING.issue().fingerprint());
    assertThat(Fingerprints.ofHtml("<p>3f786850 e387550f</p>")).isEmpty();
  }
}
