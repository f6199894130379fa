package gradepost.briefing.page;

import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.SeenWords;
import gradepost.briefing.word.Words;
import gradepost.plan.fallback.OverrunAllowance;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedEnd;
import gradepost.told.PrintedLatest;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedProtection;
import gradepost.told.PrintedRung;
import gradepost.told.PrintedTarget;
import gradepost.told.Reason;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What to do when the brake gives nothing at one braking point, and what comes of it, spelt. */
final class AnswerWriter {
  private final Words words;
  private final FallbackWords fallbacks;
  private final SeenWords seen;
  private final String noticing;
  private final String overspeed;

  /** Whether the data name a signal behind the stop. */
  private final boolean signalFollows;

  private final PrintedApplication application;
  private final PrintedTarget target;

  /** Whether the application is for a step on the way to the stop. */
  private final boolean forStep;

  /** The results in the state of the rail that is told first. */
  private final PrintedCase told;

  /**
   * @param of the target of the sheet
   */
  AnswerWriter(
      Words words,
      Assignment assignment,
      Target of,
      InstructionSheet sheet,
      PrintedApplication application) {
    this.words = words;
    this.fallbacks = new FallbackWords(words);
    this.seen = new SeenWords(words);
    this.noticing = words.seconds(assignment.policy().noticing().seconds());
    this.overspeed =
        words.speedAtMost(assignment.policy().safeSide().overspeed().metresPerSecond());
    this.signalFollows =
        of.stop().flatMap(new OverrunAllowance(assignment)::nextSignalM).isPresent();
    this.application = application;
    this.target = sheet.target();
    this.forStep = sheet.forStep(application);
    this.told = application.told();
  }

  boolean asked() {
    return !told.answers().isEmpty();
  }

  /** Whether the first fallback does not do. */
  boolean grave() {
    return !told.answers().get(0).suffices();
  }

  /** The state of the rail that the answer is for. */
  String rail() {
    return application
        .site()
        .map(site -> words.text("answer.rail-site", told.rail(), site))
        .orElse(words.text("answer.rail", told.rail()));
  }

  /** What is asked at the braking point that goes with the number of its instruction. */
  String question(String key, String service) {
    PrintedPlace point = application.point();
    String planned = words.place(point, target);
    String here = words.place(told.point().map(PrintedPoint::place).orElse(point), target);
    String place =
        here.equals(planned)
            ? planned
            : words.text("answer.place-rail", planned, told.rail(), here);
    return words.text(key, service, application.line(), place);
  }

  /** The sentence that counts. */
  String first() {
    return sentence(words.text("answer.at-once", words.called(use().brake())));
  }

  /** Until where the brake that is to be used still does it, in short; for a card of its own. */
  String last() {
    PrintedBrake brake = use().brake();
    return told.ladder().stream()
        .filter(r -> r.brake().equals(brake))
        .map(PrintedRung::latest)
        .findFirst()
        .map(latest -> latest.match(at -> last(brake, at), nowhere -> ""))
        .orElse("");
  }

  private String last(PrintedBrake brake, PrintedLatest.At at) {
    return sentence(words.text("answer.last-place", words.called(brake), placeBefore(at.place())));
  }

  private PrintedAnswer use() {
    return told.toUse().orElseThrow();
  }

  /** Where a poorer rail comes first, what the first fallback does on the planned one. */
  private Optional<String> plannedRail() {
    PrintedCase planned = application.cases().get(0);
    return application.poorest() == 0 || planned.answers().isEmpty()
        ? Optional.empty()
        : Optional.of(
            words.text(
                "answer.planned-rail", planned.rail(), outcome(planned.answers().get(0), false)));
  }

  /** The outcome of each brake, and the last place for it, in one state of the rail. */
  List<String> rest() {
    List<String> out = new ArrayList<>();
    for (PrintedAnswer answer : told.answers()) {
      out.add(outcome(answer, out.isEmpty()));
      if (answer.equals(use())) {
        borne(answer).or(() -> noDifference(answer)).ifPresent(out::add);
      }
      if (answer.signalsUnknown()) {
        out.add(words.text("answer.signals-unknown"));
      }
    }
    application.stepAnswer().map(this::step).ifPresent(out::add);
    told.ladder().stream()
        .filter(r -> r.brake().kind() != PrintedBrake.Kind.SERVICE)
        .forEach(r -> out.add(until(r)));
    told.protection().flatMap(this::protection).ifPresent(out::add);
    if (told.answers().stream().anyMatch(a -> a.brake().kind() == PrintedBrake.Kind.EMERGENCY)) {
      out.add(words.text("answer.last-recourse"));
    }
    out.set(0, rail() + " " + out.get(0));
    plannedRail().ifPresent(out::add);
    return out.stream().map(AnswerWriter::sentence).toList();
  }

