package gradepost.briefing.reissue;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.Plate;
import gradepost.briefing.Reference;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.RoadSheet;
import gradepost.briefing.Shown;
import gradepost.briefing.Table;
import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.RoadChart;
import java.util.ArrayList;
import java.util.List;

/**
 * The sheets of a pack, one by one, and what is printed on each as one text: two sheets with the
 * same text need not be exchanged. Numbers that only draw a chart are taken to one decimal, and the
 * number of an approach is not part of its sheet.
 */
public final class Sheets {
  /**
   * Number of the format of {@link Sheet#text}; it is registered with the digest of the text. Texts
   * of different formats cannot be compared: whoever changes the content or the order of a text
   * increases this number.
   */
  public static final int FORMAT = 10;

  private final Messages messages;

  public Sheets(Messages messages) {
    this.messages = messages;
  }

  /**
   * One sheet.
   *
   * @param anchor where it begins in its own issue
   * @param key what it is, the same in every issue
   */
  public record Sheet(String anchor, String key, String title, String text) {}

  /** The sheets of a briefing, in the order of its pages. */
  public List<Sheet> of(Briefing briefing) {
    List<Sheet> out = new ArrayList<>();
    for (Part part : briefing.parts()) {
      String id = part.id();
      for (RoadSheet road : part.road()) {
        String key = unique(out, id + " road");
        String text = road.others() ? road(road) + "\n" + others(part) : road(road);
        out.add(new Sheet(road.id(), key, road.title(), text));
      }
      for (LineSheet line : part.line()) {
        String key = unique(out, id + " " + line.title());
        out.add(new Sheet(line.id(), key, line.title(), line(line)));
      }
      for (ApproachPage page : part.plates()) {
        String key = unique(out, id + " " + page.title());
        out.add(new Sheet(page.id(), key, page.title(), plate(page)));
      }
      if (part.othersApart()) {
        String title = messages.text("others.title");
        out.add(new Sheet(part.seldom().id(), id + " seldom", title, others(part)));
      }
    }
    return out;
  }

  /** The sheets of a reference, in the order of its pages; each says so in its title. */
  public List<Sheet> of(Reference reference) {
    return reference.sheets().stream().map(this::looked).toList();
  }

  private Sheet looked(ReferenceSheet sheet) {
    List<Object> printed =
        sheet.blocks().stream().flatMap(b -> b.printed(Sheets::table).stream()).toList();
    return new Sheet(
        sheet.id(),
        sheet.key(),
        messages.text("reference.sheet", sheet.title()),
        CanonicalText.of(sheet.title(), printed));
  }

  private static String unique(List<Sheet> sheets, String key) {
    String free = key;
    for (int again = 2; ; again++) {
      String candidate = free;
      if (sheets.stream().noneMatch(s -> s.key().equals(candidate))) {
        return free;
      }
      free = key + " #" + again;
    }
  }

  private static String others(Part part) {
    return CanonicalText.of(part.lower().map(Sheets::table), table(part.seldom()));
  }

  /** Without the planned run: what is told of it stands in the table. */
  private static String road(RoadSheet sheet) {
    RoadChart chart = sheet.chart();
    return CanonicalText.of(
        sheet.title(),
        table(sheet.table()),
        sheet.rails(),
        sheet.notes(),
        chart.curves().stream().filter(c -> c.kind() == Curve.Kind.PERMISSIBLE).toList(),
        chart.stations(),
        chart.temporary(),
        chart.track());
  }

  /** Without the planned run, and where on the paper a row stands: what is told is in the rows. */
  private static String line(LineSheet sheet) {
    LineChart chart = sheet.chart();
    return CanonicalText.of(
        sheet.title(),
        sheet.rows().stream().map(LineSheet.Row::told).toList(),
        chart.permissible(),
        chart.structures(),
        chart.gaps(),
        chart.magnets(),
        chart.track());
  }

  /** All that is printed of an approach, on its plate and in the reference, as one text. */
  public static String approach(ApproachPage page) {
    return plate(page) + "\n" + inFull(page);
  }

  private static String plate(ApproachPage page) {
    List<Shown> pictures = page.plate().map(Plate::onPaper).orElse(List.of());
    return boxes(page) + (pictures.isEmpty() ? "" : "\n" + CanonicalText.of(pictures));
  }

  private static String boxes(ApproachPage page) {
    return CanonicalText.of(
        page.title(),
        page.headline(),
        page.marks(),
        page.actions(),
        page.unbraked(),
        page.points(),
        page.plate().flatMap(Plate::brakeAt),
        page.plate().flatMap(Plate::speeds),
        page.plate().flatMap(Plate::fails).map(Sheets::table),
        page.spread(),
        page.findings());
  }

  private static String inFull(ApproachPage page) {
    return CanonicalText.of(page.title(), page.findings(), tables(page.inFull()));
  }

  private static List<Object> tables(List<Table> tables) {
    return tables.stream().<Object>map(Sheets::table).toList();
  }

  /** What a table prints: neither where its rows lead nor which of them changed. */
  private static List<Object> table(Table table) {
    return List.of(
        table.title(),
        table.note(),
        table.columns().stream().map(Table.Column::heading).toList(),
        table.rows().stream().<Object>map(r -> List.of(r.cells(), r.grave())).toList(),
        table.rows().isEmpty() ? table.whenEmpty() : "");
  }
}
