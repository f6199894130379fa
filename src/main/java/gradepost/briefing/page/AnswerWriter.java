package gradepost.briefing.page;

import gradepost.briefing.line.CueSighting;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.Words;
import gradepost.plan.Application;
import gradepost.plan.CaseResult;
import gradepost.plan.FailureAnswer;
import gradepost.plan.Met;
import gradepost.plan.OverrunAllowance;
import gradepost.plan.Rung;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What to do when the brake gives nothing at one braking point, and what comes of it. */
final class AnswerWriter {
  private final Words words;
  private final CueSighting sight;
  private final OverrunAllowance leeway;
  private final double noticingS;
  private final double overspeedMps;
  private final Application application;

  private final PoorestRail poorest;

  /** The results in the state of the rail that is told first. */
  private final CaseResult told;

  /** What the told answers are measured to. */
  private final Target target;

  /**
   * @param of the target of the whole approach
   */
  AnswerWriter(
      Words words, CueSighting sight, Lineside lineside, Application application, Target of) {
    Assignment assignment = lineside.assignment();
    this.words = words;
    this.sight = sight;
    this.leeway = new OverrunAllowance(assignment);
    this.noticingS = assignment.policy().noticing().seconds();
    this.overspeedMps = assignment.policy().safeSide().overspeed().metresPerSecond();
    this.application = application;
    this.target = application.forStep() ? of : application.target();
    this.poorest =
        PoorestRail.of(lineside, application, assignment.formation().lengthM(), target.atM());
    this.told = application.told().get(poorest.index());
  }

  boolean asked() {
    return !told.answers().isEmpty();
  }

  /** Whether the first fallback does not do. */
  boolean grave() {
    return !bears(told.answers().get(0));
  }

  private boolean bears(FailureAnswer answer) {
    return leeway.bears(target, answer);
  }

  /** The state of the rail that the answer is for. */
  String rail() {
    return poorest
        .site()
        .map(site -> words.text("answer.rail-site", told.adhesion().name(), site))
        .orElse(words.text("answer.rail", told.adhesion().name()));
  }

  /** What is asked at the braking point that goes with a number. */
  String question(String key, String service, String number) {
    String planned = words.placeTo(application.brakingPointM(), target);
    String here = words.placeTo(told.plannedM().orElse(application.brakingPointM()), target);
    String place =
        here.equals(planned)
            ? planned
            : words.text("answer.place-rail", planned, told.adhesion().name(), here);
    return words.text(key, service, number, place);
  }

  /** The sentence that counts. */
  String first() {
    return sentence(words.text("answer.at-once", words.called(use().brake())));
  }

  /** Until where the brake that is to be used still does it, in short; for a card of its own. */
  String last() {
    BrakeSystem brake = use().brake();
    return told.ladder().stream()
        .filter(r -> r.brake().equals(brake))
        .flatMap(r -> r.latest().point().stream())
        .map(p -> placeBefore(p.printedM()))
        .map(place -> words.text("answer.last-place", words.called(brake), place))
        .map(AnswerWriter::sentence)
        .findFirst()
        .orElse("");
  }

  /** The first brake that holds or nearly does; where none does, the last there is. */
  private FailureAnswer use() {
    List<FailureAnswer> answers = told.answers();
    return answers.stream().filter(this::bears).findFirst().orElse(answers.get(answers.size() - 1));
  }

  /** Where a poorer rail comes first, what the first fallback does on the planned one. */
  private Optional<String> plannedRail() {
    CaseResult planned = application.told().get(0);
    return poorest.index() == 0 || planned.answers().isEmpty()
        ? Optional.empty()
        : Optional.of(
            words.text(
                "answer.planned-rail",
                planned.adhesion().name(),
                outcome(planned.answers().get(0), false)));
  }

