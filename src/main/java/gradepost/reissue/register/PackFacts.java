package gradepost.reissue.register;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What is known of packs without reading them, in the notation of whoever reads packs. It is no
 * act: what is lost is found again.
 */
public final class PackFacts {
  private final Ledger ledger;

  PackFacts(Ledger ledger) {
    this.ledger = ledger;
  }

  /**
   * By the ids of the packs.
   *
   * @param format of the notation; what stands in another one is not known
   */
  public Map<String, String> all(String format) throws RegisterException {
    return ledger.reading(
        db -> {
          Map<String, String> facts = new HashMap<>();
          db.rows("SELECT pack, facts FROM pack_index WHERE format = ?", format)
              .forEach(row -> facts.put(row.get(0), row.get(1)));
          return facts;
        });
  }

  /** Keeps these in place of what was known of the same packs. */
  public void keep(String format, Map<String, String> facts) throws RegisterException {
    List<List<Object>> rows = new ArrayList<>();
    facts.forEach((pack, text) -> rows.add(List.of(pack, format, text)));
    ledger.together(
        () ->
            ledger.reading(
                db -> {
                  db.changeAll(
                      "INSERT INTO pack_index (pack, format, facts) VALUES (?, ?, ?)"
                          + " ON CONFLICT (pack) DO UPDATE SET format = excluded.format,"
                          + " facts = excluded.facts",
                      rows);
                  return true;
                }));
  }
}