  /** Why a brake that does not quite hold is the one to use. */
  private Optional<String> borne(PrintedAnswer answer) {
    if (answer.holds() || !answer.suffices()) {
      return Optional.empty();
    }
    if (!target.isStop()) {
      return Optional.of(words.text("answer.borne-board", overspeed));
    }
    return Optional.of(
        answer
            .leftToBuffers()
            .map(left -> words.text("answer.borne-buffers", left.text()))
            .orElseGet(
                () -> words.text(signalFollows ? "answer.borne-stop" : "answer.borne-platform")));
  }

  /** Whether the last recourse comes to the same as a brake before it. */
  private Optional<String> noDifference(PrintedAnswer last) {
    return told.answers().stream()
        .filter(a -> !a.equals(last) && !last.suffices())
        .filter(a -> a.end().equals(last.end()) && a.atTarget().equals(last.atTarget()))
        .findFirst()
        .map(a -> words.text("answer.no-difference", words.called(last.brake())));
  }

  /** The same in short, for an application after another: its ladder tells until where. */
  List<String> inShort() {
    List<String> out = new ArrayList<>();
    for (PrintedAnswer answer : told.answers()) {
      out.add(
          answer
              .leftToBuffers()
              .map(left -> pastShort(answer, left.text()))
              .orElseGet(() -> outcome(answer, false)));
      if (answer.suffices()) {
        break;
      }
    }
    if (!out.isEmpty()) {
      out.set(0, rail() + " " + out.get(0));
    }
    application.atBuffers().ifPresent(v -> out.add(words.text("answer.at-buffers", v.text())));
    return out.stream().map(AnswerWriter::sentence).toList();
  }

  /** How far it runs past the target, and how near to the buffer stops. */
  private String pastShort(PrintedAnswer answer, String left) {
    return words.text(
        "answer.past-short",
        words.called(answer.brake()),
        noticing,
        FallbackWords.by(answer.end()).text(),
        atTarget(answer),
        left);
  }

  private String outcome(PrintedAnswer answer, boolean firstOfAll) {
    return answer
        .end()
        .match(
            before -> meets(answer, firstOfAll),
            past -> meets(answer, firstOfAll),
            nowhere -> notMet(answer, nowhere, firstOfAll ? "answer." : "answer.next-"));
  }

  private String meets(PrintedAnswer answer, boolean firstOfAll) {
    return answer.holds()
        ? words.text(
            firstOfAll ? "answer.holds-" + kind() : "answer.next-holds",
            words.called(answer.brake()),
            noticing,
            fallbacks.spare(FallbackWords.by(answer.end())),
            target.speed().map(PrintedSpeed::text).orElse(""))
        : words.text(
            (firstOfAll ? "answer.fails-" : "answer.next-fails-") + kind(),
            words.called(answer.brake()),
            noticing,
            FallbackWords.by(answer.end()).text(),
            atTarget(answer));
  }

  /**
   * @param which how the key begins
   */
  private String notMet(PrintedAnswer answer, PrintedEnd.Nowhere nowhere, String which) {
    boolean buffers = nowhere.why() == Reason.BUFFER_STOPS;
    return words.text(
        which + (buffers ? "buffers" : "not-held-" + kind()),
        words.called(answer.brake()),
        noticing,
        words.text(Reasons.key(nowhere.why())),
        atTarget(answer));
  }

  private String kind() {
    return target.isStop() ? "stop" : "board";
  }

  /** What the brake that is to be used makes of the step that the application was for. */
  private String step(PrintedApplication.StepAnswer step) {
    String brake = words.called(step.brake());
    return step.atStep()
        .map(at -> words.text("answer.step-fails", brake, speed(), at.text()))
        .orElseGet(() -> words.text("answer.step-holds", brake, speed()));
  }

  private String speed() {
    return application.forSpeed().map(PrintedSpeed::text).orElse("");
  }

  private Optional<String> protection(PrintedProtection protection) {
    String step = forStep ? "-step" : "";
    return protection.match(
        nowhere -> Optional.of(words.text("answer.no-protected" + step, speed())),
        same -> Optional.empty(),
        at -> Optional.of(protection(at, step)));
  }

  private String protection(PrintedProtection.At at, String step) {
    String place = placeBefore(at.place());
    return at.costs()
        .map(
            longer ->
                words.text(
                    (longer.seconds() > 0 ? "answer.protected" : "answer.protected-free") + step,
                    place,
                    words.time(longer),
                    speed()))
        .orElseGet(() -> words.text("answer.protected-untimed" + step, place, speed()));
  }

  private String until(PrintedRung rung) {
    String brake = words.called(rung.brake());
    return rung.latest()
        .match(
            at -> {
              String place = placeBefore(at.place());
              return words.text(
                  "answer.until",
                  brake,
                  seen.both(at.seen())
                      .map(see -> words.text("answer.place-see", place, see))
                      .orElse(place));
            },
            nowhere -> words.text("answer.nowhere", brake, words.text(Reasons.key(nowhere.why()))));
  }

  private String placeBefore(PrintedPlace place) {
    return fallbacks.placeBefore(place, target);
  }

  /** At what speed the target is passed; where it is met in time no text says so. */
  private static String atTarget(PrintedAnswer answer) {
    return answer.atTarget().map(PrintedSpeed::text).orElseThrow();
  }

  private static String sentence(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
