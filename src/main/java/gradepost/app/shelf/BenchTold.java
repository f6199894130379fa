package gradepost.app.shelf;

import gradepost.app.shelf.BenchShown.Field;
import gradepost.app.shelf.BenchShown.Line;
import gradepost.app.shelf.BenchShown.Said;
import gradepost.briefing.Messages;
import gradepost.drive.fallback.WhatIf;
import gradepost.plan.Application;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.told.print.PrintGrid;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;

/** What came of one try, in sentences and lines. */
final class BenchTold {
  private static final double BEFORE_M = 300;

  private final Plan plan;
  private final Application of;
  private final WhatIf.Asked tried;
  private final WhatIf.Answer answer;
  private final UnitStyle units;
  private final Messages messages = Messages.english();

  BenchTold(Plan plan, Application of, WhatIf.Asked tried, WhatIf.Answer answer) {
    this.plan = plan;
    this.of = of;
    this.tried = tried;
    this.answer = answer;
    this.units = plan.assignment().route().units();
  }

  BenchShown shown(List<Field> fields) {
    List<Said> said = new ArrayList<>();
    PrintGrid grid = new PrintGrid(plan.assignment().path());
    List<Line> lines = new ArrayList<>();
    double fromM = Math.min(of.brakingPointM(), tried.atM()) - BEFORE_M;
    double endM = of.target().atM() + BEFORE_M;
    lines.add(plan(fromM, endM));
    add(said, lines, "bench.tried", "tried", answer.planned(), fromM);
    add(said, lines, "bench.safe", "safe", answer.safe(), fromM);
    for (WhatIf.Rescue rescue : answer.rescues()) {
      String label =
          messages.text(
              "bench.rescue",
              rescue.brake().shortName(),
              grid.place(rescue.askedM()).match(grid::text, grid::text, b -> ""),
              units.speed(rescue.askedMps(), Rounding.DOWN));
      said.add(new Said(label, text(rescue.run()), rescue.run().met().inTime()));
      lines.add(line(rescue.brake().shortName(), "rescue", rescue.run().points(), fromM));
    }
    return new BenchShown(
        fields,
        messages.text(
            eased() ? "bench.paper-eased" : "bench.paper",
            grid.place(of.brakingPointM()).match(grid::text, grid::text, b -> ""),
            units.speed(of.brakingSpeedMps(), Rounding.NEAREST),
            units.pressure(of.mainPressurePa())),
        List.of(),
        said,
        lines,
        of.target().atM() - fromM,
        units.lengthUnit(),
        units.lengthUnitM(),
        units.speedUnit());
  }

  /** Whether the paper has the brake eased on the way to a stand: held, it stops short. */
  private boolean eased() {
    return of.target().standsThere()
        && plan.actions().stream()
            .filter(a -> a.atM() >= of.brakingPointM() && a.atM() <= of.target().atM())
            .flatMap(a -> a.command().brake().stream())
            .anyMatch(b -> b.stage() == Command.Stage.EASE);
  }

  private void add(
      List<Said> said, List<Line> lines, String key, String kind, WhatIf.Run run, double fromM) {
    said.add(new Said(messages.text(key), text(run), run.met().inTime()));
    lines.add(line(messages.text(key), kind, run.points(), fromM));
  }

  /** Towards the train where it is short, away from it where it is past: never optimistic. */
  private String text(WhatIf.Run run) {
    boolean stop = of.target().standsThere();
    String speed = units.speed(run.atTargetMps(), Rounding.UP);
    return run.met()
        .match(
            at ->
                at.shortM() >= 0
                    ? messages.text(
                        stop ? "bench.stops" : "bench.slows",
                        units.length(at.shortM(), Rounding.DOWN))
                    : messages.text(
                        stop ? "bench.stops-past" : "bench.slows-past",
                        units.length(-at.shortM(), Rounding.UP),
                        speed),
            nowhere -> messages.text("bench.nowhere", speed));
  }

  private Line plan(double fromM, double toM) {
    Trace part = plan.trace().between(fromM, toM);
    List<double[]> points =
        part.points().stream()
            .map(p -> new double[] {p.atM() - fromM, p.speedMps() / units.speedUnitMps()})
            .toList();
    return new Line(messages.text("bench.plan"), "plan", points);
  }

  private Line line(String label, String kind, List<WhatIf.Point> points, double fromM) {
    return new Line(
        label,
        kind,
        points.stream()
            .map(p -> new double[] {p.atM() - fromM, p.mps() / units.speedUnitMps()})
            .toList());
  }
}
