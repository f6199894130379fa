package gradepost.source.stock;

import gradepost.stock.BrakePercentage;
import gradepost.stock.BrakeSystem;
import gradepost.text.Hole;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import gradepost.yaml.Common;
import gradepost.yaml.Order;
import gradepost.yaml.Values;
import java.util.List;
import java.util.Locale;

/** Checks of brake systems, each by itself and of all together. */
public final class BrakeChecks {
  private static final double SAME_PA = 100;

  static void stepsUpToFull(Values v) {
    Common.whenBoth(
        v,
        BrakeTables.CONTROL,
        BrakeTables.FULL,
        (control, full) ->
            control.steps().ifPresent(steps -> stepsUpToFull(v, steps.pressures(), full)));
  }

  private static void stepsUpToFull(Values v, List<Pressure> pressures, Pressure full) {
    Pressure last = pressures.get(pressures.size() - 1);
    Order.rising(
        pressures,
        Pressure::pascals,
        p -> v.spot(BrakeTables.CONTROL),
        StockMistakes.STEP_PRESSURES_DO_NOT_RISE,
        v.in());
    if (pressures.stream().anyMatch(p -> p.pascals() > full.pascals() + SAME_PA)) {
      v.error(BrakeTables.CONTROL, StockMistakes.STEP_ABOVE_FULL.with(full));
    } else if (last.pascals() < full.pascals() - SAME_PA) {
      v.error(BrakeTables.CONTROL, StockMistakes.STEPS_END_BELOW_FULL.with(last, full));
    }
  }

  /** An ordinary application cannot give more than cylinder and reservoir standing equal. */
  static void pipeGivesFull(Values v) {
    if (v.find(BrakeTables.ROLE).filter(r -> r != BrakeSystem.Role.EMERGENCY).isEmpty()) {
      return;
    }
    Common.whenBoth(
        v,
        BrakeTables.PIPE_KEY,
        BrakeTables.FULL,
        (pipe, full) -> {
          double most = pipe.cylinderPa(pipe.fullReductionPa());
          if (full.pascals() > most * 1.02) {
            v.error(BrakeTables.FULL, StockMistakes.FULL_ABOVE_PIPE.with(full, new Pressure(most)));
          }
        });
  }

  /** A distributor comes to its limit before the pipe is empty. */
  static void limitWithinPipe(Values v) {
    v.find(BrakeTables.RATIO)
        .ifPresent(
            ratio ->
                Common.whenBoth(
                    v,
                    BrakeTables.PIPE_PRESSURE,
                    BrakeTables.LIMIT,
                    (pipe, limit) -> {
                      if (limit.pascals() >= ratio * pipe.pascals()) {
                        v.error(
                            BrakeTables.LIMIT,
                            StockMistakes.LIMIT_ABOVE_EMPTY_PIPE.with(
                                limit, new Pressure(ratio * pipe.pascals())));
                      }
                    }));
  }

  /** One service brake; at most one system for each of the other roles. */
  static void roles(Values v) {
    v.find(StockTable.BRAKES)
        .ifPresent(
            brakes -> {
              for (BrakeSystem.Role role : BrakeSystem.Role.values()) {
                List<BrakeSystem> those =
                    brakes.systems().stream().filter(b -> b.role() == role).toList();
                String word = role.name().toLowerCase(Locale.ROOT);
                if (those.size() > 1) {
                  v.in()
                      .error(
                          v.in().spot(those.get(1), BrakeTables.ROLE),
                          StockMistakes.SECOND_OF_A_ROLE.with(word));
                } else if (those.isEmpty() && role == BrakeSystem.Role.SERVICE) {
                  v.error(StockTable.BRAKES, StockMistakes.NO_SERVICE_BRAKE);
                }
              }
            });
  }

  /** A percentage is converted up to a speed and a length of train. */
  static void withinConversion(Values v) {
    if (v.find(StockTable.BRAKES)
        .filter(b -> b.systems().stream().anyMatch(s -> s.percentage().isPresent()))
        .isEmpty()) {
      return;
    }
    v.find(StockTable.MAXIMUM)
        .filter(speed -> speed.compareTo(BrakePercentage.MOST_SPEED) > 0)
        .ifPresent(speed -> v.error(StockTable.MAXIMUM, StockMistakes.TOO_FAST_FOR_A_PERCENTAGE));
    Common.whenBoth(
        v,
        StockTable.VEHICLES,
        StockTable.FORMATIONS,
        (vehicles, formations) -> {
          for (StockTable.NamedTypes formation : formations) {
            double metres =
                formation.types().stream()
                    .flatMap(t -> vehicles.stream().filter(x -> x.type().equals(t)))
                    .mapToDouble(x -> x.length().metres())
                    .sum();
            if (metres > BrakePercentage.MOST_LENGTH.metres()) {
              v.in()
                  .error(
                      v.in().spot(formation),
                      StockMistakes.TOO_LONG_FOR_A_PERCENTAGE.with(
                          formation.name(), new Length(metres)));
            }
          }
        });
  }

  /** A hole for a pressure, "50 psi (3.4 bar)": a stock file may be written in either. */
  public static Hole<Pressure> pressure(String name) {
    return new Hole<>(name, BrakeChecks::text);
  }

  /** A hole for some pressures, with commas between them. */
  public static Hole<List<Pressure>> pressures(String name) {
    return new Hole<>(name, all -> String.join(", ", all.stream().map(BrakeChecks::text).toList()));
  }

  private static String text(Pressure pressure) {
    return "%s psi (%s)"
        .formatted(
            Rounding.NEAREST.whole(pressure.psi()), UnitStyle.METRIC.pressure(pressure.pascals()));
  }

  private BrakeChecks() {}
}
