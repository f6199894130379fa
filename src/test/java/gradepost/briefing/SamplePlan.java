package gradepost.briefing;

import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Cues;
import gradepost.plan.Finding;
import gradepost.plan.LatestCurve;
import gradepost.plan.Plan;
import gradepost.plan.Spread;
import gradepost.plan.Trace;
import gradepost.plan.TrainFigures;
import gradepost.plan.Trigger;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Met;
import gradepost.plan.fallback.Rung;
import gradepost.policy.AdhesionCase;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A plan made up by hand: plain constant accelerations, invented answers. It says nothing about how
 * a train moves; it only has every kind of value that a paper must be able to print.
 */
public final class SamplePlan {
  private static final Spread SPREAD =
      new Spread(
          Optional.of(-29.3),
          Optional.of(-17.1),
          Optional.of(1.2),
          Optional.of(34.8),
          0.41,
          0,
          500,
          new Spread.Corrected(
              Optional.of(-9.3), Optional.of(1.2), Optional.of(14.8), 0.002, 0.013, false, 0.41));

  private static final double GRID = 10;
  private static final double BRAKE = 0.55;
  private final SampleRoute sample;
  private final Route route;
  private final Path path;
  private final Stock stock = SampleRoute.stock();
  private final List<CeilingStep> ceiling;
  private final List<Target.OfApproach> targets = new ArrayList<>();
  private final List<Trace.Point> points = new ArrayList<>();
  private final List<Call> calls = new ArrayList<>();

  private SamplePlan(UnitStyle units) {
    this.sample = new SampleRoute(units);
    this.route = sample.route();
    this.path = new Path(route, Direction.FORWARD);
    this.ceiling =
        List.of(
            step(0, 3000, 45, "Valley line"),
            step(3000, 7000, 60, "Valley line"),
            step(7000, 7580, 25, "Mill curve"),
            step(7580, 10100, 60, "Valley line"),
            step(10100, 10280, 50, "Millbeck Junction"),
            step(10280, 12600, 60, "Valley line"),
            step(12600, 12980, 20, "T 26/104"),
            step(12980, 14900, 60, "Valley line"),
            step(14900, 15040, 15, "Harbour Swing Bridge"),
            step(15040, path.lengthM(), 40, "Harbour line"));
    for (int i = 0; i < SampleRoute.stations(); i++) {
      calls.add(
          new Call(
              route.stations().get(i), route.stations().get(i).platforms().get(0), new Span(30)));
    }
  }

  public static Plan of(UnitStyle units) {
    return new SamplePlan(units).plan();
  }

  private static CeilingStep step(double from, double to, double mph, String cause) {
    return new CeilingStep(from, to, Speed.ofMph(mph).metresPerSecond(), cause);
  }

  private double markOf(int i) {
    return path.metresAt(calls.get(i).platform().stopMarks().get(0).location());
  }

  private Plan plan() {
    for (int i = 1; i < calls.size(); i++) {
      addReductions(markOf(i - 1), markOf(i));
      Call call = calls.get(i);
      boolean last = i == calls.size() - 1;
      targets.add(
          new Target.Stop(
              call.station().name(),
              call,
              "4-car mark",
              markOf(i),
              markOf(i) - 110,
              markOf(i) + 60,
              last ? Optional.of(markOf(i) + 80) : Optional.empty()));
    }
    run();
    List<Approach> approaches = new ArrayList<>();
    List<Action> actions = new ArrayList<>();
    double from = markOf(0);
    for (Target.OfApproach t : targets) {
      Approach a = approach(approaches.size() + 1, t, from);
      approaches.add(a);
      actions.addAll(a.actions());
      from = t.atM();
    }
    Assignment assignment =
        new Assignment(
            route,
            Direction.FORWARD,
            Set.of("Down Main"),
            Map.of(),
            calls,
            stock,
            stock.formations().get(0),
            LoadCase.SEATED,
            SampleRoute.policy(),
            List.of(sample.temporary()));
    double time = points.get(points.size() - 1).timeS();
    return new Plan(
        assignment,
        ceiling,
        approaches,
        actions,
        new Trace(points),
        time,
        4.2e8,
        actions.size(),
        new Plan.Cost(time * 0.96, 5e8, actions.size() + 9, List.of()),
        List.of(),
        List.of(),
        brakeTests(),
        new TrainFigures(List.of(), List.of(), List.of(), List.of()));
  }

  private List<BrakeTest> brakeTests() {
    return route.brakeTests().stream()
        .filter(t -> t.direction() == Direction.FORWARD)
        .map(
            t -> {
              double at = path.metresAt(t.location());
              double planned =
                  points.stream().filter(p -> p.atM() >= at).findFirst().orElseThrow().speedMps();
              return new BrakeTest(
                  t,
                  at,
                  planned,
                  103_000,
                  5,
                  t.speed().metresPerSecond() - 1,
                  0.2,
                  at + 85,
                  Optional.empty());
            })
        .toList();
  }

