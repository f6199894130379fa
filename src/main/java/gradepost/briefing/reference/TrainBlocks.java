package gradepost.briefing.reference;

import static gradepost.briefing.reference.Merged.Differences.IN_CELLS;
import static gradepost.briefing.reference.Merged.Differences.IN_ROWS;

import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.ReferenceSheet.Block;
import gradepost.briefing.Table;
import gradepost.briefing.chart.PressureChart;
import gradepost.briefing.chart.StandsChart;
import gradepost.briefing.chart.TrainChart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;

/**
 * The sheets about the trains and their runs: all trains together, what is of one of them says so.
 */
final class TrainBlocks {
  /** The table of the train that is in words, which are nearly the same for every length of it. */
  private static final String IN_WORDS = "brakes";

  /** Tables of the train of which two cells tell rows apart; of the others one does. */
  private static final Set<String> TWO_KEYS = Set.of("pipe", "stops");

  private final PackPapers pack;

  TrainBlocks(PackPapers pack) {
    this.pack = pack;
  }

  /** What they are made of, what their handles do and may not, and figures. */
  List<Block> trains() {
    Set<Integer> all = pack.scope().all();
    List<Block> out = new ArrayList<>();
    pack.merged()
        .lines(pack.each(all, p -> List.of(p.train().description())))
        .forEach(d -> out.add(new ReferenceSheet.Words(d)));
    out.add(
        new ReferenceSheet.Labelled(pack.merged().facts(pack.each(all, p -> p.train().facts()))));
    pack.scope()
        .formations()
        .forEach(
            (name, of) -> {
              TrainChart chart = pack.papers().get(of.iterator().next()).train().formation();
              out.add(new ReferenceSheet.Drawn(chart.called(pack.id("drawn " + name))));
            });
    out.add(new ReferenceSheet.Heading(pack.text("train.rules")));
    List<String> rules = pack.merged().lines(pack.each(all, p -> p.train().rules()));
    out.add(
        rules.isEmpty()
            ? new ReferenceSheet.Words(pack.text("train.rules.none"))
            : new ReferenceSheet.Items(rules));
    pack.named(all, p -> p.train().leaving())
        .forEach(t -> PackPapers.grids(out, pack.merged().tables(t, 1, IN_CELLS)));
    out.add(
        new ReferenceSheet.Items(
            pack.merged().lines(pack.each(all, p -> p.train().leavingRules()))));
    for (SortedMap<Integer, Table> same : pack.named(all, p -> p.train().tables())) {
      PackPapers.grids(
          out,
          PackPapers.name(same).equals(IN_WORDS)
              ? pack.merged().tables(same, 1, IN_CELLS)
              : pack.merged()
                  .tables(same, TWO_KEYS.contains(PackPapers.name(same)) ? 2 : 1, IN_ROWS));
    }
    return out;
  }

  /** The figures of all runs, of the brake one run as an example, and where each train stands. */
  List<Block> runs() {
    List<Block> out = new ArrayList<>();
    out.add(new ReferenceSheet.Figures(figures()));
    out.addAll(technique());
    out.add(new ReferenceSheet.Words(pack.text("stands.note")));
    Map<StandsChart, Set<Integer>> stands = new LinkedHashMap<>();
    pack.each(pack.scope().all(), p -> p.train().stands().called(""))
        .forEach((i, chart) -> stands.computeIfAbsent(chart, c -> new TreeSet<>()).add(i));
    stands.forEach(
        (chart, of) -> {
          String heads = pack.scope().heads(of);
          out.add(new ReferenceSheet.Heading(heads));
          out.add(new ReferenceSheet.Drawn(chart.called(pack.id("stands " + heads))));
        });
    return out;
  }

  /** Of the brake one run as an example. */
  private List<Block> technique() {
    List<Block> out = new ArrayList<>();
    for (PressureChart chart : pack.papers().get(0).train().technique().stream().toList()) {
      String title = pack.scope().labelled(chart.name(), Set.of(0), pack.scope().all());
      out.add(new ReferenceSheet.Heading(title));
      out.add(new ReferenceSheet.Sketched(chart));
    }
    return out;
  }

  /** A row for each paper. */
  private Table figures() {
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(pack.text("runs.paper"), "text"));
    pack.papers()
        .get(0)
        .part()
        .summary()
        .forEach(f -> columns.add(new Table.Column(f.label(), "text")));
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < pack.papers().size(); i++) {
      List<String> cells = new ArrayList<>(List.of(pack.scope().head(i)));
      pack.papers().get(i).part().summary().forEach(f -> cells.add(f.value()));
      rows.add(new Table.Row(cells, false, false));
    }
    return new Table(
        "runs", "runs", pack.text("runs.table"), pack.text("runs.note"), columns, rows, "");
  }
}
