package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Plate;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.drive.Planner;
import gradepost.drive.RandomLines;
import gradepost.plan.Plan;
import gradepost.units.UnitStyle;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: a plate is one page, and each of its boxes begins at the same place on every plate of
 * its grid, measured on the paper in millimetres. Where a plan needs more than twelve rows, the
 * boxes below them stand lower.
 */
@Tag("slow")
class PlateGridTest {
  /** What the box at the right begins with. */
  private static final String[] HEADS = {
    "BRAKE AT", "NO BRAKE IN", "BRAKE ONLY TO CHECK", "BRAKE STILL ON"
  };

  private static final double MM = 25.4 / 72;

  /** The margin above the first box. */
  private static final double TOP_MM = 13;

  /** From the top of a box to the foot of its first line; what its border and its type need. */
  private static final double FIRST_LINE_MM = 5;

  /** The border and the type of the last box are larger. */
  private static final double THICKER_MM = 2;

  private static final double WITHIN_MM = 2;

  /** What the name of an approach takes at most, and how far the box goes that it stands in. */
  private static final double NAME_MM = 20;

  private static final double MIDDLE_MM = 90;

  /** A line of text, and where it stands from the top left corner of its page. */
  private record Line(String text, double xMm, double yMm) {}

  private static final class Lines extends PDFTextStripper {
    private final List<Line> found = new ArrayList<>();

    @Override
    protected void writeString(String text, List<TextPosition> at) {
      found.add(new Line(text, at.get(0).getXDirAdj() * MM, at.get(0).getYDirAdj() * MM));
    }
  }

  @ParameterizedTest
  @MethodSource("gradepost.drive.DemoPlans#numbers")
  void onTheDemoPapers(int assignment) throws IOException {
    assertThat(look(briefing(DemoPlans.plan(assignment)))).isGreaterThan(6);
  }

  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void onTheInventedLine(UnitStyle units) throws IOException {
    assertThat(look(Papers.briefing(units))).isPositive();
  }

  @Test
  void onMadeUpLines() throws IOException {
    int plates = 0;
    for (long seed = 1; seed <= Examples.of(3, 12); seed++) {
      plates += look(briefing(Planner.plan(RandomLines.of(seed).assignment())));
    }
    assertThat(plates).isGreaterThan(8);
  }

  private static Briefing briefing(Plan plan) {
    return new Composer(Messages.english())
        .compose("", List.of(plan), SampleIssue.issue(), List.of());
  }

  /** Looks at the plates of a briefing, and says how many they are. */
  static int look(Briefing briefing) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Papers.renderer().pdf(briefing, out);
    List<List<Line>> pages = pages(out.toByteArray());
    int plates = 0;
    for (ApproachPage page : briefing.parts().get(0).approaches()) {
      if (page.plate().isPresent()) {
        List<List<Line>> own =
            pages.stream().filter(lines -> isPlate(lines) && headOf(lines, page.title())).toList();
        assertThat(own).as("pages of the plate of " + page.title()).hasSize(1);
        boxes(page, page.plate().get().grid(), own.get(0));
        assertThat(pages.stream().filter(lines -> !isPlate(lines) && goesOn(lines, page)))
            .as("the plate of %s goes on: %d rows", page.title(), rows(page))
            .isEmpty();
        plates++;
      }
    }
    assertThat(pages.stream().filter(PlateGridTest::isPlate).count()).isEqualTo(plates);
    return plates;
  }

  private static boolean isPlate(List<Line> lines) {
    return lines.stream()
        .filter(l -> l.yMm() < TOP_MM + NAME_MM)
        .anyMatch(l -> Stream.of(HEADS).anyMatch(l.text()::startsWith));
  }

  private static int rows(ApproachPage page) {
    return page.actions().size() - page.plate().orElseThrow().firstLine();
  }

  /** By the running head. */
  private static boolean goesOn(List<Line> lines, ApproachPage page) {
    return lines.stream().anyMatch(l -> l.yMm() < TOP_MM && l.text().equals(page.title()));
  }

  private static boolean headOf(List<Line> lines, String title) {
    StringBuilder head = new StringBuilder();
    lines.stream()
        .filter(l -> l.yMm() > TOP_MM && l.yMm() < TOP_MM + NAME_MM && l.xMm() < MIDDLE_MM)
        .sorted(Comparator.comparingDouble(Line::yMm))
        .forEach(l -> head.append(l.text()).append(' '));
    return head.toString().replaceAll("\\s+", " ").strip().startsWith(title);
  }

  private static void boxes(ApproachPage page, Plate.Grid grid, List<Line> lines) {
    assertThat(top(lines, HEADS)).as(page.title()).isCloseTo(TOP_MM, within());
    double rows = TOP_MM + grid.headMm() + grid.pictureMm();
    assertThat(top(lines, "#", "No handle moves here")).as(page.title()).isCloseTo(rows, within());
    if (page.plate().get().fails().isPresent()) {
      double fails = rows + grid.rowsMm() + THICKER_MM;
      boolean moreRows = rows(page) > 12;
      assertThat(top(lines, "If the ", "▲ If the ", "If the brake fails, braking", "▲If the "))
          .as(page.title())
          .satisfies(
              at -> assertThat(moreRows ? Math.min(at, fails) : at).isCloseTo(fails, within()));
    }
  }

  private static Offset<Double> within() {
    return Offset.offset(WITHIN_MM);
  }

  /** Where the box begins whose first line begins with one of these texts. */
  private static double top(List<Line> lines, String... begins) {
    for (Line line : lines) {
      for (String text : begins) {
        if (line.text().startsWith(text) && (text.length() > 1 || line.text().length() < 6)) {
          return line.yMm() - FIRST_LINE_MM;
        }
      }
    }
    throw new AssertionError("no line begins with any of " + List.of(begins));
  }

  private static List<List<Line>> pages(byte[] pdf) throws IOException {
    List<List<Line>> out = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        Lines lines = new Lines();
        lines.setStartPage(page);
        lines.setEndPage(page);
        lines.getText(document);
        out.add(lines.found);
      }
    }
    return out;
  }
}
