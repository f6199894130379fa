package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.Paper;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.ToBrief;
import gradepost.render.Bound;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
  private final PrintedFor given;

  public PrintBatch(Store store) {
    this.store = store;
    this.given = new PrintedFor(new Archive(store.archive()));
  }

  /**
   * Writes the file.
   *
   * @param packs whose papers are wanted; of all where there is none
   */
  public Answer to(Path file, List<String> packs) {
    if (Files.exists(file)) {
      return Answer.refused("error: there is such a file already: " + file);
    }
    return OnRegister.of(store, register -> printed(register, packs, file));
  }

  private Answer printed(Register register, List<String> packs, Path file)
      throws IOException, RegisterException {
    try (Bound bound = new Bound()) {
      Answer answer = bound(register, packs, bound);
      if (bound.pages() == 0) {
        return answer.and(Answer.said("NONE: nobody has a supplement or a slip to be given"));
      }
      ByteArrayOutputStream pdf = new ByteArrayOutputStream();
      bound.write(pdf);
      Paper paper = new Paper(String.valueOf(file.getFileName()), pdf.toByteArray());
      return answer.and(Answer.wrote(new Delivery(Disk.folder(file)).put(List.of(paper))));
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
        answer = answer.and(given.to(each, issue, bound));
      }
    }
    for (Entry issue :
        issues.values().stream().sorted(Comparator.comparing(Entry::name)).toList()) {
      for (Kept list : PrintedFor.papers(issue, "-affected.pdf")) {
        bound.add(list.digest(), given.bytes(list, issue));
        bound.turn();
      }
    }
    return answer;
  }
}
