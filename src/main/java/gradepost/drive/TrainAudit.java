package gradepost.drive;

import gradepost.drive.check.CueAudit;
import gradepost.drive.check.GapAudit;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Approach;
import gradepost.plan.BookedLeg;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.SignalBraking;
import gradepost.route.BoardKind;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.LineHoles.Place;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.route.audit.AuditFinding;
import gradepost.route.audit.AuditText;
import gradepost.route.audit.AuditText.PlatformOf;
import gradepost.route.audit.AuditText.Train;
import gradepost.route.place.Location;
import gradepost.route.station.Platform;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.text.Mistake;
import gradepost.units.Length;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The rules of the audit that need a train: what its plan is at odds with. */
public final class TrainAudit {
  private final Assignment assignment;
  private final Path path;
  private final UnitStyle units;
  private final Train train;
  private final List<AuditFinding> out = new ArrayList<>();

  private TrainAudit(Plan plan) {
    this.assignment = plan.assignment();
    this.path = assignment.path();
    this.units = path.units();
    this.train = train(assignment);
  }

  /**
   * In the order of travel: approaches, signals, gaps in the conductor rail, booked times of a
   * train whose brake is whole, cues.
   */
  public static List<AuditFinding> of(Plan plan) {
    TrainAudit audit = new TrainAudit(plan);
    plan.approaches().forEach(a -> a.findings().forEach(f -> f.match(audit.new OfApproach(a))));
    audit.start();
    plan.signals().forEach(audit::signal);
    new GapAudit(plan, audit.train).tooLong((gap, what) -> audit.add(what, gap, ""));
    if (audit.assignment.degraded().isEmpty()) {
      BookedLeg.of(plan).stream().filter(leg -> leg.lateS() > 0).forEach(audit::late);
    }
    new CueAudit(plan, audit.train)
        .missing(what -> audit.add(what, audit.assignment.route(), "landmarks"));
    return List.copyOf(audit.out);
  }

  private boolean add(Mistake what, Object element, String key) {
    out.add(new AuditFinding(what, element, key));
    return true;
  }

  /** Whether a finding, in its own words, is one about this train in this direction. */
  public static boolean concerns(Assignment assignment, String finding) {
    return finding.startsWith(train(assignment).inWords() + ": ");
  }

  /** With the edition beside the train, where there is one; every finding begins with it. */
  private static Train train(Assignment assignment) {
    return new Train(assignment.trainName(), assignment.route().nameOf(assignment.direction()));
  }

  /** Whether a finding of an approach is one for the audit; many are the driver's alone. */
  private final class OfApproach implements Finding.Cases<Boolean> {
    private final Target.OfApproach target;

    OfApproach(Approach approach) {
      this.target = approach.target();
    }

    @Override
    public Boolean boardTooLate(Finding.BoardTooLate late) {
      return add(
          AuditText.WARNING_LATE.with(
              train, target.name(), place(late.boardM()), place(late.plannedM())),
          warning(target),
          "at");
    }

    @Override
    public Boolean noBoard(Finding.NoBoard none) {
      return target.match(stop -> false, this::noBoard);
    }

    private boolean noBoard(Target.Reduction fall) {
      return fall.kind() == Target.Reduction.Kind.TEMPORARY
          && Findings.isBig(fall)
          && add(
              AuditText.BIG_DROP_NOTICE.with(
                  train,
                  target.name(),
                  speed(fall.fromMps()),
                  speed(fall.speedMps()),
                  place(fall.atM())),
              cause(target),
              "boards");
    }

    @Override
    public Boolean bigDrop(Finding.BigDrop drop) {
      return false;
    }

    @Override
    public Boolean noBrakingPoint(Finding.NoBrakingPoint none) {
      Place place = place(target.atM());
      return add(why(none, target.name(), place), cause(target), "");
    }

    @Override
    public Boolean platformTooShort(Finding.PlatformTooShort s) {
      return target
          .stop()
          .map(Target.Stop::call)
          .filter(call -> call.platform().doorInstruction().isBlank())
          .filter(call -> shortPlatform(call, s.platformM(), s.trainM()))
          .isPresent();
    }

    @Override
    public Boolean noStopMark(Finding.NoStopMark none) {
      return target.stop().filter(stop -> noMark(stop.call())).isPresent();
    }

    @Override
    public Boolean nearBuffers(Finding.NearBuffers near) {
      return target.stop().filter(stop -> nearBuffers(stop, near)).isPresent();
    }

    private boolean nearBuffers(Target.Stop stop, Finding.NearBuffers near) {
      return add(
          AuditText.NEAR_BUFFERS.with(
              train,
              at(stop.call()),
              new InUnits<>(units, near.distanceM()),
              length(near.marginM())),
          Stops.mark(assignment, stop.call().platform())
              .map(m -> (Object) m)
              .orElse(stop.call().platform()),
          "at");
    }

    @Override
    public Boolean lessToGive(Finding.LessToGive less) {
      return false;
    }

    @Override
    public Boolean atBuffers(Finding.AtBuffers buffers) {
      return false;
    }

    @Override
    public Boolean oftenLate(Finding.OftenLate late) {
      return false;
    }

