package gradepost.briefing.reference;

import static gradepost.briefing.reference.Merged.Differences.IN_CELLS;

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
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Composes the reference of a pack: what is about all papers first, then the trains, where they
 * differ, the tables, and what there is more of each paper.
 */
public final class ReferenceWriter {
  private final PackPapers pack;
  private final List<ReferenceSheet> sheets = new ArrayList<>();

  /**
   * A paper of the pack.
   *
   * @param file its name, without an ending
   */
  public record Paper(String file, Plan plan, Briefing briefing) {
    Part part() {
      return briefing.parts().get(0);
    }

    TrainPage train() {
      return part().train();
    }

    Assignment assignment() {
      return plan.assignment();
    }
  }

  private ReferenceWriter(PackPapers pack) {
    this.pack = pack;
  }

  /**
   * The reference to these papers, in their order.
   *
   * @param file name of its own file
   * @param heading what the pack is called
   */
  public static Reference reference(
      Messages messages, String file, String heading, List<Paper> papers) {
    ReferenceWriter writer = new ReferenceWriter(new PackPapers(messages, papers));
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
    for (int i = 0; i < pack.papers().size(); i++) {
      Briefing b = pack.papers().get(i).briefing();
      Table all = b.changes();
      Table rest = all.with(all.rows().stream().skip(b.cover().changes()).toList());
      if (!rest.rows().isEmpty()) {
        String id = out.isEmpty() ? "changes" : "changes-" + (i + 1);
        out.add(
            rest.called(id, pack.scope().labelled(rest.title(), Set.of(i), pack.scope().all())));
      }
    }
    return out;
  }

  private void sheets() {
    TrainBlocks trains = new TrainBlocks(pack);
    Set<Integer> all = pack.scope().all();
    List<Block> reading = reading();
    reading.add(new ReferenceSheet.Chapter(pack.text("train.title")));
    reading.addAll(trains.trains());
    add(ReferenceSheet.READING, pack.text("reading.title"), "", all, reading);
    List<Block> runs = trains.runs();
    List<Block> formations = formations();
    runs.addAll(formations);
    String title = pack.text(formations.isEmpty() ? "runs.title" : "runs.formations");
    add("runs", title, "", all, runs);
    tables();
    papers();
  }

  private void add(String key, String title, String head, Set<Integer> of, List<Block> blocks) {
    String id = pack.id(key);
    List<Block> named = blocks.stream().map(b -> b.with(t -> identified(id, t))).toList();
    sheets.add(
        new ReferenceSheet(
            id,
            key,
            title,
            head,
            of.stream().map(i -> pack.papers().get(i).file()).toList(),
            named));
  }

  private static Table identified(String sheet, Table table) {
    return table.called(sheet + "-" + table.id().replaceFirst("^p\\d+-", ""), table.title());
  }

  private <T> SortedMap<Integer, T> ofReading(Function<Reading, T> what) {
    return pack.each(pack.scope().all(), p -> what.apply(p.briefing().reading()));
  }

  private List<Block> reading() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new ReferenceSheet.Heading(pack.text("reading.units")));
    blocks.add(new ReferenceSheet.Labelled(pack.merged().facts(ofReading(Reading::units))));
    blocks.add(new ReferenceSheet.Heading(pack.text("reading.symbols")));
    blocks.add(new ReferenceSheet.Labelled(pack.merged().legend(ofReading(Reading::symbols))));
    blocks.add(new ReferenceSheet.Heading(pack.text("reading.method")));
    blocks.add(new ReferenceSheet.Items(pack.merged().lines(ofReading(Reading::method))));
    pack.merged()
        .tables(ofReading(Reading::practice), 1, IN_CELLS)
        .forEach(t -> blocks.add(pack.halved(t)));
    PackPapers.grids(blocks, pack.merged().tables(ofReading(Reading::assumptions), 1, IN_CELLS));
    return blocks;
  }

  /** Left out where the pack has one formation. Runs with a brake short are no formations. */
  private List<Block> formations() {
    List<Block> blocks = new ArrayList<>();
    pack.scope()
        .directions()
        .forEach(
            (direction, of) -> {
              List<Integer> ordinary =
                  of.stream().filter(i -> pack.papers().get(i).assignment().ordinary()).toList();
              if (ordinary.size() > 1) {
                blocks.add(new ReferenceSheet.Grid(formations(direction, ordinary)));
              }
            });
    if (!blocks.isEmpty()) {
      blocks.add(0, new ReferenceSheet.Chapter(pack.text("formations.title")));
      blocks.add(1, new ReferenceSheet.Words(pack.text("formations.note")));
    }
    return blocks;
  }

  private Table formations(String direction, List<Integer> of) {
    return new FormationsWriter(pack.messages())
        .table(
            pack.id("formations " + direction),
            direction,
            of.stream()
                .map(pack.papers()::get)
                .map(
                    p ->
                        new FormationsWriter.Formation(
                            p.assignment().formation().name(), p.plan(), p.part().approaches()))
                .toList());
  }

  /** Those of each direction, then those of places that both pass, and what is not supplied. */
  private void tables() {
    TableBlocks tables = new TableBlocks(pack);
    Map<String, Set<Integer>> directions = pack.scope().directions();
    directions.forEach(
        (direction, of) -> {
          List<Block> blocks = new ArrayList<>(tables.ofDirection(of));
          if (directions.size() == 1) {
            blocks.addAll(tables.ofBoth());
          }
          add("tables " + direction, pack.text("tables.of", direction), direction, of, blocks);
        });
    if (directions.size() > 1) {
      add("tables", pack.text("tables.both"), "", pack.scope().all(), tables.ofBoth());
    }
  }

  /** What there is more of each paper, one paper after the other. */
  private void papers() {
    PaperBlocks more = new PaperBlocks(pack);
    List<Block> blocks = new ArrayList<>();
    Set<Integer> told = new TreeSet<>();
    for (int i : pack.scope().all()) {
      List<Block> own = more.of(i);
      if (!own.isEmpty()) {
        blocks.add(new ReferenceSheet.Chapter(pack.scope().head(i)));
        blocks.addAll(own);
        told.add(i);
      }
    }
    if (!blocks.isEmpty()) {
      add("papers", pack.text("in-full.title"), "", told, blocks);
    }
  }
}
