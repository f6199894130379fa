package gradepost.drive;

import java.util.*;

public class ZTest {
  public static void main(String[] args) {
    new ZTest().legs(args[0]);
  }

  void legs(String which) {

    for (Assignment a : DemoPlans.assignments()) {
      String name = a.direction() + " " + a.formation().name();
      if (!name.matches(which)) {
        System.out.println("skip " + name);
        continue;
      }
      Ceiling ceiling = Ceiling.of(a);
      Bench bench = new Bench(a);
      List<Target> targets = Targets.of(a, ceiling);
      double at = Stops.markM(a, a.calls().get(0));
      int from = 0;
      double u = a.route().units().speedUnitMps();
      for (int i = 0; i < targets.size(); i++) {
        if (!(targets.get(i) instanceof Target.Stop)) continue;
        LegChooser c = new LegChooser(a, bench, ceiling, at, targets.subList(from, i + 1));
        System.out.printf("== %s leg from %.0f to %.0f%n", name, at, targets.get(i).atM());
        show("own", c.own(), u);
        show("fastest", c.fastest(), u);
        for (double mv : new double[] {3, 25})
          for (double t : new double[] {0.5, 2, 6, 18, 100}) {
            Optional<LegChooser.Way> w = c.guidedRaw(t, mv);
            if (w.isPresent()) show(String.format("t%.1f m%.0f", t, mv), w.get(), u);
            else System.out.println("none " + t + " " + mv);
          }
        from = i + 1;
        at = targets.get(i).atM();
      }
    }
  }

  static void show(String n, LegChooser.Way w, double u) {
    System.out.printf(
        "%-12s time %.1f E %.1f moves %d idle %d stands %s %s%n",
        n,
        w.timeS(),
        w.rerun().energyJ() / 1e6,
        w.movements(),
        w.idle(),
        w.stands(),
        w.rerun().failures());
    if (!w.stands() || w.idle() > 0)
      for (Action x : w.rerun().actions())
        System.out.printf(
            "   %8.1f %7.1f %5.1f %s %s%n",
            x.atM(), x.timeS(), x.speedMps() / u, x.command(), x.trigger());
    if (!w.stands()) System.out.println(w.manner().guide());
  }
}
