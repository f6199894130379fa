package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Rung;
import gradepost.policy.Subject;
import gradepost.policy.Technique;
import gradepost.ride.RideJudge;
import gradepost.route.Landmark;
import gradepost.stock.BrakeSystem;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Where to brake, how, and what if it gives nothing. */
final class ApproachItems {
  private static final double LANDMARKS_APART_M = 30;

  /** A wrong margin differs from the right one by this share, and by so many yards or metres. */
  private static final double MARGIN_SHARE = 0.3;

  private static final double MARGIN_UNITS = 15;

  /** A wrong pressure differs from the right one by this many steps of the gauge. */
  private static final double LEAST_PRESSURE_STEPS = 3;

  private final BriefingFacts taught;
  private final References references;
  private final List<Approach> braked;

  ApproachItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
    this.braked =
        taught.plan().approaches().stream()
            .filter(a -> a.brakingPointM().isPresent())
            .filter(a -> RideJudge.firstPressure(a).isPresent())
            .toList();
  }

  private Item item(
      Subject subject, Approach a, double atM, String ask, String right, List<String> near) {
    return new Item(subject, called(a), atM, ask, right, near, references.approach(a));
  }

  /** By its title; where another goes by the same, by its place too. */
  private String called(Approach a) {
    String title = taught.title(a);
    boolean alone =
        taught.plan().approaches().stream().filter(o -> taught.title(o).equals(title)).count() == 1;
    return alone ? title : title + ", " + taught.place(a.target().atM());
  }

  List<Item> brakingPoints() {
    List<Item> out = new ArrayList<>();
    for (Approach a : braked) {
      double at = a.brakingPointM().orElseThrow();
      Distractors near = new Distractors(taught.place(at));
      latest(a, BrakeSystem.Role.FALLBACK).ifPresent(p -> near.place(taught, at, p.printedM()));
      a.shutOffM().ifPresent(s -> near.place(taught, at, s));
      told(a).stream().skip(1).forEach(c -> c.plannedM().ifPresent(p -> near.place(taught, at, p)));
      latest(a, BrakeSystem.Role.SERVICE).ifPresent(p -> near.place(taught, at, p.printedM()));
      near.placesAbout(taught, at);
      if (near.enough()) {
        String ask = taught.text("ask.braking-point", called(a));
        out.add(item(Subject.BRAKING_POINT, a, at, ask, taught.place(at), near.all()));
      }
    }
    return out;
  }

  /** The last landmark before the brake goes on, against those before it and after. */
  List<Item> landmarks() {
    List<Item> out = new ArrayList<>();
    double reach = taught.assignment().policy().run().landmarkReach().metres();
    List<BriefingFacts.At<Landmark>> all = taught.landmarks();
    for (Approach a : braked) {
      double point = a.brakingPointM().orElseThrow();
      List<BriefingFacts.At<Landmark>> before =
          all.stream().filter(l -> l.atM() <= point + 1e-6).toList();
      if (before.isEmpty() || point - before.get(before.size() - 1).atM() > reach) {
        continue;
      }
      BriefingFacts.At<Landmark> right = before.get(before.size() - 1);
      Distractors near = new Distractors(right.what().name());
      List<BriefingFacts.At<Landmark>> others = new ArrayList<>(all);
      others.sort(java.util.Comparator.comparingDouble(l -> Math.abs(l.atM() - right.atM())));
      others.stream()
          .filter(
              l ->
                  l.atM() < right.atM() - LANDMARKS_APART_M
                      || l.atM() > Math.max(point, right.atM()) + LANDMARKS_APART_M)
          .limit(5)
          .forEach(l -> near.add(l.what().name()));
      boolean alone =
          all.stream().filter(l -> l.what().name().equals(right.what().name())).count() == 1;
      if (near.enough() && alone) {
        String ask = taught.text("ask.landmark", called(a));
        out.add(item(Subject.LANDMARK, a, right.atM(), ask, right.what().name(), near.all()));
      }
    }
    return out;
  }

  List<Item> firstPressures() {
    List<Item> out = new ArrayList<>();
    for (Approach a : braked) {
      Optional<Double> first = RideJudge.firstPressure(a);
      if (first.isEmpty()) {
        continue;
      }
      Distractors near = new Distractors(taught.pressure(first.get()));
      for (double wrong : pressures(a, first.get())) {
        near.add(taught.pressure(wrong));
      }
      String ask = taught.text("ask.first-pressure", called(a));
      out.add(
          item(
              Subject.FIRST_PRESSURE,
              a,
              a.brakingPointM().orElseThrow(),
              ask,
              taught.pressure(first.get()),
              near.all()));
    }
    return out;
  }

  /** Pressures that a gauge tells from the right one. */
  private double[] pressures(Approach a, double right) {
    Technique technique = taught.assignment().policy().stopping();
    BrakeSystem service = taught.assignment().stock().service();
    DoubleStream.Builder all = DoubleStream.builder();
    all.add(a.first().orElseThrow().mainPressurePa());
    service.control().steps().ifPresent(s -> s.pressures().forEach(p -> all.add(p.pascals())));
    technique.eases().forEach(e -> all.add(e.to().pascals()));
    all.add(technique.main().pascals());
    all.add(service.full().pascals());
    DoubleStream.of(0.6, 1.4, 0.3, 1.8).forEach(share -> all.add(share * right));
    double least = LEAST_PRESSURE_STEPS * taught.units().pressureStepPa();
    return all.build().filter(p -> Math.abs(p - right) >= least).toArray();
  }

  List<Item> failureAnswers() {
    List<Item> out = new ArrayList<>();
    for (Approach a : braked) {
      List<FailureAnswer> answers = told(a).get(0).answers();
      Optional<Double> ends = answers.stream().findFirst().flatMap(x -> x.met().endsShortM());
      if (ends.isEmpty()) {
        continue;
      }
      FailureAnswer answer = answers.get(0);
      double margin = ends.get();
      double least =
          Math.max(MARGIN_SHARE * Math.abs(margin), MARGIN_UNITS * taught.units().lengthUnitM());
      Distractors near = new Distractors(outcome(margin));
      double room = roomM(a);
      for (double share : new double[] {-1, 2, 0.4, -2.2, 3.1, -0.4, 1.6}) {
        double wrong = Math.abs(margin) < least ? share * 2 * least : share * margin;
        if (Math.abs(wrong - margin) >= least && (-wrong < room || -margin >= room)) {
          near.add(outcome(wrong));
        }
      }
      if (near.enough()) {
        String ask =
            taught.text(
                stepped(a) ? "ask.failure-answer-first" : "ask.failure-answer",
                taught.assignment().stock().service().shortName(),
                called(a),
                taught.called(answer.brake()),
                taught.seconds(taught.assignment().policy().noticing().seconds()),
                told(a).get(0).adhesion().name());
        out.add(
            item(Subject.FAILURE_ANSWER, a, answer.askedAtM(), ask, outcome(margin), near.all()));
      }
    }
    return out;
  }

  /** How far a train can run past the target before it meets buffer stops. */
  private static double roomM(Approach a) {
    return a.target()
        .stop()
        .flatMap(Target.Stop::buffersM)
        .map(b -> b - a.target().atM())
        .orElse(Double.POSITIVE_INFINITY);
  }

  private String outcome(double shortM) {
    return shortM >= 0
        ? taught.text("answer.to-spare", taught.room(shortM))
        : taught.text("answer.past", taught.overrun(-shortM));
  }

  /** A last place that the page tells in yards before the mark has no mileage to be asked for. */
  List<Item> lastPlaces() {
    List<Item> out = new ArrayList<>();
    for (Approach a : braked) {
      Optional<Rung> rung = rung(a, BrakeSystem.Role.FALLBACK);
      Optional<Latest.Point> last = latest(a, BrakeSystem.Role.FALLBACK);
      if (rung.isEmpty()
          || last.isEmpty()
          || !taught.byMileage(last.get().printedM(), a.target())) {
        continue;
      }
      double at = last.get().printedM();
      Distractors near = new Distractors(taught.place(at));
      near.place(taught, at, a.brakingPointM().orElseThrow());
      latest(a, BrakeSystem.Role.EMERGENCY).ifPresent(p -> near.place(taught, at, p.printedM()));
      latest(a, BrakeSystem.Role.SERVICE).ifPresent(p -> near.place(taught, at, p.printedM()));
      near.placesAbout(taught, at);
      if (near.enough()) {
        String ask =
            taught.text(
                stepped(a) ? "ask.last-place-first" : "ask.last-place",
                taught.called(rung.get().brake()),
                called(a),
                told(a).get(0).adhesion().name());
        out.add(item(Subject.LAST_PLACE, a, at, ask, taught.place(at), near.all()));
      }
    }
    return out;
  }

  /** Of the first application, as its page tells. */
  private static List<CaseResult> told(Approach a) {
    return a.first().orElseThrow().told();
  }

  /** Whether it has to be said which application is meant, and for what. */
  private static boolean stepped(Approach a) {
    return a.first().orElseThrow().forStep();
  }

  private static Optional<Rung> rung(Approach a, BrakeSystem.Role role) {
    return told(a).stream().findFirst().map(CaseResult::ladder).stream()
        .flatMap(List::stream)
        .filter(r -> r.brake().role() == role)
        .findFirst();
  }

  private static Optional<Latest.Point> latest(Approach a, BrakeSystem.Role role) {
    return rung(a, role).flatMap(r -> r.latest().point());
  }
}
