package gradepost.briefing.reference;

import static gradepost.briefing.reference.Merged.Differences.IN_CELLS;

import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.ReferenceSheet.Block;
import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;

/** The tables of a direction, those of places that both directions pass, and what is missing. */
final class TableBlocks {
  /** Tables about places that lie on both directions; the others are each about one. */
  private static final Set<String> OF_BOTH =
      Set.of("gradients", "curves", "gaps", "low-adhesion", "structures");

  /** Tables that stand beside one another. */
  private static final String LEFT = "gradients";

  private static final String RIGHT = "curves";

  /** A table of few columns, set in two halves. */
  private static final String NARROW = "structures";

  /** Longer tables stand below one another: a row of two does not go over a page. */
  private static final int MOST_BESIDE = 40;

  private final PackPapers pack;

  TableBlocks(PackPapers pack) {
    this.pack = pack;
  }

  /** Those of the papers of one direction. */
  List<Block> ofDirection(Set<Integer> of) {
    List<Block> out = new ArrayList<>();
    for (SortedMap<Integer, Table> same : pack.named(of, p -> p.part().tables())) {
      if (!OF_BOTH.contains(PackPapers.name(same))) {
        PackPapers.grids(out, pack.merged().tables(same, 1, IN_CELLS));
      }
    }
    return out;
  }

  /** Those of both, and what is not supplied or was looked for. */
  List<Block> ofBoth() {
    Set<Integer> all = pack.scope().all();
    List<Block> out = new ArrayList<>();
    List<Table> left = new ArrayList<>();
    for (SortedMap<Integer, Table> same : pack.named(all, p -> p.part().tables())) {
      String name = PackPapers.name(same);
      if (!OF_BOTH.contains(name)) {
        continue;
      }
      List<Table> tables = pack.merged().tables(same, 1, IN_CELLS);
      boolean may = tables.size() == 1 && tables.get(0).rows().size() <= MOST_BESIDE;
      if (name.equals(LEFT) && may) {
        left.addAll(tables);
      } else if (name.equals(RIGHT) && may && !left.isEmpty()) {
        out.add(new ReferenceSheet.Beside(left, tables));
        left = new ArrayList<>();
      } else if (name.equals(NARROW) && may) {
        out.add(pack.halved(tables.get(0)));
      } else {
        PackPapers.grids(out, tables);
      }
    }
    PackPapers.grids(out, left);
    out.add(new ReferenceSheet.Heading(pack.text("not-supplied.title")));
    List<String> not = pack.merged().lines(pack.each(all, p -> p.part().notSupplied()));
    out.add(
        not.isEmpty()
            ? new ReferenceSheet.Words(pack.text("not-supplied.none"))
            : new ReferenceSheet.Items(not));
    // Each names the paper that it is about.
    List<String> answered = Merged.union(pack.each(all, p -> p.part().answeredFor()).values());
    if (!answered.isEmpty()) {
      out.add(new ReferenceSheet.Heading(pack.text("answered-for.title")));
      out.add(new ReferenceSheet.Items(answered));
    }
    return out;
  }
}
