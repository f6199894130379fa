package gradepost.briefing.reissue;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.Plate;
import gradepost.briefing.Reference;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.RoadSheet;
import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Sets a bar beside every line that the issue before had not, and the issue of every sheet. */
public final class ChangeMarks {
  private final Messages messages;

  public ChangeMarks(Messages messages) {
    this.messages = messages;
  }

  /**
   * The briefing with a mark on each line that is not in the one before.
   *
   * @param since by the anchor of a sheet, the issue in which it was last different
   */
  public Briefing marked(Briefing now, Briefing before, Map<String, Integer> since) {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < now.parts().size(); i++) {
      parts.add(part(now.parts().get(i), before.parts().get(i)));
    }
    Table changes = now.changes();
    return new Briefing(
        now.language(),
        now.title(),
        now.subject(),
        now.issueLine(),
        now.issue(),
        now.files(),
        now.cover().since(since),
        changes.rows().isEmpty()
            ? new Table(
                changes.id(),
                changes.name(),
                changes.title(),
                changes.note(),
                changes.columns(),
                changes.rows(),
                messages.text("changes.none-here", before.issue().number()))
            : changes,
        now.reading(),
        parts);
  }

  /**
   * The reference with a mark on each row of a table that is not in the one before.
   *
   * @param since by the anchor of a sheet, the issue in which it was last different
   */
  public static Reference marked(Reference now, Reference before, Map<String, Integer> since) {
    Map<String, ReferenceSheet> old = new HashMap<>();
    before.sheets().forEach(s -> old.put(s.key(), s));
    List<ReferenceSheet> sheets =
        now.sheets().stream().map(s -> marked(s, Optional.ofNullable(old.get(s.key())))).toList();
    return now.with(sheets, now.contents().stream().map(e -> e.since(since)).toList());
  }

  /** A row is known by its cells, among the tables of the same name and headings. */
  private static ReferenceSheet marked(ReferenceSheet now, Optional<ReferenceSheet> before) {
    return now.with(
        table -> {
          Set<List<String>> known = new HashSet<>();
          before.stream()
              .flatMap(ReferenceSheet::tables)
              .filter(t -> t.name().equals(table.name()))
              .forEach(t -> known.addAll(cells(t)));
          return marked(table, known);
        });
  }

  private static Part part(Part now, Part before) {
    List<ApproachPage> approaches = new ArrayList<>();
    List<ApproachPage> free = new ArrayList<>(before.approaches());
    for (ApproachPage page : now.approaches()) {
      Optional<ApproachPage> then =
          free.stream().filter(p -> p.title().equals(page.title())).findFirst();
      then.ifPresent(free::remove);
      approaches.add(approach(page, then));
    }
    return new Part(
        now.id(),
        now.title(),
        now.head(),
        now.summary(),
        road(now.road(), before.road()),
        now.train(),
        line(now.line(), before.line()),
        approaches,
        now.lower().map(t -> table(t, before.lower())),
        now.tables(),
        table(now.seldom(), Optional.of(before.seldom())),
        table(now.hazards(), Optional.of(before.hazards())),
        now.notSupplied(),
        now.answeredFor());
  }

  /** A row that has moved to another sheet is the same row. */
  private static List<RoadSheet> road(List<RoadSheet> now, List<RoadSheet> before) {
    Set<List<String>> known = new HashSet<>();
    before.forEach(sheet -> known.addAll(cells(sheet.table())));
    return now.stream().map(sheet -> sheet.with(marked(sheet.table(), known))).toList();
  }

  private static List<LineSheet> line(List<LineSheet> now, List<LineSheet> before) {
    Set<List<Object>> known = new HashSet<>();
    before.forEach(sheet -> sheet.rows().forEach(row -> known.add(row.told())));
    return now.stream().map(sheet -> sheet.marked(row -> known.contains(row.told()))).toList();
  }

  private static List<List<String>> cells(Table table) {
    return table.rows().stream().map(Table.Row::cells).toList();
  }

  private static Table table(Table now, Optional<Table> before) {
    Set<List<String>> known = new HashSet<>();
    before.ifPresent(t -> known.addAll(cells(t)));
    return marked(now, known);
  }

  private static Table marked(Table now, Set<List<String>> known) {
    return now.with(
        now.rows().stream()
            .map(r -> new Table.Row(r.cells(), !known.contains(r.cells()), r.grave(), r.link()))
            .toList());
  }

  private static ApproachPage approach(ApproachPage now, Optional<ApproachPage> before) {
    Set<List<String>> known = new HashSet<>();
    before.ifPresent(p -> p.actions().forEach(a -> known.add(cells(a))));
    return now.marked(
        now.actions().stream().map(a -> a.marked(!known.contains(cells(a)))).toList(),
        tables(now, before, ApproachPage::ladders),
        tables(now, before, ApproachPage::bySpeed),
        parts(now).entrySet().stream()
            .filter(
                e -> before.map(b -> !e.getValue().equals(parts(b).get(e.getKey()))).orElse(true))
            .map(Map.Entry::getKey)
            .toList());
  }

  private static List<Table> tables(
      ApproachPage now, Optional<ApproachPage> before, Function<ApproachPage, List<Table>> part) {
    List<Table> out = new ArrayList<>();
    for (Table table : part.apply(now)) {
      int index = out.size();
      out.add(table(table, before.flatMap(p -> part.apply(p).stream().skip(index).findFirst())));
    }
    return out;
  }

  /** What a page says beside its tables, by the names that the templates know. */
  private static Map<String, Object> parts(ApproachPage page) {
    Map<String, Object> parts = new LinkedHashMap<>();
    parts.put("headline", page.headline());
    parts.put("marks", page.marks());
    parts.put("findings", page.findings());
    parts.put("unbraked", page.unbraked());
    parts.put("go-by", page.points().stream().map(ApproachPage.Point::goBy).toList());
    parts.put("answer", page.points().stream().map(ChangeMarks::answer).toList());
    parts.put("spread", page.spread());
    parts.put("speeds", page.plate().flatMap(Plate::speeds));
    parts.put("fails", page.plate().flatMap(Plate::fails).map(t -> cells(t)));
    parts.put("pictures", page.plate().map(Plate::onPaper));
    parts.put("brake-at", page.plate().flatMap(Plate::brakeAt));
    return parts;
  }

  private static List<String> answer(ApproachPage.Point point) {
    List<String> all = new ArrayList<>(point.answer());
    all.addAll(List.of(point.question(), point.firstAnswer()));
    return all;
  }

  private static List<String> cells(ApproachPage.ActionLine a) {
    return List.of(a.todo(), a.when(), a.where(), a.see(), a.speed(), a.gauge(), a.fromLast());
  }
}
