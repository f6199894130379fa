package gradepost.briefing.reference;

import static gradepost.briefing.reference.Merged.Differences.IN_CELLS;
import static gradepost.briefing.reference.Merged.Differences.IN_ROWS;

import gradepost.briefing.Briefing;
import gradepost.briefing.Cover;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.Reading;
import gradepost.briefing.Reference;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.ReferenceSheet.Block;
import gradepost.briefing.Table;
import gradepost.briefing.TrainPage;
import gradepost.briefing.chart.StandsChart;
import gradepost.briefing.chart.TrainChart;
import gradepost.briefing.page.FullWriter;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Composes the reference of a pack: what is about all papers first, then the trains, where they
 * differ, the tables, and what there is more of each paper.
 */
public final class ReferenceWriter {
  /** Tables about places that lie on both directions; the others are each about one. */
  private static final Map<String, Integer> OF_BOTH =
      Map.of("gaps", 1, "low-adhesion", 1, "brake-tests", 1, "structures", 2);

  /** The table of the train that is in words, which are nearly the same for every length of it. */
  private static final String IN_WORDS = "brakes";

  /** Tables of the train of which two cells tell rows apart; of the others one does. */
  private static final Set<String> TWO_KEYS = Set.of("pipe", "stops");

  /** Tables that stand beside one another. */
  private static final String LEFT = "gradients";

  private static final String RIGHT = "curves";

  /** Longer tables stand below one another: a row of two does not go over a page. */
  private static final int MOST_BESIDE = 40;

  private final Messages messages;
  private final Merged merged;
  private final Scope scope;
  private final List<Paper> papers;
  private final List<ReferenceSheet> sheets = new ArrayList<>();

  /**
   * A paper of the pack.
   *
   * @param file its name, without an ending
   */
  public record Paper(String file, Plan plan, Briefing briefing) {
    private Part part() {
      return briefing.parts().get(0);
    }

    private TrainPage train() {
      return part().train();
    }

    private Assignment assignment() {
      return plan.assignment();
    }
  }

  private ReferenceWriter(Messages messages, List<Paper> papers) {
    this.messages = messages;
    this.papers = List.copyOf(papers);
    this.scope =
        new Scope(
            messages,
            papers.stream()
                .map(Paper::assignment)
                .map(a -> new Scope.Paper(a.route().nameOf(a.direction()), a.trainName()))
                .toList());
    this.merged = new Merged(scope);
  }

  /**
   * The reference to these papers, in their order.
   *
   * @param file name of its own file
   * @param heading what the pack is called
   */
  public static Reference reference(
      Messages messages, String file, String heading, List<Paper> papers) {
    ReferenceWriter writer = new ReferenceWriter(messages, papers);
    writer.sheets();
    Briefing first = papers.get(0).briefing();
    String number = first.issue().number();
    List<Table> changes = writer.changes();
    List<Cover.Entry> contents = new ArrayList<>();
    changes.stream()
        .limit(1)
        .forEach(t -> contents.add(entry(t.id(), messages.text("table.changes.title"), number)));
    writer.sheets.forEach(s -> contents.add(entry(s.id(), s.title(), number)));
    return new Reference(
        first.language(),
        messages.text("reference.title", heading, number),
        messages.text("reference.subject", heading),
        first.issueLine(),
        first.issue(),
        heading,
        file,
        papers.stream().map(Paper::file).toList(),
        contents,
        changes,
        writer.sheets);
  }

  private static Cover.Entry entry(String anchor, String title, String issue) {
    return new Cover.Entry(anchor, title, issue, 0);
  }

  /** Of each paper the changes for which its first page has no room. */
  private List<Table> changes() {
    List<Table> out = new ArrayList<>();
    for (int i = 0; i < papers.size(); i++) {
      Briefing b = papers.get(i).briefing();
      Table all = b.changes();
      Table rest = all.with(all.rows().stream().skip(b.cover().changes()).toList());
      if (!rest.rows().isEmpty()) {
        String id = out.isEmpty() ? "changes" : "changes-" + (i + 1);
        out.add(rest.called(id, scope.labelled(rest.title(), Set.of(i), scope.all())));
      }
    }
    return out;
  }

