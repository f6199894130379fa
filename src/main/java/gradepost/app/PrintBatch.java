package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Paper;
import gradepost.app.store.Store;
import gradepost.briefing.Messages;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Names;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.ToBrief;
import gradepost.render.Bound;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All that goes out beside the latest issues, in one file for the printer, in the order in which it
 * is given out: by person, then by pack. For each copy a supplement, for each person a slip; the
 * lists for the office stand at the end.
 */
public final class PrintBatch {
  private final Store store;
  private final Archive archive;
  private final Messages messages = Messages.english();

  public PrintBatch(Store store) {
    this.store = store;
    this.archive = new Archive(store.archive());
  }

  /**
   * Writes the file.
   *
   * @param packs whose papers are wanted; of all where there is none
   */
  public Answer to(Path file, List<String> packs) {
    if (!store.exists()) {
      return store.missing();
    }
    if (Files.exists(file)) {
      return Answer.refused("error: there is such a file already: " + file);
    }
    try (Register register = store.open();
        Bound bound = new Bound()) {
      Answer answer = bound(register, packs, bound);
      if (bound.pages() == 0) {
        return answer.and(Answer.said("NONE: nobody has a supplement or a slip to be given"));
      }
      ByteArrayOutputStream pdf = new ByteArrayOutputStream();
      bound.write(pdf);
      Paper paper = new Paper(String.valueOf(file.getFileName()), pdf.toByteArray());
      return answer.and(Answer.wrote(new Delivery(Disk.folder(file)).put(List.of(paper))));
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Answer bound(Register register, List<String> packs, Bound bound)
      throws IOException, RegisterException {
    Answer answer = Answer.GOOD;
    Map<String, Entry> issues = new LinkedHashMap<>();
    for (ToBrief each : register.toBrief()) {
      Entry issue = register.find(each.issue()).orElseThrow();
      if (!packs.isEmpty() && !packs.contains(issue.pack())) {
        continue;
      }
      if (register.checks().draft(issue)) {
        answer =
            answer.and(
                Answer.refused(
                    "error: %s: %s is a DRAFT; nothing of it was printed"
                        .formatted(each.person(), issue.name())));
      } else {
        issues.putIfAbsent(issue.name(), issue);
        answer = answer.and(person(each, issue, bound));
      }
    }
    for (Entry issue :
        issues.values().stream().sorted(Comparator.comparing(Entry::name)).toList()) {
      for (Kept list : papers(issue, "-affected.pdf")) {
        bound.add(list.digest(), bytes(list, issue));
        bound.turn();
      }
    }
    return answer;
  }

  /** What one person is given for one pack. */
  private Answer person(ToBrief each, Entry issue, Bound bound) throws IOException {
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

  private static List<Kept> papers(Entry issue, String end) {
    return issue.papers().stream().filter(p -> p.name().endsWith(end)).toList();
  }

  private byte[] bytes(Kept paper, Entry issue) throws IOException {
    return archive
        .read(paper.digest())
        .orElseThrow(
            () ->
                new IOException(
                    "the archive does not hold %s of %s whole"
                        .formatted(paper.name(), issue.name())));
  }
}
