package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.Subject;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Notch;
import gradepost.stock.PipeLaw;
import gradepost.stock.Stock;
import java.util.ArrayList;
import java.util.List;

/** What the gauges show in a brake test, and what the handles may not do. */
final class TrainItems {
  private final BriefingFacts taught;
  private final References references;
  private final Stock stock;

  TrainItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
    this.stock = taught.assignment().stock();
  }

  /** What both gauges show after a reduction of the pipe, or under the service brake alone. */
  List<Item> brakeTests() {
    List<Item> out = new ArrayList<>();
    stock.brakes().stream()
        .filter(b -> b.pipe().isPresent())
        .findFirst()
        .ifPresent(
            piped -> {
              PipeLaw law = piped.pipe().orElseThrow();
              continuity(out, piped, law);
              if (stock.service().pipe().isEmpty()) {
                service(out, law);
              }
            });
    return out;
  }

  private void continuity(List<Item> out, BrakeSystem brake, PipeLaw law) {
    double step = 5 * taught.units().pressureStepPa();
    for (double r = 2 * step; r < law.fullReductionPa() - 0.2 * step; r += step) {
      double pipe = law.pipe().pascals() - r;
      double cylinder = cylinder(brake, law, r);
      Distractors near = new Distractors(gauges(pipe, cylinder));
      // Two pressures of each gauge: all four are alike.
      boolean more = Math.round(r / step) % 2 == 0;
      double other = cylinder(brake, law, more ? r + step : r - step);
      double otherPipe = law.pipe().pascals() - (more ? r - step : r + step);
      near.add(gauges(pipe, other));
      near.add(gauges(otherPipe, cylinder));
      near.add(gauges(otherPipe, other));
      if (near.enough()) {
        out.add(
            new Item(
                Subject.BRAKE_TEST,
                brake.shortName(),
                r,
                taught.text(
                    "ask.continuity-test",
                    taught.pressure(r),
                    taught.pressure(law.pipe().pascals())),
                gauges(pipe, cylinder),
                near.all(),
                references.table("pipe")));
      }
    }
  }

  private static double cylinder(BrakeSystem brake, PipeLaw law, double reduction) {
    return Math.min(law.cylinderPa(reduction), brake.full().pascals());
  }

  /** A brake that no pipe governs leaves the pipe charged: common practice. */
  private void service(List<Item> out, PipeLaw law) {
    double full = stock.service().full().pascals();
    double pipe = law.pipe().pascals();
    Distractors near = new Distractors(gauges(pipe, full));
    near.add(gauges(pipe - law.fullReductionPa(), full));
    near.add(gauges(pipe, 0));
    near.add(gauges(pipe - law.fullReductionPa(), 0));
    out.add(
        new Item(
            Subject.BRAKE_TEST,
            stock.service().shortName(),
            Double.NaN,
            taught.text("ask.service-test", stock.service().shortName(), taught.pressure(pipe)),
            gauges(pipe, full),
            near.all(),
            references.table("pipe")));
  }

  private String gauges(double pipePa, double cylinderPa) {
    return taught.text("answer.gauges", taught.pressure(pipePa), taught.pressure(cylinderPa));
  }

  /**
   * One movement that is never permitted, against three that are: two of them of the power handle
   * and two of a brake, so that none stands alone.
   */
  List<Item> handles() {
    List<String> powerNever = new ArrayList<>();
    List<String> power = new ArrayList<>();
    List<Notch> notches = stock.traction().notches();
    for (int i = 0; i + 1 < notches.size(); i++) {
      power.add(moved(notches, i, i + 1));
      (stock.traction().notchingDown() ? power : powerNever).add(moved(notches, i + 1, i));
      if (i + 2 < notches.size()) {
        powerNever.add(moved(notches, i, i + 2));
      }
    }
    List<String> brakesNever = new ArrayList<>();
    List<String> brakes = new ArrayList<>();
    for (BrakeSystem brake : stock.brakes()) {
      if (brake.role() != BrakeSystem.Role.EMERGENCY) {
        (brake.gradualRelease() ? brakes : brakesNever)
            .add(taught.text("answer.ease", brake.shortName()));
        brakes.add(taught.text("answer.full-release", brake.shortName()));
      }
    }
    List<Item> out = new ArrayList<>();
    powerNever.forEach(never -> out.addAll(handles(never, power, 1, brakes)));
    brakesNever.forEach(never -> out.addAll(handles(never, brakes, 1, power)));
    return out;
  }

  private String moved(List<Notch> notches, int from, int to) {
    return taught.text(
        "answer.notch",
        taught.notch(notches.get(from).name()),
        taught.notch(notches.get(to).name()));
  }

  /** With one of its own kind beside it and two of the other, in every way. */
  private List<Item> handles(String never, List<String> own, int ofOwn, List<String> other) {
    List<Item> out = new ArrayList<>();
    for (int i = 0; i < own.size() && other.size() > ofOwn; i++) {
      Distractors near = new Distractors(never);
      near.add(own.get(i));
      near.add(other.get(i % other.size()));
      near.add(other.get((i + 1) % other.size()));
      if (near.enough()) {
        out.add(
            new Item(
                Subject.HANDLES,
                never,
                Double.NaN,
                taught.text("ask.handles"),
                never,
                near.all(),
                references.train()));
      }
    }
    return out;
  }
}
