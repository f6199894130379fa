package gradepost.briefing.question;

import gradepost.briefing.Table;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.pack.TemporaryRestriction;
import gradepost.policy.Subject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is new: the changes, the notices and how they stand, and what the issue replaces. */
final class IssueItems {
  private final BriefingFacts taught;
  private final References references;
  private final Issued issued;

  IssueItems(BriefingFacts taught, References references, Issued issued) {
    this.taught = taught;
    this.references = references;
    this.issued = issued;
  }

  List<Item> changed() {
    List<Item> out = new ArrayList<>();
    for (TemporaryRestriction notice : issued.notices()) {
      boolean told =
          notice.status() == TemporaryRestriction.Status.WITHDRAWN
              || taught.assignment().restrictions().contains(notice);
      if (!told || !taught.applies(notice.applies())) {
        continue;
      }
      Distractors near = new Distractors(status(notice.status()));
      near.add(status(TemporaryRestriction.Status.WITHDRAWN));
      near.add(status(TemporaryRestriction.Status.IN_FORCE));
      near.add(status(TemporaryRestriction.Status.EXTENDED));
      near.add(status(TemporaryRestriction.Status.EASED));
      out.add(
          item(
              notice.reference(),
              taught.text("ask.notice-status", notice.reference()),
              status(notice.status()),
              near,
              references.table(
                  notice.status() == TemporaryRestriction.Status.WITHDRAWN
                      ? "withdrawn"
                      : "temporary")));
    }
    int standing =
        (int)
            taught.assignment().restrictions().stream()
                .filter(r -> taught.applies(r.applies()))
                .count();
    Distractors counts = new Distractors(Integer.toString(standing));
    for (int by : new int[] {1, -1, 2, 3}) {
      if (standing + by >= 0) {
        counts.add(Integer.toString(standing + by));
      }
    }
    out.add(
        item(
            "",
            taught.text("ask.notice-count"),
            Integer.toString(standing),
            counts,
            references.table("temporary")));
    for (Table.Row row : issued.changes().rows()) {
      change(out, row);
    }
    return SpeedItems.once(out);
  }

  /** A change by its place, against what is said of other places. */
  private void change(List<Item> out, Table.Row row) {
    List<String> cells = row.cells();
    if (cells.size() != 3) {
      return;
    }
    Distractors near = new Distractors(said(cells));
    issued.changes().rows().stream()
        .filter(r -> r.cells().size() == 3 && !r.cells().get(1).equals(cells.get(1)))
        .forEach(r -> near.add(said(r.cells())));
    if (near.enough()) {
      out.add(
          item(
              cells.get(1),
              taught.text("ask.change", cells.get(1)),
              said(cells),
              near,
              references.changes()));
    }
  }

  private static String said(List<String> cells) {
    return cells.get(0) + ": " + cells.get(2);
  }

  private String status(TemporaryRestriction.Status status) {
    return taught.text("notice." + status.name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  private Item item(String of, String ask, String right, Distractors near, Item.Reference where) {
    return new Item(Subject.CHANGED, of, Double.NaN, ask, right, near.all(), where);
  }
}