  private void addReductions(double from, double to) {
    for (int i = 1; i < ceiling.size(); i++) {
      CeilingStep s = ceiling.get(i);
      double before = ceiling.get(i - 1).speedMps();
      if (s.fromM() > from && s.fromM() < to && s.speedMps() < before) {
        boolean notice = s.cause().startsWith("T ");
        Location warning = path.locationAt(s.fromM() - 700);
        targets.add(
            new Target.Reduction(
                s.cause(),
                notice
                    ? Target.Reduction.Kind.TEMPORARY
                    : s.cause().contains("Junction")
                        ? Target.Reduction.Kind.JUNCTION
                        : Target.Reduction.Kind.PERMANENT,
                s.cause(),
                s.fromM(),
                s.speedMps(),
                before,
                i == 8 ? Optional.empty() : Optional.of(warning),
                i == 8 ? Optional.empty() : Optional.of(s.fromM() - 700)));
      }
    }
  }

  private double ceilingAt(double m) {
    return ceiling.stream()
        .filter(s -> m >= s.fromM() && m <= s.toM())
        .mapToDouble(CeilingStep::speedMps)
        .min()
        .orElse(10);
  }

  private void run() {
    double start = markOf(0);
    double end = markOf(calls.size() - 1);
    int n = (int) Math.ceil((end - start) / GRID);
    double[] v = new double[n + 1];
    for (int i = 1; i <= n; i++) {
      double m = start + (end - start) * i / n;
      double most = Math.min(ceilingAt(m), ceilingAt(Math.min(end, m + GRID))) - 0.4;
      v[i] = stopsNear(m) ? 0 : Math.min(most, Math.sqrt(v[i - 1] * v[i - 1] + 2 * 0.45 * GRID));
    }
    v[n] = 0;
    for (int i = n - 1; i >= 0; i--) {
      v[i] = Math.min(v[i], Math.sqrt(v[i + 1] * v[i + 1] + 2 * BRAKE * GRID));
    }
    double t = 0;
    points.add(new Trace.Point(0, start, 0, 0, 0));
    for (int i = 1; i <= n; i++) {
      double m = start + (end - start) * i / n;
      t += 2 * GRID / Math.max(0.8, v[i] + v[i - 1]);
      boolean braking = v[i] < v[i - 1];
      points.add(
          new Trace.Point(
              t, m, v[i], braking ? Pressure.ofPsi(v[i] < 5 ? 12 : 28).pascals() : 0, -1));
    }
  }

  private boolean stopsNear(double m) {
    return targets.stream()
        .anyMatch(t -> t instanceof Target.Stop && Math.abs(t.atM() - m) <= GRID / 2);
  }

  private double speedAt(double m) {
    return points.stream()
        .filter(p -> p.atM() >= m)
        .findFirst()
        .map(Trace.Point::speedMps)
        .orElse(0.0);
  }

  private double timeAt(double m) {
    return points.stream()
        .filter(p -> p.atM() >= m)
        .findFirst()
        .map(Trace.Point::timeS)
        .orElse(points.get(points.size() - 1).timeS());
  }

  private Approach approach(int number, Target.OfApproach t, double from) {
    double braking = t.atM() - (t instanceof Target.Stop ? 25 : 5);
    while (braking > from + 60 && speedAt(braking - GRID) > speedAt(braking) - 1e-9) {
      braking -= GRID;
    }
    boolean needs = speedAt(braking) > t.speedMps() + 1 && number != 6;
    double bp = path.printedAtOrBefore(braking - 20);
    double v = speedAt(bp);
    List<Action> actions = new ArrayList<>();
    if (from < t.atM() - 800 && speedAt(from) < 1) {
      actions.add(act(number, new Trigger.AtPlace(from), new Command.Power(3), from));
      double off = path.printedAtOrBefore(Math.max(from + 200, bp - 250));
      actions.add(act(number, new Trigger.SpeedUpTo(speedAt(off)), new Command.ShutOff(), off));
    }
    if (needs) {
      brakeActions(number, t, bp, actions);
    }
    List<Finding> findings = new ArrayList<>();
    if (t instanceof Target.Reduction r && r.fromMps() > 1.5 * r.speedMps()) {
      findings.add(new Finding.BigDrop(r.fromMps(), r.speedMps()));
      if (r.warning().isEmpty()) {
        findings.add(new Finding.NoBoard());
      } else {
        findings.add(new Finding.BoardTooLate(bp + 40, bp));
      }
    }
    if (number == 3) {
      findings.add(new Finding.PlatformTooShort(150, 165, "rear car locked out by the guard"));
    }
    return new Approach(
        number,
        t,
        from,
        Optional.of(path.printedAtOrBefore(Math.max(from, bp - 250))),
        v,
        t.atM() - 1.5,
        actions,
        needs ? List.of(application(t, bp, v, number)) : List.of(),
        Optional.empty(),
        needs ? Optional.of(SPREAD) : Optional.empty(),
        findings);
  }

