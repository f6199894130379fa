package gradepost.source;

import gradepost.route.Route;
import gradepost.source.file.SourceFiles;
import gradepost.source.file.SourceFiles.Bytes;
import gradepost.source.route.RouteFrame;
import gradepost.source.table.TableMistakes;
import gradepost.source.table.TableRefused;
import gradepost.source.table.TableText;
import gradepost.text.Mistake;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Reading;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.YamlText;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;

/**
 * Lists of a route or of a file of restrictions as tables, out and in. A column is a key; what has
 * keys of its own is flow. A file is judged as it would be with the tables in it.
 */
public final class RouteCsv {
  private final SourceFiles files;
  private final String name;
  private final Optional<Route> route;

  /** The lists of this file. */
  public RouteCsv(SourceFiles files, String name) {
    this(files, name, Optional.empty());
  }

  /**
   * The lists of a file.
   *
   * @param route of which the file has the restrictions; empty where it is a route, or where no
   *     route is known
   */
  public RouteCsv(SourceFiles files, String name, Optional<Route> route) {
    this.files = files;
    this.name = name;
    this.route = route;
  }

  /**
   * A table that is to go in.
   *
   * @param name what it is called in problems
   */
  @SuppressWarnings("ArrayRecordComponent") // handed on once, to be read; never compared
  public record Table(RouteList list, String name, byte[] bytes) {}

  /** The table of a list; refused where the file has errors. */
  public Reading<String> export(RouteList list) {
    Problems problems = problems(files, list.ofNotices());
    Optional<MappingNode> root = root(text());
    return problems.hasErrors() || root.isEmpty()
        ? new Reading.Rejected<>(problems)
        : new Reading.Good<>(new ListTable(list).text(root.get()), Problems.NONE);
  }

  /**
   * The text of the file with the tables in it. Refused where a table has a mistake, and where the
   * file would have errors that it does not have now. What is wrong elsewhere in it is told.
   */
  public Reading<String> imported(List<Table> tables) {
    boolean notices = tables.stream().anyMatch(t -> t.list().ofNotices());
    Problems before = problems(files, notices);
    if (root(text()).isEmpty()) {
      return new Reading.Rejected<>(before);
    }
    List<Problem> told = new ArrayList<>();
    Map<Table, List<List<String>>> rows = new LinkedHashMap<>();
    String edited = text();
    for (Table table : tables) {
      try {
        ListTable list = new ListTable(table.list());
        MappingNode root = root(edited).orElseThrow(RouteCsv::notWritable);
        Reader in = new Reader(table.name(), RouteFrame.UNKNOWN);
        String text = TableText.of(table.name(), table.bytes(), told::add);
        List<List<String>> typed = list.typed(text, root, in);
        told.addAll(in.problems().all());
        rows.put(table, typed);
        edited = list.edited(edited, root, typed);
      } catch (TableRefused e) {
        told.add(Problem.error(new SourcePosition(table.name(), 1, 1), e.mistake()));
      }
    }
    Problems typed = new Problems(told);
    return typed.hasErrors() ? new Reading.Rejected<>(typed) : judged(edited, rows, before, typed);
  }

  private Reading<String> judged(
      String edited, Map<Table, List<List<String>>> rows, Problems before, Problems typed) {
    boolean notices = rows.keySet().stream().anyMatch(t -> t.list().ofNotices());
    Optional<MappingNode> root = root(edited);
    for (Map.Entry<Table, List<List<String>>> each : rows.entrySet()) {
      Optional<List<List<String>>> there =
          root.map(r -> new ListTable(each.getKey().list()).rows(r));
      if (!there.equals(Optional.of(each.getValue()))) {
        SourcePosition top = new SourcePosition(each.getKey().name(), 1, 1);
        Mistake mistake = there.isEmpty() ? TableMistakes.NOT_WRITABLE : TableMistakes.LOSSY;
        return new Reading.Rejected<>(
            typed.and(new Problems(List.of(Problem.error(top, mistake)))));
      }
    }
    byte[] bytes = edited.getBytes(StandardCharsets.UTF_8);
    SourceFiles after = other -> other.equals(name) ? new Bytes(bytes) : files.read(other);
    Problems all = byRow(problems(after, notices), root.orElseThrow(), rows.keySet());
    List<Problem> errors = all.all().stream().filter(p -> p.severity() == Severity.ERROR).toList();
    boolean ofTables = errors.stream().anyMatch(p -> !p.spot().file().equals(name));
    if (ofTables || (!errors.isEmpty() && !before.hasErrors())) {
      return new Reading.Rejected<>(typed.and(all));
    }
    return new Reading.Good<>(mark() + edited, typed.and(new Problems(errors)));
  }

  private Problems problems(SourceFiles from, boolean notices) {
    Sources sources = new Sources(from);
    if (!notices) {
      return sources.route(name).problems();
    }
    return route
        .map(r -> sources.restrictions(name, r).problems())
        .orElseGet(() -> sources.check(name));
  }

  /** A problem inside an entry is told by the row that made it. */
  private static Problems byRow(Problems problems, MappingNode root, Set<Table> tables) {
    List<Problem> told = new ArrayList<>();
    for (Problem problem : problems.all()) {
      told.add(
          tables.stream()
              .flatMap(table -> row(problem, root, table).stream())
              .findFirst()
              .map(problem::at)
              .orElse(problem));
    }
    return new Problems(told);
  }

  private static Optional<SourcePosition> row(Problem problem, MappingNode root, Table table) {
    List<Node> entries = new ListTable(table.list()).entries(root);
    for (int i = 0; i < entries.size(); i++) {
      int first = entries.get(i).getStartMark().getLine() + 1;
      int last = entries.get(i).getEndMark().getLine() + 1;
      if (problem.spot().line() >= first && problem.spot().line() <= last) {
        return Optional.of(new SourcePosition(table.name(), i + 2, 1));
      }
    }
    return Optional.empty();
  }

  private static TableRefused notWritable() {
    return new TableRefused(TableMistakes.NOT_WRITABLE);
  }

  private Optional<byte[]> bytes() {
    return files.read(name).held().map(Bytes::bytes);
  }

  /** The byte-order mark of the file, if it has one. */
  private String mark() {
    return bytes().map(b -> new String(b, StandardCharsets.UTF_8)).orElse("").startsWith("\ufeff")
        ? "\ufeff"
        : "";
  }

  /** As it is in the file; with its byte-order mark, if any, taken off. */
  private String text() {
    String text = bytes().map(b -> new String(b, StandardCharsets.UTF_8)).orElse("");
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  private Optional<MappingNode> root(String text) {
    return YamlText.compose(name, text.getBytes(StandardCharsets.UTF_8), p -> {})
        .filter(MappingNode.class::isInstance)
        .map(MappingNode.class::cast);
  }
}
