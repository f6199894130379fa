package gradepost.briefing.reference;

import gradepost.briefing.Fact;
import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * What several papers say, once: what is equal as printed is one text, what is not says for which
 * papers it is. Every method takes the same thing of each paper, by the paper's number.
 */
final class Merged {
  private final Scope scope;

  Merged(Scope scope) {
    this.scope = scope;
  }

  /** Texts, each once. */
  List<String> lines(SortedMap<Integer, List<String>> all) {
    List<String> out = new ArrayList<>();
    for (String line : union(all.values())) {
      Set<Integer> with = having(all, l -> l.contains(line));
      out.add(scope.labelled(line, with, all.keySet()));
    }
    return out;
  }

  /** Labels, each once, with every value that it has. */
  List<Fact> facts(SortedMap<Integer, List<Fact>> all) {
    return facts(all, all.keySet());
  }

  /** The same of what explains itself: that a paper has no such label is not said. */
  List<Fact> legend(SortedMap<Integer, List<Fact>> all) {
    return facts(all, Set.of());
  }

  private List<Fact> facts(SortedMap<Integer, List<Fact>> all, Set<Integer> named) {
    SortedMap<Integer, List<String>> labels = new TreeMap<>();
    all.forEach((p, facts) -> labels.put(p, facts.stream().map(Fact::label).toList()));
    List<Fact> out = new ArrayList<>();
    for (String label : union(labels.values())) {
      SortedMap<Integer, String> values = new TreeMap<>();
      all.forEach(
          (p, facts) ->
              facts.stream()
                  .filter(f -> f.label().equals(label))
                  .findFirst()
                  .ifPresent(f -> values.put(p, f.value())));
      Set<Integer> of = new TreeSet<>(values.keySet());
      of.addAll(named);
      out.add(new Fact(label, String.join("; ", values(values, of))));
    }
    return out;
  }

  /** The different values, each once. */
  private List<String> values(SortedMap<Integer, String> values, Set<Integer> of) {
    Map<String, Set<Integer>> by = byValue(values);
    return by.entrySet().stream().map(e -> scope.labelled(e.getKey(), e.getValue(), of)).toList();
  }

  private static <T> Map<T, Set<Integer>> byValue(SortedMap<Integer, T> values) {
    Map<T, Set<Integer>> out = new LinkedHashMap<>();
    values.forEach((p, v) -> out.computeIfAbsent(v, x -> new TreeSet<>()).add(p));
    return out;
  }

