package gradepost.ride;

import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.policy.RideFault;
import gradepost.policy.RideRules;
import gradepost.ride.Ride.Observed;
import gradepost.ride.RideResult.Aspect;
import gradepost.ride.RideResult.Mark;
import gradepost.ride.RideResult.OfApproach;
import gradepost.ride.RideResult.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Scores a ride by the operator's rules. */
public final class RideJudge {
  /** What rounding of a typed or printed value may leave. */
  private static final double SLACK = 1e-6;

  private final Plan plan;
  private final RideRules rules;

  public RideJudge(Plan plan, RideRules rules) {
    this.plan = plan;
    this.rules = rules;
  }

  /** The score of a ride, approach by approach. */
  public RideResult judge(Ride ride) {
    return judge(ride, Map.of(), Map.of());
  }

  /**
   * The same without approaches that are left out.
   *
   * @param leftOut by the number of the approach, why it is
   * @param stopsM by the number of the approach, how far short of its mark somebody saw the train
   *     stand, which no recorder knows
   */
  public RideResult judge(Ride ride, Map<Integer, String> leftOut, Map<Integer, Measured> stopsM) {
    Map<Integer, Observed> observed = new LinkedHashMap<>();
    Optional<TiedRun> run = tied(ride);
    for (Observed o : observed(ride, run)) {
      if (!leftOut.containsKey(o.approach())) {
        observed.put(
            o.approach(), Optional.ofNullable(stopsM.get(o.approach())).map(o::stopped).orElse(o));
      }
    }
    List<OfApproach> out = new ArrayList<>();
    List<Stretches.Stretch> stretches = Stretches.of(plan);
    for (int i = 0; i < stretches.size(); i++) {
      Approach a = plan.approaches().get(i);
      Observed o = observed.getOrDefault(a.number(), Observed.nothing(a.number()));
      out.add(new OfApproach(a, firstPressure(a), o, marks(a, o, stretches.get(i).hasLength())));
    }
    List<Mark> all = out.stream().flatMap(a -> a.marks().stream()).toList();
    int seen = (int) all.stream().filter(m -> m.good().isPresent()).count();
    int points = (int) all.stream().filter(m -> m.good().orElse(false)).count();
    List<RideFault> faults = faults(out);
    return new RideResult(
        out,
        points,
        seen,
        all.size(),
        faults,
        outcome(points, seen, all.size(), faults),
        run,
        new TreeMap<>(leftOut),
        rules.overspeedFor().seconds());
  }

  /** Nothing is observed where nothing ties the recorder to the road. */
  private List<Observed> observed(Ride ride, Optional<TiedRun> run) {
    return ride.match(
        Ride.Typed::approaches,
        recorded ->
            run.map(tied -> new RecordReading(plan, rules, recorded, tied).approaches())
                .orElse(List.of()));
  }

  private Optional<TiedRun> tied(Ride ride) {
    return ride.match(
        typed -> Optional.empty(),
        recorded ->
            new Tying(plan.assignment(), recorded, rules.recorder())
                .run(plan.assignment().path().lengthM()));
  }

  /**
   * Pressure that the plan asks for at the first braking point of an approach; a check before it is
   * none.
   */
  public static Optional<Double> firstPressure(Approach a) {
    if (a.brakingPointM().isEmpty()) {
      return Optional.empty();
    }
    double from = a.brakingPointM().get() - 1;
    return a.actions().stream()
        .filter(x -> x.atM() >= from)
        .flatMap(x -> x.command().brake().stream())
        .filter(b -> !b.checks() && !b.tests())
        .map(Command.Brake::pressurePa)
        .findFirst();
  }

  /**
   * @param answers whether it answers for a stretch of the road by itself
   */
  private List<Mark> marks(Approach a, Observed o, boolean answers) {
    List<Mark> out = new ArrayList<>();
    if (a.brakingPointM().isPresent()) {
      double point = a.brakingPointM().get();
      double early = rules.early().metres() + SLACK;
      double late = rules.late().metres() + SLACK;
      out.add(
          new Mark(
              Aspect.POINT, o.brakedAtM().map(at -> at.mayBeBetween(point - early, point + late))));
      out.add(
          new Mark(
              Aspect.SPEED,
              o.brakedSpeedMps()
                  .map(
                      v -> {
                        double by =
                            rules.speedWithin().metresPerSecond() + bandMps(a, point) + SLACK;
                        return v.mayBeBetween(a.brakingSpeedMps() - by, a.brakingSpeedMps() + by);
                      })));
      firstPressure(a)
          .ifPresent(
              p ->
                  out.add(
                      new Mark(
                          Aspect.PRESSURE,
                          o.firstPressurePa()
                              .map(x -> within(x, p, rules.pressureWithin().pascals())))));
    }
    if (a.target().isStop()) {
      out.add(
          new Mark(
              Aspect.STOP,
              o.stopErrorM()
                  .flatMap(
                      e ->
                          e.between(
                              -rules.stopPast().metres() - SLACK,
                              rules.stopShort().metres() + SLACK))));
    }
    if (answers || o.over().isPresent()) {
      out.add(
          new Mark(
              Aspect.PERMISSIBLE,
              o.over().map(v -> v <= rules.overspeed().metresPerSecond() + SLACK)));
    }
    if (answers || o.forbidden().isPresent()) {
      out.add(new Mark(Aspect.HANDLES, o.forbidden().map(n -> n == 0)));
    }
    return out;
  }

  /**
   * Where a speed is held up to the brake, the train may be anywhere in its band: how wide that is,
   * m/s; 0 where something else comes last.
   */
  private static double bandMps(Approach a, double brakingM) {
    return a.actions().stream()
        .filter(x -> x.atM() < brakingM - SLACK)
        .reduce((x, later) -> later)
        .flatMap(x -> x.command().hold())
        .map(h -> h.upperMps() - h.lowerMps())
        .orElse(0.0);
  }

  private static boolean within(double a, double b, double by) {
    return Math.abs(a - b) <= by + SLACK;
  }

  private List<RideFault> faults(List<OfApproach> approaches) {
    List<RideFault> out = new ArrayList<>();
    if (approaches.stream().anyMatch(a -> a.outside(Aspect.PERMISSIBLE))) {
      out.add(RideFault.OVERSPEED);
    }
    double past = rules.stopPast().metres() + SLACK;
    if (approaches.stream()
        .anyMatch(
            a ->
                a.observed()
                    .stopErrorM()
                    .filter(e -> e.value() + e.within() < -past)
                    .isPresent())) {
      out.add(RideFault.PAST_THE_MARK);
    }
    if (approaches.stream().anyMatch(a -> a.outside(Aspect.HANDLES))) {
      out.add(RideFault.FORBIDDEN_MOVEMENT);
    }
    return out;
  }

  private Outcome outcome(int points, int observed, int possible, List<RideFault> faults) {
    if (faults.stream().anyMatch(rules.fails()::contains)) {
      return Outcome.FAILED_BY_FAULT;
    } else if (observed < rules.leastObserved() * possible - SLACK) {
      return Outcome.NO_RESULT;
    }
    return points >= rules.passScore() * observed - SLACK
        ? Outcome.PASSED
        : Outcome.BELOW_THE_SCORE;
  }
}
