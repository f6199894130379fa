package gradepost.drive.grid;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.TrainModels;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The least that a leg can cost, by dynamic programming over place, speed and the handles: energy,
 * with a price on each second and on each handle movement.
 */
public final class LegCosts {
  private final LegTable table;
  private final LegGrid grid;
  private final int notches;
  private final int check;

  /** By state of the handles and cell. */
  private final double[][] value;

  private double watts;
  private double perMove;

  private LegCosts(LegTable table) {
    this.table = table;
    this.grid = table.grid;
    notches = grid.notches;
    check = notches + 1;
    value = new double[notches + 2][grid.places() * table.columns];
  }

  /**
   * Of a leg from a stand over its targets, of which the last is the stop; each is braked for by
   * the policy's technique.
   *
   * @param fromM where it begins, metres run
   */
  public static LegCosts of(
      Assignment assignment,
      TrainModels bench,
      DriverRules rules,
      List<Target> targets,
      double fromM) {
    LegGrid grid =
        new LegGrid(
            assignment, bench, rules, targets, fromM, t -> Braking.of(assignment, bench, t));
    return new LegCosts(new LegTable(grid, new LegSteps(assignment, grid)));
  }

  /**
   * The least cost of the whole leg at these prices, joules; infinite where there is no way.
   *
   * @param wattsOfTime what a second is worth
   * @param joulesOfMove what a movement of the handle is worth
   */
  public double solve(double wattsOfTime, double joulesOfMove) {
    watts = wattsOfTime;
    perMove = joulesOfMove;
    for (double[] row : value) {
      Arrays.fill(row, Double.POSITIVE_INFINITY);
    }
    int last = grid.places() - 1;
    value[0][table.cell(last, 0)] = 0;
    value[0][table.cell(last, table.columns - 1)] = 0;
    for (int k = last - 1; k >= 0; k--) {
      for (int i = 0; i < table.columns - 1 && grid.speed(k, i) < grid.mostMps[k]; i++) {
        update(k, i);
      }
      update(k, table.columns - 1);
    }
    return value[0][table.cell(0, table.columns - 1)];
  }

  private void update(int k, int i) {
    int cell = table.cell(k, i);
    double coasting = Math.min(cost(table.coast, cell, 0), brakings(table.coasting, cell));
    for (int n = 0; n < notches; n++) {
      coasting = Math.min(coasting, (n + 1) * perMove + powered(table.ramp + n, cell, n));
    }
    coasting = Math.min(coasting, perMove + cost(table.check, cell, check));
    value[0][cell] = coasting;
    double checking = Math.min(cost(table.checked, cell, check), brakings(table.checking, cell));
    value[check][cell] =
        grid.releases(k, grid.speed(k, i)) ? Math.min(checking, perMove + coasting) : checking;
    double off = perMove + cost(table.off, cell, 0);
    double higher = Double.POSITIVE_INFINITY;
    for (int n = notches - 1; n >= 0; n--) {
      double on = Math.min(off, powered(table.power + n, cell, n));
      higher = Math.min(on, higher + perMove);
      value[1 + n][cell] = higher;
    }
  }

  private double powered(int kind, int cell, int notch) {
    return table.cameOff(kind, cell) ? perMove + cost(kind, cell, 0) : cost(kind, cell, 1 + notch);
  }

  private double brakings(int kind, int cell) {
    double best = Double.POSITIVE_INFINITY;
    for (int b = 0; b < table.brakings && table.lands(kind + b, cell); b++) {
      int then = table.staysOn(kind + b, cell) ? check : 0;
      best = Math.min(best, cost(kind + b, cell, then));
    }
    return best;
  }

  private double cost(int kind, int cell, int state) {
    return table.cost(kind, cell, watts, perMove, value[state]);
  }

  /** A step that could be taken, into a state, after so many movements. */
  private record Option(LegSteps.Move move, int state, int moves) {}

  /** Where the way is, and the steps from there that were not taken yet, the dearest first. */
  private record Fork(int place, double mps, int state, List<Option> left) {}

