package gradepost.reissue.register;

import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What a depot asks its register. */
public final class Question {
  private static final String NAME = "i.pack || '/' || i.number";

  /** The latest issue of each pack: what should be in use. */
  private static final String LATEST =
      " i.number = (SELECT MAX(l.number) FROM issue l WHERE l.pack = i.pack) ";

  /** Heading of why an issue is not in force any more, or will not be. */
  static final String OUT_OF_FORCE = "superseded or recalled";

  private static final String WHY_OUT =
      "CASE WHEN r.reason IS NULL THEN '' WHEN r.reason LIKE '"
          + Recalls.SUPERSEDED
          + "%' THEN r.reason ELSE 'recalled: ' || r.reason END";

  private final List<String> columns;
  private final Ledger.Work<List<List<String>>> rows;

  private Question(List<String> columns, Ledger.Work<List<List<String>>> rows) {
    this.columns = columns;
    this.rows = rows;
  }

  private Question(List<String> columns, String sql, Object... values) {
    this(columns, db -> db.rows(sql, values));
  }

  Listing asked(Database db) throws SQLException, RegisterException {
    return new Listing(columns, rows.on(db));
  }

  /** Which issues there are. */
  public static Question issues() {
    return new Question(
        List.of(
            "issue",
            "issued",
            "valid from",
            "valid to",
            "by",
            OUT_OF_FORCE,
            "fingerprint",
            "checked by",
            "depot"),
        "SELECT "
            + NAME
            + ", i.issued, i.valid_from, i.valid_to, a.who, "
            + WHY_OUT
            + ", i.fingerprint,"
            + " CASE WHEN i.draft = 1 THEN 'DRAFT' ELSE i.checker END, a.depot"
            + " FROM issue i JOIN act a ON a.id = i.act LEFT JOIN recall r ON r.issue = i.id"
            + " ORDER BY i.pack, i.number");
  }

  /**
   * The inputs of the latest issue of each pack, in the order in which these were registered; an
   * issue that was compared with the one before has that one's number.
   */
  public static Question latestInputs() {
    return new Question(
        List.of("pack", "number", "compared with", "file", "digest"),
        "SELECT i.pack, i.number, (SELECT b.number FROM issue b WHERE b.id = i.base),"
            + " f.name, f.digest FROM issue i JOIN issue_file f ON f.issue = i.id"
            + " WHERE f.role = 'input' AND"
            + LATEST
            + "ORDER BY i.id, f.place");
  }

  /** The issues that were made from a file with this content, the latest first. */
  public static Question madeFrom(String digest) {
    return new Question(
        List.of("pack", "number"),
        "SELECT i.pack, i.number FROM issue i JOIN issue_file f ON f.issue = i.id"
            + " WHERE f.role = 'input' AND f.digest = ? ORDER BY i.id DESC",
        digest);
  }

  /** Issues that workers were asked to make and have not ended; how often each was begun. */
  public static Question toMake() {
    return new Question(
        List.of("issue", "who", "begun", "failed"),
        "SELECT pack || '/' || number, who, begun, failed FROM job WHERE state = ''"
            + " ORDER BY pack, number");
  }

  /** Copies that are in someone's hands. */
  public static Question out() {
    return new Question(
        List.of("issue", "copy", "holder", "handed out", "by", OUT_OF_FORCE, "depot"),
        "SELECT "
            + NAME
            + ", c.number, c.holder, a.moment, a.who, "
            + WHY_OUT
            + ", a.depot"
            + " FROM copy c JOIN issue i ON i.id = c.issue JOIN act a ON a.id = c.handed_out"
            + " LEFT JOIN recall r ON r.issue = i.id WHERE c.returned IS NULL"
            + " ORDER BY i.pack, i.number, length(c.number), c.number");
  }

  /** Copies of recalled issues of one pack that are still out. */
  public static Question toRecall(String pack) {
    return new Question(
        List.of("issue", "copy", "holder", "handed out", OUT_OF_FORCE),
        "SELECT "
            + NAME
            + ", c.number, c.holder, a.moment, "
            + WHY_OUT
            + " FROM copy c JOIN issue i ON i.id = c.issue JOIN act a ON a.id = c.handed_out"
            + " JOIN recall r ON r.issue = i.id WHERE c.returned IS NULL AND i.pack = ?"
            + " ORDER BY i.number, c.number",
        pack);
  }

