package gradepost.drive;

import gradepost.drive.check.GapAudit;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Approach;
import gradepost.plan.Finding;
import gradepost.plan.Latest;
import gradepost.plan.Plan;
import gradepost.plan.SignalBraking;
import gradepost.route.BigDrop;
import gradepost.route.BoardKind;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.route.Platform;
import gradepost.route.audit.AuditFinding;
import gradepost.route.audit.AuditRule;
import gradepost.route.place.Location;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The rules of the audit that need a train: what its plan is at odds with. */
public final class TrainAudit {
  private final Assignment assignment;
  private final Path path;
  private final UnitStyle units;
  private final List<AuditFinding> out = new ArrayList<>();

  private TrainAudit(Plan plan) {
    this.assignment = plan.assignment();
    this.path = assignment.path();
    this.units = path.units();
  }

  /** In the order of travel: approaches, signals, gaps in the conductor rail. */
  public static List<AuditFinding> of(Plan plan) {
    TrainAudit audit = new TrainAudit(plan);
    plan.approaches().forEach(a -> a.findings().forEach(f -> f.match(audit.new OfApproach(a))));
    audit.start();
    plan.signals().forEach(audit::signal);
    new GapAudit(plan)
        .tooLong((gap, what, bound) -> audit.add(AuditRule.GAP_LONG, gap, "", what, bound, ""));
    return List.copyOf(audit.out);
  }

  private boolean add(
      AuditRule rule, Object element, String key, String what, String bound, String maybe) {
    out.add(new AuditFinding(rule, element, key, train(assignment) + what, bound, maybe));
    return true;
  }

  /** Whether a finding, in its own words, is one about this train in this direction. */
  public static boolean concerns(Assignment assignment, String finding) {
    return finding.startsWith(train(assignment));
  }

  /** "8-car, Down: ". */
  private static String train(Assignment assignment) {
    String direction = assignment.route().nameOf(assignment.direction());
    return assignment.formation().name() + ", " + direction + ": ";
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
          AuditRule.WARNING_LATE,
          warning(target),
          "at",
          "the warning board of %s at %s is past the braking point"
              .formatted(target.name(), path.text(late.boardM())),
          "at or before " + path.text(late.plannedM()),
          "");
    }

    @Override
    public Boolean noBoard(Finding.NoBoard none) {
      return target.match(stop -> false, this::noBoard);
    }

    private boolean noBoard(Target.Reduction fall) {
      return fall.kind() == Target.Reduction.Kind.TEMPORARY
          && Findings.isBig(fall)
          && add(
              AuditRule.BIG_DROP,
              cause(target),
              "boards",
              "%s brings the speed from %s to %s at %s without a warning board"
                  .formatted(
                      target.name(),
                      speed(fall.fromMps()),
                      speed(fall.speedMps()),
                      path.text(fall.atM())),
              BigDrop.BOUND,
              "");
    }

    @Override
    public Boolean bigDrop(Finding.BigDrop drop) {
      return false;
    }

    @Override
    public Boolean noBrakingPoint(Finding.NoBrakingPoint none) {
      return add(
          AuditRule.NO_BRAKING_POINT,
          cause(target),
          "",
          "no braking point for %s at %s on %s rail%s"
              .formatted(
                  target.name(), path.text(target.atM()), none.adhesion(), why(none.service())),
          "a braking point after the approach before",
          "");
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
          AuditRule.NEAR_BUFFERS,
          Stops.mark(assignment, stop.call().platform())
              .map(m -> (Object) m)
              .orElse(stop.call().platform()),
          "at",
          "the stop mark at %s is %s before the buffer stops"
              .formatted(called(stop.call()), units.length(near.distanceM(), Rounding.DOWN)),
          units.length(near.marginM(), Rounding.UP) + " at least, by the policy",
          "");
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
    public Boolean brakeTestTooNear(Finding.BrakeTestTooNear test) {
      return false;
    }
  }

  private static String called(Call call) {
    return "platform %s of %s".formatted(call.platform().number(), call.station().name());
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

  private String why(Latest service) {
    return service.match(
        last -> "; full service is enough if applied by " + path.text(last.printedM()),
        nowhere ->
            switch (nowhere.reason()) {
              case GRADIENT_DEFEATS_BRAKE -> ": the fall is too steep";
              case APPROACH_TOO_SHORT -> ": the approach is too short";
            });
  }

  private boolean shortPlatform(Call call, double platformM, double trainM) {
    return add(
        AuditRule.PLATFORM_SHORT,
        call.platform(),
        "",
        "%s is %s long, the train %s, and nothing is said of the doors"
            .formatted(
                called(call),
                units.length(platformM, Rounding.DOWN),
                units.length(trainM, Rounding.UP)),
        "doors: what is done with the doors off the platform",
        "");
  }

  private boolean noMark(Call call) {
    return add(
        AuditRule.MARK_MISSING,
        call.platform(),
        "stop-marks",
        "%s has no mark for %d cars".formatted(called(call), assignment.formation().cars()),
        "a stop mark for every formation of the pack",
        "");
  }

  private void signal(SignalBraking signal) {
    if (signal.caution().isEmpty() || signal.plannedMps() < 0.5) {
      return;
    }
    String needs =
        signal.needs().stream()
            .filter(need -> need.needM() > signal.availableM())
            .map(need -> "the %s brake %s".formatted(need.brake().name(), length(need.needM())))
            .collect(Collectors.joining(", "));
    if (!needs.isEmpty()) {
      add(
          AuditRule.SIGNAL_SPACING,
          signal.signal(),
          "at",
          "from the warning of %s to the stand before %s there are %s, too few to stop"
              .formatted(
                  signal.caution().get().id(),
                  signal.signal().id(),
                  units.length(Math.max(0, signal.availableM()), Rounding.DOWN)),
          "room in full service from %s: %s".formatted(speed(signal.ceilingMps()), needs),
          "");
    }
  }

  private String length(double metres) {
    return Double.isInfinite(metres)
        ? "more than the gradient leaves it"
        : units.length(metres, Rounding.UP);
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

  private String speed(double mps) {
    return units.speed(mps, Rounding.NEAREST);
  }
}
