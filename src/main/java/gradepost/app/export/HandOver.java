package gradepost.app.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import gradepost.motion.CurvePiece;
import gradepost.motion.LowAdhesionRail;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.Track;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.plan.Plan;
import gradepost.route.Path;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.stock.WorkingBrakes;
import gradepost.task.Assignment;
import gradepost.task.DegradedRun;
import gradepost.units.Exact;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Everything that one stage handed to the next, resolved, as one JSON file: enough to work out a
 * braking point again with a solver of one's own. SI units, named in each field.
 */
public final class HandOver {
  private static final int VERSION = 3;

  /**
   * All that a plan is made from and comes out with, as JSON.
   *
   * @param fingerprint of the inputs that the plan was made from
   */
  public static byte[] of(Plan plan, String fingerprint) {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("gradepost", "hand-over");
    all.put("version", VERSION);
    all.put("fingerprint", fingerprint);
    all.put("assignment", assignment(plan.assignment()));
    all.put("track", track(plan.assignment().path()));
    all.put("ceiling", plan.ceiling());
    all.put("train", train(plan.assignment()));
    all.put(
        "lowAdhesionSites",
        LowAdhesionRail.stretches(plan.assignment().path(), plan.assignment().lines()));
    all.put("policy", plan.assignment().policy());
    all.put("plan", run(plan));
    all.put("approaches", plan.approaches());
    return bytes(all);
  }

  private static Map<String, Object> assignment(Assignment assignment) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("route", assignment.route().name());
    out.put("direction", assignment.route().nameOf(assignment.direction()));
    out.put("lines", assignment.lines());
    out.put("junctionRoutes", assignment.junctionRoutes());
    out.put("formation", assignment.formation().name());
    out.put("load", assignment.load());
    out.put("calls", assignment.calls());
    out.put("temporaryRestrictions", assignment.restrictions());
    assignment.degraded().ifPresent(run -> out.put("edition", edition(assignment, run)));
    return out;
  }

  /**
   * What is special in the run of an edition.
   *
   * @param serviceOutOn vehicles on which the service brake does not work, from the front
   * @param isolated vehicles whose brake is isolated, from the front
   */
  record EditionOfRun(
      String name,
      String brake,
      List<Integer> serviceOutOn,
      List<Integer> isolated,
      String clause,
      String to,
      double atMostMps) {}

  private static EditionOfRun edition(Assignment assignment, DegradedRun run) {
    return new EditionOfRun(
        run.edition().name(),
        run.edition().kind().word(),
        assignment.formation().numbersWith(WorkingBrakes.ALL_BUT_SERVICE),
        assignment.formation().numbersWith(WorkingBrakes.NONE),
        run.clause(),
        run.permit().to(),
        run.permit().atMost().metresPerSecond());
  }

  /** A section of the path: where it begins and ends by distance run, and what is signed there. */
  record Stretch(
      String section, double fromM, double toM, double mileageFromM, double mileageToM) {}

  /** A knot of the elevation. */
  record Height(double atM, double elevationM) {}

  private static Map<String, Object> track(Path path) {
    Track track = Track.of(path);
    List<Stretch> stretches = new ArrayList<>();
    double at = 0;
    for (var section : path.sections()) {
      boolean forward = path.mileageRisesAt(at + section.lengthM() / 2) == section.rises();
      double from = (forward ? section.from() : section.to()).metres();
      double to = (forward ? section.to() : section.from()).metres();
      stretches.add(new Stretch(section.name(), at, at + section.lengthM(), from, to));
      at += section.lengthM();
    }
    List<Height> heights = new ArrayList<>();
    for (int i = 0; i < track.elevation().knots(); i++) {
      heights.add(new Height(track.elevation().x(i), track.elevation().y(i)));
    }
    List<CurvePiece> curves = track.curves();
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("lengthM", path.lengthM());
    out.put("sections", stretches);
    out.put("elevation", heights);
    out.put("curves", curves);
    out.put("freeFallMps2", Exact.G);
    return out;
  }

  private static Map<String, Object> train(Assignment assignment) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("planned", loaded(assignment, assignment.load(), 1, 0));
    var safe = assignment.policy().safeSide();
    out.put("safeSide", loaded(assignment, safe.load(), safe.brakeFactor(), safe.isolatedShare()));
    out.put("safeSideCountsRunningAndCurveResistance", false);
    out.put("curveLaw", assignment.stock().curves());
    out.put("checkRailDragNPerKn", assignment.stock().checkRailDragNPerKn());
    out.put("timePerNotchS", assignment.stock().traction().timePerNotch().seconds());
    out.put("notchingDown", assignment.stock().traction().notchingDown());
    out.put("brakeSystems", assignment.stock().brakes());
    out.put("beforeLeaving", assignment.stock().care().beforeLeaving());
    out.put("signsOfFailure", assignment.stock().care().signs());
    return out;
  }

  /** A reading of the whole train's tractive effort. */
  record Effort(double speedMps, double effortN) {}

  private static Map<String, Object> loaded(
      Assignment assignment, LoadCase load, double brakeFactor, double isolatedShare) {
    var stock = assignment.stock();
    Train train = Train.of(stock, assignment.formation(), load);
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("load", load);
    out.put("massKg", train.massKg());
    out.put("lengthM", train.lengthM());
    out.put("valveM", assignment.formation().valvesM());
    out.put("inertiaKg", train.inertiaKg());
    out.put("motoredKg", train.motoredKg());
    out.put("resistance", train.resistance());
    Map<String, Object> efforts = new LinkedHashMap<>();
    for (int i = 0; i < train.effort().size(); i++) {
      efforts.put(stock.traction().notches().get(i).name(), efforts(train.effort().get(i)));
    }
    out.put("effort", efforts);
    Map<String, Object> brakes = new LinkedHashMap<>();
    for (BrakeSystem system : stock.brakes()) {
      brakes.put(
          system.shortName(),
          TrainBrake.of(
              stock, assignment.formation(), load, train, system, brakeFactor, isolatedShare));
    }
    out.put("brakes", brakes);
    return out;
  }

  private static List<Effort> efforts(PiecewiseLinear effort) {
    List<Effort> out = new ArrayList<>();
    for (int i = 0; i < effort.knots(); i++) {
      if (effort.x(i) >= 0) {
        out.add(new Effort(effort.x(i), effort.y(i)));
      }
    }
    return out;
  }

  private static Map<String, Object> run(Plan plan) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("runningTimeS", plan.runningTimeS());
    out.put("fastest", plan.fastest());
    out.put("energyJ", plan.energyJ());
    out.put("handleMovements", plan.handleMovements());
    out.put("actions", plan.actions());
    out.put("trace", plan.trace());
    return out;
  }

  private static byte[] bytes(Map<String, Object> all) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DefaultPrettyPrinter lines =
        new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.setPrettyPrinter(lines);
      new RecordJson(json).write(all);
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory", e);
    }
    return out.toByteArray();
  }

  private HandOver() {}
}
