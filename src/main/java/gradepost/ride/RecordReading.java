package gradepost.ride;

import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.policy.RideRules;
import gradepost.ride.Ride.Observed;
import gradepost.ride.Stretches.Stretch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads out of a recorder's export what an assessor would have written down. */
final class RecordReading {
  private final Plan plan;
  private final RideRules rules;
  private final Ride.Recorded ride;
  private final TiedRun run;
  private final List<Stretch> stretches;

  RecordReading(Plan plan, RideRules rules, Ride.Recorded ride, TiedRun run) {
    this.plan = plan;
    this.rules = rules;
    this.ride = ride;
    this.run = run;
    stretches = Stretches.of(plan);
  }

  List<Observed> approaches() {
    List<Excess> excesses = new Excesses(plan, rules, run).all();
    double on = BrakeReading.ON_SHARE * plan.assignment().policy().stopping().first().pascals();
    List<ForbiddenMovement> movements =
        new HandleReading(plan.assignment().stock().traction(), rules, on, run).all();
    BrakeReading brakes = new BrakeReading(plan, run);
    List<Observed> out = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      out.add(approach(plan.approaches().get(i), stretches.get(i), brakes, excesses, movements));
    }
    return out;
  }

  private Observed approach(
      Approach a,
      Stretch stretch,
      BrakeReading brakes,
      List<Excess> excesses,
      List<ForbiddenMovement> movements) {
    double from = Math.max(stretch.fromM(), run.firstM());
    double to =
        Math.min(stretch.toM(), plan.trace().points().get(plan.trace().points().size() - 1).atM());
    Optional<BrakeReading.Read> brake =
        ride.pressures() ? brakes.of(a, Math.min(from, a.fromM()), to) : Optional.empty();
    List<Excess> over = excesses.stream().filter(e -> stretch.holds(e.fromM())).toList();
    List<ForbiddenMovement> moved = movements.stream().filter(m -> stretch.holds(m.atM())).toList();
    boolean whole =
        stretch.hasLength()
            && run.observed(from, Math.min(to, run.lastM()))
            && run.lastM() >= to - SHORT_M;
    double most = over.stream().filter(this::counts).mapToDouble(Excess::mostMps).max().orElse(0);
    return new Observed(
        a.number(),
        brake.map(BrakeReading.Read::atM),
        brake.map(BrakeReading.Read::speedMps),
        brake.map(BrakeReading.Read::firstPa),
        stopError(a),
        whole || most > 0 ? Optional.of(most) : Optional.empty(),
        ride.notches() && (whole || !moved.isEmpty())
            ? Optional.of(moved.size())
            : Optional.empty(),
        over,
        moved);
  }

  /** A leg may differ so much more from the usual scale than any other does. */
  private static final double UNLIKE = 3;

  /** A train may stand so far short of its last mark. */
  private static final double SHORT_M = 100;

  /** Whether an excess lasted as long as counts, over by as much as counts. */
  private boolean counts(Excess excess) {
    return excess.countsS() >= rules.overspeedFor().seconds();
  }

  /**
   * How far short of its mark the train stood: the tie has laid it on the mark, so that only the
   * scale of the other legs tells, as well as they are alike.
   */
  private Optional<Measured> stopError(Approach a) {
    if (!a.target().isStop()) {
      return Optional.empty();
    }
    List<Leg> legs = run.legs();
    Optional<Leg> here =
        legs.stream().filter(l -> Math.abs(l.toM() - a.target().atM()) < 1).findFirst();
    List<Leg> others = legs.stream().filter(l -> !here.equals(Optional.of(l))).toList();
    if (here.isEmpty() || !here.get().trusted() || others.size() < 2) {
      return Optional.empty();
    }
    Leg leg = here.get();
    double scale = RoadTie.middle(others.stream().mapToDouble(Leg::scale).toArray());
    double spread = others.stream().mapToDouble(l -> Math.abs(l.scale() - scale)).max().orElse(0);
    // What slips or slides shows in how unlike the other legs are.
    double slip =
        others.stream()
            .filter(l -> l.slipsM() > 0)
            .mapToDouble(l -> Math.abs(l.scale() - scale) * l.countedM() / l.slipsM())
            .max()
            .orElse(0);
    double within =
        UNLIKE * spread * leg.countedM()
            + Math.min(UNLIKE * slip, rules.recorder().slip()) * leg.slipsM()
            + 2 * run.withinAt(leg.toM());
    return Optional.of(new Measured(leg.toM() - leg.fromM() - leg.countedM() * scale, within));
  }
}
