package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Plate;
import gradepost.briefing.Table;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.color.SetNonStrokingColor;
import org.apache.pdfbox.contentstream.operator.color.SetNonStrokingColorN;
import org.apache.pdfbox.contentstream.operator.color.SetNonStrokingColorSpace;
import org.apache.pdfbox.contentstream.operator.color.SetNonStrokingDeviceGrayColor;
import org.apache.pdfbox.contentstream.operator.color.SetNonStrokingDeviceRGBColor;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: what is read in a hurry stands at its place in the largest type: where to brake, by
 * what at night, on another rail, and what if the brake fails. Measured on the paper, in
 * millimetres and points.
 */
@Tag("slow")
class ReadInAHurryTest {
  private static final double MM = 25.4 / 72;
  private static final double TOP_MM = 13;

  /** The box of the braking point begins right of this. */
  private static final double RIGHT_MM = 93;

  /** The frame of a plate ends here. */
  private static final double EDGE_MM = 195;

  private static final double BODY_PT = 10;
  private static final double ROAD_PT = 9;
  private static final double HEAD_PT = 8.5;
  private static final double CHART_PT = 7;
  private static final double NEAR = 0.05;

  /** A run of letters of one size, and where it stands; its darkness from 0, black, to 1. */
  private record Run(String text, double xMm, double endMm, double yMm, double pt, double grey) {
    boolean says(String part) {
      return text.contains(part);
    }
  }

  private static final class Runs extends PDFTextStripper {
    private final List<Run> found = new ArrayList<>();

    Runs() {
      addOperator(new SetNonStrokingColor(this));
      addOperator(new SetNonStrokingColorN(this));
      addOperator(new SetNonStrokingColorSpace(this));
      addOperator(new SetNonStrokingDeviceGrayColor(this));
      addOperator(new SetNonStrokingDeviceRGBColor(this));
    }

    private final List<Double> greys = new ArrayList<>();
    private final List<TextPosition> letters = new ArrayList<>();

    @Override
    protected void processTextPosition(TextPosition text) {
      try {
        int rgb = getGraphicsState().getNonStrokingColor().toRGB();
        greys.add(Math.max((rgb >> 16) & 255, Math.max((rgb >> 8) & 255, rgb & 255)) / 255.0);
      } catch (IOException e) {
        throw new IllegalStateException(e);
      }
      letters.add(text);
      super.processTextPosition(text);
    }

    @Override
    protected void writeString(String text, List<TextPosition> at) {
      TextPosition first = at.get(0);
      TextPosition last = at.get(at.size() - 1);
      found.add(
          new Run(
              text.replace('\u00a0', ' '),
              first.getXDirAdj() * MM,
              (last.getXDirAdj() + last.getWidthDirAdj()) * MM,
              first.getYDirAdj() * MM,
              first.getYScale(),
              greys.get(letters.indexOf(first))));
    }
  }

  private static Briefing briefing;
  private static List<List<Run>> pages = List.of();

