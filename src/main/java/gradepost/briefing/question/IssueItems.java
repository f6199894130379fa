package gradepost.briefing.question;

import gradepost.briefing.Table;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.pack.TemporaryRestriction;
import gradepost.policy.Subject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

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
    for (TemporaryRestriction.Status status : TemporaryRestriction.Status.values()) {
      List<WhichOf.Thing> things =
          issued.notices().stream()
              .filter(this::isTold)
              .map(
                  n ->
                      new WhichOf.Thing(
                          n.reference(),
                          Double.NaN,
                          n.status() == status,
                          references.table(
                              n.status() == TemporaryRestriction.Status.WITHDRAWN
                                  ? "withdrawn"
                                  : "temporary")))
              .toList();
      out.addAll(
          WhichOf.items(
              Subject.CHANGED,
              things,
              taught.text("ask.notice-status", status(status)),
              Optional.empty()));
    }
    for (Table.Row row : issued.changes().rows()) {
      change(out, row);
    }
    return SpeedItems.once(out);
  }

  /** Whether the paper tells of a notice: what it does not tell is not asked. */
  private boolean isTold(TemporaryRestriction notice) {
    boolean told =
        notice.status() == TemporaryRestriction.Status.WITHDRAWN
            || taught.assignment().restrictions().contains(notice);
    return told && taught.applies(notice.applies());
  }

  /** A change by its place, against what is said of other places. */
  private void change(List<Item> out, Table.Row row) {
    List<String> cells = row.cells();
    // What another picture shows is seen, not asked.
    if (cells.size() != 3 || cells.get(0).equals(taught.text("change.picture"))) {
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
