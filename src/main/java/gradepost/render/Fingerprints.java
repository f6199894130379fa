package gradepost.render;

import java.io.IOException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** Reads from a finished paper the fingerprint that its first page prints. */
public final class Fingerprints {
  private static final Pattern PRINTED = Pattern.compile("(?:\\b[0-9a-f]{8}\\b\\s*){8}");

  /** Empty where the first page has none. */
  public static Optional<String> ofPdf(byte[] pdf) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setEndPage(1);
      return in(stripper.getText(document));
    } catch (IOException e) {
      // A file that only calls itself a PDF prints nothing.
      return Optional.empty();
    }
  }

  /** Of an HTML paper; empty where it prints none. */
  public static Optional<String> ofHtml(String html) {
    return in(html.replaceAll("<[^>]*>", " "));
  }

  private static Optional<String> in(String text) {
    Matcher matcher = PRINTED.matcher(text);
    return matcher.find() ? Optional.of(matcher.group().replaceAll("\\s", "")) : Optional.empty();
  }

  private Fingerprints() {}
}
