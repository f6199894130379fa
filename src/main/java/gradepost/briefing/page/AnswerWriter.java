package gradepost.briefing.page;

import gradepost.briefing.word.Words;
import gradepost.plan.fallback.OverrunAllowance;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedLatest;
import gradepost.told.PrintedRung;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What to do when the brake gives nothing at one braking point, and what comes of it, spelt. */
final class AnswerWriter {
  private final Words words;
  private final FallbackWords fallbacks;
  private final String overspeed;

  /** Whether the data name a signal behind the stop. */
  private final boolean signalFollows;

  private final PrintedApplication application;
  private final PrintedTarget target;

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
    this.overspeed =
        words.speedAtMost(assignment.policy().safeSide().overspeed().metresPerSecond());
    this.signalFollows =
        of.stop().flatMap(new OverrunAllowance(assignment)::nextSignalM).isPresent();
    this.application = application;
    this.target = sheet.target();
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

  /** What is asked: whichever the rail, and so wherever its point is. */
  String question(String service) {
    return words.text("answer.question", service, application.line());
  }

  /** The sentence that counts; with the rails on which another brake is to be used. */
  String first() {
    String here = words.called(use().brake());
    Map<String, List<String>> others = new LinkedHashMap<>();
    for (PrintedCase c : application.cases()) {
      c.toUse()
          .map(a -> words.called(a.brake()))
          .filter(brake -> c.point().isPresent() && !brake.equals(here))
          .ifPresent(b -> others.computeIfAbsent(b, k -> new ArrayList<>()).add(c.rail()));
    }
    String all =
        others.entrySet().stream()
            .map(o -> words.text("answer.other-rail", rails(o.getValue()), o.getKey()))
            .collect(Collectors.joining());
    return sentence(words.text("answer.at-once", here + all));
  }

  private String rails(List<String> rails) {
    return String.join(words.text("plate.and"), rails);
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

  /**
   * What else there is to the answer than the ladder tells.
   *
   * @param named whether it has to say at which instruction
   */
  List<String> notes(boolean named) {
    List<String> out = new ArrayList<>();
    for (PrintedAnswer answer : told.answers()) {
      if (answer.equals(use())) {
        borne(answer).or(() -> noDifference(answer)).ifPresent(out::add);
      }
      if (!answer.suffices()) {
        answer
            .leftToBuffers()
            .map(left -> words.text("answer.left", words.called(answer.brake()), left.text()))
            .ifPresent(out::add);
      }
      if (answer.signalsUnknown()) {
        out.add(words.text("answer.signals-unknown"));
      }
    }
    borneElsewhere().ifPresent(out::add);
    application.stepAnswer().map(this::step).ifPresent(out::add);
    List<String> said = new ArrayList<>();
    for (String text : out) {
      String sentence = sentence(text);
      said.add(named ? words.text("answer.named", application.line(), sentence) : sentence);
    }
    if (told.answers().stream().anyMatch(a -> a.brake().kind() == PrintedBrake.Kind.EMERGENCY)) {
      said.add(words.text("answer.emergency"));
    }
    return said;
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
            .map(left -> words.text("answer.borne-buffers", left.text(), told.rail()))
            .orElseGet(
                () -> words.text(signalFollows ? "answer.borne-stop" : "answer.borne-platform")));
  }

  /**
   * The same of other rails on which a brake behind it would hold, where no buffer stops come
   * behind the mark.
   */
  private Optional<String> borneElsewhere() {
    List<String> rails =
        application.cases().stream()
            .filter(c -> !c.equals(told) && c.point().isPresent())
            .filter(c -> c.toUse().filter(a -> !a.holds() && a.suffices()).isPresent())
            .filter(c -> c.answers().stream().anyMatch(PrintedAnswer::holds))
            .map(PrintedCase::rail)
            .toList();
    if (rails.isEmpty() || target.buffers().isPresent()) {
      return Optional.empty();
    }
    String key =
        !target.isStop()
            ? "answer.borne-board-rail"
            : signalFollows ? "answer.borne-stop-rail" : "answer.borne-platform-rail";
    return Optional.of(words.text(key, rails(rails), overspeed));
  }

  /** Whether the last recourse comes to the same as a brake before it. */
  private Optional<String> noDifference(PrintedAnswer last) {
    return told.answers().stream()
        .filter(a -> !a.equals(last) && !last.suffices())
        .filter(a -> a.end().equals(last.end()) && a.atTarget().equals(last.atTarget()))
        .findFirst()
        .map(a -> words.text("answer.no-difference", words.called(last.brake())));
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

  private String placeBefore(PrintedPlace place) {
    return fallbacks.placeBefore(place, target);
  }

  private static String sentence(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
