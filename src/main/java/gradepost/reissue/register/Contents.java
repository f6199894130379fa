package gradepost.reissue.register;

import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Files by the digest of their content, in the database of the register. It has a connection of its
 * own, so that what is kept is kept whatever becomes of the act that it is kept for; where that
 * connection was lost, a new one is made. One thread at a time.
 */
public final class Contents implements AutoCloseable {
  private final String url;
  private Optional<Database> data = Optional.empty();

  /** In the register at this address, which has been begun. */
  public Contents(String url) {
    this.url = url;
  }

  /** Keeps a content under its digest; one that is there already stays, unless it is damaged. */
  public void keep(String digest, byte[] bytes) throws RegisterException {
    asked(
        db -> {
          Optional<byte[]> there = there(db, digest);
          if (there.isEmpty()) {
            db.change(
                "INSERT INTO content (digest, bytes) VALUES (?, ?) ON CONFLICT (digest) DO NOTHING",
                digest,
                bytes);
          } else if (!Arrays.equals(there.get(), bytes)) {
            db.change("UPDATE content SET bytes = ? WHERE digest = ?", bytes, digest);
          }
          db.commit();
          return true;
        });
  }

  /** What is kept under a digest, if anything is. */
  public Optional<byte[]> read(String digest) throws RegisterException {
    return asked(
        db -> {
          Optional<byte[]> found = there(db, digest);
          db.rollback();
          return found;
        });
  }

  /** Keeps nothing more under a digest. */
  public void remove(String digest) throws RegisterException {
    asked(
        db -> {
          db.change("DELETE FROM content WHERE digest = ?", digest);
          db.commit();
          return true;
        });
  }

  /** Under which digests anything is kept, sorted. */
  public List<String> digests() throws RegisterException {
    return asked(
        db -> {
          List<List<String>> rows = db.rows("SELECT digest FROM content ORDER BY digest");
          db.rollback();
          return rows.stream().map(row -> row.get(0)).toList();
        });
  }

  private static Optional<byte[]> there(Database db, String digest) throws SQLException {
    return db.bytes("SELECT bytes FROM content WHERE digest = ?", digest);
  }

  private synchronized <T> T asked(Ledger.Work<T> work) throws RegisterException {
    Database db = connected();
    try {
      try {
        return work.on(db);
      } catch (SQLException e) {
        if (db.answers()) {
          db.rollback();
          throw e;
        }
        close();
        return work.on(connected());
      }
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_READ.with(db.why(e)), e);
    }
  }

  private Database connected() throws RegisterException {
    if (data.isEmpty()) {
      data = Optional.of(Database.again(url));
    }
    return data.get();
  }

  @Override
  public synchronized void close() throws RegisterException {
    if (data.isPresent()) {
      Database db = data.get();
      data = Optional.empty();
      db.close();
    }
  }
}
