package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Changes;
import gradepost.app.issue.Differences.OfPaper;
import gradepost.app.store.Disk;
import gradepost.app.store.Paper;
import gradepost.app.store.Unplanned;
import gradepost.briefing.ApproachPage;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.Plate;
import gradepost.briefing.Reference;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.Table;
import gradepost.reissue.register.Entry;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedOrder;
import gradepost.told.print.PrintGrid;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The reference of a pack of two directions with two formations each: what is common stands once,
 * where formations differ is what the plans say, and it goes out and is exchanged as one.
 */
@Tag("slow")
class ReferenceOfPackTest extends Changes {
  /** Tables whose rows are each about their own approach: equal figures are not the same row. */
  private static final Set<String> OF_APPROACHES =
      Set.of("pressures", "ladder", "by-speed", "formations");

  private static Differences valleyAsIssued() throws Unplanned {
    return FrozenIssue.first();
  }

  @Test
  void whatIsCommonStandsOnceAndNothingIsLost() throws Exception {
    Differences pack = valleyAsIssued();
    Reference reference = pack.reference().reference();
    assertThat(pack.papers()).hasSize(4);
    assertThat(reference.papers())
        .containsExactlyElementsOf(pack.papers().stream().map(p -> p.task().stem()).toList());

    List<String> rows = new ArrayList<>();
    for (ReferenceSheet sheet : reference.sheets()) {
      sheet
          .tables()
          .filter(t -> !OF_APPROACHES.contains(t.name()))
          .forEach(t -> t.rows().forEach(r -> rows.add(t.name() + " " + r.cells())));
    }
    assertThat(rows).hasSizeGreaterThan(200).doesNotHaveDuplicates();

    for (OfPaper paper : pack.papers()) {
      Part part = paper.briefing().parts().get(0);
      List<Table> own = new ArrayList<>(part.tables());
      own.addAll(part.train().tables());
      own.add(paper.briefing().reading().assumptions());
      own.add(paper.briefing().reading().practice());
      for (Table table : own) {
        String told = told(reference, paper.task().stem(), table.name());
        for (Table.Row row : table.rows()) {
          row.cells().stream()
              .flatMap(c -> Arrays.stream(c.split("\n")))
              .forEach(c -> assertThat(told).as(table.title()).contains(c));
        }
      }
    }
  }

  /** All cells of the tables with this name, on the sheets that belong to a paper. */
  private static String told(Reference reference, String paper, String name) {
    return reference.sheets().stream()
        .filter(s -> s.papers().contains(paper))
        .flatMap(ReferenceSheet::tables)
        .filter(t -> t.name().equals(name))
        .flatMap(t -> t.rows().stream())
        .map(r -> String.join("\n", r.cells()))
        .collect(Collectors.joining("\n"));
  }

  /** The caution of the emergency brake, and all else of the method, is one text for all papers. */
  @Test
  void theMethodIsToldOnce() throws Exception {
    Reference reference = valleyAsIssued().reference().reference();
    List<String> items =
        reference.sheets().stream()
            .flatMap(s -> s.blocks().stream())
            .filter(b -> b instanceof ReferenceSheet.Items)
            .flatMap(b -> ((ReferenceSheet.Items) b).items().stream())
            .toList();
    assertThat(items).filteredOn(i -> i.contains("people may fall")).hasSize(1);
    assertThat(items).doesNotHaveDuplicates();
  }

  /**
   * Speeds on the way to a lower speed stand on the line sheets: the reference has them no more.
   */
  @Test
  void whatTheReferenceLeavesOutStandsOnTheLine() throws Exception {
    int seen = 0;
    for (OfPaper paper : valleyAsIssued().papers()) {
      Part part = paper.briefing().parts().get(0);
      List<String> line =
          part.line().stream().flatMap(l -> l.rows().stream()).map(LineSheet.Row::place).toList();
      for (ApproachPage page : part.approaches()) {
        for (Table table : page.ladders()) {
          if (table.name().equals("passing")) {
            for (Table.Row row : table.rows()) {
              assertThat(line).as(page.title() + row).contains(row.cells().get(0));
              seen++;
            }
          }
        }
      }
    }
    assertThat(seen).isGreaterThan(40);
  }