  private void sheets() {
    reading();
    trains();
    runs();
    formations();
    tables();
    papers();
  }

  private void add(String key, String title, String head, Set<Integer> of, List<Block> blocks) {
    String id = unique(slug(key));
    List<Block> named = blocks.stream().map(b -> b.with(t -> named(id, t))).toList();
    sheets.add(
        new ReferenceSheet(
            id, key, title, head, of.stream().map(i -> papers.get(i).file()).toList(), named));
  }

  private static Table named(String sheet, Table table) {
    return table.called(sheet + "-" + table.id().replaceFirst("^p\\d+-", ""), table.title());
  }

  private static String slug(String key) {
    return key.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
  }

  /** Different from the identities of sheets and tables. */
  private static String chart(String of, String what) {
    return slug("drawn " + of + " " + what);
  }

  private String unique(String id) {
    String free = id;
    for (int again = 2; ; again++) {
      String candidate = free;
      if (sheets.stream().noneMatch(s -> s.id().equals(candidate))) {
        return free;
      }
      free = id + "-" + again;
    }
  }

  private <T> SortedMap<Integer, T> each(Set<Integer> of, Function<Paper, T> what) {
    SortedMap<Integer, T> out = new TreeMap<>();
    of.forEach(i -> out.put(i, what.apply(papers.get(i))));
    return out;
  }

  private SortedMap<Integer, Reading> readings() {
    return each(scope.all(), p -> p.briefing().reading());
  }

  private <T> SortedMap<Integer, T> ofReading(Function<Reading, T> what) {
    SortedMap<Integer, T> out = new TreeMap<>();
    readings().forEach((i, r) -> out.put(i, what.apply(r)));
    return out;
  }

