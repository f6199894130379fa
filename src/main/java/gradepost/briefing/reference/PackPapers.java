package gradepost.briefing.reference;

import gradepost.briefing.Messages;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.ReferenceSheet.Block;
import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;

/** The papers of a pack side by side, and what the sheets of their reference are made with. */
final class PackPapers {
  private final Messages messages;
  private final List<ReferenceWriter.Paper> papers;
  private final Scope scope;
  private final Merged merged;
  private final Set<String> ids = new HashSet<>();

  PackPapers(Messages messages, List<ReferenceWriter.Paper> papers) {
    this.messages = messages;
    this.papers = List.copyOf(papers);
    this.scope =
        new Scope(
            messages,
            papers.stream()
                .map(ReferenceWriter.Paper::assignment)
                .map(
                    a ->
                        new Scope.Paper(
                            a.route().nameOf(a.direction()),
                            a.formation().name(),
                            String.join(", ", a.editionNames())))
                .toList());
    this.merged = new Merged(scope);
  }

  Messages messages() {
    return messages;
  }

  String text(String key, Object... holes) {
    return messages.text(key, holes);
  }

  List<ReferenceWriter.Paper> papers() {
    return papers;
  }

  Scope scope() {
    return scope;
  }

  Merged merged() {
    return merged;
  }

  /** The same thing of some papers, by their numbers. */
  <T> SortedMap<Integer, T> each(Set<Integer> of, Function<ReferenceWriter.Paper, T> what) {
    SortedMap<Integer, T> out = new TreeMap<>();
    of.forEach(i -> out.put(i, what.apply(papers.get(i))));
    return out;
  }

  /**
   * The tables of some papers, those of the same name together, in their order. One that not all
   * have says in its title for which it is.
   */
  List<SortedMap<Integer, Table>> named(
      Set<Integer> of, Function<ReferenceWriter.Paper, List<Table>> tables) {
    List<String> names =
        Merged.union(
            of.stream()
                .map(i -> tables.apply(papers.get(i)).stream().map(Table::name).toList())
                .toList());
    List<SortedMap<Integer, Table>> out = new ArrayList<>();
    for (String name : names) {
      SortedMap<Integer, Table> same = new TreeMap<>();
      of.forEach(
          i ->
              tables.apply(papers.get(i)).stream()
                  .filter(t -> t.name().equals(name))
                  .findFirst()
                  .ifPresent(t -> same.put(i, t)));
      Set<Integer> having = same.keySet();
      same.replaceAll((i, t) -> t.called(t.id(), scope.labelled(t.title(), having, of)));
      out.add(same);
    }
    return out;
  }

  /** The name of tables of the same name. */
  static String name(SortedMap<Integer, Table> tables) {
    return tables.values().iterator().next().name();
  }

  /** Adds tables over the whole width. */
  static void grids(List<Block> blocks, List<Table> tables) {
    tables.forEach(t -> blocks.add(new ReferenceSheet.Grid(t)));
  }

  /** A long table of few columns, its second half to the right of the first. */
  Block halved(Table table) {
    int half = (table.rows().size() + 1) / 2;
    Table first = table.with(table.rows().subList(0, half));
    Table second =
        table
            .with(table.rows().subList(half, table.rows().size()))
            .called(table.id() + "-further", text("reference.further", table.title()));
    return second.rows().isEmpty()
        ? new ReferenceSheet.Grid(table)
        : new ReferenceSheet.Beside(List.of(first), List.of(second));
  }

  /** An identity that stays the same with its key; never the same twice. */
  String id(String key) {
    String slug = key.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String free = slug;
    for (int again = 2; !ids.add(free); again++) {
      free = slug + "-" + again;
    }
    return free;
  }
}
