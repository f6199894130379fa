package gradepost.route.audit;

import gradepost.route.Signal;
import gradepost.route.place.Location;
import java.util.List;

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
                AuditText.OFF_LINE_SIGNAL.with(
                    signal.id(), ground.place(signal.location()), signal.line()),
                signal,
                "line"));
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
              AuditText.AWS_MISSING.with(
                  signal.id(), ground.place(signal.location()), signal.line()),
              signal,
              ""));
    }
  }

  private void placed(Signal signal, Location aws) {
    double before = ground.beyond(signal.direction(), ground.at(signal.location()), ground.at(aws));
    if (before < LEAST_AWS_M || before > MOST_AWS_M) {
      out.add(
          new AuditFinding(
              (before < 0 ? AuditText.AWS_PLACE_BEYOND : AuditText.AWS_PLACE_BEFORE)
                  .with(
                      signal.id(),
                      ground.length(Math.abs(before)),
                      ground.length(LEAST_AWS_M),
                      ground.length(MOST_AWS_M)),
              signal,
              "aws"));
    }
  }
}
