package gradepost.briefing.reissue;

import gradepost.briefing.Change;
import gradepost.briefing.Messages;
import gradepost.briefing.line.Views;
import gradepost.briefing.word.Words;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.Changeover;
import gradepost.reissue.Comparison;
import gradepost.reissue.RestrictionChange;
import gradepost.reissue.SpeedChange;
import gradepost.route.Path;
import gradepost.route.Stretch;
import gradepost.task.PaperPeriod;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedFaster;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What changed, in words: for the page of changes, the addendum and the slips. */
public final class ChangeWriter {
  private static final int MOST_QUESTIONS = 3;

  private final Words words;
  private final Path path;
  private final Changeover changeover;
  private final List<PaperPeriod> elsewhere;

  public ChangeWriter(Messages messages, Path path, Changeover changeover) {
    this(messages, path, changeover, List.of());
  }

  /**
   * @param elsewhere parts of the validity for which the same run has papers of their own
   */
  public ChangeWriter(
      Messages messages, Path path, Changeover changeover, List<PaperPeriod> elsewhere) {
    this.words = new Words(messages, path);
    this.path = path;
    this.changeover = changeover;
    this.elsewhere = List.copyOf(elsewhere);
  }

  /** From when each change is in force. */
  Changeover changeover() {
    return changeover;
  }

  /** A line for every change, what matters most first; one for all that get another number only. */
  public List<Change> changes(Comparison comparison) {
    List<Change> out = new ArrayList<>();
    comparison.restrictions().forEach(r -> out.add(restriction(r)));
    comparison.speeds().forEach(s -> out.add(speed(s)));
    // A sheet has no number: one that only comes earlier or later in the run is the same sheet.
    comparison.approaches().stream()
        .filter(change -> !change.renumberedOnly())
        .map(this::approach)
        .sorted(Comparator.comparing(change -> !change.onSlip()))
        .forEach(out::add);
    return out;
  }

  /** A line for every thing of which there is another picture than before, or no longer one. */
  public List<Change> pictures(List<Views.View> before, List<Views.View> now) {
    Map<String, Views.View> old = new LinkedHashMap<>();
    before.forEach(v -> old.put(v.name(), v));
    List<Change> out = new ArrayList<>();
    for (Views.View view : now) {
      Optional<Views.View> then = Optional.ofNullable(old.remove(view.name()));
      if (then.isEmpty()) {
        out.add(picture(view, "change.picture.new"));
      } else if (!then.get().picture().data().equals(view.picture().data())) {
        out.add(picture(view, "change.picture.other"));
      }
    }
    old.values().forEach(view -> out.add(picture(view, "change.picture.gone")));
    return out;
  }

  private Change picture(Views.View view, String key) {
    return new Change(words.text("change.picture"), view.name(), words.text(key), false);
  }

  private Change restriction(RestrictionChange change) {
    String kinds =
        change.kinds().stream()
            .map(k -> words.text("change." + lower(k)))
            .collect(Collectors.joining(words.text("change.list")));
    TemporaryRestriction any = change.any();
    String hour = words.moment(changeover.inForce(change));
    String text;
    if (change.after().isEmpty()) {
      text =
          words.text(
              changeover.isWithdrawn(change) ? "change.gone" : "change.ended",
              change.reference(),
              speed(any),
              hour);
    } else if (change.before().isEmpty()) {
      text = words.text("change.is", change.reference(), speed(any), boards(any), hour, until(any));
    } else {
      TemporaryRestriction then = change.before().get();
      text =
          words.text(
              "change.was",
              change.reference(),
              speed(then),
              extent(then),
              speed(any),
              boards(any),
              hour,
              until(any));
    }
    return new Change(kinds, extent(any), text);
  }

  String speed(TemporaryRestriction r) {
    StringBuilder out = new StringBuilder(words.speed(r.speed().metresPerSecond()));
    r.differentials()
        .forEach(
            d ->
                out.append(words.text("change.list"))
                    .append(d.trainClass())
                    .append(' ')
                    .append(words.speed(d.speed().metresPerSecond())));
    return out.toString();
  }

  String boards(TemporaryRestriction r) {
    return words.text(r.boards().isEmpty() ? "change.paper-only" : "change.boards");
  }

  String until(TemporaryRestriction r) {
    String end = r.until().map(words::moment).orElse(words.text("change.further-notice"));
    return r.hours().map(h -> words.text("change.hours", end, h.from(), h.to())).orElse(end);
  }

  String extent(TemporaryRestriction r) {
    return between("change.extent", path.span(r.extent()));
  }

  private String between(String key, Stretch span) {
    return words.text(key, words.place(span.fromM()), words.placePast(span.toM()));
  }

