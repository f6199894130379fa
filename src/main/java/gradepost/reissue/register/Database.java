package gradepost.reissue.register;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.jspecify.annotations.Nullable;

/** A connection with few words: rows of texts out, values in. */
final class Database implements AutoCloseable {
  private static final int PATIENCE_MS = 10_000;
  private final Connection connection;

  private Database(Connection connection) {
    this.connection = connection;
  }

  /** Whether a register was begun there; a database with nothing in it has none. */
  static boolean begun(String url) throws RegisterException {
    try (Connection connection = DriverManager.getConnection(url);
        ResultSet tables =
            connection.getMetaData().getTables(null, null, "flyway_schema_history", null)) {
      return tables.next();
    } catch (SQLException e) {
      String why = oneLine(e);
      throw new RegisterException(
          why.contains("SQLITE_NOTADB")
              ? RegisterText.NO_REGISTER
              : RegisterText.NOT_OPENED.with(why),
          e);
    }
  }

  static Database open(String url) throws RegisterException {
    try {
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
      Properties wanted = new Properties();
      wanted.setProperty("transaction_mode", "IMMEDIATE");
      wanted.setProperty("busy_timeout", String.valueOf(PATIENCE_MS));
      wanted.setProperty("foreign_keys", "true");
      Connection connection = DriverManager.getConnection(url, wanted);
      connection.setAutoCommit(false);
      return new Database(connection);
    } catch (FlywayException | SQLException e) {
      String why = oneLine(e);
      throw new RegisterException(
          why.contains("SQLITE_NOTADB")
              ? RegisterText.NO_REGISTER
              : RegisterText.NOT_OPENED.with(why),
          e);
    }
  }

  static String oneLine(Exception e) {
    return String.valueOf(e.getMessage()).replaceAll("\\s+", " ").strip();
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

  private PreparedStatement prepared(String sql, Object... values) throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql);
    for (int i = 0; i < values.length; i++) {
      if (values[i] instanceof Integer || values[i] instanceof Long) {
        statement.setLong(i + 1, ((Number) values[i]).longValue());
      } else if (values[i] instanceof Boolean yes) {
        statement.setLong(i + 1, yes ? 1 : 0);
      } else {
        statement.setString(i + 1, String.valueOf(values[i]));
      }
    }
    return statement;
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
      throw new RegisterException(RegisterText.NOT_CLOSED.with(oneLine(e)), e);
    }
  }
}
