package gradepost.motion;

import gradepost.route.LowAdhesionSite;
import gradepost.route.Path;
import gradepost.route.Stretch;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * Stretches of the run on which adhesion follows a law of its own. A vehicle that stands partly on
 * such a stretch has adhesion in proportion, so that it enters and leaves without a jump.
 */
public final class LowAdhesionRail {

  private final AdhesionLaw law;
  private final List<Stretch> stretches;

  /**
   * @param law what holds on all of them
   * @param stretches in any order, none without length; where they overlap they count once
   */
  public LowAdhesionRail(AdhesionLaw law, List<Stretch> stretches) {
    this.law = law;
    List<Stretch> ordered = new ArrayList<>(stretches);
    ordered.sort(Comparator.comparingDouble(Stretch::fromM));
    List<Stretch> joined = new ArrayList<>();
    for (Stretch next : ordered) {
      if (next.lengthM() <= 0) {
        throw new IllegalArgumentException("poor rail without length: " + next);
      }
      Stretch last = joined.isEmpty() ? next : joined.get(joined.size() - 1);
      if (!joined.isEmpty() && next.fromM() <= last.toM()) {
        joined.set(joined.size() - 1, new Stretch(last.fromM(), Math.max(last.toM(), next.toM())));
      } else {
        joined.add(next);
      }
    }
    this.stretches = List.copyOf(joined);
  }

  /** The law that holds on the stretches. */
  public AdhesionLaw law() {
    return law;
  }

  /** Joined, in the order of travel. */
  public List<Stretch> stretches() {
    return stretches;
  }

  /**
   * The low-adhesion sites of a route that a train on these lines meets.
   *
   * @param law what holds on all of them
   */
  public static LowAdhesionRail of(Path path, Set<String> lines, AdhesionLaw law) {
    return new LowAdhesionRail(law, stretches(path, lines));
  }

  /** The sites themselves, in the order in which the route lists them. */
  public static List<Stretch> stretches(Path path, Set<String> lines) {
    List<Stretch> met = new ArrayList<>();
    for (LowAdhesionSite site : path.route().lowAdhesion()) {
      if (site.applies().to(path.direction(), lines)) {
        met.add(path.span(site.extent()));
      }
    }
    return met;
  }

  /** Rail that is the same everywhere. */
  public static LowAdhesionRail none() {
    return new LowAdhesionRail(new ConstantAdhesion(1), List.of());
  }

  /** Metres of such stretches met from the first one on, against distance run. */
  PiecewiseLinear metLength() {
    int n = stretches.size();
    if (n == 0) {
      return new PiecewiseLinear(new double[] {0, 1}, new double[2]);
    }
    double[] x = new double[2 * n + 2];
    double[] y = new double[2 * n + 2];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      x[2 * i + 1] = stretches.get(i).fromM();
      y[2 * i + 1] = sum;
      sum += stretches.get(i).lengthM();
      x[2 * i + 2] = stretches.get(i).toM();
      y[2 * i + 2] = sum;
    }
    x[0] = x[1] - 1;
    x[2 * n + 1] = x[2 * n] + 1;
    y[2 * n + 1] = sum;
    return new PiecewiseLinear(x, y);
  }
}
