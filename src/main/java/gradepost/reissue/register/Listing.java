package gradepost.reissue.register;

import gradepost.pack.PersonName;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** An answer of the register in rows. */
public record Listing(List<String> columns, List<List<String>> rows) {
  private static final List<String> PEOPLE =
      List.of("person", "holder", "who", "by", "assessor", "checked by", "what");
  private static final List<String> WHEN =
      List.of("issued", "handed out", "signed", "when", "joined", "lapses", "from");
  private static final List<String> ENDS = List.of("valid to", "lapses", "until");
  private static final List<String> OUT_OF_FORCE = List.of(Question.OUT_OF_FORCE, "taken back by");

  public Listing {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
  }

  /**
   * Which rows are wanted. Nothing in a list that names no pack is of a pack; likewise a person.
   *
   * @param pack the name of a pack
   * @param person a name
   * @param since a moment as the register writes it, or the beginning of one
   * @param inForceAt leaves out what is recalled, superseded, taken back or over at that moment
   */
  public record Wish(
      Optional<String> pack,
      Optional<String> person,
      Optional<String> since,
      Optional<LocalDateTime> inForceAt) {
    /** Every row. */
    public static final Wish ALL =
        new Wish(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** A moment as a reader expects it; any other text as it is. */
  public static String moment(String text) {
    return text.replaceFirst("^(\\d{4}-\\d\\d-\\d\\d)T", "$1 ");
  }

  /** The rows that are wanted. */
  public Listing only(Wish wish) {
    List<List<String>> wanted = new ArrayList<>();
    for (List<String> row : rows) {
      if (wish.pack().map(p -> ofPack(row, p)).orElse(true)
          && wish.person().map(p -> ofPerson(row, p)).orElse(true)
          && wish.since().map(s -> since(row, s)).orElse(true)
          && wish.inForceAt().map(t -> inForce(row, t.toString())).orElse(true)) {
        wanted.add(row);
      }
    }
    return new Listing(columns, wanted);
  }

  private boolean ofPack(List<String> row, String pack) {
    return Stream.of("issue", "issues")
        .filter(columns::contains)
        .flatMap(column -> Stream.of(cell(row, column).split(", ")))
        .map(issue -> issue.replaceFirst("/\\d+$", ""))
        .anyMatch(pack::equals);
  }

  private boolean ofPerson(List<String> row, String person) {
    return PEOPLE.stream()
        .filter(columns::contains)
        .map(column -> cell(row, column))
        .anyMatch(
            text ->
                PersonName.same(text, person) || (" " + text + " ").contains(" " + person + " "));
  }

  private boolean since(List<String> row, String since) {
    return WHEN.stream()
        .filter(columns::contains)
        .findFirst()
        .map(column -> cell(row, column).compareTo(since) >= 0)
        .orElse(true);
  }

  private boolean inForce(List<String> row, String now) {
    return OUT_OF_FORCE.stream()
            .filter(columns::contains)
            .noneMatch(column -> Recalls.hasCome(cell(row, column), LocalDateTime.parse(now)))
        && ENDS.stream()
            .filter(columns::contains)
            .map(column -> cell(row, column).replace('T', ' '))
            .allMatch(end -> end.isEmpty() || !ended(end, now.replace('T', ' ')));
  }

  /** A day lasts to its end. */
  private static boolean ended(String end, String now) {
    return end.compareTo(now.substring(0, Math.min(end.length(), now.length()))) < 0;
  }

  private String cell(List<String> row, String column) {
    return row.get(columns.indexOf(column));
  }
}
