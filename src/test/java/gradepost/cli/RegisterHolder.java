package gradepost.cli;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;

/** A program of its own that holds a register until its input ends. */
final class RegisterHolder {
  public static void main(String[] args) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + args[0]);
        Statement statement = connection.createStatement()) {
      statement.execute("BEGIN EXCLUSIVE");
      System.out.println("held");
      while (System.in.read() >= 0) {
        // Until whoever started it has seen enough.
      }
      statement.execute("ROLLBACK");
    }
  }

  /** Starts it, and comes back when it holds the register. */
  static Process start(String register) throws Exception {
    Process process =
        new ProcessBuilder(
                ProcessHandle.current().info().command().orElse("java"),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                RegisterHolder.class.getName(),
                register)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    if (process.inputReader().readLine() == null) {
      throw new IllegalStateException("the register could not be held");
    }
    return process;
  }

  private RegisterHolder() {}
}