  private static <T> Set<Integer> having(SortedMap<Integer, T> all, Predicate<T> test) {
    return all.entrySet().stream()
        .filter(e -> test.test(e.getValue()))
        .map(Map.Entry::getKey)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** All of them in one order; what only a later list has stands before what follows it there. */
  static <T> List<T> union(Collection<List<T>> lists) {
    List<T> out = new ArrayList<>();
    for (List<T> list : lists) {
      int at = out.size();
      for (int i = list.size() - 1; i >= 0; i--) {
        int found = out.indexOf(list.get(i));
        if (found < 0) {
          out.add(at, list.get(i));
        } else {
          at = found;
        }
      }
    }
    return out;
  }

  /** How a row is told that is not the same on all papers. */
  enum Differences {
    /** What differs stands in its cell, on lines of their own. */
    IN_CELLS,
    /** A row for each; its first cell says for which papers it is. */
    IN_ROWS
  }

  /**
   * One table; one for each set of headings where these differ.
   *
   * @param keys how many of the first cells tell rows apart
   */
  List<Table> tables(SortedMap<Integer, Table> all, int keys, Differences differences) {
    SortedMap<Integer, List<Table.Column>> columns = new TreeMap<>();
    all.forEach((p, t) -> columns.put(p, t.columns()));
    List<Table> out = new ArrayList<>();
    byValue(columns)
        .forEach(
            (heads, papers) -> {
              SortedMap<Integer, Table> same = new TreeMap<>();
              all.forEach(
                  (p, t) -> {
                    if (papers.contains(p)) {
                      same.put(p, t);
                    }
                  });
              Table table = table(same, keys, differences);
              String title = scope.labelled(table.title(), papers, all.keySet());
              out.add(
                  table.called(out.isEmpty() ? table.id() : table.id() + "-" + out.size(), title));
            });
    return out;
  }

  /** A row of a table: its key, and how many of the same key stand above it. */
  private record Key(List<String> cells, int above) {}

  private Table table(SortedMap<Integer, Table> all, int keys, Differences differences) {
    SortedMap<Integer, Map<Key, Table.Row>> rows = new TreeMap<>();
    all.forEach((p, t) -> rows.put(p, keyed(t, keys)));
    List<List<Key>> orders =
        rows.values().stream().<List<Key>>map(r -> new ArrayList<>(r.keySet())).toList();
    List<Table.Row> out = new ArrayList<>();
    for (Key key : union(orders)) {
      SortedMap<Integer, Table.Row> same = new TreeMap<>();
      rows.forEach((p, r) -> Optional.ofNullable(r.get(key)).ifPresent(row -> same.put(p, row)));
      switch (differences) {
        case IN_CELLS -> out.add(row(same, all.keySet()));
        case IN_ROWS -> out.addAll(rows(same, all.keySet()));
      }
    }
    Table first = all.values().iterator().next();
    return new Table(
        first.id(),
        first.name(),
        first.title(),
        notes(all, !out.isEmpty()),
        first.columns(),
        out,
        String.join(" ", texts(all, Table::whenEmpty)));
  }

  private static Map<Key, Table.Row> keyed(Table table, int keys) {
    Map<Key, Table.Row> out = new LinkedHashMap<>();
    for (Table.Row row : table.rows()) {
      List<String> cells = row.cells().subList(0, keys);
      int above = 0;
      while (out.containsKey(new Key(cells, above))) {
        above++;
      }
      out.put(new Key(cells, above), row);
    }
    return out;
  }

  /** The notes, and what the papers say that have no rows where another has. */
  private String notes(SortedMap<Integer, Table> all, boolean rows) {
    List<String> out = new ArrayList<>(texts(all, Table::note));
    SortedMap<Integer, String> none = new TreeMap<>();
    all.forEach(
        (p, t) -> {
          if (rows && t.rows().isEmpty()) {
            none.put(p, t.whenEmpty());
          }
        });
    out.addAll(values(none, all.keySet()));
    return String.join(" ", out);
  }

  private List<String> texts(SortedMap<Integer, Table> all, Function<Table, String> text) {
    SortedMap<Integer, String> out = new TreeMap<>();
    all.forEach(
        (p, t) -> {
          if (!text.apply(t).isEmpty()) {
            out.put(p, text.apply(t));
          }
        });
    return values(out, all.keySet());
  }

  /** A row that some papers lack says in its first cell for which it is. */
  private Table.Row row(SortedMap<Integer, Table.Row> same, Set<Integer> of) {
    List<String> cells = new ArrayList<>();
    int width = same.values().iterator().next().cells().size();
    for (int i = 0; i < width; i++) {
      int at = i;
      SortedMap<Integer, String> values = new TreeMap<>();
      same.forEach((p, r) -> values.put(p, r.cells().get(at)));
      cells.add(cell(values));
    }
    cells.set(0, scope.labelled(cells.get(0), same.keySet(), of));
    boolean grave = same.values().stream().anyMatch(Table.Row::grave);
    return new Table.Row(cells, false, grave);
  }

  private List<Table.Row> rows(SortedMap<Integer, Table.Row> same, Set<Integer> of) {
    List<Table.Row> out = new ArrayList<>();
    byValue(same)
        .forEach(
            (row, papers) -> {
              List<String> cells = new ArrayList<>(row.cells());
              cells.set(0, scope.labelled(cells.get(0), papers, of));
              out.add(new Table.Row(cells, false, row.grave()));
            });
    return out;
  }

  /** What differs in a cell stands on lines of their own, each for its papers. */
  private String cell(SortedMap<Integer, String> values) {
    int most = values.values().stream().mapToInt(v -> v.split("\n", -1).length).max().orElse(1);
    List<String> out = new ArrayList<>();
    for (int i = 0; i < most; i++) {
      int at = i;
      SortedMap<Integer, String> line = new TreeMap<>();
      values.forEach(
          (p, v) -> {
            String[] lines = v.split("\n", -1);
            if (at < lines.length) {
              line.put(p, lines[at]);
            }
          });
      out.addAll(values(line, values.keySet()));
    }
    return String.join("\n", out);
  }
}
