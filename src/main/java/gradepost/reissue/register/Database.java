package gradepost.reissue.register;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.jspecify.annotations.Nullable;

/** A connection with few words: rows of texts out, values in. */
final class Database implements AutoCloseable {
  private static final long PATIENCE_MS = Patience.MOST.toMillis();

  /** The driver would fetch such a file, from another machine too. */
  private static final String RESOURCE = "jdbc:sqlite::resource:";

  private final Connection connection;
  private final Supplier<Optional<String>> holder;

  private Database(Connection connection, Supplier<Optional<String>> holder) {
    this.connection = connection;
    this.holder = holder;
  }

  /** Whether a register was begun there; a database with nothing in it has none. */
  static boolean begun(String url, Supplier<Optional<String>> holder) throws RegisterException {
    refuseResource(url);
    try (Connection connection = DriverManager.getConnection(url);
        ResultSet tables =
            connection.getMetaData().getTables(null, null, "flyway_schema_history", null)) {
      return tables.next();
    } catch (SQLException e) {
      throw notOpened(e, holder);
    }
  }

  private static void refuseResource(String url) throws RegisterException {
    if (url.startsWith(RESOURCE)) {
      throw new RegisterException(RegisterText.NOT_OPENED.with(RegisterText.NO_DRIVER));
    }
  }

  private static RegisterException notOpened(Exception e, Supplier<Optional<String>> holder) {
    return new RegisterException(
        String.valueOf(e.getMessage()).contains("SQLITE_NOTADB")
            ? RegisterText.NO_REGISTER
            : RegisterText.NOT_OPENED.with(Refusal.inWords(e, holder)),
        e);
  }

  /**
   * @param holder who holds the register, as far as that can be known; asked where it is held
   * @param told is told where it is held, and waited for
   */
  static Database open(String url, Supplier<Optional<String>> holder, Consumer<String> told)
      throws RegisterException {
    refuseResource(url);
    try {
      free(url, holder, told);
      Flyway schema =
          Flyway.configure()
              .dataSource(url, null, null)
              .locations("classpath:gradepost/reissue/register")
              .loggers(Quiet.class.getName())
              .load();
      schema.migrate();
      for (MigrationInfo step : schema.info().all()) {
        if (step.getState().name().startsWith("FUTURE")) {
          throw new RegisterException(
              RegisterText.LATER_VERSION,
              new IllegalStateException(String.valueOf(step.getVersion())));
        }
      }
      return new Database(connected(url, holder, told), holder);
    } catch (FlywayException | SQLException e) {
      throw notOpened(e, holder);
    }
  }

  /** Another connection to a register that was opened before, and so has the present schema. */
  static Database again(String url) throws RegisterException {
    refuseResource(url);
    try {
      return new Database(connected(url, Optional::empty, words -> {}), Optional::empty);
    } catch (SQLException e) {
      throw notOpened(e, Optional::empty);
    }
  }

  private static Connection connected(
      String url, Supplier<Optional<String>> holder, Consumer<String> told) throws SQLException {
    Properties wanted = new Properties();
    wanted.setProperty("transaction_mode", "IMMEDIATE");
    wanted.setProperty("busy_timeout", String.valueOf(PATIENCE_MS));
    wanted.setProperty("foreign_keys", "true");
    Connection connection = DriverManager.getConnection(url, wanted);
    // The first transaction begins here, and may have to wait.
    Patience.on(connection, holder, told);
    connection.setAutoCommit(false);
    return connection;
  }

  /** What migrates the schema would wait for ever for a file that another program holds. */
  private static void free(String url, Supplier<Optional<String>> holder, Consumer<String> told)
      throws SQLException {
    if (url.startsWith("jdbc:sqlite:")) {
      try (Connection connection = connected(url, holder, told);
          Statement statement = connection.createStatement()) {
        statement.executeQuery("SELECT 1").close();
        connection.rollback();
      }
    }
  }

  /** Why the database refused, in words. */
  String why(SQLException e) {
    return Refusal.inWords(e, holder);
  }

