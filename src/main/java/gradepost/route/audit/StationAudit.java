package gradepost.route.audit;

import gradepost.route.Platform;
import gradepost.route.Station;
import gradepost.route.StopMark;
import gradepost.route.place.Location;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
        lines(station, platform);
        platform.stopMarks().forEach(mark -> mark(station, platform, mark));
        platform.bufferStops().ifPresent(buffers -> buffers(station, platform, buffers));
      }
    }
  }

  private static Map<String, String> names(Station station, Platform platform) {
    Map<String, String> values = new HashMap<>();
    values.put("platform", platform.number());
    values.put("station", station.name());
    return values;
  }

  private Map<String, String> names(Station station, Platform platform, StopMark mark) {
    Map<String, String> values = names(station, platform);
    values.put("cars", String.valueOf(mark.cars()));
    values.put("direction", ground.name(mark.direction()));
    values.put("place", ground.text(mark.location()));
    return values;
  }

  private void lines(Station station, Platform platform) {
    double from = ground.from(platform.extent());
    double to = ground.to(platform.extent());
    boolean served =
        ground.lines(platform.applies()).stream().anyMatch(l -> ground.exists(l, from, to));
    if (!served) {
      out.add(
          new AuditFinding(
              AuditText.OFF_LINE_PLATFORM, platform, "lines", names(station, platform)));
    }
  }

  private void mark(Station station, Platform platform, StopMark mark) {
    double at = ground.at(mark.location());
    double from = ground.from(platform.extent());
    double to = ground.to(platform.extent());
    if (at < from - SLACK_M || at > to + SLACK_M) {
      Map<String, String> values = names(station, platform, mark);
      values.put("off", ground.length(Math.max(from - at, at - to)));
      values.put("from", ground.text(platform.extent().from()));
      values.put("to", ground.text(platform.extent().to()));
      out.add(new AuditFinding(AuditText.MARK_OFF_PLATFORM, mark, "at", values));
    }
  }

  /** The platform road ends at one end of the platform; which, the marks tell. */
  private void buffers(Station station, Platform platform, Location buffers) {
    double at = ground.at(buffers);
    double from = ground.from(platform.extent());
    double to = ground.to(platform.extent());
    if (at > from + SLACK_M && at < to - SLACK_M) {
      Map<String, String> values = names(station, platform);
      values.put("buffers", ground.text(buffers));
      out.add(
          new AuditFinding(AuditText.MARK_PAST_BUFFERS_WITHIN, platform, "buffer-stops", values));
    }
    double middle = (from + to) / 2;
    for (StopMark mark : platform.stopMarks()) {
      double markAt = ground.at(mark.location());
      if (at > middle ? markAt > at : markAt < at) {
        Map<String, String> values = names(station, platform, mark);
        values.put("buffers", ground.text(buffers));
        out.add(new AuditFinding(AuditText.MARK_PAST_BUFFERS_MARK, mark, "at", values));
      }
    }
  }
}
