package gradepost.app.shelf;

import gradepost.app.shelf.BenchShown.Field;
import gradepost.app.shelf.BenchShown.Option;
import gradepost.drive.fallback.WhatIf;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.policy.AdhesionCase;
import gradepost.stock.LoadCase;
import gradepost.task.Assignment;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What if: one braking of one paper, tried with another speed, place, gauge, load or rail, or with
 * a brake that gives less. A teaching example; never a briefing.
 */
public final class Bench {

  private final OpenPapers papers;

  /** Over these papers. */
  public Bench(OpenPapers papers) {
    this.papers = papers;
  }

  /** One braking of a paper. */
  private record Braking(Approach approach, Application application, String label) {}

  /**
   * Tries it. Empty where there is no such paper, or it has no plan or no braking.
   *
   * @throws IOException where a file cannot be read
   */
  public Optional<BenchShown> of(ShelfPack pack, String stem, BenchAsked asked) throws IOException {
    return papers
        .made(pack, stem)
        .flatMap(OpenPapers.Made::plan)
        .filter(plan -> !brakings(plan).isEmpty())
        .map(plan -> of(plan, asked));
  }

  private static List<Braking> brakings(Plan plan) {
    List<Braking> out = new ArrayList<>();
    for (Approach approach : plan.approaches()) {
      for (Application application : approach.applications()) {
        String label =
            "%d %s%s"
                .formatted(
                    approach.number(),
                    application.target().name(),
                    application.target().standsThere()
                        ? ""
                        : ", "
                            + plan.assignment()
                                .route()
                                .units()
                                .speed(application.target().speedMps(), Rounding.NEAREST));
        out.add(new Braking(approach, application, label));
      }
    }
    return out;
  }

  private static BenchShown of(Plan plan, BenchAsked asked) {
    BenchTyped typed = new BenchTyped(asked);
    List<Braking> brakings = brakings(plan);
    int number = typed.choice("braking", brakings.size());
    Application of = brakings.get(number).application();
    Assignment assignment = plan.assignment();
    UnitStyle units = assignment.route().units();
    List<AdhesionCase> rails = assignment.policy().adhesion();
    LoadCase[] loads = LoadCase.values();
    double later = typed.number("later", 0, -2000, 2000, units.lengthUnit());
    double speed =
        typed.number(
            "speed",
            of.brakingSpeedMps() / units.speedUnitMps(),
            1,
            1.2 * top(plan) / units.speedUnitMps(),
            units.speedUnit());
    double fullPa = assignment.stock().service().full().pascals();
    double gauge =
        typed.number(
            "gauge",
            of.mainPressurePa() / pressureUnitPa(units),
            0,
            fullPa / pressureUnitPa(units),
            units.pressureUnit());
    int load = typed.choice("load", loads.length, Arrays.asList(loads).indexOf(assignment.load()));
    int rail = typed.choice("rail", rails.size());
    int gives = typed.choice("gives", 3);
    double noticed = typed.number("noticed", assignment.policy().noticing().seconds(), 0, 60, "s");
    List<Integer> isolated = typed.vehicles("isolated", assignment.formation().cars());
    List<Field> fields =
        List.of(
            new Field("braking", "Braking", "" + number, options(brakings)),
            new Field(
                "later", "Applied later by (" + units.lengthUnit() + ")", text(later), List.of()),
            new Field("speed", "Speed there (" + units.speedUnit() + ")", text(speed), List.of()),
            new Field("gauge", "Gauge (" + units.pressureUnit() + ")", text(gauge), List.of()),
            new Field("load", "Load", "" + load, loads()),
            new Field("rail", "Rail", "" + rail, rails(rails)),
            new Field("gives", "The service brake gives", "" + gives, GIVES),
            new Field("noticed", "Seen after (s)", text(noticed), List.of()),
            new Field("isolated", "Brake isolated on vehicles", numbers(isolated), List.of()));
    if (!typed.problems().isEmpty()) {
      return new BenchShown(
          fields, "", typed.problems(), List.of(), List.of(), 0, "", 1, units.speedUnit());
    }
    double atM = of.brakingPointM() + later * units.lengthUnitM();
    WhatIf.Asked tried =
        new WhatIf.Asked(
            Math.max(0, atM),
            speed * units.speedUnitMps(),
            gauge * pressureUnitPa(units),
            rails.get(rail),
            1 - gives / 2.0,
            noticed);
    Assignment train = assignment.with(loads[load]).withIsolated(isolated);
    WhatIf.Answer answer = new WhatIf(train).of(tried, of.target());
    return new BenchTold(plan, of, tried, answer).shown(fields);
  }

  private static double pressureUnitPa(UnitStyle units) {
    return units.pressureUnit().equals("bar") ? 100_000 : units.pressureStepPa();
  }

  private static double top(Plan plan) {
    return plan.trace().points().stream().mapToDouble(p -> p.speedMps()).max().orElse(50);
  }

  private static final List<Option> GIVES =
      List.of(new Option("0", "all"), new Option("1", "half"), new Option("2", "nothing"));

  private static List<Option> options(List<Braking> brakings) {
    List<Option> out = new ArrayList<>();
    for (int i = 0; i < brakings.size(); i++) {
      out.add(new Option("" + i, brakings.get(i).label()));
    }
    return out;
  }

  private static List<Option> rails(List<AdhesionCase> rails) {
    List<Option> out = new ArrayList<>();
    for (int i = 0; i < rails.size(); i++) {
      out.add(new Option("" + i, rails.get(i).name()));
    }
    return out;
  }

  private static List<Option> loads() {
    List<Option> out = new ArrayList<>();
    LoadCase[] loads = LoadCase.values();
    for (int i = 0; i < loads.length; i++) {
      out.add(new Option("" + i, loads[i].name().toLowerCase(Locale.ROOT)));
    }
    return out;
  }

  private static String numbers(List<Integer> vehicles) {
    return vehicles.stream().map(n -> "" + n).collect(Collectors.joining(", "));
  }

  static String text(double number) {
    return String.format(Locale.ROOT, "%.1f", number).replaceFirst("\\.0$", "");
  }
}