  private void reading() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new ReferenceSheet.Heading(messages.text("reading.units")));
    blocks.add(new ReferenceSheet.Labelled(merged.facts(ofReading(Reading::units))));
    blocks.add(new ReferenceSheet.Heading(messages.text("reading.symbols")));
    blocks.add(new ReferenceSheet.Labelled(merged.facts(ofReading(Reading::symbols))));
    blocks.add(new ReferenceSheet.Heading(messages.text("reading.method")));
    blocks.add(new ReferenceSheet.Items(merged.lines(ofReading(Reading::method))));
    grids(blocks, merged.tables(ofReading(Reading::assumptions), 1, IN_CELLS));
    merged.tables(ofReading(Reading::practice), 1, IN_CELLS).forEach(t -> blocks.add(halved(t)));
    add("reading", messages.text("reading.title"), "", scope.all(), blocks);
  }

  /** A long table of few columns, its second half to the right of the first. */
  private Block halved(Table table) {
    int half = (table.rows().size() + 1) / 2;
    Table first = table.with(table.rows().subList(0, half));
    Table second =
        table
            .with(table.rows().subList(half, table.rows().size()))
            .called(table.id() + "-further", messages.text("reference.further", table.title()));
    return second.rows().isEmpty()
        ? new ReferenceSheet.Grid(table)
        : new ReferenceSheet.Beside(List.of(first), List.of(second));
  }

  private static void grids(List<Block> blocks, List<Table> tables) {
    tables.forEach(t -> blocks.add(new ReferenceSheet.Grid(t)));
  }

  /** All trains on one sheet; what is of one of them says so. */
  private void trains() {
    Set<Integer> all = scope.all();
    List<Block> out = new ArrayList<>();
    merged
        .lines(each(all, p -> List.of(p.train().description())))
        .forEach(d -> out.add(new ReferenceSheet.Words(d)));
    out.add(new ReferenceSheet.Labelled(merged.facts(each(all, p -> p.train().facts()))));
    scope
        .trains()
        .forEach(
            (name, of) -> {
              TrainChart chart = papers.get(of.iterator().next()).train().formation();
              out.add(new ReferenceSheet.Drawn(chart.called(chart(name, "train"))));
            });
    out.add(new ReferenceSheet.Heading(messages.text("train.rules")));
    List<String> rules = merged.lines(each(all, p -> p.train().rules()));
    out.add(
        rules.isEmpty()
            ? new ReferenceSheet.Words(messages.text("train.rules.none"))
            : new ReferenceSheet.Items(rules));
    named(all, p -> p.train().leaving()).forEach(t -> grids(out, merged.tables(t, 1, IN_CELLS)));
    out.add(new ReferenceSheet.Items(merged.lines(each(all, p -> p.train().leavingRules()))));
    for (SortedMap<Integer, Table> same : named(all, p -> p.train().tables())) {
      grids(
          out,
          name(same).equals(IN_WORDS)
              ? merged.tables(same, 1, IN_CELLS)
              : merged.tables(same, TWO_KEYS.contains(name(same)) ? 2 : 1, IN_ROWS));
    }
    add(ReferenceSheet.TRAIN, messages.text("train.title"), "", all, out);
  }

  private static String name(SortedMap<Integer, Table> tables) {
    return tables.values().iterator().next().name();
  }

  /** The tables of some papers, those of the same name together, in their order. */
  private List<SortedMap<Integer, Table>> named(
      Set<Integer> of, Function<Paper, List<Table>> tables) {
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
      out.add(same);
    }
    return out;
  }

  /** Left out where the pack has one formation. Runs with a brake short are no formations. */
  private void formations() {
    List<Block> blocks = new ArrayList<>();
    Set<Integer> compared = new HashSet<>();
    scope
        .directions()
        .forEach(
            (direction, of) -> {
              List<Integer> ordinary =
                  of.stream().filter(i -> papers.get(i).assignment().degraded().isEmpty()).toList();
              if (ordinary.size() > 1) {
                compared.addAll(ordinary);
                blocks.add(new ReferenceSheet.Grid(formations(direction, ordinary)));
              }
            });
    if (!blocks.isEmpty()) {
      blocks.add(0, new ReferenceSheet.Words(messages.text("formations.note")));
      add(
          "formations",
          messages.text("formations.title"),
          "",
          new java.util.TreeSet<>(compared),
          blocks);
    }
  }

  private Table formations(String direction, List<Integer> of) {
    return new FormationsWriter(messages)
        .table(
            slug(direction),
            direction,
            of.stream()
                .map(papers::get)
                .map(
                    p ->
                        new FormationsWriter.Formation(
                            p.assignment().formation().name(), p.plan(), p.part().approaches()))
                .toList());
  }

  /** Those of each direction, then those of places that both pass, and what is not supplied. */
  private void tables() {
    Map<String, Set<Integer>> directions = scope.directions();
    directions.forEach(
        (direction, of) -> {
          List<Block> blocks = new ArrayList<>(ofDirection(of));
          if (directions.size() == 1) {
            blocks.addAll(ofBoth());
          }
          add("tables " + direction, messages.text("tables.of", direction), direction, of, blocks);
        });
    if (directions.size() > 1) {
      add("tables", messages.text("tables.both"), "", scope.all(), ofBoth());
    }
  }

  private List<Block> ofDirection(Set<Integer> of) {
    List<Block> out = new ArrayList<>();
    List<Table> left = new ArrayList<>();
    for (SortedMap<Integer, Table> same : named(of, p -> p.part().tables())) {
      List<Table> tables = merged.tables(same, 1, IN_CELLS);
      boolean may = tables.size() == 1 && tables.get(0).rows().size() <= MOST_BESIDE;
      if (OF_BOTH.containsKey(name(same))) {
        continue;
      }
      if (name(same).equals(LEFT) && may) {
        left.addAll(tables);
      } else if (name(same).equals(RIGHT) && may && !left.isEmpty()) {
        out.add(new ReferenceSheet.Beside(left, tables));
        left = new ArrayList<>();
      } else {
        grids(out, tables);
      }
    }
    grids(out, left);
    return out;
  }

  private List<Block> ofBoth() {
    Set<Integer> all = scope.all();
    List<Block> out = new ArrayList<>();
    for (SortedMap<Integer, Table> same : named(all, p -> p.part().tables())) {
      int keys = OF_BOTH.getOrDefault(name(same), 0);
      if (keys > 0) {
        grids(out, merged.tables(same, keys, IN_CELLS));
      }
    }
    out.add(new ReferenceSheet.Heading(messages.text("not-supplied.title")));
    List<String> not = merged.lines(each(all, p -> p.part().notSupplied()));
    out.add(
        not.isEmpty()
            ? new ReferenceSheet.Words(messages.text("not-supplied.none"))
            : new ReferenceSheet.Items(not));
    List<String> answered = merged.lines(each(all, p -> p.part().answeredFor()));
    if (!answered.isEmpty()) {
      out.add(new ReferenceSheet.Heading(messages.text("answered-for.title")));
      out.add(new ReferenceSheet.Items(answered));
    }
    return out;
  }

  /** The figures of all runs, and where each train stands; of the brake one run as an example. */
  private void runs() {
    List<Block> out = new ArrayList<>();
    out.add(new ReferenceSheet.Figures(figures()));
    out.add(new ReferenceSheet.Words(messages.text("stands.note")));
    for (int i = 0; i < papers.size(); i++) {
      String head = scope.head(i);
      out.add(new ReferenceSheet.Heading(head));
      StandsChart chart = papers.get(i).train().stands();
      out.add(new ReferenceSheet.Drawn(chart.called(chart(head, "stands"))));
    }
    papers.get(0).train().technique().stream()
        .forEach(
            t -> {
              out.add(new ReferenceSheet.Heading(scope.labelled(t.name(), Set.of(0), scope.all())));
              out.add(new ReferenceSheet.Sketched(t));
            });
    add("runs", messages.text("runs.title"), "", scope.all(), out);
  }

  /** A row for each paper. */
  private Table figures() {
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(messages.text("runs.paper"), "text"));
    papers.get(0).part().summary().forEach(f -> columns.add(new Table.Column(f.label(), "text")));
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < papers.size(); i++) {
      List<String> cells = new ArrayList<>(List.of(scope.head(i)));
      papers.get(i).part().summary().forEach(f -> cells.add(f.value()));
      rows.add(new Table.Row(cells, false, false));
    }
    return new Table(
        "runs", "runs", messages.text("runs.table"), messages.text("runs.note"), columns, rows, "");
  }

  /** What there is more of each paper. */
  private void papers() {
    for (int i = 0; i < papers.size(); i++) {
      List<Block> blocks = ofPaper(papers.get(i));
      if (!blocks.isEmpty()) {
        String head = scope.head(i);
        add("paper " + head, messages.text("in-full.title", head), head, Set.of(i), blocks);
      }
    }
  }

  private List<Block> ofPaper(Paper paper) {
    List<Block> out = new ArrayList<>();
    List<FullWriter.More> more =
        new FullWriter(paper.plan(), messages).of("full", paper.part().approaches());
    pressures(out, more);
    String notes =
        more.stream().flatMap(m -> m.notes().stream()).distinct().collect(Collectors.joining(" "));
    boolean first = true;
    for (FullWriter.More m : more) {
      if (m.findings().isEmpty() && m.tables().isEmpty()) {
        continue;
      }
      out.add(new ReferenceSheet.Heading(messages.text("in-full.of", m.title())));
      if (first && !notes.isEmpty()) {
        out.add(new ReferenceSheet.Words(notes));
      }
      first = false;
      m.findings()
          .forEach(f -> out.add(new ReferenceSheet.Words(messages.text("in-full.finding", f))));
      grids(out, m.tables());
    }
    return out;
  }

  /** In the order of travel, down the left column, then down the right one. */
  private void pressures(List<Block> out, List<FullWriter.More> more) {
    List<Table> all = more.stream().flatMap(m -> m.pressures().stream()).toList();
    if (all.isEmpty()) {
      return;
    }
    out.add(new ReferenceSheet.Heading(messages.text("pressures.title")));
    out.add(new ReferenceSheet.Words(messages.text("pressures.note")));
    out.addAll(Columns.of(all));
  }
}