  /** The outcome of each brake, and the last place for it, in one state of the rail. */
  List<String> rest() {
    List<String> out = new ArrayList<>();
    for (FailureAnswer answer : told.answers()) {
      out.add(outcome(answer, out.isEmpty()));
      if (answer.equals(use())) {
        borne(answer).or(() -> noDifference(answer)).ifPresent(out::add);
      }
      if (leeway.withinUnknownRoom(target, answer)) {
        out.add(words.text("answer.signals-unknown"));
      }
    }
    if (application.forStep()) {
      out.add(step());
    }
    told.ladder().stream()
        .filter(r -> r.brake().role() != BrakeSystem.Role.SERVICE)
        .forEach(r -> out.add(until(r)));
    protectedPoint().ifPresent(out::add);
    if (told.answers().stream().anyMatch(a -> a.brake().role() == BrakeSystem.Role.EMERGENCY)) {
      out.add(words.text("answer.last-recourse"));
    }
    out.set(0, rail() + " " + out.get(0));
    plannedRail().ifPresent(out::add);
    return out.stream().map(AnswerWriter::sentence).toList();
  }

  /** Why a brake that does not quite hold is the one to use. */
  private Optional<String> borne(FailureAnswer answer) {
    Optional<Double> shortM = answer.met().endsShortM();
    if (shortM.isEmpty() || answer.holds() || !bears(answer)) {
      return Optional.empty();
    }
    return Optional.of(
        target
            .stop()
            .map(stop -> borne(stop, shortM.get()))
            .orElseGet(() -> words.text("answer.borne-board", words.speedAtMost(overspeedMps))));
  }

  private String borne(Target.Stop stop, double shortM) {
    if (stop.terminal()) {
      double leftM = stop.buffersM().orElseThrow() - stop.atM() + shortM;
      return words.text("answer.borne-buffers", words.room(leftM));
    }
    boolean signal = leeway.nextSignalM(stop).isPresent();
    return words.text(signal ? "answer.borne-stop" : "answer.borne-platform");
  }

  /** Whether the last recourse comes to the same, as printed, as the brake before it. */
  private Optional<String> noDifference(FailureAnswer last) {
    return told.answers().stream()
        .filter(a -> !a.equals(last) && !bears(last))
        .filter(a -> met(a).equals(met(last)) && atTarget(a).equals(atTarget(last)))
        .findFirst()
        .map(a -> words.text("answer.no-difference", words.called(last.brake())));
  }

  /** How it ends, as printed. */
  private String met(FailureAnswer answer) {
    return answer
        .met()
        .match(
            at -> words.overrun(-at.shortM()),
            nowhere -> words.text(Reasons.key(nowhere.reason())));
  }

  /** The same in short, for an application after another: its ladder tells until where. */
  List<String> inShort() {
    List<String> out = new ArrayList<>();
    for (FailureAnswer answer : told.answers()) {
      out.add(
          answer.holds()
              ? words.text(
                  "answer.next-holds",
                  words.called(answer.brake()),
                  words.seconds(noticingS),
                  spare(answer))
              : past(answer));
      if (bears(answer)) {
        break;
      }
    }
    if (!out.isEmpty()) {
      out.set(0, rail() + " " + out.get(0));
    }
    application
        .atBuffersMps()
        .ifPresent(v -> out.add(words.text("answer.at-buffers", words.speedAtMost(v))));
    return out.stream().map(AnswerWriter::sentence).toList();
  }

  private String outcome(FailureAnswer answer, boolean firstOfAll) {
    return answer
        .met()
        .match(
            at -> meets(answer, firstOfAll),
            nowhere -> notMet(answer, nowhere, firstOfAll ? "answer." : "answer.next-"));
  }

  private String meets(FailureAnswer answer, boolean firstOfAll) {
    return answer.holds()
        ? words.text(
            firstOfAll ? "answer.holds-" + kind() : "answer.next-holds",
            words.called(answer.brake()),
            words.seconds(noticingS),
            spare(answer),
            words.speed(target.speedMps()))
        : words.text(
            (firstOfAll ? "answer.fails-" : "answer.next-fails-") + kind(),
            words.called(answer.brake()),
            words.seconds(noticingS),
            met(answer),
            atTarget(answer));
  }