  private Application application(Target t, double bp, double v, int number) {
    return new Application(
        t,
        bp + 12.3,
        bp,
        Application.SetBy.COMPUTED,
        route.landmarks().stream()
            .filter(
                l -> path.metresAt(l.location()) <= bp && path.metresAt(l.location()) > bp - 200)
            .findFirst(),
        new Cues(Optional.empty(), Optional.empty(), 0),
        v,
        Pressure.ofPsi(29).pascals(),
        t.atM() - 1.5,
        cases(t, bp, number),
        List.of(),
        Optional.empty(),
        curves(t, bp, v),
        List.of());
  }

  private void brakeActions(int number, Target t, double bp, List<Action> actions) {
    double length = t.atM() - bp;
    actions.add(act(number, new Trigger.AtPlace(bp), brake(15, Command.Stage.FIRST), bp));
    actions.add(
        act(number, new Trigger.After(4), brake(29, Command.Stage.MAIN), bp + 0.15 * length));
    double ease = bp + 0.8 * length;
    actions.add(
        act(number, new Trigger.SpeedDownTo(speedAt(ease)), brake(12, Command.Stage.EASE), ease));
    if (t instanceof Target.Stop) {
      actions.add(act(number, new Trigger.Standstill(), new Command.Stand(), t.atM() - 1.5));
    } else {
      actions.add(
          act(number, new Trigger.SpeedDownTo(t.speedMps()), new Command.Release(), t.atM() - 20));
    }
  }

  /** What is done on one rail, with less pressure than on a better one. */
  private List<Action> technique(Target t, double at, double share, int number) {
    return List.of(
        act(number, new Trigger.AtPlace(at), brake(15 * share, Command.Stage.FIRST), at),
        act(number, new Trigger.After(4), brake(29 * share, Command.Stage.MAIN), at + 50),
        act(
            number,
            new Trigger.SpeedDownTo(t.speedMps()),
            t instanceof Target.Stop ? new Command.Stand() : new Command.Release(),
            t.atM() - 20));
  }

  private static Command brake(double psi, Command.Stage stage) {
    return new Command.Brake(Pressure.ofPsi(psi).pascals(), stage);
  }

  private Action act(int number, Trigger trigger, Command command, double at) {
    return new Action(number, trigger, command, at, speedAt(at), timeAt(at));
  }

  private List<CaseResult> cases(Target t, double bp, int number) {
    List<CaseResult> out = new ArrayList<>();
    double share = 1;
    for (AdhesionCase c : SampleRoute.policy().adhesion()) {
      double planned = path.printedAtOrBefore(bp - (1 - share) * 300);
      List<Rung> ladder = new ArrayList<>();
      List<FailureAnswer> answers = new ArrayList<>();
      double later = 190 * share;
      for (BrakeSystem b : stock.brakes()) {
        double exact = planned + later;
        boolean none = share < 0.6 && b.role() == BrakeSystem.Role.FALLBACK && number == 2;
        ladder.add(
            new Rung(
                b,
                none
                    ? new Latest.Nowhere(Latest.Reason.GRADIENT_DEFEATS_BRAKE)
                    : new Latest.Point(
                        exact,
                        path.printedAtOrBefore(exact),
                        speedAt(exact),
                        timeAt(exact) - timeAt(planned))));
        if (b.role() != BrakeSystem.Role.SERVICE) {
          double spare = later - 80 - (number % 3 == 0 ? 70 : 0);
          answers.add(
              new FailureAnswer(
                  b,
                  planned + 40,
                  speedAt(planned),
                  new Met.At(spare),
                  spare >= 0 ? t.speedMps() : t.speedMps() + 4));
        }
        later -= 55;
      }
      out.add(
          new CaseResult(
              c,
              Optional.of(planned),
              Pressure.ofPsi(29 * share).pascals(),
              technique(t, planned, share, number),
              true,
              ladder,
              answers,
              number == 4 ? Optional.empty() : Optional.of(path.printedAtOrBefore(planned - 60)),
              Optional.of(3.4)));
      share -= 0.25;
    }
    return out;
  }

  private List<LatestCurve> curves(Target t, double bp, double v) {
    List<LatestCurve> out = new ArrayList<>();
    double[] later = {190, 130, 165};
    for (int i = 0; i < 3; i++) {
      double at = bp + later[i];
      double b = (v * v - t.speedMps() * t.speedMps()) / (2 * Math.max(30, t.atM() - at));
      List<Trace.Point> list = new ArrayList<>();
      for (double m = at; m <= t.atM(); m += 8) {
        list.add(new Trace.Point(0, m, Math.sqrt(Math.max(0, v * v - 2 * b * (m - at))), 0, -1));
      }
      out.add(new LatestCurve(stock.brakes().get(i), new Trace(list)));
    }
    return out;
  }
}
