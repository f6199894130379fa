package gradepost.app.export;

import gradepost.reissue.register.Listing;
import gradepost.source.table.Csv;
import java.util.List;
import java.util.stream.Collectors;

/** The rows of a list as CSV, with a row of headings; no cell is taken for a formula. */
public final class ListingCsv {
  /** The whole text; each row ends with a line feed. */
  public static String of(Listing listing) {
    StringBuilder out = new StringBuilder(row(listing.columns())).append('\n');
    listing.rows().forEach(r -> out.append(row(r)).append('\n'));
    return out.toString();
  }

  private static String row(List<String> cells) {
    return cells.stream().map(ListingCsv::cell).collect(Collectors.joining(","));
  }

  private static String cell(String typed) {
    String text = Csv.unformed(typed);
    return text.matches("(?s).*[\",;\r\n].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }

  private ListingCsv() {}
}
