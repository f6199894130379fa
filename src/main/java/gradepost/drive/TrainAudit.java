package gradepost.drive;

import gradepost.drive.check.CueAudit;
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
import gradepost.route.Route;
import gradepost.route.audit.AuditFinding;
import gradepost.route.audit.AuditText;
import gradepost.route.place.Location;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

  /** In the order of travel: approaches, signals, gaps in the conductor rail, cues. */
  public static List<AuditFinding> of(Plan plan) {
    TrainAudit audit = new TrainAudit(plan);
    plan.approaches().forEach(a -> a.findings().forEach(f -> f.match(audit.new OfApproach(a))));
    audit.start();
    plan.signals().forEach(audit::signal);
    new GapAudit(plan).tooLong((gap, text, values) -> audit.add(text, gap, "", values));
    new CueAudit(plan)
        .missing((text, values) -> audit.add(text, audit.route(), "landmarks", values));
    return List.copyOf(audit.out);
  }

  private Route route() {
    return assignment.route();
  }

  private boolean add(AuditText text, Object element, String key, Map<String, String> values) {
    Map<String, String> all = new HashMap<>(values);
    all.put("train", train(assignment));
    out.add(new AuditFinding(text, element, key, all));
    return true;
  }

  /** Whether a finding, in its own words, is one about this train in this direction. */
  public static boolean concerns(Assignment assignment, String finding) {
    return finding.startsWith(train(assignment) + ": ");
  }

  /** "8-car, Down"; every finding begins with it. */
  private static String train(Assignment assignment) {
    String direction = assignment.route().nameOf(assignment.direction());
    return assignment.formation().name() + ", " + direction;
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
          AuditText.WARNING_LATE,
          warning(target),
          "at",
          Map.of(
              "name", target.name(),
              "place", path.text(late.boardM()),
              "latest", path.text(late.plannedM())));
    }

    @Override
    public Boolean noBoard(Finding.NoBoard none) {
      return target.match(stop -> false, this::noBoard);
    }

    private boolean noBoard(Target.Reduction fall) {
      return fall.kind() == Target.Reduction.Kind.TEMPORARY
          && Findings.isBig(fall)
          && add(
              AuditText.BIG_DROP_NOTICE,
              cause(target),
              "boards",
              Map.of(
                  "notice", target.name(),
                  "from", speed(fall.fromMps()),
                  "to", speed(fall.speedMps()),
                  "place", path.text(fall.atM()),
                  "mph", BigDrop.far(UnitStyle.MILES),
                  "km-h", BigDrop.far(UnitStyle.METRIC)));
    }

    @Override
    public Boolean bigDrop(Finding.BigDrop drop) {
      return false;
    }

    @Override
    public Boolean noBrakingPoint(Finding.NoBrakingPoint none) {
      Map<String, String> values = new HashMap<>();
      values.put("target", target.name());
      values.put("place", path.text(target.atM()));
      values.put("rail", none.adhesion());
      return add(why(none.service(), values), cause(target), "", values);
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
          AuditText.NEAR_BUFFERS,
          Stops.mark(assignment, stop.call().platform())
              .map(m -> (Object) m)
              .orElse(stop.call().platform()),
          "at",
          called(
              stop.call(),
              Map.of(
                  "distance", units.length(near.distanceM(), Rounding.DOWN),
                  "margin", units.length(near.marginM(), Rounding.UP))));
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

    @Override
    public Boolean ruleBroken(Finding.RuleBroken rule) {
      return false;
    }
  }

  private static Map<String, String> called(Call call, Map<String, String> more) {
    Map<String, String> values = new HashMap<>(more);
    values.put("platform", call.platform().number());
    values.put("station", call.station().name());
    return values;
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

  private AuditText why(Latest service, Map<String, String> values) {
    return service.match(
        last -> {
          values.put("latest", path.text(last.printedM()));
          return AuditText.NO_BRAKING_POINT_FULL_SERVICE;
        },
        nowhere ->
            switch (nowhere.reason()) {
              case GRADIENT_DEFEATS_BRAKE -> AuditText.NO_BRAKING_POINT_TOO_STEEP;
              case APPROACH_TOO_SHORT -> AuditText.NO_BRAKING_POINT_TOO_SHORT;
            });
  }

  private boolean shortPlatform(Call call, double platformM, double trainM) {
    return add(
        AuditText.PLATFORM_SHORT,
        call.platform(),
        "",
        called(
            call,
            Map.of(
                "length", units.length(platformM, Rounding.DOWN),
                "needed", units.length(trainM, Rounding.UP))));
  }

  private boolean noMark(Call call) {
    return add(
        AuditText.MARK_MISSING,
        call.platform(),
        "stop-marks",
        called(call, Map.of("cars", String.valueOf(assignment.formation().cars()))));
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
          AuditText.SIGNAL_SPACING,
          signal.signal(),
          "at",
          Map.of(
              "warning", signal.caution().get().id(),
              "signal", signal.signal().id(),
              "available", units.length(Math.max(0, signal.availableM()), Rounding.DOWN),
              "speed", speed(signal.ceilingMps()),
              "needs", needs));
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