  /**
   * The way that costs least at the prices of the last call, as a guide; empty where there is none.
   * Between the columns of the grid costs are a guess: from where it leads nowhere the way goes
   * back and takes the next best.
   */
  public Optional<ControlProfile> guide() {
    List<Fork> forks = new ArrayList<>();
    List<Option> taken = new ArrayList<>();
    forks.add(fork(0, 0, 0));
    int furthest = 0;
    int tries = 0;
    while (forks.get(forks.size() - 1).place() < grid.places() - 1) {
      Fork fork = forks.get(forks.size() - 1);
      if (fork.left().isEmpty()) {
        if (taken.isEmpty() || ++tries > grid.way.tries()) {
          return Optional.empty();
        }
        // The longer it goes nowhere, the further back: the mistake may have been made long before.
        for (int back = 0; back <= tries / grid.way.soon() && !taken.isEmpty(); back++) {
          forks.remove(forks.size() - 1);
          taken.remove(taken.size() - 1);
        }
        continue;
      }
      if (fork.place() > furthest) {
        furthest = fork.place();
        tries = 0;
      }
      Option option = fork.left().remove(fork.left().size() - 1);
      taken.add(option);
      forks.add(fork(option.move().place(), option.move().mps(), after(option)));
    }
    return Optional.of(guide(forks, taken));
  }

  private Fork fork(int place, double mps, int state) {
    List<Option> options = new ArrayList<>();
    if (place < grid.places() - 1) {
      options.addAll(options(table.steps, place, mps, state));
      options.removeIf(o -> cost(o) == Double.POSITIVE_INFINITY);
      options.sort(Comparator.comparingDouble((Option o) -> -cost(o)));
    }
    return new Fork(place, mps, state, options);
  }

  private boolean powered(int state) {
    return state > 0 && state <= notches;
  }

  /** The state that a step leads to: power may have come off on the way. */
  private int after(Option option) {
    return powered(option.state()) && !option.move().powered() ? 0 : option.state();
  }

  private ControlProfile guide(List<Fork> forks, List<Option> taken) {
    ControlProfile.Maker maker = new ControlProfile.Maker(grid.way);
    for (int i = 0; i < taken.size(); i++) {
      Fork from = forks.get(i);
      Option take = taken.get(i);
      double at = grid.placeM[from.place()];
      boolean is = powered(take.state());
      maker.point(at, from.mps());
      if (is) {
        maker.power(at, take.state() - 1, powered(from.state()));
      } else if (powered(from.state())) {
        maker.off(at, from.mps());
      }
      double to = grid.placeM[take.move().place()];
      if (take.move().releasedMps() > 0) {
        maker.released(to, take.move().releasedMps());
      }
      if (is && !take.move().powered()) {
        // By the rule's own speed.
        maker.off(to, Double.POSITIVE_INFINITY);
      }
    }
    Fork last = forks.get(forks.size() - 1);
    maker.point(grid.placeM[last.place()], last.mps());
    return maker.guide();
  }

  private List<Option> options(LegSteps steps, int k, double v, int state) {
    List<Option> all = new ArrayList<>();
    boolean rolling = v > 0;
    boolean released = state == check && grid.releases(k, v);
    if (state == 0 || released) {
      int moves = released ? 1 : 0;
      for (int n = 0; n < notches; n++) {
        add(all, steps.notchUp(k, v, n), 1 + n, moves + n + 1);
      }
      if (rolling) {
        add(all, steps.coast(k, v), 0, moves);
        steps.brakings(k, v, 0).forEach(m -> add(all, m, m.braked() ? check : 0, moves));
        add(all, steps.check(k, v), check, moves + 1);
      }
    }
    if (state == check && rolling) {
      add(all, steps.checked(k, v), check, 0);
      steps.brakings(k, v, grid.checkPa[k]).forEach(m -> add(all, m, m.braked() ? check : 0, 0));
    }
    if (powered(state)) {
      add(all, steps.shutOff(k, v), 0, 1);
      for (int s = state; s <= notches; s++) {
        add(all, steps.power(k, v, s - 1), s, s - state);
      }
    }
    return all;
  }

  private static void add(List<Option> all, LegSteps.@Nullable Move move, int state, int moves) {
    if (move != null) {
      all.add(new Option(move, state, moves + move.moves()));
    }
  }

  private double cost(Option option) {
    LegSteps.Move move = option.move();
    boolean off = after(option) != option.state();
    double onward = onward(move.place(), move.mps(), value[after(option)]);
    int moves = option.moves() + (off ? 1 : 0);
    return move.joules() + watts * move.seconds() + moves * perMove + onward;
  }

  private double onward(int place, double v, double[] then) {
    LegGrid.Landing at = grid.landing(place, v);
    return at == null
        ? Double.POSITIVE_INFINITY
        : LegGrid.between(
            then[table.cell(place, at.low())], then[table.cell(place, at.high())], at.share());
  }
}
