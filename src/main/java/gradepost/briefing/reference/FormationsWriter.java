package gradepost.briefing.reference;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedStep;
import gradepost.told.print.PrintedPressure;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Where the formations of one direction differ: approach by approach, a column for each. Two
 * approaches are the same where braking point, speed there, pressures, and where power is first
 * taken and shut off are the same as printed.
 */
final class FormationsWriter {
  /** Columns before those of the formations. */
  private static final int HEADS = 2;

  private final Messages messages;

  FormationsWriter(Messages messages) {
    this.messages = messages;
  }

  /** A formation, its run, and the pages that tell it. */
  record Formation(String name, Plan plan, List<ApproachPage> pages) {
    private Map<String, Told> byKey(Messages messages) {
      Map<String, Told> out = new LinkedHashMap<>();
      Words words = new Words(messages, plan.assignment().path());
      ActionWords orders = new ActionWords(words, plan.assignment().stock());
      for (InstructionSheet sheet : plan.told().sheets()) {
        String key = sheet.target().key();
        for (int again = 2; out.containsKey(key); again++) {
          key = sheet.target().key() + " #" + again;
        }
        out.put(key, new Told(title(sheet), sheet, words, orders));
      }
      return out;
    }

    private String title(InstructionSheet sheet) {
      return pages.stream()
          .filter(p -> p.number().equals(Integer.toString(sheet.number())))
          .map(ApproachPage::title)
          .findFirst()
          .orElseThrow();
    }
  }

  /** An approach as one formation is told it. */
  private record Told(String title, InstructionSheet sheet, Words words, ActionWords orders) {

    /** Where the brake goes on first; empty without one. */
    private Optional<PrintedApplication> first() {
      return sheet.begun().stream().findFirst();
    }

    private boolean brakes() {
      return first().isPresent();
    }

    /** Where the brake goes on, at what speed, and every pressure from there on. */
    private String brake() {
      return first()
          .map(
              a ->
                  words.text(
                      "formations.brake",
                      words.place(a.point(), sheet.target()),
                      step(a).speed().text(),
                      gauge(a),
                      words.units().pressureUnit()))
          .orElse(words.text("formations.no-brake"));
    }

    private PrintedStep step(PrintedApplication a) {
      return sheet.steps().get(a.line() - 1);
    }

    private String gauge(PrintedApplication from) {
      return sheet.steps().stream()
          .skip(from.line() - 1)
          .flatMap(s -> pressures(s.order()))
          .map(orders::number)
          .collect(Collectors.joining(", "));
    }

    private static Stream<PrintedPressure> pressures(PrintedOrder order) {
      return Stream.concat(
              Stream.of(order.does()), order.further().stream().map(PrintedOrder.Further::does))
          .flatMap(c -> c.brake().stream())
          .map(PrintedCommand.Brake::pressure);
    }

    /** Where power is first taken on the approach, and to which notch. */
    private String power() {
      return done(
          sheet.steps().stream().filter(s -> s.order().does().power().isPresent()).findFirst());
    }

    /** Where power is first taken off. */
    private String shutOff() {
      return sheet.steps().stream()
          .filter(s -> s.order().does().equals(new PrintedCommand.ShutOff()))
          .findFirst()
          .map(s -> at(s, words.text("formations.at", place(s), s.speed().text())))
          .orElse(words.text("dash"));
    }

    private String done(Optional<PrintedStep> step) {
      return step.map(this::taken).orElse(words.text("dash"));
    }

    /** That each formation starts from its own mark is no difference. */
    private String taken(PrintedStep step) {
      String notch = orders.lastNotch(step.order());
      String speed = step.speed().text();
      return step.speed().number() == 0
          ? words.text("formations.power-start", notch)
          : at(step, words.text("formations.power-on", place(step), notch, speed));
    }

    private String place(PrintedStep step) {
      return words.place(step.where(), sheet.target());
    }

    /** Where something else than the place is waited for, the place is only about right. */
    private String at(PrintedStep step, String text) {
      return step.order().on().atItsPlace() ? text : words.text("where.about", text);
    }

    /** Its lines, in the order of their labels. */
    private List<String> lines() {
      return List.of(brake(), power(), shutOff());
    }
  }

  /** The labels of the lines, as texts. */
  private List<String> labels() {
    return Stream.of("brake-at", "power", "shut-off")
        .map(k -> messages.text("formations." + k))
        .toList();
  }

  /**
   * The table of one direction.
   *
   * @param formations two at least
   */
  Table table(String id, String direction, List<Formation> formations) {
    List<Map<String, Told>> all = formations.stream().map(f -> f.byKey(messages)).toList();
    List<String> keys = Merged.union(all.stream().map(m -> List.copyOf(m.keySet())).toList());
    List<Table.Row> rows = new ArrayList<>();
    int same = 0;
    for (String key : keys) {
      List<Optional<Told>> told = all.stream().map(m -> Optional.ofNullable(m.get(key))).toList();
      List<Table.Row> own = rows(told);
      if (own.isEmpty()) {
        same++;
      }
      rows.addAll(own);
    }
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(messages.text("formations.approach"), "text"));
    columns.add(new Table.Column("", "text"));
    formations.forEach(f -> columns.add(new Table.Column(f.name(), "text")));
    return new Table(
        id,
        "formations",
        messages.text("formations.of", direction),
        same(same),
        columns,
        rows,
        messages.text("formations.none"));
  }

  private String same(int approaches) {
    return switch (approaches) {
      case 0 -> messages.text("formations.same-none");
      case 1 -> messages.text("formations.same-one");
      default -> messages.text("formations.same", approaches);
    };
  }

  /** The braking point, if there is one, and every line that differs; nothing where none does. */
  private List<Table.Row> rows(List<Optional<Told>> told) {
    List<String> labels = labels();
    String title = told.stream().flatMap(Optional::stream).findFirst().orElseThrow().title();
    List<Table.Row> out = new ArrayList<>();
    boolean any = false;
    for (int i = 0; i < labels.size(); i++) {
      int line = i;
      List<String> cells = new ArrayList<>();
      cells.add(out.isEmpty() ? title : "");
      cells.add(labels.get(i));
      told.forEach(
          t -> cells.add(t.map(x -> x.lines().get(line)).orElse(messages.text("formations.not"))));
      List<String> own = cells.subList(HEADS, cells.size());
      boolean differs = own.stream().distinct().count() > 1;
      any |= differs;
      boolean brakes = i == 0 && told.stream().flatMap(Optional::stream).anyMatch(Told::brakes);
      if (differs || brakes) {
        out.add(new Table.Row(cells, false, differs));
      }
    }
    return any ? out : List.of();
  }
}