    @Override
    public Boolean sometimesNotHeld(Finding.SometimesNotHeld not) {
      return false;
    }

    @Override
    public Boolean lateThough(Finding.LateThough late) {
      return false;
    }

    @Override
    public Boolean noRoomForTest(Finding.NoRoomForTest test) {
      return false;
    }

    @Override
    public Boolean testInstead(Finding.TestInstead instead) {
      return false;
    }

    @Override
    public Boolean testOnRail(Finding.TestOnRail test) {
      return false;
    }

    @Override
    public Boolean nextFirst(Finding.NextFirst first) {
      return false;
    }

    @Override
    public Boolean fullAgain(Finding.FullAgain full) {
      return false;
    }

    @Override
    public Boolean ruleBroken(Finding.RuleBroken rule) {
      return false;
    }
  }

  private static PlatformOf at(Call call) {
    return new PlatformOf(call.station(), call.platform());
  }

  /** Where the run starts there is no approach; its platform is looked at all the same. */
  private void start() {
    Call first = assignment.calls().get(0);
    Platform platform = first.platform();
    double length = Stops.platformEndM(path, platform) - Stops.platformStartM(path, platform);
    if (length < assignment.formation().lengthM() - 0.01 && platform.doorInstruction().isBlank()) {
      shortPlatform(first, length, assignment.formation().lengthM());
    }
    if (Stops.mark(assignment, platform).isEmpty()) {
      noMark(first);
    }
  }

  private Mistake why(Finding.NoBrakingPoint none, String name, Place at) {
    String rail = none.adhesion();
    return none.service()
        .match(
            last ->
                AuditText.NO_BRAKING_POINT_FULL_SERVICE.with(
                    train, name, at, rail, place(last.printedM())),
            nowhere ->
                switch (nowhere.reason()) {
                  case GRADIENT_DEFEATS_BRAKE ->
                      AuditText.NO_BRAKING_POINT_TOO_STEEP.with(train, name, at, rail);
                  case APPROACH_TOO_SHORT ->
                      AuditText.NO_BRAKING_POINT_TOO_SHORT.with(train, name, at, rail);
                });
  }

  private boolean shortPlatform(Call call, double platformM, double trainM) {
    return add(
        AuditText.PLATFORM_SHORT.with(train, at(call), length(platformM), length(trainM)),
        call.platform(),
        "");
  }

  private boolean noMark(Call call) {
    return add(
        AuditText.MARK_MISSING.with(train, at(call), assignment.formation().cars()),
        call.platform(),
        "stop-marks");
  }

  private void late(BookedLeg leg) {
    add(
        AuditText.BOOKED_TIME.with(
            train,
            leg.from().station().name(),
            leg.to().station().name(),
            leg.booked().seconds(),
            leg.planned().seconds()),
        leg.to(),
        "booked");
  }

  private void signal(SignalBraking signal) {
    if (signal.caution().isEmpty() || signal.plannedMps() < 0.5) {
      return;
    }
    List<AuditText.Need> needs =
        signal.needs().stream()
            .filter(need -> need.needM() > signal.availableM())
            .map(this::needed)
            .toList();
    if (!needs.isEmpty()) {
      add(
          AuditText.SIGNAL_SPACING.with(
              train,
              length(Math.max(0, signal.availableM())),
              signal.caution().get().id(),
              signal.signal().id(),
              speed(signal.ceilingMps()),
              needs),
          signal.signal(),
          "at");
    }
  }

  private AuditText.Need needed(SignalBraking.Need need) {
    return new AuditText.Need(
        need.brake().name(),
        Optional.of(need.needM()).filter(m -> !Double.isInfinite(m)).map(this::length));
  }

  private Place place(double metres) {
    return Place.of(path, metres);
  }

  private InUnits<Length> length(double metres) {
    return InUnits.metres(units, metres);
  }

  /** The board itself, as it was read. */
  private Object warning(Target.OfApproach target) {
    Optional<Location> place = target.match(stop -> Optional.empty(), Target.Reduction::warning);
    return Targets.boards(assignment, target.name()).stream()
        .filter(b -> b.kind() == BoardKind.WARNING && b.direction() == assignment.direction())
        .filter(b -> place.filter(p -> p.equals(b.location())).isPresent())
        .map(b -> (Object) b)
        .findFirst()
        .orElse(cause(target));
  }

  /** What makes the target, as it was read. */
  private Object cause(Target.OfApproach target) {
    return target.match(stop -> stop.call().platform(), this::cause);
  }

  private Object cause(Target.Reduction target) {
    for (TemporaryRestriction r : assignment.restrictions()) {
      if (r.reference().equals(target.name())) {
        return r;
      }
    }
    for (PermanentRestriction r : assignment.route().restrictions()) {
      if (r.name().equals(target.name())) {
        return r;
      }
    }
    return assignment.route().junctions().stream()
        .filter(j -> j.name().equals(target.name()))
        .map(j -> (Object) j)
        .findFirst()
        .orElse(assignment);
  }

  private InUnits<Speed> speed(double mps) {
    return InUnits.metresPerSecond(units, mps);
  }
}
