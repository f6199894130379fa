package gradepost.app.issue;

import gradepost.app.store.Archive;
import gradepost.app.store.OfficePaper;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Leavers.Held;
import gradepost.reissue.register.Names;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.render.PageTexts;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Archived papers that name people of whom nothing is to be kept: slips and lists of the issues of
 * a pack. Those of the latest issue may still be needed to brief others; the rest can go.
 */
public final class NamedPapers {
  /**
   * A paper that names somebody.
   *
   * @param place where the archive has it, in words
   */
  record Named(Entry issue, Kept paper, String place) {}

  private final Archive archive;
  private final List<Named> old = new ArrayList<>();
  private final List<Named> latest = new ArrayList<>();

  /**
   * Looks for them.
   *
   * @param due what is to be removed
   */
  public NamedPapers(Archive archive, Register register, List<Held> due)
      throws RegisterException, IOException {
    this.archive = archive;
    for (String pack : due.stream().map(Held::pack).collect(Collectors.toSet())) {
      List<String> people =
          due.stream().filter(h -> h.pack().equals(pack)).map(Held::person).distinct().toList();
      Entry last = register.latest(pack).orElseThrow();
      for (int number = 1; number <= last.number(); number++) {
        Optional<Entry> issue = register.issue(pack, number);
        if (issue.isPresent()) {
          look(issue.get(), people, issue.get().number() == last.number() ? latest : old);
        }
      }
    }
    Set<String> needed = new LinkedHashSet<>();
    latest.forEach(named -> needed.add(named.paper().digest()));
    old.removeIf(named -> needed.contains(named.paper().digest()));
  }

  private void look(Entry issue, List<String> people, List<Named> found) throws IOException {
    for (Kept paper : OfficePaper.there(issue, archive)) {
      byte[] bytes = archive.read(paper.digest()).orElseThrow();
      if (people.stream().anyMatch(name -> names(bytes, name))) {
        found.add(new Named(issue, paper, archive.place(paper.digest())));
      }
    }
  }

  /** A name that a paper cannot print stands on it in another script: then it may be there. */
  private static boolean names(byte[] pdf, String person) {
    String printed = Names.printed(person);
    if (!printed.equals(person)) {
      return true;
    }
    try {
      return bare(String.join("", PageTexts.of(pdf).pages())).contains(bare(printed));
    } catch (IOException e) {
      return true;
    }
  }

  private static String bare(String text) {
    return text.replaceAll("\\s+", "");
  }

  /** Takes those of earlier issues out of the archive. */
  public void remove() throws IOException {
    for (Named each : old) {
      archive.remove(each.paper().digest());
    }
  }

  /**
   * What is removed, and what is left, a line each.
   *
   * @param dryRun whether it only would be
   */
  public List<String> told(boolean dryRun) {
    List<String> said = new ArrayList<>();
    old.forEach(n -> said.add((dryRun ? IssueText.PAPER_DUE : IssueText.PAPER_REMOVED).of(n)));
    latest.forEach(n -> said.add(IssueText.PAPER_LEFT.of(n)));
    if (!said.isEmpty()) {
      said.add(IssueText.PAPERS_ELSEWHERE);
    }
    return said;
  }
}