  @BeforeAll
  static void print() throws IOException {
    briefing = Papers.briefing(UnitStyle.MILES);
    List<List<Run>> read = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(Papers.pdf(briefing))) {
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        Runs runs = new Runs();
        runs.setStartPage(page);
        runs.setEndPage(page);
        runs.getText(document);
        read.add(runs.found);
      }
    }
    pages = List.copyOf(read);
  }

  private static List<Run> plate(ApproachPage page) {
    return pages.stream()
        .filter(runs -> runs.stream().anyMatch(r -> isBody(r) && r.pt() > 15 && inName(page, r)))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no plate of " + page.title()));
  }

  private static boolean inName(ApproachPage page, Run run) {
    return run.xMm() < RIGHT_MM && page.title().startsWith(run.text().strip());
  }

  private static boolean isBody(Run run) {
    return run.yMm() > TOP_MM;
  }

  private static Run the(List<Run> runs, String text, double leastPt) {
    Optional<Run> found =
        runs.stream().filter(r -> r.says(text) && r.pt() > leastPt - NEAR).findFirst();
    assertThat(found).as(text + " in " + leastPt + " pt").isPresent();
    return found.get();
  }

  @Test
  void whereToBrakeIsTheLargestOnItsPlateAndAlwaysAtOneCorner() {
    int looked = 0;
    for (ApproachPage page : briefing.parts().get(0).approaches()) {
      Optional<Plate.BrakeAt> at = page.plate().flatMap(Plate::brakeAt);
      if (at.isPresent()) {
        List<Run> runs = plate(page);
        Run point = the(runs, at.get().place(), 24);
        assertThat(point.xMm()).isBetween(RIGHT_MM, RIGHT_MM + 6);
        assertThat(point.yMm()).isBetween(TOP_MM + 10, TOP_MM + 16);
        assertThat(runs.stream().filter(r -> r.pt() > 20)).containsExactly(point);
        double foot = TOP_MM + page.plate().get().grid().headMm();
        Run night = the(runs, "night, fog", BODY_PT);
        assertThat(night.xMm()).isGreaterThan(RIGHT_MM);
        assertThat(night.yMm()).isBetween(point.yMm(), foot);
        for (String other : at.get().others()) {
          Run rail = the(runs, other.substring(0, other.indexOf(' ')), 11);
          assertThat(rail.yMm()).isBetween(point.yMm(), night.yMm());
        }
        looked++;
      }
    }
    assertThat(looked).isGreaterThan(4);
  }

  @Test
  void whatToDoIfTheBrakeFailsIsNextInRankAndAlwaysAtOneHeight() {
    int looked = 0;
    for (ApproachPage page : briefing.parts().get(0).approaches()) {
      if (page.plate().isPresent()
          && page.points().stream().limit(1).anyMatch(p -> !p.question().isEmpty())) {
        Plate.Grid grid = page.plate().get().grid();
        String question = page.points().get(0).question();
        Run answer = the(plate(page), question.substring(0, 20), 12);
        double box = TOP_MM + grid.headMm() + grid.pictureMm() + grid.rowsMm();
        assertThat(answer.yMm()).as(page.title()).isBetween(box + 4, box + 10);
        assertThat(answer.xMm()).isLessThan(25);
        looked++;
      }
    }
    assertThat(looked).isGreaterThan(4);
  }

  @Test
  void theRoadSheetHasEachPointInTheLargestTypeOfItsRow() {
    List<Run> road = pages.get(1);
    List<Run> points = new ArrayList<>();
    for (Table.Row row : briefing.parts().get(0).road().get(0).table().rows()) {
      boolean first = !row.cells().get(0).isEmpty();
      points.add(the(road, row.cells().get(2).split(" \\(", -1)[0], first ? BODY_PT : ROAD_PT));
    }
    assertThat(points).hasSizeGreaterThan(12);
    for (Run point : points) {
      assertThat(point.xMm()).as("one column").isBetween(points.get(0).xMm() - 0.5, 80.0);
      assertThat(
              road.stream()
                  .filter(r -> Math.abs(r.yMm() - point.yMm()) < 1.5 && !r.equals(point))
                  .map(Run::pt))
          .allMatch(pt -> pt <= BODY_PT + NEAR);
    }
  }

  @Test
  void noTypeIsSmallerThanItsRank() {
    for (int page = 0; page < pages.size(); page++) {
      double least = page == 1 ? ROAD_PT : BODY_PT;
      for (Run run : pages.get(page)) {
        boolean head = run.yMm() < TOP_MM + 1.5 || run.yMm() > (page == 1 ? 200 : 287);
        assertThat(run.pt()).as("page %d: %s", page + 1, run).isGreaterThan(CHART_PT - NEAR);
        if (head) {
          assertThat(run.pt()).as("page %d: %s", page + 1, run).isEqualTo(HEAD_PT, near());
        } else if (run.pt() < least - NEAR) {
          assertThat(inDrawing(page, run)).as("page %d: %s", page + 1, run).isTrue();
        }
      }
    }
  }

  /** Names and figures of a chart: across a plate or the road, at the left of the line's sheets. */
  private static boolean inDrawing(int page, Run run) {
    boolean line = pages.get(page).stream().anyMatch(r -> r.text().startsWith("Line: "));
    boolean plate = pages.get(page).stream().anyMatch(r -> r.pt() > 15 && isBody(r));
    if (page == 1) {
      return run.yMm() < 115;
    }
    return line ? run.xMm() < 97 : plate && run.yMm() > TOP_MM + 50 && run.yMm() < TOP_MM + 125;
  }

  private static org.assertj.core.data.Offset<Double> near() {
    return org.assertj.core.data.Offset.offset(NEAR);
  }

  @Test
  void everyLetterIsBlackOnWhiteOrPaleGrey() {
    for (List<Run> page : pages) {
      assertThat(page).isNotEmpty().allMatch(r -> r.grey() < 0.01, "is black");
    }
  }

  @Test
  void nothingStandsBeyondTheFrameOfAPlate() {
    for (ApproachPage page : briefing.parts().get(0).approaches()) {
      if (page.plate().isPresent()) {
        assertThat(plate(page)).allMatch(r -> r.endMm() < EDGE_MM, "ends within the frame");
      }
    }
  }

  /** A loose sheet says what route it belongs to. */
  @Test
  void everyPageNamesTheRoute() {
    for (List<Run> page : pages) {
      assertThat(page).anyMatch(r -> r.says("Invented line"));
    }
  }
}