  List<List<String>> rows(String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = prepared(sql, values);
        ResultSet result = statement.executeQuery()) {
      ResultSetMetaData meta = result.getMetaData();
      List<List<String>> rows = new ArrayList<>();
      while (result.next()) {
        List<String> row = new ArrayList<>();
        for (int i = 1; i <= meta.getColumnCount(); i++) {
          String text = result.getString(i);
          row.add(text == null ? "" : text);
        }
        rows.add(row);
      }
      return rows;
    }
  }

  /** The bytes in the only cell of the first row, if there is a row. */
  Optional<byte[]> bytes(String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = prepared(sql, values);
        ResultSet result = statement.executeQuery()) {
      return result.next() ? Optional.of(result.getBytes(1)) : Optional.empty();
    }
  }

  /** Whether the database still answers. */
  boolean answers() throws SQLException {
    return connection.isValid((int) (PATIENCE_MS / 1000));
  }

  /** All rows of a table, in the order of its first column. */
  Dump.Table table(String name) throws SQLException {
    try (PreparedStatement statement =
            connection.prepareStatement("SELECT * FROM " + name + " ORDER BY 1");
        ResultSet result = statement.executeQuery()) {
      ResultSetMetaData meta = result.getMetaData();
      List<String> columns = new ArrayList<>();
      for (int i = 1; i <= meta.getColumnCount(); i++) {
        columns.add(meta.getColumnName(i));
      }
      List<List<@Nullable Object>> rows = new ArrayList<>();
      while (result.next()) {
        List<@Nullable Object> row = new ArrayList<>();
        for (int i = 1; i <= columns.size(); i++) {
          Object value = result.getObject(i);
          row.add(value instanceof Number number ? (Object) number.longValue() : value);
        }
        rows.add(row);
      }
      return new Dump.Table(columns, rows);
    }
  }

  void insert(String sql, List<@Nullable Object> values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.size(); i++) {
        Object value = values.get(i);
        if (value == null) {
          statement.setNull(i + 1, Types.BIGINT);
        } else if (value instanceof Long number) {
          statement.setLong(i + 1, number);
        } else {
          statement.setString(i + 1, String.valueOf(value));
        }
      }
      statement.executeUpdate();
    }
  }

  int change(String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = prepared(sql, values)) {
      return statement.executeUpdate();
    }
  }

  /** The same change for many rows, sent together. */
  void changeAll(String sql, List<List<Object>> rows) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (List<Object> row : rows) {
        fill(statement, row.toArray());
        statement.addBatch();
      }
      statement.executeBatch();
    }
  }

  private PreparedStatement prepared(String sql, Object... values) throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql);
    fill(statement, values);
    return statement;
  }

  private static void fill(PreparedStatement statement, Object... values) throws SQLException {
    for (int i = 0; i < values.length; i++) {
      if (values[i] instanceof Integer || values[i] instanceof Long) {
        statement.setLong(i + 1, ((Number) values[i]).longValue());
      } else if (values[i] instanceof byte[] bytes) {
        statement.setBytes(i + 1, bytes);
      } else if (values[i] instanceof Boolean yes) {
        statement.setLong(i + 1, yes ? 1 : 0);
      } else {
        statement.setString(i + 1, String.valueOf(values[i]));
      }
    }
  }

  /**
   * What was deleted leaves the file of SQLite, and so does what will be. PostgreSQL sees to that
   * in its own time.
   */
  void erasing() throws SQLException {
    if (connection.getMetaData().getURL().startsWith("jdbc:sqlite:")) {
      connection.setAutoCommit(true);
      try (Statement statement = connection.createStatement()) {
        statement.execute("VACUUM");
        statement.execute("PRAGMA secure_delete = ON");
      } finally {
        connection.setAutoCommit(false);
      }
    }
  }

  void commit() throws SQLException {
    connection.commit();
  }

  void rollback() throws SQLException {
    connection.rollback();
  }

  @Override
  public void close() throws RegisterException {
    try {
      connection.close();
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_CLOSED.with(why(e)), e);
    }
  }
}