  /**
   * @param which how the key begins
   */
  private String notMet(FailureAnswer answer, Met.Nowhere nowhere, String which) {
    boolean buffers = nowhere.reason() == Met.Reason.BUFFER_STOPS;
    return words.text(
        which + (buffers ? "buffers" : "not-held-" + kind()),
        words.called(answer.brake()),
        words.seconds(noticingS),
        words.text(Reasons.key(nowhere.reason())),
        atTarget(answer));
  }

  /** In short, how far it runs past the target; where there are buffer stops, how near to them. */
  private String past(FailureAnswer answer) {
    return answer
        .met()
        .match(
            at -> past(answer, -at.shortM()), nowhere -> notMet(answer, nowhere, "answer.next-"));
  }

  private String past(FailureAnswer answer, double pastM) {
    Optional<Double> leftM =
        target
            .stop()
            .flatMap(Target.Stop::buffersM)
            .map(b -> Math.max(0, b - target.atM() - pastM));
    return words.text(
        leftM.isPresent() ? "answer.past-short" : "answer.next-fails-" + kind(),
        words.called(answer.brake()),
        words.seconds(noticingS),
        words.overrun(pastM),
        atTarget(answer),
        words.room(leftM.orElse(0.0)));
  }

  private String kind() {
    return target.isStop() ? "stop" : "board";
  }

  /** What the brake that is to be used makes of the step that the application was for. */
  private String step() {
    BrakeSystem brake = use().brake();
    FailureAnswer own =
        application.cases().get(poorest.index()).answers().stream()
            .filter(a -> a.brake().equals(brake))
            .findFirst()
            .orElseThrow();
    String speed = words.speed(application.target().speedMps());
    return own.holds()
        ? words.text("answer.step-holds", words.called(brake), speed)
        : words.text("answer.step-fails", words.called(brake), speed, atTarget(own));
  }

  private Optional<String> protectedPoint() {
    String step = application.forStep() ? "-step" : "";
    String speed = words.speed(application.target().speedMps());
    if (told.protectedM().isEmpty()) {
      return Optional.of(words.text("answer.no-protected" + step, speed));
    }
    if (told.plannedM().isEmpty()
        || told.plannedM().get() - told.protectedM().get() < LadderWriter.SAME_M) {
      return Optional.empty();
    }
    if (told.protectedCostS().isEmpty()) {
      return Optional.of(
          words.text(
              "answer.protected-untimed" + step, placeBefore(told.protectedM().get()), speed));
    }
    double longer = Math.ceil(told.protectedCostS().get());
    return Optional.of(
        words.text(
            (longer > 0 ? "answer.protected" : "answer.protected-free") + step,
            placeBefore(told.protectedM().get()),
            words.seconds(longer),
            speed));
  }

  private String until(Rung rung) {
    String brake = words.called(rung.brake());
    return rung.latest()
        .match(
            point -> {
              String see = sight.near(point.printedM());
              String place = placeBefore(point.printedM());
              String where =
                  see.equals(words.text("dash"))
                      ? place
                      : words.text("answer.place-see", place, see);
              return words.text("answer.until", brake, where);
            },
            nowhere ->
                words.text("answer.nowhere", brake, words.text(Reasons.key(nowhere.reason()))));
  }

  private String placeBefore(double atM) {
    return words.placeTo(
        atM, target.atM(), target.isStop() ? "where.before-mark" : "where.before-reduction");
  }

  private String spare(FailureAnswer answer) {
    return LadderWriter.spare(words, answer.met().endsShortM().orElseThrow());
  }

  private String atTarget(FailureAnswer answer) {
    return words.speedAtMost(answer.speedAtTargetMps());
  }

  private static String sentence(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
