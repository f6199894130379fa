package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.briefing.Messages;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Names;
import gradepost.reissue.register.ToBrief;
import gradepost.render.Bound;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** What one person is given of an issue: for each copy a supplement, and a slip to sign. */
final class PrintedFor {
  private final Archive archive;
  private final Messages messages = Messages.english();

  PrintedFor(Archive archive) {
    this.archive = archive;
  }

  /** What one person is given for one pack. */
  Answer to(ToBrief each, Entry issue, Bound bound) throws IOException {
    Answer answer = Answer.GOOD;
    int before = bound.pages();
    List<Kept> exchanged = new ArrayList<>(papers(issue, "-supplement.pdf"));
    exchanged.addAll(papers(issue, "-addendum.pdf"));
    String base = issue.base().map(n -> issue.pack() + "/" + n).orElse("");
    for (ToBrief.Copy copy : each.copies()) {
      if (copy.issue().equals(base)) {
        for (Kept paper : exchanged) {
          bound.add(paper.digest(), bytes(paper, issue));
          bound.turn();
        }
      } else if (!copy.issue().equals(issue.name())) {
        answer =
            answer.and(
                Answer.refused(
                    "error: %s holds copy %s of %s, which no supplement brings up to %s: give the whole paper instead"
                        .formatted(each.person(), copy.number(), copy.issue(), issue.name())));
      }
    }
    for (Kept slips : papers(issue, "-slips.pdf")) {
      String name = messages.text("slip.person") + " " + Names.printed(each.person());
      String mark = messages.text("slip.title", String.valueOf(issue.number()));
      if (bound.addFrom(slips.digest(), bytes(slips, issue), name, mark) == 0) {
        answer =
            answer.and(
                Answer.refused(
                    "error: %s came after the slips of %s were made: use a blank one"
                        .formatted(each.person(), issue.name())));
      }
      bound.turn();
    }
    int pages = bound.pages() - before;
    return pages == 0
        ? answer
        : answer.and(
            Answer.said(
                "%s, %s: pages %d to %d"
                    .formatted(each.person(), issue.name(), before + 1, bound.pages())));
  }

  /** The papers of an issue whose names end so. */
  static List<Kept> papers(Entry issue, String end) {
    return issue.papers().stream().filter(p -> p.name().endsWith(end)).toList();
  }

  /** A paper as the archive keeps it. */
  byte[] bytes(Kept paper, Entry issue) throws IOException {
    return archive
        .read(paper.digest())
        .orElseThrow(
            () ->
                new IOException(
                    "the archive does not hold %s of %s whole"
                        .formatted(paper.name(), issue.name())));
  }
}
