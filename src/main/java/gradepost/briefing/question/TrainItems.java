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
      near.add(gauges(pipe, cylinder(brake, law, r - step)));
      near.add(gauges(pipe, cylinder(brake, law, r + step)));
      near.add(gauges(pipe, r));
      near.add(gauges(law.pipe().pascals(), cylinder));
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
    near.add(gauges(0, full));
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

  /** One movement that is never permitted, against three that are. */
  List<Item> handles() {
    List<String> never = new ArrayList<>();
    List<String> permitted = new ArrayList<>();
    List<Notch> notches = stock.traction().notches();
    for (int i = 0; i + 1 < notches.size(); i++) {
      String low = taught.notch(notches.get(i).name());
      String high = taught.notch(notches.get(i + 1).name());
      permitted.add(taught.text("answer.notch-up", low, high));
      permitted.add(taught.text("answer.notch-off", high));
      (stock.traction().notchingDown() ? permitted : never)
          .add(taught.text("answer.notch-down", high, low));
      if (i + 2 < notches.size()) {
        never.add(taught.text("answer.notch-skip", low, taught.notch(notches.get(i + 2).name())));
      }
    }
    never.add(taught.text("answer.power-braking"));
    for (BrakeSystem brake : stock.brakes()) {
      if (brake.role() != BrakeSystem.Role.EMERGENCY) {
        (brake.gradualRelease() ? permitted : never)
            .add(taught.text("answer.ease", brake.shortName()));
        permitted.add(taught.text("answer.full-release", brake.shortName()));
      }
    }
    List<Item> out = new ArrayList<>();
    for (int i = 0; i < never.size(); i++) {
      Distractors near = new Distractors(never.get(i));
      for (int k = 0; k < permitted.size(); k++) {
        near.add(permitted.get((k * 3 + i) % permitted.size()));
      }
      permitted.forEach(near::add);
      if (near.enough()) {
        out.add(
            new Item(
                Subject.HANDLES,
                never.get(i),
                Double.NaN,
                taught.text("ask.handles"),
                never.get(i),
                near.all(),
                references.train()));
      }
    }
    return out;
  }
}
