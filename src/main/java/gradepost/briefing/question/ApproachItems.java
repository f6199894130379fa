package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Rung;
import gradepost.policy.Subject;
import gradepost.policy.Technique;
import gradepost.ride.RideJudge;
import gradepost.route.Landmark;
import gradepost.stock.BrakeSystem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Where to brake, how, and what if it gives nothing. */
final class ApproachItems {
  private static final double LANDMARKS_APART_M = 30;

  /** A wrong pressure differs from the right one by this many steps of the gauge. */
  private static final double LEAST_PRESSURE_STEPS = 3;

  private final BriefingFacts taught;
  private final References references;
  private final List<Plan> others;
  private final List<Approach> braked;

  ApproachItems(BriefingFacts taught, References references, List<Plan> others) {
    this.others = List.copyOf(others);
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
      others(a).forEach(o -> o.brakingPointM().ifPresent(p -> near.place(taught, at, p)));
      a.shutOffM().ifPresent(s -> near.place(taught, at, s));
      told(a).stream().skip(1).forEach(c -> c.plannedM().ifPresent(p -> near.place(taught, at, p)));
      latest(a, BrakeSystem.Role.SERVICE).ifPresent(p -> near.place(taught, at, p.printedM()));
      near.marksAbout(taught, at);
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
      others.sort(Comparator.comparingDouble(l -> Math.abs(l.atM() - right.atM())));
      // Those of other braking points first: whoever knows only that they matter cannot tell.
      others.sort(Comparator.comparing(l -> !marksOne(l, all, reach)));
      others.stream()
          .filter(
              l ->
                  l.atM() < right.atM() - LANDMARKS_APART_M
                      || l.atM() > Math.max(point, right.atM()) + LANDMARKS_APART_M)
          .limit(7)
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

  /** Whether a landmark is the last one before some braking point. */
  private boolean marksOne(
      BriefingFacts.At<Landmark> landmark, List<BriefingFacts.At<Landmark>> all, double reach) {
    return braked.stream()
        .mapToDouble(a -> a.brakingPointM().orElseThrow())
        .anyMatch(
            point ->
                landmark.atM() <= point
                    && point - landmark.atM() <= reach
                    && all.stream().noneMatch(l -> l.atM() > landmark.atM() && l.atM() <= point));
  }

  List<Item> firstPressures() {
    List<Item> out = new ArrayList<>();
    for (Approach a : braked) {
      Optional<Double> first = RideJudge.firstPressure(a);
      double usual = taught.assignment().policy().stopping().first().pascals();
      double least = LEAST_PRESSURE_STEPS * taught.units().pressureStepPa();
      if (first.isEmpty() || Math.abs(first.get() - usual) < least) {
        // What is the same everywhere, as a gauge shows it, is no knowledge of the road.
        continue;
      }
      Distractors near = new Distractors(taught.pressure(first.get()));
      near.add(taught.pressure(usual));
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

  /**
   * Where the next brake comes too late after the service brake has failed at the braking point: on
   * the first state of the rail on which that is so at some targets and not at others.
   */
  List<Item> failureAnswers() {
    int rails = braked.stream().mapToInt(a -> told(a).size()).min().orElse(0);
    for (int rail = 0; rail < rails; rail++) {
      List<WhichOf.Thing> things = new ArrayList<>();
      String ask = "";
      String askNot = "";
      for (Approach a : braked) {
        CaseResult told = told(a).get(rail);
        Optional<FailureAnswer> answer = told.answers().stream().findFirst();
        Optional<Double> ends = answer.flatMap(x -> x.met().endsShortM());
        if (stepped(a) || ends.isEmpty()) {
          continue;
        }
        String seconds = taught.seconds(taught.assignment().policy().noticing().seconds());
        String service = taught.assignment().stock().service().shortName();
        String next = taught.called(answer.orElseThrow().brake());
        String adhesion = told.adhesion().name();
        ask = taught.text("ask.failure-late", service, next, seconds, adhesion);
        askNot = taught.text("ask.failure-in-time", service, next, seconds, adhesion);
        things.add(
            new WhichOf.Thing(
                called(a), answer.get().askedAtM(), ends.get() < 0, references.approach(a)));
      }
      List<Item> items = WhichOf.items(Subject.FAILURE_ANSWER, things, ask, Optional.of(askNot));
      if (!items.isEmpty()) {
        return items;
      }
    }
    return List.of();
  }

  /** Where the brake checks the train before its braking point. */
  List<Item> checked() {
    List<WhichOf.Thing> things =
        taught.plan().approaches().stream()
            .map(
                a ->
                    new WhichOf.Thing(
                        called(a),
                        a.target().atM(),
                        a.actions().stream()
                            .flatMap(x -> x.command().brake().stream())
                            .anyMatch(Command.Brake::checks),
                        references.approach(a)))
            .toList();
    return WhichOf.items(Subject.CHECKED, things, taught.text("ask.checked"), Optional.empty());
  }

  /** Which braking begins on rail that is known to be poor, or comes to it. */
  List<Item> poorRail() {
    List<WhichOf.Thing> things =
        braked.stream()
            .map(
                a ->
                    new WhichOf.Thing(
                        called(a),
                        a.target().atM(),
                        poor(a.brakingPointM().orElseThrow(), a.target().atM()),
                        references.approach(a)))
            .toList();
    return WhichOf.items(
        Subject.POOR_RAIL,
        things,
        taught.text("ask.poor-rail"),
        Optional.of(taught.text("ask.poor-rail-not")));
  }

  private boolean poor(double fromM, double toM) {
    double train = taught.assignment().formation().lengthM();
    return taught.assignment().route().lowAdhesion().stream()
        .filter(s -> taught.applies(s.applies()))
        .anyMatch(
            s -> {
              double begins = taught.begins(s.extent());
              double ends = begins + taught.length(s.extent());
              return begins < toM && ends > fromM - train;
            });
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
      told(a).stream()
          .skip(1)
          .flatMap(c -> rung(c, BrakeSystem.Role.FALLBACK).stream())
          .flatMap(r -> r.latest().point().stream())
          .forEach(p -> near.place(taught, at, p.printedM()));
      others(a).stream()
          .filter(o -> o.first().isPresent())
          .flatMap(o -> latest(o, BrakeSystem.Role.FALLBACK).stream())
          .forEach(p -> near.place(taught, at, p.printedM()));
      near.marksAbout(taught, at);
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
    return told(a).stream().findFirst().flatMap(c -> rung(c, role));
  }

  private static Optional<Rung> rung(CaseResult rail, BrakeSystem.Role role) {
    return rail.ladder().stream().filter(r -> r.brake().role() == role).findFirst();
  }

  /** The same target with other formations. */
  private List<Approach> others(Approach a) {
    return others.stream()
        .flatMap(p -> p.approaches().stream())
        .filter(o -> taught.title(o).equals(taught.title(a)))
        .toList();
  }

  private static Optional<Latest.Point> latest(Approach a, BrakeSystem.Role role) {
    return rung(a, role).flatMap(r -> r.latest().point());
  }
}
