package gradepost.source;

import gradepost.source.file.FileMistakes;
import gradepost.source.file.SourceFiles;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A small pack in memory, good in every part, in which a test changes one thing. */
public final class Fixture implements SourceFiles {
  public static final String ROUTE = "line/route.yaml";
  static final String STOCK = "stock/unit.yaml";
  public static final String POLICY = "policy/depot.yaml";
  public static final String NOTICES = "line/restrictions.yaml";
  public static final String PACK = "line/pack.yaml";
  static final List<String> ALL = List.of(ROUTE, STOCK, POLICY, NOTICES, PACK);

  /** Stands in a replacement before the place where the problem has to be reported. */
  static final String HERE = "«";

  private final Map<String, byte[]> files = new LinkedHashMap<>();

  public static Fixture good() {
    Fixture fixture = new Fixture();
    fixture.files.put(ROUTE, resource("route.yaml"));
    fixture.files.put(STOCK, resource("stock.yaml"));
    fixture.files.put(POLICY, resource("policy.yaml"));
    fixture.files.put(NOTICES, resource("restrictions.yaml"));
    fixture.files.put(PACK, resource("pack.yaml"));
    return fixture;
  }

  /** Other stock files that are good in the place of {@link #STOCK}. */
  static List<String> otherStocks() {
    return List.of(
        new String(resource("stock-motors.yaml"), StandardCharsets.UTF_8),
        new String(resource("stock-percentage.yaml"), StandardCharsets.UTF_8),
        new String(resource("stock-preset.yaml"), StandardCharsets.UTF_8),
        new String(resource("stock-two-pipe.yaml"), StandardCharsets.UTF_8));
  }

  /** A pack file with editions that is good in the place of {@link #PACK}. */
  public static String packWithEditions() {
    return new String(resource("pack-editions.yaml"), StandardCharsets.UTF_8);
  }

  private static byte[] resource(String name) {
    try (InputStream in = Fixture.class.getResourceAsStream(name)) {
      return Optional.ofNullable(in).orElseThrow().readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public String text(String file) {
    return new String(bytes(file), StandardCharsets.UTF_8);
  }

  byte[] bytes(String file) {
    return Optional.ofNullable(files.get(file)).orElseThrow();
  }

  Fixture put(String file, byte[] bytes) {
    files.put(file, bytes);
    return this;
  }

  public Fixture put(String file, String text) {
    return put(file, text.getBytes(StandardCharsets.UTF_8));
  }

  /** The file with the first {@code from} replaced; the mark still in it. */
  String marked(String file, String from, String to) {
    String text = text(file);
    int at = text.indexOf(from);
    if (at < 0) {
      throw new IllegalArgumentException("the fixture has no " + from);
    }
    return text.substring(0, at) + to + text.substring(at + from.length());
  }

  /** "file:line:column" of the mark. */
  static String place(String file, String marked) {
    String before = marked.substring(0, marked.indexOf(HERE));
    long line = before.chars().filter(c -> c == '\n').count() + 1;
    int column = before.length() - before.lastIndexOf('\n');
    return file + ":" + line + ":" + column;
  }

  public Sources sources() {
    return new Sources(this);
  }

  @Override
  public Content read(String name) {
    return Optional.ofNullable(files.get(name))
        .<Content>map(Bytes::new)
        .orElseGet(() -> new Unreadable(FileMistakes.NO_SUCH_FILE));
  }
}
