package gradepost.reissue.register;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/**
 * The right to work on a register in PostgreSQL while nobody else does. The database gives it to
 * one connection, and takes it back when that ends, however it ends.
 */
public final class Turn implements AutoCloseable {
  /** Of the advisory locks of a database, ours. */
  private static final long KEY = 0x6772616465706f73L;

  /** As many bytes as the database keeps of a connection's name. */
  private static final int LONGEST = 63;

  private final Database data;

  private Turn(Database data) {
    this.data = data;
  }

  /**
   * The turn, if nobody has it.
   *
   * @param holder who takes it, in words
   */
  public static Optional<Turn> tried(String url, String holder) throws RegisterException {
    Database data = Database.again(url);
    boolean taken = false;
    try {
      data.rows(
          "SELECT set_config('application_name', ?, false)",
          holder.length() > LONGEST ? holder.substring(0, LONGEST) : holder);
      taken = data.rows("SELECT pg_try_advisory_lock(?)", KEY).get(0).get(0).startsWith("t");
      data.commit();
      return taken ? Optional.of(new Turn(data)) : Optional.empty();
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_READ.with(data.why(e)), e);
    } finally {
      if (!taken) {
        data.close();
      }
    }
  }

  /** Who has the turn, in words; empty text where nobody has. */
  public static String holder(String url) throws RegisterException {
    try (Database data = Database.again(url)) {
      List<List<String>> rows =
          data.rows(
              "SELECT a.application_name FROM pg_locks l JOIN pg_stat_activity a ON a.pid = l.pid"
                  + " WHERE l.locktype = 'advisory' AND l.granted AND l.objsubid = 1"
                  + " AND l.classid::bigint = (?::bigint >> 32)"
                  + " AND l.objid::bigint = (?::bigint & 4294967295)"
                  + " AND l.database = (SELECT oid FROM pg_database WHERE datname = current_database())",
              KEY,
              KEY);
      return rows.isEmpty() ? "" : rows.get(0).get(0);
    } catch (SQLException e) {
      throw new RegisterException(
          RegisterText.NOT_READ.with(Refusal.inWords(e, Optional::empty)), e);
    }
  }

  /** Whether the connection that has the turn still stands. */
  public boolean isHeld() {
    try {
      return data.answers();
    } catch (SQLException e) {
      return false;
    }
  }

  @Override
  public void close() throws RegisterException {
    data.close();
  }
}
