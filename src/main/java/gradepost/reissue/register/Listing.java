package gradepost.reissue.register;

import java.util.List;

/** An answer of the register in rows. */
public record Listing(List<String> columns, List<List<String>> rows) {
  public Listing {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
  }
}