  /** What is left if a brake fails stands on the plate or in the reference, row by row. */
  @Test
  void whatThePlatesHaveNoRoomForStandsInTheReference() throws Exception {
    Differences pack = valleyAsIssued();
    int onPlate = 0;
    int looked = 0;
    for (OfPaper paper : pack.papers()) {
      String stem = paper.task().stem();
      Set<Set<String>> inFull = cells(pack.reference().reference(), stem, "ladder");
      String pressures = told(pack.reference().reference(), stem, "pressures");
      Set<Set<String>> bySpeed = cells(pack.reference().reference(), stem, "by-speed");
      for (ApproachPage page : paper.briefing().parts().get(0).approaches()) {
        Set<Set<String>> plate =
            page.plate().flatMap(Plate::fails).stream()
                .flatMap(t -> t.rows().stream())
                .map(ReferenceOfPackTest::answers)
                .collect(Collectors.toSet());
        for (Table table : page.ladders()) {
          for (Table.Row row :
              table.name().equals("ladder") ? table.rows() : List.<Table.Row>of()) {
            boolean there = plate.contains(answers(row));
            assertThat(there || inFull.contains(answers(row))).as(page.title() + row).isTrue();
            onPlate += there ? 1 : 0;
            looked += there ? 0 : 1;
          }
        }
        for (Table table : page.bySpeed()) {
          for (Table.Row row : table.rows()) {
            String figures = row.cells().get(4).replace(" psi", "");
            boolean none = figures.equals("–");
            assertThat(none || pressures.contains(figures) || bySpeed.contains(answers(row)))
                .as(page.title() + row)
                .isTrue();
          }
        }
      }
    }
    assertThat(onPlate).isGreaterThan(100);
    assertThat(looked).isGreaterThan(20);
  }

  private static Set<Set<String>> cells(Reference reference, String paper, String name) {
    return reference.sheets().stream()
        .filter(s -> s.papers().contains(paper))
        .flatMap(ReferenceSheet::tables)
        .filter(t -> t.name().equals(name))
        .flatMap(t -> t.rows().stream())
        .map(ReferenceOfPackTest::answers)
        .collect(Collectors.toSet());
  }

  /** Without its heading; columns may stand in another order. */
  private static Set<String> answers(Table.Row row) {
    return row.cells().stream().skip(1).collect(Collectors.toSet());
  }

  /** Against the two plans: every approach is there if, and only if, it is told differently. */
  @Test
  void whereFormationsDifferIsWhatThePlansSay() throws Exception {
    Differences pack = valleyAsIssued();
    Reference reference = pack.reference().reference();
    List<Table> tables =
        reference.sheets().stream()
            .flatMap(ReferenceSheet::tables)
            .filter(t -> t.name().equals("formations"))
            .toList();
    assertThat(tables).hasSize(2);
    for (int direction = 0; direction < 2; direction++) {
      OfPaper four = pack.papers().get(2 * direction);
      OfPaper eight = pack.papers().get(2 * direction + 1);
      Table table = tables.get(direction);
      assertThat(table.columns().stream().map(Table.Column::heading)).endsWith("4-car", "8-car");
      Map<String, InstructionSheet> a = byKey(four);
      Map<String, InstructionSheet> b = byKey(eight);
      int listed = 0;
      int same = 0;
      int row = 0;
      for (Map.Entry<String, InstructionSheet> each : a.entrySet()) {
        InstructionSheet now = each.getValue();
        InstructionSheet other = b.remove(each.getKey());
        if (other == null) {
          continue;
        }
        if (told(four, now).equals(told(eight, other))) {
          same++;
          continue;
        }
        String title = four.briefing().parts().get(0).approaches().get(now.number() - 1).title();
        while (!table.rows().get(row).cells().get(0).equals(title)) {
          row++;
        }
        List<String> cells = table.rows().get(row).cells();
        if (!now.begun().isEmpty() || !other.begun().isEmpty()) {
          assertThat(cells.get(1)).isEqualTo("brake");
          assertThat(cells.get(2)).isEqualTo(told(four, now).get(0));
          assertThat(cells.get(3)).isEqualTo(told(eight, other).get(0));
        }
        assertThat(table.rows().get(row).grave()).isEqualTo(!cells.get(2).equals(cells.get(3)));
        listed++;
      }
      assertThat(listed).isGreaterThan(8);
      String says =
          same == 0
              ? "No approach is the same in all of this."
              : same == 1
                  ? "One other approach is the same in all of this."
                  : "The same in all of this: " + same + " other approaches.";
      assertThat(table.note()).isEqualTo(says);
      assertThat(table.rows().stream().filter(r -> !r.cells().get(0).isEmpty()).count())
          .isEqualTo(listed + b.size());
    }
  }

  private static Map<String, InstructionSheet> byKey(OfPaper paper) {
    Map<String, InstructionSheet> out = new LinkedHashMap<>();
    paper.plan().told().sheets().forEach(s -> out.put(s.target().key(), s));
    return out;
  }

