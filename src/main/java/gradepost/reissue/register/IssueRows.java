package gradepost.reissue.register;

import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Entry.Sheet;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** An issue as rows of the tables: written, and put together again. */
final class IssueRows {
  private final Database data;

  IssueRows(Database data) {
    this.data = data;
  }

  void insert(long id, Entry e, long act, boolean delivered) throws SQLException {
    data.change(
        "INSERT INTO issue (id, pack, number, fingerprint, maker, issued, valid_from, valid_to,"
            + " base, notice, urgent, delivered, act)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?,"
            + " (SELECT id FROM issue WHERE pack = ? AND number = ?), ?, ?, ?, ?)",
        id,
        e.pack(),
        e.number(),
        e.fingerprint(),
        e.maker(),
        e.issued(),
        e.validFrom(),
        e.validTo(),
        e.pack(),
        e.base().orElse(-1),
        e.notice(),
        e.urgent(),
        delivered,
        act);
    files(id, "input", e.inputs());
    files(id, "found", e.found());
    files(id, "paper", e.papers());
    List<List<Object>> sheets = new ArrayList<>();
    for (Sheet s : e.sheets()) {
      sheets.add(
          List.of(
              id,
              s.paper(),
              sheets.size(),
              s.sheet(),
              s.title(),
              s.digest(),
              s.format(),
              s.since()));
    }
    data.changeAll(
        "INSERT INTO sheet (issue, paper, place, sheet, title, digest, format, since)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        sheets);
  }

  private void files(long id, String role, List<Kept> files) throws SQLException {
    List<List<Object>> rows = new ArrayList<>();
    for (Kept file : files) {
      rows.add(List.of(id, role, rows.size(), file.name(), file.digest()));
    }
    data.changeAll(
        "INSERT INTO issue_file (issue, role, place, name, digest) VALUES (?, ?, ?, ?, ?)", rows);
  }

  /** The first issue that answers to a condition. */
  Optional<Entry> first(String where, Object... values) throws SQLException {
    List<List<String>> found =
        data.rows(
            "SELECT id, pack, number, fingerprint, maker, issued, valid_from, valid_to,"
                + " (SELECT b.number FROM issue b WHERE b.id = issue.base), notice, urgent"
                + " FROM issue WHERE "
                + where,
            values);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    List<String> row = found.get(0);
    long id = Long.parseLong(row.get(0));
    List<Sheet> sheets = new ArrayList<>();
    for (List<String> s :
        data.rows(
            "SELECT paper, sheet, title, digest, format, since FROM sheet WHERE issue = ? ORDER BY place",
            id)) {
      int format = Integer.parseInt(s.get(4));
      int since = Integer.parseInt(s.get(5));
      sheets.add(new Sheet(s.get(0), s.get(1), s.get(2), s.get(3), format, since));
    }
    return Optional.of(
        new Entry(
            row.get(1),
            Integer.parseInt(row.get(2)),
            row.get(3),
            row.get(4),
            LocalDateTime.parse(row.get(5)),
            LocalDateTime.parse(row.get(6)),
            LocalDateTime.parse(row.get(7)),
            row.get(8).isEmpty() ? Optional.empty() : Optional.of(Integer.parseInt(row.get(8))),
            row.get(9),
            row.get(10).equals("1"),
            kept(id, "input"),
            kept(id, "found"),
            kept(id, "paper"),
            sheets));
  }

  private List<Kept> kept(long id, String role) throws SQLException {
    return data
        .rows(
            "SELECT name, digest FROM issue_file WHERE issue = ? AND role = ? ORDER BY place",
            id,
            role)
        .stream()
        .map(r -> new Kept(r.get(0), r.get(1)))
        .toList();
  }

  private Optional<Long> id(String pack, int number) throws SQLException {
    return data.rows("SELECT id FROM issue WHERE pack = ? AND number = ?", pack, number).stream()
        .findFirst()
        .map(r -> Long.parseLong(r.get(0)));
  }

  /** Under which number the rows of an issue stand. */
  long known(Entry entry) throws SQLException, RegisterException {
    return id(entry.pack(), entry.number())
        .orElseThrow(() -> new RegisterException(RegisterText.NO_ISSUE.with(entry)));
  }

  /** Notes who checked an issue, or that it is a draft. */
  void checked(Entry entry, Optional<String> checker) throws SQLException {
    data.change(
        "UPDATE issue SET draft = ?, checker = ? WHERE pack = ? AND number = ?",
        checker.isEmpty(),
        checker.orElse(""),
        entry.pack(),
        entry.number());
  }

  /** Whether nobody but its preparer has checked an issue. */
  boolean draft(Entry entry) throws SQLException {
    return !data.rows(
            "SELECT 1 FROM issue WHERE pack = ? AND number = ? AND draft = 1",
            entry.pack(),
            entry.number())
        .isEmpty();
  }

  /** Who checked an issue; empty text where that is not known. */
  String checker(Entry entry) throws SQLException, RegisterException {
    return data.rows("SELECT checker FROM issue WHERE id = ?", known(entry)).get(0).get(0);
  }

  /** Who entered an issue. */
  String enteredBy(Entry entry) throws SQLException, RegisterException {
    return data.rows(
            "SELECT a.who FROM issue i JOIN act a ON a.id = i.act WHERE i.id = ?", known(entry))
        .get(0)
        .get(0);
  }

  /** The draft's papers stay known as such; these are the ones in use. */
  void papers(Entry entry, List<Kept> papers) throws SQLException, RegisterException {
    long id = known(entry);
    data.change("UPDATE issue_file SET role = 'draft' WHERE issue = ? AND role = 'paper'", id);
    files(id, "paper", papers);
  }

  /** The number after the highest that was ever given for an issue. */
  String nextCopy(Entry entry) throws SQLException, RegisterException {
    return String.valueOf(highest(entry) + 1);
  }

  /** The highest number that is given. */
  String lastCopy(Entry entry) throws SQLException, RegisterException {
    return String.valueOf(highest(entry));
  }

  private long highest(Entry entry) throws SQLException, RegisterException {
    return data.rows("SELECT number FROM copy WHERE issue = ?", known(entry)).stream()
        .map(row -> row.get(0))
        .filter(number -> number.matches("\\d{1,9}"))
        .mapToLong(Long::parseLong)
        .max()
        .orElse(0);
  }
}
