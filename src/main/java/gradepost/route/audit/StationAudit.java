package gradepost.route.audit;

import gradepost.route.audit.AuditText.MarkAt;
import gradepost.route.audit.AuditText.PlatformOf;
import gradepost.route.place.Location;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.route.station.StopMark;
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
        PlatformOf at = new PlatformOf(station, platform);
        lines(at);
        platform.stopMarks().forEach(mark -> mark(at, mark));
        platform.bufferStops().ifPresent(buffers -> buffers(at, buffers));
      }
    }
  }

  private MarkAt at(PlatformOf platform, StopMark mark) {
    return new MarkAt(platform, mark, ground.name(mark.direction()), ground.place(mark.location()));
  }

  private void lines(PlatformOf of) {
    Platform platform = of.platform();
    double from = ground.from(platform.extent());
    double to = ground.to(platform.extent());
    boolean served =
        ground.lines(platform.applies()).stream().anyMatch(l -> ground.exists(l, from, to));
    if (!served) {
      out.add(new AuditFinding(AuditText.OFF_LINE_PLATFORM.with(of), platform, "lines"));
    }
  }

  private void mark(PlatformOf of, StopMark mark) {
    double at = ground.at(mark.location());
    double from = ground.from(of.platform().extent());
    double to = ground.to(of.platform().extent());
    if (at < from - SLACK_M || at > to + SLACK_M) {
      out.add(
          new AuditFinding(
              AuditText.MARK_OFF_PLATFORM.with(
                  at(of, mark),
                  ground.length(Math.max(from - at, at - to)),
                  ground.between(of.platform().extent())),
              mark,
              "at"));
    }
  }

  /** The platform road ends at one end of the platform; which, the marks tell. */
  private void buffers(PlatformOf of, Location buffers) {
    Platform platform = of.platform();
    double at = ground.at(buffers);
    double from = ground.from(platform.extent());
    double to = ground.to(platform.extent());
    if (at > from + SLACK_M && at < to - SLACK_M) {
      out.add(
          new AuditFinding(
              AuditText.MARK_PAST_BUFFERS_WITHIN.with(of, ground.place(buffers)),
              platform,
              "buffer-stops"));
    }
    double middle = (from + to) / 2;
    for (StopMark mark : platform.stopMarks()) {
      double markAt = ground.at(mark.location());
      if (at > middle ? markAt > at : markAt < at) {
        out.add(
            new AuditFinding(
                AuditText.MARK_PAST_BUFFERS_MARK.with(at(of, mark), ground.place(buffers)),
                mark,
                "at"));
      }
    }
  }
}