  private Change speed(SpeedChange s) {
    return new Change(
        words.text("change.speed"),
        between("change.extent", new Stretch(s.fromM(), s.toM())),
        words.text("change.from-to", words.speed(s.beforeMps()), words.speed(s.afterMps())));
  }

  private Change approach(ApproachChange change) {
    InstructionSheet any = change.any();
    String name = name(any.target());
    String place = words.text("change.approach", name);
    if (change.before().isEmpty()) {
      return new Change(
          words.text("change.approach.added"), place, words.text("change.approach.new"));
    } else if (change.after().isEmpty()) {
      return new Change(words.text("change.approach.withdrawn"), place, gone(name));
    }
    List<String> said = new ArrayList<>();
    Optional<String> point = point(change);
    point.ifPresent(said::add);
    String rest =
        change.aspects().stream()
            .sorted()
            .filter(a -> point.isEmpty() || a != ApproachChange.Aspect.BRAKING_POINT)
            .map(a -> words.text("aspect." + lower(a)))
            .collect(Collectors.joining(words.text("change.list")));
    if (!rest.isEmpty()) {
      said.add(words.text("change.aspects", rest));
    }
    if (change.outside()) {
      said.add(words.text("change.outside"));
    }
    return new Change(
        words.text(point.isPresent() ? "change.approach.point" : "change.approach.changed"),
        place,
        String.join(words.text("change.sentence"), said),
        point.isPresent());
  }

  /** What is covered by another restriction still has to be braked for when that one ends. */
  private String gone(String name) {
    return elsewhere.stream()
        .filter(part -> part.uncovered().contains(name))
        .findFirst()
        .map(part -> words.text("change.approach.elsewhere", part.name()))
        .orElse(words.text("change.approach.gone"));
  }

  /** Where the brake goes on now, by the sheet of the old pack where it had one. */
  String pointOnly(ApproachChange change) {
    return words.text("change.told", which(change), point(change).orElse(""));
  }

  private String which(ApproachChange change) {
    InstructionSheet old = change.before().orElse(change.any());
    return words.text(
        change.before().isPresent() ? "change.approach" : "addendum.new-sheet", name(old.target()));
  }

  /** Where a train brakes that comes to a lower speed faster than the new plan does. */
  String ifFaster(ApproachChange change) {
    InstructionSheet now = change.after().orElseThrow();
    PrintedTarget target = now.target();
    PrintedApplication brake = now.faster().flatMap(PrintedFaster::application).orElseThrow();
    String speed = target.speed().map(PrintedSpeed::text).orElse("");
    String dry = words.place(brake.point(), target);
    Optional<String> poor = brake.told().point().map(p -> words.place(p.place(), target));
    if (poor.isEmpty()) {
      return words.text("addendum.faster-dry", which(change), speed, dry);
    }
    return poor.get().equals(dry)
        ? words.text("addendum.faster-any", which(change), speed, dry)
        : words.text("addendum.faster", which(change), speed, dry, poor.get());
  }

  private Optional<String> point(ApproachChange change) {
    Optional<PrintedPlace> before = change.before().flatMap(InstructionSheet::brakingPoint);
    Optional<PrintedPlace> after = change.after().flatMap(InstructionSheet::brakingPoint);
    PrintedTarget target = change.any().target();
    if (before.isPresent() && after.isPresent()) {
      return change
          .movedM()
          .map(
              m ->
                  words.text(
                      m < 0 ? "change.point.earlier" : "change.point.later",
                      words.place(before.get(), target),
                      words.place(after.get(), target),
                      words.overrun(Math.abs(m))));
    }
    return after
        .map(a -> words.text("change.point.new", words.place(a, target)))
        .or(() -> before.map(b -> words.text("change.point.gone", words.place(b, target))));
  }

  private static String name(PrintedTarget target) {
    return target.name();
  }

  /** Two or three questions where something of high risk changed; else none. */
  public List<String> questions(Comparison comparison) {
    List<String> out = new ArrayList<>();
    for (RestrictionChange change : comparison.restrictions()) {
      if (change.highRisk()) {
        out.add(between("question.speed", path.span(change.any().extent())));
        comparison.approaches().stream()
            .filter(c -> c.after().isPresent())
            .filter(c -> c.movedM().isPresent() || c.before().isEmpty())
            .filter(c -> c.any().brakingPoint().isPresent())
            .findFirst()
            .ifPresent(c -> out.add(words.text("question.point", name(c.any().target()))));
        out.add(words.text("question.boards", change.reference()));
      }
    }
    return out.stream().distinct().limit(MOST_QUESTIONS).toList();
  }

  private static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
