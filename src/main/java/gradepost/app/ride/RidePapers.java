package gradepost.app.ride;

import gradepost.app.export.RideJson;
import gradepost.app.issue.Issue;
import gradepost.app.issue.Layout;
import gradepost.app.store.Digest;
import gradepost.app.store.Paper;
import gradepost.briefing.signoff.Debrief;
import gradepost.briefing.signoff.RideReport;
import gradepost.ride.RideResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is put on paper of a ride that was judged. */
final class RidePapers {
  /** So much of the digest of a ride tells it from another one of the same name. */
  private static final int DIGITS = 6;

  /** Report, debrief, and for whoever keeps rides the same as JSON. */
  static List<Paper> of(
      RideOf rides, Path file, RideDetails details, RideResult result, Layout layout)
      throws IOException {
    String name = String.valueOf(file.getFileName());
    String stem = stem(file, details);
    List<Paper> out = new ArrayList<>();
    RideReport.Named named = details.named();
    out.addAll(
        layout.papers(stem + "-report", new RideReport(rides.course()).of(result, name, named)));
    out.addAll(layout.papers(stem + "-debrief", new Debrief(rides.course()).of(result, named)));
    if (details.json()) {
      RideJson.Of of =
          new RideJson.Of(
              Issue.fingerprint(rides.pack().inputs()),
              AssessRide.direction(rides.task()),
              AssessRide.formation(rides.task()),
              named.driver(),
              named.assessor(),
              named.on().map(Object::toString).orElse(""));
      out.add(new Paper(stem + ".json", RideJson.of(of, result, rides.names())));
    }
    return out;
  }

  /** No two drivers' reports have one name, nor two rides of one driver. */
  private static String stem(Path file, RideDetails details) throws IOException {
    String driver =
        details
            .driver()
            .map(d -> "-" + d.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-"))
            .orElse("");
    return String.valueOf(file.getFileName()).replaceFirst("\\.[A-Za-z]{1,4}$", "")
        + driver
        + "-"
        + Digest.of(Files.readAllBytes(file)).substring(0, DIGITS);
  }

  private RidePapers() {}
}
