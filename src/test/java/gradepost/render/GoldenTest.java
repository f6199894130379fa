package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.units.UnitStyle;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/**
 * Regression: the invented pack as it was last looked at. Where it differs, what was made, what was
 * kept and the difference lie under {@code target/golden}; a person looks, and if the new one is
 * right copies it over {@code src/test/resources/gradepost/render/golden}.
 */
class GoldenTest {
  private static final Path MADE = Path.of("target", "golden");

  /** Grey levels that a rasteriser of another Java may differ by on average in a small square. */
  private static final double SQUARE_TOLERANCE = 60;

  private static final int SQUARE = 8;

  @Test
  void pagesHaveTheirSizeAndText() throws IOException {
    StringBuilder text = new StringBuilder();
    try (PDDocument document = Loader.loadPDF(Papers.pdf(UnitStyle.MILES))) {
      text.append(document.getNumberOfPages()).append(" pages\n");
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setLineSeparator("\n");
      int number = 0;
      for (PDPage page : document.getPages()) {
        number++;
        stripper.setStartPage(number);
        stripper.setEndPage(number);
        text.append("== ")
            .append(Math.round(page.getMediaBox().getWidth() / 72 * 25.4))
            .append(" x ")
            .append(Math.round(page.getMediaBox().getHeight() / 72 * 25.4))
            .append(" mm\n")
            .append(stripper.getText(document));
      }
    }
    keep("pack.txt", text.toString().getBytes(StandardCharsets.UTF_8));
    assertThat(text.toString()).isEqualTo(new String(kept("pack.txt"), StandardCharsets.UTF_8));
  }

  @Test
  void approachAndStripLookAsTheyDid() throws IOException {
    Map<String, BufferedImage> pictures = new LinkedHashMap<>();
    try (PDDocument document = Loader.loadPDF(Papers.pdf(UnitStyle.MILES))) {
      PDFTextStripper stripper = new PDFTextStripper();
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        String page = stripper.getText(document).replaceAll("\\s+", " ");
        String name =
            page.contains("If the EP brake gives nothing at 3")
                ? "approach.png"
                : page.contains("To scale, read from left to right") ? "strip.png" : "";
        if (!name.isEmpty() && !pictures.containsKey(name)) {
          pictures.put(
              name, new PDFRenderer(document).renderImageWithDPI(i - 1, 96, ImageType.GRAY));
        }
      }
    }
    assertThat(pictures).hasSize(2);
    for (Map.Entry<String, BufferedImage> picture : pictures.entrySet()) {
      Files.createDirectories(MADE);
      ImageIO.write(picture.getValue(), "png", MADE.resolve(picture.getKey()).toFile());
    }
    for (Map.Entry<String, BufferedImage> picture : pictures.entrySet()) {
      BufferedImage expected =
          ImageIO.read(new java.io.ByteArrayInputStream(kept(picture.getKey())));
      assertThat(worst(picture.getKey(), picture.getValue(), expected))
          .as(picture.getKey() + ": see target/golden")
          .isLessThan(SQUARE_TOLERANCE);
    }
  }

  /**
   * Mean difference of the square that differs most; pictures of all are kept where it is great.
   */
  private static double worst(String name, BufferedImage actual, BufferedImage expected)
      throws IOException {
    assertThat(actual.getWidth()).isEqualTo(expected.getWidth());
    assertThat(actual.getHeight()).isEqualTo(expected.getHeight());
    BufferedImage difference =
        new BufferedImage(actual.getWidth(), actual.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
    double worst = 0;
    for (int y = 0; y + SQUARE <= actual.getHeight(); y += SQUARE) {
      for (int x = 0; x + SQUARE <= actual.getWidth(); x += SQUARE) {
        long sum = 0;
        for (int dy = 0; dy < SQUARE; dy++) {
          for (int dx = 0; dx < SQUARE; dx++) {
            int a = actual.getRaster().getSample(x + dx, y + dy, 0);
            int e = expected.getRaster().getSample(x + dx, y + dy, 0);
            sum += a - e;
            difference.getRaster().setSample(x + dx, y + dy, 0, 255 - Math.abs(a - e));
          }
        }
        worst = Math.max(worst, Math.abs(sum) / (double) (SQUARE * SQUARE));
      }
    }
    if (worst >= SQUARE_TOLERANCE) {
      ImageIO.write(expected, "png", MADE.resolve("expected-" + name).toFile());
      ImageIO.write(difference, "png", MADE.resolve("difference-" + name).toFile());
    }
    return worst;
  }

  private static void keep(String name, byte[] bytes) throws IOException {
    Files.createDirectories(MADE);
    Files.write(MADE.resolve(name), bytes);
  }

  private static byte[] kept(String name) throws IOException {
    try (InputStream in = GoldenTest.class.getResourceAsStream("golden/" + name)) {
      assertThat(in).as(name + " is not kept: look at target/golden and copy it").isNotNull();
      return in.readAllBytes();
    }
  }
}
