package gradepost.ride;

import gradepost.plan.Plan;
import gradepost.policy.RideRules;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Where a tied run was over the permissible speed. What the recorder cannot know is on the driver's
 * side: of the permissible speeds within the error of the place the highest holds, and a speed that
 * is over by no more than its own error is none.
 */
final class Excesses {
  private static final double SLACK = 1e-6;

  private final List<CeilingStep> ceiling;
  private final RideRules rules;
  private final TiedRun run;

  /** A place along the run that is looked at. */
  private record Look(double atM, double atS, double overMps, double sureMps, CeilingStep step) {}

  Excesses(Plan plan, RideRules rules, TiedRun run) {
    this.ceiling = plan.ceiling();
    this.rules = rules;
    this.run = run;
  }

  /** In the order in which they were met. */
  List<Excess> all() {
    List<Excess> out = new ArrayList<>();
    List<Look> looks = looks();
    int i = 0;
    while (i < looks.size()) {
      if (looks.get(i).sureMps() <= SLACK) {
        i++;
        continue;
      }
      int to = i;
      while (to + 1 < looks.size() && looks.get(to + 1).sureMps() > SLACK) {
        to++;
      }
      out.add(excess(looks, i, to));
      i = to + 1;
    }
    return out;
  }

  /** Every line that is known, and every place where the permissible speed may fall. */
  private List<Look> looks() {
    TreeSet<Double> falls = new TreeSet<>();
    for (int k = 1; k < ceiling.size(); k++) {
      double at = ceiling.get(k).fromM();
      boolean driven = at >= run.firstM() && at <= run.lastM();
      if (driven && ceiling.get(k).speedMps() < ceiling.get(k - 1).speedMps()) {
        falls.add(at + run.withinAt(at));
      }
    }
    List<Look> out = new ArrayList<>();
    for (int i = 0; i < run.size(); i++) {
      double before = i == 0 ? run.firstM() : run.atM(i - 1);
      boolean between = i > 0 && !run.gapBefore(i) && run.known(i);
      if (between) {
        for (double at : falls.subSet(before, false, run.atM(i), false)) {
          Measured v = run.speedAt(at);
          out.add(look(at, run.timeAt(at), v.value(), v.within(), run.withinAt(at)));
        }
      }
      if (run.known(i)) {
        out.add(look(run.atM(i), run.timeS(i), run.speedMps(i), run.withinMps(i), run.withinM(i)));
      }
    }
    return out;
  }

  private Look look(double atM, double atS, double mps, double withinMps, double withinM) {
    CeilingStep highest = null;
    for (int i = firstTo(atM - withinM);
        i < ceiling.size() && ceiling.get(i).fromM() <= atM + withinM;
        i++) {
      CeilingStep s = ceiling.get(i);
      highest = highest == null || s.speedMps() > highest.speedMps() ? s : highest;
    }
    CeilingStep step = highest == null ? ceiling.get(ceiling.size() - 1) : highest;
    double over = mps - step.speedMps();
    return new Look(atM, atS, over, over - withinMps, step);
  }

  /** The first step that reaches as far as this; one more than there are where none does. */
  private int firstTo(double atM) {
    int low = 0;
    int high = ceiling.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (ceiling.get(middle).toM() < atM) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private Excess excess(List<Look> looks, int from, int to) {
    Look most = looks.get(from);
    for (Look look : looks.subList(from, to + 1)) {
      most = look.overMps() > most.overMps() ? look : most;
    }
    double beginS = crossing(looks, from, 0);
    double endS = to + 1 < looks.size() ? crossingBack(looks, to, 0) : looks.get(to).atS();
    return new Excess(
        looks.get(from).atM(),
        looks.get(to).atM(),
        beginS,
        endS - beginS,
        most.overMps(),
        most.step().speedMps(),
        most.step().lastCause(),
        longest(looks, from, to, rules.overspeed().metresPerSecond()));
  }

  /** How long without a break it was over by this much at least, for certain. */
  private double longest(List<Look> looks, int from, int to, double byMps) {
    double most = 0;
    int i = from;
    while (i <= to) {
      if (looks.get(i).sureMps() < byMps) {
        i++;
        continue;
      }
      int end = i;
      while (end + 1 <= to && looks.get(end + 1).sureMps() >= byMps) {
        end++;
      }
      double began = crossing(looks, i, byMps);
      double ended =
          end + 1 < looks.size() ? crossingBack(looks, end, byMps) : looks.get(end).atS();
      most = Math.max(most, ended - began);
      i = end + 1;
    }
    return most;
  }

  /** When the excess came up to this, between a look and the one before it. */
  private static double crossing(List<Look> looks, int i, double byMps) {
    if (i == 0) {
      return looks.get(0).atS();
    }
    Look a = looks.get(i - 1);
    Look b = looks.get(i);
    double share = (b.sureMps() - byMps) / Math.max(SLACK, b.sureMps() - a.sureMps());
    return b.atS() - Math.min(1, share) * (b.atS() - a.atS());
  }

  private static double crossingBack(List<Look> looks, int i, double byMps) {
    Look a = looks.get(i);
    Look b = looks.get(i + 1);
    double share = (a.sureMps() - byMps) / Math.max(SLACK, a.sureMps() - b.sureMps());
    return a.atS() + Math.min(1, share) * (b.atS() - a.atS());
  }
}
