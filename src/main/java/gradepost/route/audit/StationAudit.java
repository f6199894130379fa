package gradepost.route.audit;

import gradepost.route.Platform;
import gradepost.route.Station;
import gradepost.route.StopMark;
import gradepost.route.place.Location;
import java.util.List;

/** Platforms, stop marks and buffer stops. */
final class StationAudit {
  private static final double SLACK_M = 0.5;

  private final Ground ground;
  private final List<AuditFinding> out;

  StationAudit(Ground ground, List<AuditFinding> out) {
    this.ground = ground;
    this.out = out;
  }

  void run() {
    for (Station station : ground.route().stations()) {
      for (Platform platform : station.platforms()) {
        String name = "platform " + platform.number() + " of " + station.name();
        lines(platform, name);
        platform.stopMarks().forEach(mark -> mark(platform, mark, name));
        platform.bufferStops().ifPresent(buffers -> buffers(platform, buffers, name));
      }
    }
  }

  private void lines(Platform platform, String name) {
    double from = ground.from(platform.extent());
    double to = ground.to(platform.extent());
    boolean served =
        ground.lines(platform.applies()).stream().anyMatch(l -> ground.exists(l, from, to));
    if (!served) {
      out.add(
          new AuditFinding(
              AuditRule.OFF_LINE,
              platform,
              "lines",
              "none of the lines of %s exists there".formatted(name),
              "a line that reaches the platform",
              ""));
    }
  }

  private void mark(Platform platform, StopMark mark, String name) {
    double at = ground.at(mark.location());
    double from = ground.from(platform.extent());
    double to = ground.to(platform.extent());
    if (at < from - SLACK_M || at > to + SLACK_M) {
      out.add(
          new AuditFinding(
              AuditRule.MARK_OFF_PLATFORM,
              mark,
              "at",
              "the %d-car mark of %s for %s trains stands at %s, %s off the platform"
                  .formatted(
                      mark.cars(),
                      name,
                      ground.name(mark.direction()),
                      ground.text(mark.location()),
                      ground.length(Math.max(from - at, at - to))),
              "from %s to %s"
                  .formatted(
                      ground.text(platform.extent().from()), ground.text(platform.extent().to())),
              ""));
    }
  }

  /** The platform road ends at one end of the platform; which, the marks tell. */
  private void buffers(Platform platform, Location buffers, String name) {
    double at = ground.at(buffers);
    double from = ground.from(platform.extent());
    double to = ground.to(platform.extent());
    if (at > from + SLACK_M && at < to - SLACK_M) {
      out.add(
          new AuditFinding(
              AuditRule.MARK_PAST_BUFFERS,
              platform,
              "buffer-stops",
              "the buffer stops of %s stand at %s, within the platform"
                  .formatted(name, ground.text(buffers)),
              "at or beyond an end of the platform",
              ""));
    }
    double middle = (from + to) / 2;
    for (StopMark mark : platform.stopMarks()) {
      double markAt = ground.at(mark.location());
      if (at > middle ? markAt > at : markAt < at) {
        out.add(
            new AuditFinding(
                AuditRule.MARK_PAST_BUFFERS,
                mark,
                "at",
                "the %d-car mark of %s for %s trains stands at %s, past the buffer stops at %s"
                    .formatted(
                        mark.cars(),
                        name,
                        ground.name(mark.direction()),
                        ground.text(mark.location()),
                        ground.text(buffers)),
                "before the buffer stops",
                ""));
      }
    }
  }
}
