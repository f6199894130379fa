package gradepost.briefing.compose;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.SpreadChart;
import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The sheets of a pack, one by one, and what is printed on each as one text: two sheets with the
 * same text need not be exchanged. Numbers that only draw a chart are taken to the decimetre, and
 * the number of an approach is not part of its sheet.
 */
public final class Sheets {
  private static final Pattern DECIMAL = Pattern.compile("-?\\d+\\.\\d+(E-?\\d+)?");
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

  public List<Sheet> of(Briefing briefing) {
    List<Sheet> out = new ArrayList<>();
    out.add(sheet("reading", "reading", "reading.title", rounded(briefing.reading())));
    for (Part part : briefing.parts()) {
      String id = part.id();
      out.add(sheet(id + "-train-page", id + " train", "train.title", train(part)));
      out.add(sheet(id + "-strip", id + " strip", "sheet.strips", rounded(part.strip())));
      out.add(sheet(id + "-story", id + " story", "story.title", rounded(part.story())));
      for (ApproachPage page : part.approaches()) {
        String title = messages.text("approach.heading", page.number(), page.title());
        String key = unique(out, id + " " + page.title());
        out.add(new Sheet(page.id(), key, title, approach(page)));
      }
      StringBuilder tables = new StringBuilder();
      part.tables().forEach(t -> tables.append(table(t)));
      out.add(sheet(id + "-tables", id + " tables", "tables.title", tables.toString()));
      Table seldom = part.seldom();
      out.add(
          sheet(
              seldom.id(),
              id + " seldom",
              "sheet.seldom",
              table(seldom) + part.notSupplied() + part.answeredFor()));
    }
    return out;
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

  private Sheet sheet(String anchor, String key, String title, String text) {
    return new Sheet(anchor, key, messages.text(title), text);
  }

  private static String train(Part part) {
    var train = part.train();
    StringBuilder out = new StringBuilder();
    out.append(part.summary()).append(train.description()).append(train.facts());
    out.append(rounded(train.formation())).append(train.rules());
    train.tables().forEach(t -> out.append(table(t)));
    train.technique().forEach(t -> out.append(t.name()).append(t.says()));
    return out.toString();
  }

  private static String approach(ApproachPage page) {
    return String.join(
        "\n",
        page.title(),
        page.headline(),
        page.marks(),
        page.actions().toString(),
        String.join(" ", page.unbraked()),
        page.points().toString(),
        page.ladders().stream().map(Sheets::table).toList().toString(),
        page.spread().stream().map(SpreadChart::says).toList().toString(),
        page.findings().toString());
  }

  private static String table(Table table) {
    StringBuilder out = new StringBuilder(table.title()).append(table.note());
    table.rows().forEach(r -> out.append('\n').append(r.cells()).append(r.grave()));
    return out.append(table.rows().isEmpty() ? table.whenEmpty() : "").append('\n').toString();
  }

  private static String rounded(Object value) {
    Matcher numbers = DECIMAL.matcher(value.toString());
    return numbers.replaceAll(
        n -> {
          double decimetres = Math.rint(Double.parseDouble(n.group()) * 10) / 10 + 0.0;
          return String.format(Locale.ROOT, "%.1f", decimetres);
        });
  }
}
