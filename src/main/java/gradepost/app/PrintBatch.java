package gradepost.app;

import gradepost.app.issue.Layout;
import gradepost.app.store.Answer;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.Paper;
import gradepost.app.store.Store;
import gradepost.briefing.Labels;
import gradepost.briefing.reissue.LabelWriter;
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
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that goes out beside the latest issues, in one file for the printer, in the order in which it
 * is given out: by person, then by pack. For each copy a supplement, for each person a slip; the
 * lists for the office stand at the end. Labels come in the same order.
 */
public final class PrintBatch {
  private final Store store;
  private final LocalDateTime now;
  private final PrintedFor given;

  /**
   * @param now who is to be briefed is asked for this moment
   */
  public PrintBatch(Store store, LocalDateTime now) {
    this.store = store;
    this.now = now;
    this.given = new PrintedFor(store.kept());
  }

  /**
   * Writes the file.
   *
   * @param packs whose papers are wanted; of all where there is none
   */
  public Answer to(Path file, List<String> packs) {
    return Files.exists(file)
        ? Answer.refused(AppText.FILE_THERE.of(file))
        : OnRegister.of(store, register -> printed(wanted(register, packs), file));
  }

  /**
   * Writes the labels for the same people, one for each person.
   *
   * @param templates folder of a depot's own templates
   * @param across labels side by side on a sheet
   * @param down labels one below another
   * @param skip so many labels of the first sheet are used up already
   */
  public Answer labels(
      Path file, List<String> packs, Optional<Path> templates, int across, int down, int skip) {
    if (Files.exists(file)) {
      return Answer.refused(AppText.FILE_THERE.of(file));
    }
    if (!Labels.Grid.has(across, down)) {
      return Answer.refused("error: " + AppText.NO_GRID.inWords());
    }
    Labels.Grid grid = new Labels.Grid(across, down);
    return OnRegister.of(
        store,
        register -> {
          Wanted wanted = wanted(register, packs);
          if (wanted.people().isEmpty()) {
            return wanted.answer().and(Answer.said(AppText.NOTHING_TO_GIVE));
          }
          Layout layout = new Layout(templates);
          Labels labels =
              new LabelWriter(layout.messages(), grid)
                  .of(
                      PrintedFor.cover(wanted.issues().values()),
                      PrintedFor.addressed(register, wanted.people(), wanted.issues()),
                      skip);
          return wanted.answer().and(placed(layout.pdf("labels", labels).bytes(), file));
        });
  }

  /** Who is given something, of which issues by name, and what is not printed. */
  private record Wanted(List<ToBrief> people, Map<String, Entry> issues, Answer answer) {}

  private Wanted wanted(Register register, List<String> packs) throws RegisterException {
    Answer answer = Answer.GOOD;
    List<ToBrief> people = new ArrayList<>();
    Map<String, Entry> issues = new LinkedHashMap<>();
    for (ToBrief each : register.toBrief(now)) {
      Entry issue = register.find(each.issue()).orElseThrow();
      if (!packs.isEmpty() && !packs.contains(issue.pack())) {
        continue;
      }
      if (register.checks().draft(issue)) {
        answer = answer.and(Answer.refused(AppText.DRAFT_NOT_PRINTED.of(each)));
      } else {
        issues.putIfAbsent(issue.name(), issue);
        people.add(each);
      }
    }
    return new Wanted(people, issues, answer);
  }

  private Answer printed(Wanted wanted, Path file) throws IOException {
    try (Bound bound = new Bound()) {
      Answer answer = wanted.answer();
      for (ToBrief each : wanted.people()) {
        Entry issue = Optional.ofNullable(wanted.issues().get(each.issue())).orElseThrow();
        answer = answer.and(given.to(each, issue, bound));
      }
      for (Entry issue :
          wanted.issues().values().stream().sorted(Comparator.comparing(Entry::name)).toList()) {
        for (Kept list : PrintedFor.papers(issue, "-affected.pdf")) {
          bound.add(list.digest(), given.bytes(list, issue));
          bound.turn();
        }
      }
      if (bound.pages() == 0) {
        return answer.and(Answer.said(AppText.NOTHING_TO_GIVE));
      }
      ByteArrayOutputStream pdf = new ByteArrayOutputStream();
      bound.write(pdf);
      return answer.and(placed(pdf.toByteArray(), file));
    }
  }

  private static Answer placed(byte[] pdf, Path file) throws IOException {
    Paper paper = new Paper(String.valueOf(file.getFileName()), pdf);
    return Answer.wrote(new Delivery(Disk.folder(file)).put(List.of(paper)));
  }
}
