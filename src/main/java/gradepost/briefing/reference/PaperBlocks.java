package gradepost.briefing.reference;

import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.ReferenceSheet.Block;
import gradepost.briefing.Table;
import gradepost.briefing.page.FullWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What there is more of the approaches of one paper than its plates have room for. */
final class PaperBlocks {
  private final PackPapers pack;

  PaperBlocks(PackPapers pack) {
    this.pack = pack;
  }

  /** None where the plates tell all. */
  List<Block> of(ReferenceWriter.Paper paper) {
    List<Block> out = new ArrayList<>();
    List<FullWriter.More> more =
        new FullWriter(paper.plan(), pack.messages()).of("full", paper.part().approaches());
    pressures(out, more);
    String notes =
        more.stream().flatMap(m -> m.notes().stream()).distinct().collect(Collectors.joining(" "));
    boolean first = true;
    for (FullWriter.More m : more) {
      if (m.findings().isEmpty() && m.tables().isEmpty()) {
        continue;
      }
      out.add(new ReferenceSheet.Heading(pack.text("in-full.of", m.title())));
      if (first && !notes.isEmpty()) {
        out.add(new ReferenceSheet.Words(notes));
      }
      first = false;
      m.findings().forEach(f -> out.add(new ReferenceSheet.Words(pack.text("in-full.finding", f))));
      PackPapers.grids(out, m.tables());
    }
    return out;
  }

  /** In the order of travel, down the left column, then down the right one. */
  private void pressures(List<Block> out, List<FullWriter.More> more) {
    List<Table> all = more.stream().flatMap(m -> m.pressures().stream()).toList();
    if (all.isEmpty()) {
      return;
    }
    out.add(new ReferenceSheet.Heading(pack.text("pressures.title")));
    out.add(new ReferenceSheet.Words(pack.text("pressures.note")));
    out.addAll(Columns.of(all));
  }
}
