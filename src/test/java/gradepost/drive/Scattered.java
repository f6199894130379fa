package gradepost.drive;

import gradepost.policy.Policy;
import gradepost.policy.Scatter;
import gradepost.task.Assignment;
import java.util.Optional;

/** The same assignment under a policy with another scatter. */
public final class Scattered {
  public static Assignment by(Optional<Scatter> scatter, Assignment a) {
    Policy p = a.policy();
    Policy other =
        new Policy(
            p.name(),
            p.adhesion(),
            p.noticing(),
            p.safeSide(),
            p.margins(),
            p.stopping(),
            p.restriction(),
            p.terminal(),
            p.run(),
            scatter,
            p.purposes());
    return new Assignment(
        a.route(),
        a.direction(),
        a.lines(),
        a.junctionRoutes(),
        a.calls(),
        a.stock(),
        a.formation(),
        a.load(),
        other,
        a.restrictions());
  }

  private Scattered() {}
}
