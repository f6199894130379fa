package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.IssueMaker.Before;
import gradepost.app.IssueMaker.Concern;
import gradepost.source.Input;
import gradepost.source.PackFile;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;

/** Property: an emergency addendum is half a page, and loses nothing that a driver must know. */
class AddendumTest extends Changes {
  private static final double MM = 72 / 25.4;

  /** Two restrictions that shift most of what follows, and one that goes. */
  private static final String[] NOTICES = {
    "status: in force, from: 4m 20ch, to: 4m 40ch, lines: [Down Main], reference: T 26/201,"
        + " speed: 20 mph",
    "status: extended, from: 13m 20ch, to: 13m 04ch, lines: [Single], reference: T 26/104,"
        + " speed: 15 mph, boards: none, until: 2027-02-15 04:00",
    "status: in force, from: {section: Harbour, at: 1m 00ch}, to: {section: Harbour, at: 1m 10ch},"
        + " lines: [Down Harbour], reference: T 26/202, speed: 10 mph",
  };

  private static PackFile downOnly(PackFile pack) {
    List<Input> inputs = new ArrayList<>(pack.inputs());
    String text = new String(inputs.get(0).bytes(), StandardCharsets.UTF_8);
    int up = text.indexOf("  - direction: Up");
    int end = text.indexOf("formations:");
    text = text.substring(0, up) + text.substring(end).replace("[4-car, 8-car]", "[8-car]");
    inputs.set(0, new Input(inputs.get(0).name(), text.getBytes(StandardCharsets.UTF_8)));
    return good(Disk.sources().pack(inputs));
  }

  @Test
  void isHalfAPage() throws IOException {
    PackFile before = downOnly(valley());
    for (int count = 1; count <= NOTICES.length; count++) {
      PackFile after = with(before, List.of(NOTICES).subList(0, count).toArray(new String[0]));
      IssueMaker maker = new IssueMaker(new Layout(Optional.empty()));
      var draft =
          maker.draft(
              Path.of("pack-thrumble.yaml"),
              after,
              Optional.of(new Before(before, List.of())),
              true);
      assertThat(draft.made().failures()).isEmpty();
      Paper addendum =
          maker.finish(draft, Concern.NOBODY, PackReissue.SILENT).papers().stream()
              .filter(p -> p.name().endsWith("-addendum.pdf"))
              .findFirst()
              .orElseThrow();
      try (PDDocument pdf = Loader.loadPDF(addendum.bytes())) {
        assertThat(pdf.getNumberOfPages()).isEqualTo(1);
        assertThat(lowestMm(pdf)).as(count + " restrictions").isLessThan(297 / 2.0 - 3);
        String text = new PDFTextStripper().getText(pdf);
        assertThat(text).contains("T 26/201", "4m 20ch to 4m 40ch", "20 mph", "no longer hold");
        draft.works().get(0).comparison().approaches().stream()
            .filter(a -> !a.renumberedOnly() && a.before().isPresent())
            .map(a -> a.before().orElseThrow().target().name())
            .forEach(name -> assertThat(text.replaceAll("\\s+", " ")).contains(name));
      }
    }
  }

  /** Where the lowest text lies that is not the foot of the page, from the upper edge. */
  private static double lowestMm(PDDocument pdf) throws IOException {
    List<Double> lows = new ArrayList<>();
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void writeString(String text, List<TextPosition> glyphs) {
            glyphs.forEach(g -> lows.add(g.getYDirAdj() / MM));
          }
        };
    stripper.writeText(pdf, new StringWriter());
    return lows.stream().filter(mm -> mm < 280).mapToDouble(mm -> mm).max().orElseThrow();
  }
}
