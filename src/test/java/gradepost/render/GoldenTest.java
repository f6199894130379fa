package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.CabCards;
import gradepost.units.UnitStyle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Regression: the invented pack as it was last looked at. Where it differs, what was made, what was
 * kept and the difference lie under {@code target/golden}; a person looks, and if the new one is
 * right copies it over {@code src/test/resources/gradepost/render/golden}.
 */
@Tag("slow")
class GoldenTest {
  private static final Path MADE = Path.of("target", "golden");

  @Test
  void pagesHaveTheirSizeAndText() throws IOException {
    hasItsSizeAndText("pack.txt", Papers.pdf(UnitStyle.MILES));
    hasItsSizeAndText("reference.txt", Papers.referencePdf(UnitStyle.MILES));
  }

  private static void hasItsSizeAndText(String name, byte[] pdf) throws IOException {
    StringBuilder text = new StringBuilder();
    try (PDDocument document = Loader.loadPDF(pdf)) {
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
    keep(name, text.toString().getBytes(StandardCharsets.UTF_8));
    byte[] kept = kept(name);
    if (!Arrays.equals(kept, text.toString().getBytes(StandardCharsets.UTF_8))) {
      keep("expected-" + name, kept);
    }
    assertThat(text.toString()).isEqualTo(new String(kept, StandardCharsets.UTF_8));
  }

  /** Kinds of page of a pack by what their text begins with or holds. */
  private static final Map<String, String> PAGES =
      Map.ofEntries(
          Map.entry("cover", "Driver’s route briefing Down"),
          Map.entry("road", "The road on one sheet Down"),
          Map.entry("line", "Line: Harrow Top to Millbeck Down"),
          Map.entry("plate", "If the EP brake fails at action 3"),
          Map.entry("terminal", "Harbour, platform 1 Down"));

  private static final Map<String, String> REFERENCE =
      Map.of(
          "reference", "This reference belongs to each of these papers.",
          "train", "Rules of the handles",
          "runs", "Reference: Runs, and where trains stand ",
          "tables", "Reference: Tables: Down ");

  @Test
  void everyKindOfPageLooksAsItDid() throws IOException {
    Map<String, byte[]> papers = new TreeMap<>();
    papers.put("pack", Papers.pdf(UnitStyle.MILES));
    papers.put("reference", Papers.referencePdf(UnitStyle.MILES));
    papers.put("kilometres", Papers.pdf(UnitStyle.METRIC));
    for (CabCards.Format format : List.of(CardsTest.formats().get(0), CardsTest.formats().get(3))) {
      String name = "card-" + format.name().toLowerCase(Locale.ROOT).replace(' ', '-');
      papers.put(name, CardsTest.single(UnitStyle.MILES, format));
      papers.put(name + "-to-cut", CardsTest.cut(UnitStyle.MILES, format));
    }
    Map<String, BufferedImage> pictures = new TreeMap<>();
    for (Map.Entry<String, byte[]> paper : papers.entrySet()) {
      try (PDDocument document = Loader.loadPDF(paper.getValue())) {
        PDFRenderer renderer = new PDFRenderer(document);
        Map<String, Integer> pages =
            switch (paper.getKey()) {
              case "pack" -> pages(document, PAGES);
              case "reference" -> pages(document, REFERENCE);
              case "kilometres" ->
                  pages(
                      document,
                      Map.of("approach-in-kilometres", "If the EP brake fails at action 3"));
              default -> Map.of(paper.getKey(), 0);
            };
        for (Map.Entry<String, Integer> page : pages.entrySet()) {
          pictures.put(
              page.getKey(), renderer.renderImageWithDPI(page.getValue(), 96, ImageType.GRAY));
        }
      }
    }
    assertThat(pictures).hasSize(PAGES.size() + REFERENCE.size() + papers.size() - 2);
    for (Map.Entry<String, BufferedImage> picture : pictures.entrySet()) {
      Files.createDirectories(MADE);
      ImageIO.write(picture.getValue(), "png", MADE.resolve(picture.getKey() + ".png").toFile());
    }
    Map<String, Integer> strange = new TreeMap<>();
    for (Map.Entry<String, BufferedImage> picture : pictures.entrySet()) {
      String name = picture.getKey() + ".png";
      BufferedImage kept = ImageIO.read(new ByteArrayInputStream(kept(name)));
      Likeness likeness = Likeness.of(picture.getValue(), kept);
      if (!likeness.alike()) {
        strange.put(name, likeness.strange());
        ImageIO.write(kept, "png", MADE.resolve("expected-" + name).toFile());
        ImageIO.write(likeness.difference(), "png", MADE.resolve("difference-" + name).toFile());
      }
    }
    assertThat(strange).as("dots that differ: see target/golden").isEmpty();
  }

  /** Number of the first page, from 0, that begins with or holds these words. */
  private static Map<String, Integer> pages(PDDocument document, Map<String, String> words)
      throws IOException {
    Map<String, Integer> found = new TreeMap<>();
    PDFTextStripper stripper = new PDFTextStripper();
    for (int i = document.getNumberOfPages(); i >= 1; i--) {
      stripper.setStartPage(i);
      stripper.setEndPage(i);
      String page = stripper.getText(document).replaceAll("[\\s\u00a0]+", " ");
      int number = i - 1;
      words.forEach(
          (name, word) -> {
            if (word.endsWith("Down") ? page.startsWith(word) : page.contains(word)) {
              found.put(name, number);
            }
          });
    }
    return found;
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
