package gradepost.reissue.register;

import gradepost.reissue.register.Register.By;
import java.sql.SQLException;

/** The register's rows: read, and written act by act, or several acts as one. */
final class Ledger implements AutoCloseable {
  private final Database data;
  private boolean together;

  Ledger(Database data) {
    this.data = data;
  }

  /** Something that is read. */
  interface Work<T> {
    T on(Database data) throws SQLException, RegisterException;
  }

  /** Something that is entered by an act. */
  interface Acting {
    void on(Database data, long act) throws SQLException, RegisterException;
  }

  /** Several acts. */
  interface Several {
    void enter() throws RegisterException;
  }

  <T> T reading(Work<T> work) throws RegisterException {
    try {
      try {
        return work.on(data);
      } finally {
        if (!together) {
          data.rollback();
        }
      }
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_READ.with(data.why(e)), e);
    }
  }

  /** One act is one transaction: the counter, taken first, keeps any other waiting. */
  void acting(By by, String what, String subject, Acting work) throws RegisterException {
    acting(by, db -> what, subject, work);
  }

  /** The same where what is done is known only when no other can act. */
  void acting(By by, Work<String> what, String subject, Acting work) throws RegisterException {
    Names.require(Names.Entered.BY, by.who());
    try {
      boolean done = false;
      try {
        long act = nextId();
        data.change(
            "INSERT INTO act (id, moment, who, what, subject, depot) VALUES (?, ?, ?, ?, ?, ?)",
            act,
            by.when(),
            by.who(),
            what.on(data),
            subject,
            by.depot());
        work.on(data, act);
        if (!together) {
          data.commit();
        }
        done = true;
      } finally {
        if (!done && !together) {
          data.rollback();
        }
      }
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_WRITTEN.with(data.why(e)), e);
    }
  }

  /** All these acts are entered, or none of them. */
  void together(Several acts) throws RegisterException {
    try {
      boolean done = false;
      together = true;
      try {
        acts.enter();
        data.commit();
        done = true;
      } finally {
        together = false;
        if (!done) {
          data.rollback();
        }
      }
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_WRITTEN.with(data.why(e)), e);
    }
  }

  /** Nothing that is deleted can be read in the file any more; first of all what was before. */
  void erasing() throws RegisterException {
    try {
      data.erasing();
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_WRITTEN.with(data.why(e)), e);
    }
  }

  long nextId() throws SQLException {
    data.change("UPDATE counter SET taken = taken + 1 WHERE name = 'id'");
    return Long.parseLong(data.rows("SELECT taken FROM counter WHERE name = 'id'").get(0).get(0));
  }

  @Override
  public void close() throws RegisterException {
    data.close();
  }
}
