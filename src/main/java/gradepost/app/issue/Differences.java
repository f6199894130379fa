package gradepost.app.issue;

import gradepost.briefing.Briefing;
import gradepost.briefing.Change;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Reference;
import gradepost.briefing.reissue.ReissuePapers.Aged;
import gradepost.plan.Plan;
import gradepost.reissue.Comparison;
import gradepost.reissue.register.Entry;
import gradepost.source.pack.PackFile;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is different between an issue of a pack and the one before. It is worked out once, by {@link
 * DifferenceFinder}; papers, change bars, register and report are made from it.
 *
 * @param now the pack as it is issued
 * @param papers in the order of the pack
 * @param reference to all of them
 * @param failures why it is not fit for issue, in words; with any nothing is to be made of it
 */
public record Differences(
    PackFile now, List<OfPaper> papers, OfReference reference, List<String> failures) {
  public Differences {
    papers = List.copyOf(papers);
    failures = List.copyOf(failures);
  }

  /**
   * What is different on one paper.
   *
   * @param before the plan of the issue before; empty where it had no such paper
   * @param comparison of the two plans; empty where there is nothing to compare with
   * @param changes the comparison in words
   * @param briefing the paper as it is now, with a bar beside every line that is new
   * @param sheetsBefore of the issue before
   * @param sheets of this issue, each with the issue in which it last changed
   * @param registered the same sheets as the register keeps them
   */
  public record OfPaper(
      Task task,
      Plan plan,
      Optional<Plan> before,
      Comparison comparison,
      List<Change> changes,
      Briefing briefing,
      List<Aged> sheetsBefore,
      List<Aged> sheets,
      List<Entry.Sheet> registered) {
    /** Copies the lists. */
    public OfPaper {
      changes = List.copyOf(changes);
      sheetsBefore = List.copyOf(sheetsBefore);
      sheets = List.copyOf(sheets);
      registered = List.copyOf(registered);
    }

    /** Whether any sheet has to be exchanged. */
    public boolean sheetsDiffer() {
      return anyOf(sheets, briefing.issue());
    }

    /** Whether whoever holds it has to be told anything. */
    public boolean differs() {
      return sheetsDiffer() || !comparison.isEmpty();
    }
  }

  /**
   * What is different in the reference.
   *
   * @param known whether there was one before
   * @param reference as it is now, with a bar beside every row that is new
   * @param sheetsBefore of the issue before
   * @param sheets of this issue, each with the issue in which it last changed
   * @param registered the same sheets as the register keeps them
   */
  public record OfReference(
      boolean known,
      Reference reference,
      List<Aged> sheetsBefore,
      List<Aged> sheets,
      List<Entry.Sheet> registered) {
    /** Copies the lists. */
    public OfReference {
      sheetsBefore = List.copyOf(sheetsBefore);
      sheets = List.copyOf(sheets);
      registered = List.copyOf(registered);
    }

    /** Whether any sheet has to be exchanged. */
    public boolean sheetsDiffer() {
      return anyOf(sheets, reference.issue());
    }
  }

  private static boolean anyOf(List<Aged> sheets, CoverIssue issue) {
    int number = issue.details().number();
    return sheets.stream().anyMatch(s -> s.since() == number);
  }

  /** Whether anything on any paper is not as it was. */
  public boolean any() {
    return reference.sheetsDiffer() || papers.stream().anyMatch(OfPaper::differs);
  }

  /** Every change, each with the paper that it stands on. */
  public List<String> inWords() {
    return papers.stream()
        .flatMap(p -> p.changes().stream().map(c -> line(p.task().stem(), c)))
        .toList();
  }

  private static String line(String paper, Change change) {
    return "%s: %s, %s: %s".formatted(paper, change.kind(), change.place(), change.text());
  }

  /** The sheets of all papers and of the reference, as the register keeps them. */
  public List<Entry.Sheet> sheets() {
    return Stream.concat(
            papers.stream().flatMap(p -> p.registered().stream()), reference.registered().stream())
        .toList();
  }
}
