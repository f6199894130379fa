package gradepost.route.audit;

import gradepost.route.Signal;
import gradepost.route.place.Location;
import java.util.List;
import java.util.Map;

/** Signals and their AWS. */
final class SignalAudit {
  private static final double LEAST_AWS_M = 100;
  private static final double MOST_AWS_M = 300;

  private final Ground ground;
  private final List<AuditFinding> out;

  SignalAudit(Ground ground, List<AuditFinding> out) {
    this.ground = ground;
    this.out = out;
  }

  void run() {
    for (Signal signal : ground.route().signals()) {
      double at = ground.at(signal.location());
      boolean exists =
          ground.route().lines().stream()
              .filter(l -> l.name().equals(signal.line()))
              .anyMatch(l -> ground.exists(l, at, at));
      if (!exists) {
        out.add(
            new AuditFinding(
                AuditText.OFF_LINE_SIGNAL,
                signal,
                "line",
                Map.of(
                    "signal", signal.id(),
                    "place", ground.text(signal.location()),
                    "line", signal.line())));
      }
      signal.aws().ifPresentOrElse(aws -> placed(signal, aws), () -> missing(signal));
    }
  }

  private void missing(Signal signal) {
    boolean shows = signal.kind() != Signal.Kind.STOP;
    boolean fitted =
        ground.route().signals().stream()
            .filter(s -> s.line().equals(signal.line()) && s.direction() == signal.direction())
            .anyMatch(s -> s.aws().isPresent());
    if (shows && fitted) {
      out.add(
          new AuditFinding(
              AuditText.AWS_MISSING,
              signal,
              "",
              Map.of(
                  "signal", signal.id(),
                  "place", ground.text(signal.location()),
                  "line", signal.line())));
    }
  }

  private void placed(Signal signal, Location aws) {
    double before = ground.beyond(signal.direction(), ground.at(signal.location()), ground.at(aws));
    if (before < LEAST_AWS_M || before > MOST_AWS_M) {
      out.add(
          new AuditFinding(
              before < 0 ? AuditText.AWS_PLACE_BEYOND : AuditText.AWS_PLACE_BEFORE,
              signal,
              "aws",
              Map.of(
                  "signal", signal.id(),
                  "distance", ground.length(Math.abs(before)),
                  "least", ground.length(LEAST_AWS_M),
                  "most", ground.length(MOST_AWS_M))));
    }
  }
}