  /** Copies of any issue of one pack that are in someone's hands. */
  public static Question outOf(String pack) {
    return new Question(
        List.of("issue", "copy", "holder"),
        "SELECT "
            + NAME
            + ", c.number, c.holder FROM copy c JOIN issue i ON i.id = c.issue"
            + " WHERE c.returned IS NULL AND i.pack = ? ORDER BY i.number, c.number",
        pack);
  }

  /**
   * Issues in use and sign-offs that lapse up to and including a day, by the day; not an issue that
   * was recalled, nor a sign-off behind which the same person has one that lapses later.
   */
  public static Question lapsing(LocalDate last) {
    return new Question(
        List.of("what", "issue", "who", "lapses"),
        db -> {
          List<List<String>> rows =
              new ArrayList<>(
                  db.rows(
                      "SELECT 'issue', "
                          + NAME
                          + ", '', substr(i.valid_to, 1, 10) FROM issue i WHERE"
                          + LATEST
                          + "AND substr(i.valid_to, 1, 10) <= ?"
                          + " AND NOT EXISTS (SELECT 1 FROM recall r WHERE r.issue = i.id)",
                      last));
          Signatures.last(db, Comparator.comparing(row -> row.what().lapses())).stream()
              .filter(row -> !row.what().lapses().isAfter(last))
              .map(
                  row ->
                      List.of(
                          "sign-off, " + row.what().covers(),
                          row.issue(),
                          row.what().person(),
                          row.what().lapses().toString()))
              .forEach(rows::add);
          rows.sort(
              Comparator.<List<String>, String>comparing(row -> row.get(3))
                  .thenComparing(row -> row.get(1))
                  .thenComparing(row -> row.get(2)));
          return rows;
        });
  }

  /** The class list: who is signed off for what, by the latest signature of each. */
  public static Question signed() {
    return new Question(
        List.of(
            "issue",
            "person",
            "direction",
            "formation",
            "signed",
            "lapses",
            "assessor",
            "score",
            "paper",
            "conditions"),
        db ->
            Signatures.last(db, Comparator.comparingLong(Signatures.Row::entry)).stream()
                .map(Signatures.Row::cells)
                .toList());
  }

  /**
   * Who has to be briefed, by person over all packs.
   *
   * @param now when an issue is to be in force, or to come
   */
  public static Question toBrief(LocalDateTime now) {
    return new Question(
        List.of("person", "issue", "issued", "holds", "last known issue"),
        db -> ToBrief.due(db, now).stream().map(ToBrief::row).toList());
  }

  /** The people and places on the list of staff. */
  public static Question staff() {
    return new Question(
        List.of("person", "depot", "joined"),
        "SELECT s.name, s.depot, a.moment FROM staff s JOIN act a ON a.id = s.joined"
            + " ORDER BY s.name");
  }

  /** Who may use the desk. */
  public static Question accounts() {
    return new Question(
        List.of("person", "role", "state", "password of"),
        "SELECT name, role, CASE WHEN shut = 1 THEN 'shut' WHEN first = 1 THEN 'first password'"
            + " ELSE 'open' END, since FROM account ORDER BY name");
  }

  /** Everything that was entered, in its order; what was taken back has the entry that did it. */
  public static Question acts() {
    return new Question(
        List.of("when", "who", "what", "issue", "depot", "entry", "taken back by"),
        "SELECT moment, who, what, subject, depot, id, undone FROM act ORDER BY id");
  }

  /** Every pack that has an issue. */
  public static Question packs() {
    return new Question(List.of("pack"), "SELECT DISTINCT pack FROM issue ORDER BY pack");
  }

  /**
   * The issues that have a paper with this content, the latest first. One that the check did not
   * change is no draft's any more.
   */
  public static Question paper(String digest) {
    return new Question(
        List.of("issue", "paper", "role", "issued", OUT_OF_FORCE, "latest"),
        "SELECT "
            + NAME
            + ", f.name, f.role, i.issued, "
            + WHY_OUT
            + ","
            + " (SELECT MAX(l.number) FROM issue l WHERE l.pack = i.pack)"
            + " FROM issue i JOIN issue_file f ON f.issue = i.id"
            + " LEFT JOIN recall r ON r.issue = i.id"
            + " WHERE f.role IN ('paper', 'draft') AND f.digest = ? ORDER BY i.id DESC, f.role DESC",
        digest);
  }
}