  /** What the plan tells of an approach, spelt without the writers. */
  private static List<String> told(OfPaper paper, InstructionSheet sheet) {
    PrintGrid grid = new PrintGrid(paper.plan().assignment().path());
    Optional<PrintedApplication> first = sheet.begun().stream().findFirst();
    List<String> out = new ArrayList<>();
    out.add(
        first
            .map(
                x ->
                    x.point()
                            .match(
                                grid::text,
                                grid::text,
                                near ->
                                    near.ahead().text()
                                        + (sheet.target().isStop() ? " to mark" : " to board"))
                        + ", "
                        + sheet.steps().get(x.line() - 1).speed().text()
                        + ": "
                        + pressures(sheet, x))
            .orElse("no brake"));
    sheet.steps().stream()
        .filter(s -> s.order().does().power().isPresent())
        .findFirst()
        .ifPresent(
            s -> {
              String where = s.speed().number() == 0 ? "" : s.where() + " " + s.speed();
              out.add(where + s.order().on().atItsPlace() + last(s.order()));
            });
    sheet.steps().stream()
        .filter(s -> s.order().does().equals(new PrintedCommand.ShutOff()))
        .findFirst()
        .ifPresent(s -> out.add("off " + s.where() + s.speed() + s.order().on().atItsPlace()));
    return out;
  }

  /** Every pressure from the braking point on, with its unit once. */
  private static String pressures(InstructionSheet sheet, PrintedApplication from) {
    List<String> all =
        sheet.steps().stream()
            .skip(from.line() - 1L)
            .flatMap(
                s ->
                    Stream.concat(
                        Stream.of(s.order().does()),
                        s.order().further().stream().map(PrintedOrder.Further::does)))
            .flatMap(c -> c.brake().stream())
            .map(brake -> brake.pressure().text())
            .toList();
    return String.join(", ", all).replace(" psi,", ",");
  }

  private static int last(PrintedOrder order) {
    return order.further().isEmpty()
        ? order.does().power().orElseThrow().notch()
        : order.further().get(order.further().size() - 1).does().power().orElseThrow().notch();
  }

  /** With a new end date the tables that tell it are exchanged once, and no other sheet of them. */
  @Test
  void aNewEndDateChangesItsTablesOnceForAllPapers() throws Exception {
    PackFile before = valley();
    PackFile after =
        with(
            nextIssue(before),
            "status: extended, from: 13m 20ch, to: 13m 04ch, lines: [Single], reference: T 26/104,"
                + " speed: 20 mph, normal-speed: 60 mph, boards: [{kind: warning, at: 13m 61ch, direction: Down}, {kind: commencement, at: 13m 20ch, direction: Down}, {kind: termination, at: 13m 04ch, direction: Down}, {kind: warning, at: 12m 68ch, direction: Up}, {kind: commencement, at: 13m 04ch, direction: Up}, {kind: termination, at: 13m 20ch, direction: Up}], reason: embankment slip below the line,"
                + " imposed: 2026-11-10 04:00, until: 2027-02-15 04:00");
    Differences differences =
        new DifferenceFinder(Messages.english())
            .of(
                FrozenIssue.FILE,
                after,
                Optional.of(new LastIssue(before, valleyAsIssued().sheets())));
    int number = after.issue().number();
    List<Entry.Sheet> changed =
        differences.sheets().stream().filter(s -> s.since() == number).toList();
    assertThat(changed)
        .extracting(s -> s.paper() + " " + s.sheet())
        .containsExactlyInAnyOrder(
            "thrumble-reference tables Down", "thrumble-reference tables Up");
    List<String> supplements =
        new IssuePapers(new Layout(Optional.empty()), false, Concern.NOBODY)
            .of(differences, paper -> {}).papers().stream()
                .map(Paper::name)
                .filter(n -> n.contains("reference"))
                .toList();
    assertThat(supplements)
        .containsExactly(
            "thrumble-reference.pdf",
            "thrumble-reference.html",
            "thrumble-reference-supplement.pdf",
            "thrumble-reference-supplement.html");
  }

  private static PackFile nextIssue(PackFile pack) {
    List<Input> inputs = new ArrayList<>(pack.inputs());
    String text = new String(inputs.get(0).bytes(), StandardCharsets.UTF_8);
    text = text.replaceFirst("\\n  number: 3\\n", "\n  number: 4\n");
    inputs.set(0, new Input(inputs.get(0).name(), text.getBytes(StandardCharsets.UTF_8)));
    PackFile next = good(Disk.sources().pack(inputs));
    assertThat(next.issue().number()).isEqualTo(pack.issue().number() + 1);
    return next;
  }
}
