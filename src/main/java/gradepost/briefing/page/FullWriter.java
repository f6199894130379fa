package gradepost.briefing.page;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Messages;
import gradepost.briefing.Plate;
import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedFaster;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What plates and the table of lower speeds have no room for, approach by approach. */
public final class FullWriter {
  private final List<InstructionSheet> sheets;
  private final LadderWriter ladder;
  private final BySpeedWriter bySpeed;

  public FullWriter(Plan plan, Messages messages) {
    Assignment assignment = plan.assignment();
    Words words = new Words(messages, assignment.path());
    ActionWords orders = new ActionWords(words, assignment.stock());
    this.sheets = plan.told().sheets();
    this.ladder = new LadderWriter(words, orders, assignment.policy().noticing().seconds());
    this.bySpeed = new BySpeedWriter(words, orders);
  }

  /**
   * What there is more of one approach.
   *
   * @param findings for which its plate has no room
   * @param pressures at another speed on any other rail, one after another; the places stand on the
   *     plate
   * @param notes how tables by speed are read
   * @param tables those that stand on no other sheet
   */
  public record More(
      String title,
      List<String> findings,
      Optional<Table> pressures,
      List<String> notes,
      List<Table> tables) {
    public More {
      findings = List.copyOf(findings);
      notes = List.copyOf(notes);
      tables = List.copyOf(tables);
    }

    private boolean any() {
      return !findings.isEmpty() || pressures.isPresent() || !tables.isEmpty();
    }
  }

  /**
   * The approaches of which there is more, in the order of travel.
   *
   * @param id prefix of the ids of the tables
   * @param pages of the paper
   */
  public List<More> of(String id, List<ApproachPage> pages) {
    return pages.stream().map(p -> more(id + "-" + p.number(), p)).filter(More::any).toList();
  }

  private More more(String id, ApproachPage page) {
    InstructionSheet sheet =
        sheets.stream()
            .filter(s -> Integer.toString(s.number()).equals(page.number()))
            .findFirst()
            .orElseThrow();
    List<String> findings =
        page.plate()
            .map(Plate::grid)
            .map(g -> page.findings().stream().skip(g.findings()).toList())
            .orElse(page.findings());
    return page.plate().isPresent()
        ? ofPlate(id, page.title(), sheet, findings)
        : whole(id, page.title(), sheet, findings);
  }

  /** An approach with no plate: a row among the lower speeds tells only the first of it. */
  private More whole(String id, String title, InstructionSheet sheet, List<String> findings) {
    List<Table> tables = new ArrayList<>(ladder.tables(id + "-ladder", sheet));
    bySpeed.tables(id + "-by-speed", sheet).forEach(t -> tables.add(t.withoutNote()));
    return new More(title, findings, Optional.empty(), notes(toFind(sheet)), tables);
  }

  /** The applications that the sheet tells; without one, that of a faster train. */
  private static List<PrintedApplication> toFind(InstructionSheet sheet) {
    return sheet.begun().isEmpty()
        ? sheet.faster().flatMap(PrintedFaster::application).stream().toList()
        : sheet.begun();
  }

  private List<String> notes(List<PrintedApplication> applications) {
    return applications.stream()
        .filter(a -> !a.bySpeed().isEmpty())
        .flatMap(a -> bySpeed.notes(a).stream())
        .distinct()
        .toList();
  }

  private More ofPlate(String id, String title, InstructionSheet sheet, List<String> findings) {
    List<PrintedApplication> toFind = toFind(sheet);
    List<PrintedApplication> later = toFind.stream().skip(1).toList();
    List<Table> tables = new ArrayList<>();
    if (!later.isEmpty()) {
      tables.addAll(ladder.rest(id + "-ladder", sheet));
    }
    for (PrintedApplication a : later) {
      bySpeed
          .table(id + "-by-speed-" + a.line(), sheet, a)
          .ifPresent(t -> tables.add(t.withoutNote()));
    }
    return new More(
        title,
        findings,
        toFind.stream().findFirst().flatMap(a -> bySpeed.pressures(id + "-pressures", title, a)),
        notes(later),
        tables);
  }
}
