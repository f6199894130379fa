package gradepost.reissue.register;

import gradepost.pack.PersonName;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Somebody who has to be briefed on an issue: who holds a copy of it or of an earlier one, and who
 * signed for an earlier one; not who has signed for this one, and nobody for one that was called
 * back. This is the one rule, for every list and paper.
 *
 * @param issue the latest of the pack, such as "valley/4"
 * @param since when that was issued, as the register writes it
 * @param copies that the person holds, of any issue of the pack
 * @param known number of the latest issue that the person signed for; empty for none
 */
public record ToBrief(
    String person, String issue, String since, List<Copy> copies, Optional<Integer> known) {

  /** A copy that is out. */
  public record Copy(String issue, String number) {}

  /** Copies the list. */
  public ToBrief {
    copies = List.copyOf(copies);
  }

  private static final List<String> NONE = List.of("", "0", "", "");

  /**
   * @param person the name without what its spellings differ in
   */
  private record Key(String person, String pack) {}

  private static final class Links {
    private final String person;
    private final List<Copy> copies = new ArrayList<>();
    private int known;

    Links(String person) {
      this.person = person;
    }
  }

  /**
   * By person, then by pack.
   *
   * @param now when an issue is to be in force, or to come
   */
  static List<ToBrief> due(Database db, LocalDateTime now) throws SQLException {
    Map<String, List<String>> latest = latest(db, now);
    List<ToBrief> due = new ArrayList<>();
    links(db, "", "")
        .forEach(
            (key, links) -> {
              List<String> issue = latest.getOrDefault(key.pack(), NONE);
              if (issue.get(3).isEmpty() && links.known < Integer.parseInt(issue.get(1))) {
                due.add(of(key, issue.get(1), issue.get(2), links));
              }
            });
    return due;
  }

  /**
   * Of each pack the last issue that nobody has called back: number, when it was issued, and
   * whether a later one that was called back had taken its place already. Nobody is briefed on that
   * one: nothing of the pack is in force.
   */
  private static Map<String, List<String>> latest(Database db, LocalDateTime now)
      throws SQLException {
    Map<String, List<String>> latest = new HashMap<>();
    String sql =
        "SELECT i.pack, i.number, i.issued,"
            + " CASE WHEN r.issue IS NOT NULL AND r.effective <= ? THEN 'over' ELSE '' END"
            + " FROM issue i LEFT JOIN recall r ON r.issue = i.id"
            + " WHERE r.issue IS NULL OR r.reason LIKE ? ORDER BY i.number";
    db.rows(sql, now, Recalls.SUPERSEDED + "%").forEach(row -> latest.put(row.get(0), row));
    return latest;
  }

  /** All whom another issue of a pack will concern. */
  static List<ToBrief> concerned(Database db, String pack) throws SQLException {
    List<ToBrief> all = new ArrayList<>();
    links(db, " WHERE i.pack = ?", pack).forEach((key, links) -> all.add(of(key, "", "", links)));
    return all;
  }

  private static ToBrief of(Key key, String number, String since, Links links) {
    return new ToBrief(
        links.person,
        key.pack() + "/" + number,
        since,
        links.copies,
        links.known == 0 ? Optional.empty() : Optional.of(links.known));
  }

  /** Who has to do with which pack, and how; who has left the list of staff has not. */
  private static Map<Key, Links> links(Database db, String where, String pack) throws SQLException {
    String sql =
        "SELECT x.person, i.pack, i.number, x.copy FROM ("
            + "SELECT issue, holder AS person, number AS copy FROM copy WHERE returned IS NULL"
            + " UNION ALL SELECT issue, person, '' FROM acknowledgement"
            + " UNION ALL SELECT issue, person, '' FROM sign_off) x JOIN issue i ON i.id = x.issue"
            + where
            + " ORDER BY x.person, i.pack, i.number, length(x.copy), x.copy";
    Map<Key, Links> all = new LinkedHashMap<>();
    for (List<String> row : where.isEmpty() ? db.rows(sql) : db.rows(sql, pack)) {
      Key key = new Key(PersonName.folded(row.get(0)), row.get(1));
      Links links = all.computeIfAbsent(key, k -> new Links(row.get(0)));
      if (row.get(3).isEmpty()) {
        links.known = Math.max(links.known, Integer.parseInt(row.get(2)));
      } else {
        links.copies.add(new Copy(row.get(1) + "/" + row.get(2), row.get(3)));
      }
    }
    Set<String> gone =
        names(
            db,
            "SELECT name FROM staff_entry s JOIN act a ON a.id = s.gone WHERE a.undone IS NULL");
    gone.removeAll(names(db, "SELECT name FROM staff"));
    all.keySet().removeIf(key -> gone.contains(key.person()));
    return all;
  }

  private static Set<String> names(Database db, String sql) throws SQLException {
    Set<String> names = new HashSet<>();
    db.rows(sql).forEach(row -> names.add(PersonName.folded(row.get(0))));
    return names;
  }

  /** As the cells of a list. */
  List<String> row() {
    return List.of(
        person,
        issue,
        since,
        String.join("; ", copies.stream().map(RegisterText.HELD::of).toList()),
        known.map(String::valueOf).orElse(""));
  }
}
