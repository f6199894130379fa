package gradepost;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: what a depot downloads can be checked, unpacked and started, in a folder whose name has
 * a space in it.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReleaseIT {
  private static final Path TARGET = Path.of("target");
  private static final Path START = Path.of("src/main/start/bin");
  private static final Pattern VERSION = Pattern.compile("<version>(\\d[^<]*)</version>");

  @TempDir static Path folder = Path.of("");
  private String name = "";
  private Path home = Path.of("");

  private record Ran(int code, String out) {}

  private Ran run(Path in, String... command) throws IOException, InterruptedException {
    Process process = begun(in, command);
    String out = new String(process.getInputStream().readAllBytes(), UTF_8);
    return new Ran(process.waitFor(), out);
  }

  private Process begun(Path in, String... command) throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder(command).directory(in.toFile()).redirectErrorStream(true);
    if (Files.exists(home.resolve("runtime"))) {
      builder.environment().put("JAVA_HOME", "/no/java/here");
    } else {
      builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
    }
    return builder.start();
  }

  private Ran gradepost(String... arguments) throws IOException, InterruptedException {
    return run(folder, command(arguments));
  }

  private String[] command(String... arguments) {
    String[] command = new String[arguments.length + 1];
    command[0] = home.resolve("bin/gradepost").toString();
    System.arraycopy(arguments, 0, command, 1, arguments.length);
    return command;
  }

  private static String version() throws IOException {
    Matcher version = VERSION.matcher(Files.readString(Path.of("pom.xml")));
    assertThat(version.find()).isTrue();
    return version.group(1);
  }

  @BeforeAll
  void unpack() throws IOException, InterruptedException {
    name = "gradepost-" + version();
    Path depot = Files.createDirectories(folder.resolve("our depot"));
    // With the profile "image" the one that brings its own Java is tried.
    String own = name + "-with-java";
    String tried = Files.exists(TARGET.resolve(own + ".tar.gz")) ? own : name;
    Path archive = TARGET.resolve(tried + ".tar.gz").toAbsolutePath();
    assertThat(run(depot, "tar", "xzf", archive.toString())).isEqualTo(new Ran(0, ""));
    home = depot.resolve(tried);
  }

  private static String digest(Path file) throws IOException, NoSuchAlgorithmException {
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    try (InputStream in = Files.newInputStream(file)) {
      for (byte[] part = in.readNBytes(1 << 20); part.length > 0; part = in.readNBytes(1 << 20)) {
        digest.update(part);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  @Test
  void eachArchiveHasItsDigestBesideIt() throws IOException, NoSuchAlgorithmException {
    for (String kind : List.of(".zip", ".tar.gz")) {
      Path archive = TARGET.resolve(name + kind);
      assertThat(TARGET.resolve(name + kind + ".sha256"))
          .content()
          .isEqualToIgnoringNewLines(digest(archive) + "  " + archive.getFileName());
    }
  }

  private static Map<String, Long> files(Path root) throws IOException {
    Map<String, Long> files = new TreeMap<>();
    try (Stream<Path> paths = Files.walk(root)) {
      for (Path path : paths.filter(Files::isRegularFile).toList()) {
        files.put(root.relativize(path).toString(), Files.size(path));
      }
    }
    return files;
  }

  @Test
  void bothArchivesHoldTheSame() throws IOException {
    try (FileSystem zip = FileSystems.newFileSystem(TARGET.resolve(name + ".zip"))) {
      Map<String, Long> zipped = files(zip.getPath("/" + name));
      Map<String, Long> unpacked = files(home);
      unpacked.keySet().removeIf(f -> f.endsWith(".jsa") || f.startsWith("runtime/"));
      assertThat(zipped).isEqualTo(unpacked);
      assertThat(zipped)
          .containsKeys(
              "bin/gradepost",
              "bin/gradepost.cmd",
              "gradepost.jar",
              "LICENSE",
              "NOTICE",
              "README.md",
              "routes/thrumble-valley/route.yaml",
              "src/site/changes.md",
              "templates/addendum.ftlh");
    }
  }

  /** The first brief stores the classes that it needed; every later start is the faster for it. */
  @Test
  void itIsUnpackedAndRun() throws IOException, InterruptedException {
    assertThat(gradepost("--version")).isEqualTo(new Ran(0, "gradepost " + version() + "\n"));
    assertThat(gradepost("check", "none.yaml").code()).isEqualTo(1);
    assertThat(gradepost("no-such-command").code()).isEqualTo(2);
    assertThat(home.resolve("gradepost.jsa")).doesNotExist();

    Files.createDirectories(folder.resolve("line"));
    assertThat(gradepost("new", "pack", "line/pack-a.yaml").code()).isZero();
    Ran first = gradepost("brief", "line", "--out", "first");
    assertThat(first.out()).contains("wrote first");
    assertThat(home.resolve("gradepost.jsa")).exists();
    Ran second = gradepost("brief", "line", "--out", "second");
    assertThat(second.out()).isEqualTo(first.out().replace("first", "second"));
    assertThat(second.code()).isEqualTo(first.code());
    for (String file : files(folder.resolve("first")).keySet()) {
      assertThat(folder.resolve("second").resolve(file))
          .hasSameBinaryContentAs(folder.resolve("first").resolve(file));
    }
    assertThat(stored("gradepost.jsa")).containsExactly("gradepost.jsa");
  }

  /** A desk stores what it needed when it is ended; one that could not begin stores nothing. */
  @Test
  void theDeskIsBegunAndEnded() throws IOException, InterruptedException {
    assertThat(gradepost("desk", "no-such-folder").code()).isEqualTo(1);
    assertThat(stored("gradepost-desk.jsa")).isEmpty();
    Files.createDirectories(folder.resolve("no packs"));
    for (int time = 1; time <= 2; time++) {
      Process desk =
          begun(
              folder,
              command("desk", "no packs", "--listen", "127.0.0.1:0", "--register", "desk.db"));
      try (BufferedReader said = desk.inputReader(UTF_8)) {
        assertThat(said.readLine()).startsWith("desk: http://127.0.0.1:");
        List<ProcessHandle> started = desk.descendants().toList();
        // The first is Java below the script, which waits for it; the later ones are Java alone.
        assertThat(started).hasSize(2 - time);
        desk.destroy();
        assertThat(desk.waitFor()).isEqualTo(128 + 15);
        assertThat(started).noneMatch(ProcessHandle::isAlive);
      } finally {
        desk.descendants().forEach(ProcessHandle::destroyForcibly);
        desk.destroyForcibly();
      }
      assertThat(stored("gradepost-desk.jsa")).containsExactly("gradepost-desk.jsa");
    }
  }

  private List<String> stored(String name) throws IOException {
    try (Stream<Path> left = Files.list(home)) {
      return left.map(p -> p.getFileName().toString()).filter(f -> f.startsWith(name)).toList();
    }
  }

  private static List<String> options(String script) {
    return Pattern.compile("-(?:XX:|X|jar)\\S*(?: \"[^\"]*\")?")
        .matcher(script)
        .results()
        .map(found -> found.group().replaceAll("[%$]\\{?(home|stored|new)%?(\\.\\$\\$)?", "<$1>"))
        .map(option -> option.replace('\\', '/'))
        .toList();
  }

  /** There is no Windows here to run it on: its text is held against that of the other. */
  @Test
  void theScriptForWindowsGivesJavaTheSame() throws IOException {
    String unix = Files.readString(START.resolve("gradepost"));
    String windows = Files.readString(START.resolve("gradepost.cmd"));
    assertThat(windows.replace("\r\n", "")).doesNotContain("\n");
    assertThat(options(windows)).hasSize(22).isEqualTo(options(unix.replace("$stored.$$", "$new")));
    assertThat(windows).contains("%*").contains("exit /b %code%").contains("exit /b %ERRORLEVEL%");
    assertThat(windows.split("%\\*", -1)).hasSize(unix.split("\"\\$@\"", -1).length);
    Matcher jump = Pattern.compile("goto (\\w+)").matcher(windows);
    while (jump.find()) {
      assertThat(windows).contains("\r\n:" + jump.group(1) + "\r\n");
    }
  }
}
