package gradepost.reissue.register;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * A server of PostgreSQL that runs as long as a class of tests, from the distribution's package,
 * with its data by itself.
 */
public final class PostgresServer implements BeforeAllCallback, AfterAllCallback {
  private static final String USER = "postgres";
  private Path data = Path.of("");
  private Path bin = Path.of("");
  private int port;
  private int databases;

  @Override
  public void beforeAll(ExtensionContext context) throws Exception {
    try (Stream<Path> versions = Files.list(Path.of("/usr/lib/postgresql"))) {
      bin = versions.max(Comparator.naturalOrder()).orElseThrow().resolve("bin");
    }
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    data = Files.createTempDirectory("gradepost-postgres-");
    if (root()) {
      run(List.of("chown", USER, data.toString()));
    }
    asUser("initdb", "-D", data.toString(), "-U", USER, "-A", "trust", "-E", "UTF8", "-N");
    asUser(
        "pg_ctl",
        "-D",
        data.toString(),
        "-w",
        "-l",
        data.resolve("log").toString(),
        "-o",
        "-p %d -h 127.0.0.1 -k %s -c fsync=off".formatted(port, data),
        "start");
  }

  @Override
  public void afterAll(ExtensionContext context) throws Exception {
    asUser("pg_ctl", "-D", data.toString(), "-m", "immediate", "stop");
    try (Stream<Path> files = Files.walk(data)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }

  private static boolean root() {
    return "root".equals(System.getProperty("user.name"));
  }

  /** A server refuses to run as root. */
  private void asUser(String program, String... arguments) throws Exception {
    List<String> command = new ArrayList<>();
    if (root()) {
      command.addAll(List.of("runuser", "-u", USER, "--"));
    }
    command.add(bin.resolve(program).toString());
    command.addAll(List.of(arguments));
    run(command);
  }

  private void run(List<String> command) throws IOException, InterruptedException {
    Path log = Files.createTempFile("gradepost-postgres-", ".log");
    Process process =
        new ProcessBuilder(command)
            .directory(data.toFile())
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start();
    assertThat(process.waitFor()).as(() -> text(log)).isZero();
    Files.delete(log);
  }

  private static String text(Path log) {
    try {
      return Files.readString(log);
    } catch (IOException e) {
      return e.toString();
    }
  }

  /** Address of a database that nothing is in. */
  public String fresh() throws Exception {
    String server = "jdbc:postgresql://127.0.0.1:%d/".formatted(port);
    String name = "register" + databases++;
    try (Connection c = DriverManager.getConnection(server + "postgres?user=" + USER);
        Statement s = c.createStatement()) {
      s.execute("CREATE DATABASE " + name);
    }
    return server + name + "?user=" + USER;
  }
}
