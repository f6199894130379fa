package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Messages;
import gradepost.briefing.reissue.LabelWriter.Addressed;
import gradepost.briefing.reissue.LabelWriter.Given;
import gradepost.pack.IssueDetails;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Names;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.ToBrief;
import gradepost.render.Bound;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What one person is given of an issue: for each copy a supplement, and a slip to sign. */
final class PrintedFor {
  /** A copy that is too old for the supplement of an issue. */
  record OldCopy(String person, ToBrief.Copy copy, Entry issue) {}

  /** The pages of a file that somebody is given. */
  record Pages(ToBrief to, int from, int last) {}

  /** A paper that the archive does not hold whole. */
  record Lost(String issue, String paper) {}

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
    String base = base(issue);
    for (ToBrief.Copy copy : each.copies()) {
      if (copy.issue().equals(base)) {
        for (Kept paper : exchanged) {
          bound.add(paper.digest(), bytes(paper, issue));
          bound.turn();
        }
      } else if (!copy.issue().equals(issue.name())) {
        answer =
            answer.and(
                Answer.refused(AppText.NO_SUPPLEMENT.of(new OldCopy(each.person(), copy, issue))));
      }
    }
    for (Kept slips : papers(issue, "-slips.pdf")) {
      String name = messages.text("slip.person") + " " + Names.printed(each.person());
      String mark = messages.text("slip.title", String.valueOf(issue.number()));
      if (bound.addFrom(slips.digest(), bytes(slips, issue), name, mark) == 0) {
        answer = answer.and(Answer.refused(AppText.NO_SLIP.of(each)));
      }
      bound.turn();
    }
    int pages = bound.pages() - before;
    return pages == 0
        ? answer
        : answer.and(Answer.said(AppText.PAGES.of(new Pages(each, before + 1, bound.pages()))));
  }

  /** The same people in their order, each with all that is given, and the depot that is known. */
  static List<Addressed> addressed(
      Register register, List<ToBrief> people, Map<String, Entry> issues) throws RegisterException {
    Map<String, String> depots = new HashMap<>();
    for (List<String> row : register.list(Question.out()).rows()) {
      depots.put(row.get(2), row.get(6));
    }
    for (List<String> row : register.list(Question.staff()).rows()) {
      depots.put(row.get(0), row.get(1));
    }
    Map<String, List<Given>> given = new LinkedHashMap<>();
    for (ToBrief each : people) {
      Entry issue = Optional.ofNullable(issues.get(each.issue())).orElseThrow();
      List<String> copies =
          each.copies().stream()
              .filter(copy -> copy.issue().equals(base(issue)))
              .map(ToBrief.Copy::number)
              .toList();
      given
          .computeIfAbsent(each.person(), person -> new ArrayList<>())
          .add(new Given(issue.name(), copies));
    }
    List<Addressed> all = new ArrayList<>();
    given.forEach(
        (person, packs) ->
            all.add(new Addressed(Names.printed(person), depots.getOrDefault(person, ""), packs)));
    return all;
  }

  private static String base(Entry issue) {
    return issue.base().map(n -> issue.pack() + "/" + n).orElse("");
  }

  /** The last of these issues, by whose date a file of several is known. */
  static CoverIssue cover(Collection<Entry> issues) {
    Entry last = issues.stream().max(Comparator.comparing(Entry::issued)).orElseThrow();
    IssueDetails details =
        new IssueDetails(
            last.number(),
            last.issued(),
            last.validFrom(),
            last.validTo(),
            Optional.empty(),
            last.issued(),
            "",
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of());
    return new CoverIssue(last.pack(), details, last.fingerprint(), List.of());
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
            () -> new IOException(AppText.PAPER_LOST.of(new Lost(issue.name(), paper.name()))));
  }
}
