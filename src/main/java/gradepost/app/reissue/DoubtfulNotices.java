package gradepost.app.reissue;

import gradepost.app.making.Outcome;
import gradepost.app.making.Outcome.State;
import gradepost.app.store.Answer;
import gradepost.pack.Lookalike;
import gradepost.pack.Particulars;
import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.source.pack.PackFile;
import gradepost.units.MomentStyle;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Notices that a clerk may have been sent by mistake: nothing in one says that it is for this line,
 * or one changes what nobody has, or what lies elsewhere, or looks like another. Mileages alone fit
 * many lines, and references are mistyped. Each has to be confirmed.
 */
final class DoubtfulNotices {
  private final Set<String> confirmed;

  DoubtfulNotices(Set<String> confirmed) {
    this.confirmed = confirmed;
  }

  /**
   * The packs that have a doubtful notice, each with why; none where all are plain or confirmed.
   */
  List<Outcome> of(List<Seen.Touched> touched) {
    Set<String> known =
        touched.stream()
            .flatMap(t -> t.found().notices().stream())
            .map(TemporaryRestriction::reference)
            .collect(Collectors.toSet());
    Set<String> standing =
        touched.stream()
            .flatMap(t -> Stream.of(t.found(), t.next().pack()))
            .flatMap(pack -> pack.notices().stream())
            .filter(notice -> notice.status() != Status.WITHDRAWN)
            .map(TemporaryRestriction::reference)
            .collect(Collectors.toCollection(TreeSet::new));
    List<Outcome> out = new ArrayList<>();
    for (Seen.Touched each : touched) {
      Map<String, List<String>> doubts = new LinkedHashMap<>();
      for (TemporaryRestriction notice : each.next().pack().notices()) {
        boolean taken = !each.found().notices().contains(notice);
        if (taken && !confirmed.contains(notice.reference())) {
          doubt(notice, known, each.found().route(), doubts);
          if (!known.contains(notice.reference())) {
            alike(notice, standing, doubts);
          }
          elsewhere(notice, each.found(), doubts);
          sooner(notice, each.found(), doubts);
          slower(notice, each.found(), doubts);
        }
      }
      if (!doubts.isEmpty()) {
        out.add(
            Outcome.of(
                each.outcome().file(),
                State.DOUBTFUL,
                Answer.refused(refusal(each.outcome().file().toString(), doubts))));
      }
    }
    return out;
  }

  private static void doubt(
      TemporaryRestriction notice,
      Set<String> known,
      Route route,
      Map<String, List<String>> doubts) {
    boolean goesOn = notice.status() == Status.EXTENDED || notice.status() == Status.EASED;
    if (goesOn && !known.contains(notice.reference())) {
      add(
          doubts,
          notice,
          "it is %s, but no pack has it: it would be taken as new"
              .formatted(notice.status() == Status.EXTENDED ? "extended" : "eased"));
    } else if (!known.contains(notice.reference()) && !isTied(notice.particulars(), route)) {
      add(
          doubts,
          notice,
          "it names no route, and no feature or station of %s: its mileage may be another line's"
              .formatted(route.name()));
    }
  }

  /** Two notices that nobody tells apart on paper would stand side by side. */
  private static void alike(
      TemporaryRestriction notice, Set<String> standing, Map<String, List<String>> doubts) {
    standing.stream()
        .filter(other -> !other.equals(notice.reference()))
        .filter(other -> Lookalike.same(other, notice.reference()))
        .forEach(
            other ->
                add(
                    doubts,
                    notice,
                    "it looks like %s, but is typed otherwise: it would be taken as another"
                        .formatted(other)));
  }

  private static void add(
      Map<String, List<String>> doubts, TemporaryRestriction notice, String why) {
    doubts.computeIfAbsent(notice.reference(), none -> new ArrayList<>()).add(why);
  }

  /** A notice whose reference is another's would ease or withdraw what it is not about. */
  private static void elsewhere(
      TemporaryRestriction notice, PackFile found, Map<String, List<String>> doubts) {
    Path path = new Path(found.route(), Direction.FORWARD);
    found.notices().stream()
        .filter(had -> had.reference().equals(notice.reference()))
        .filter(had -> had.status() != Status.WITHDRAWN)
        .filter(had -> !path.span(had.extent()).overlaps(path.span(notice.extent())))
        .forEach(
            had ->
                add(
                    doubts,
                    notice,
                    "it is for %s, but the pack has it for %s, which is another place"
                        .formatted(spelt(path, notice.extent()), spelt(path, had.extent()))));
  }

  /** A day mistyped in an extension would end a restriction that is to go on. */
  private static void sooner(
      TemporaryRestriction notice, PackFile found, Map<String, List<String>> doubts) {
    if (notice.status() == Status.EXTENDED && notice.until().isPresent()) {
      LocalDateTime end = notice.until().get();
      found.notices().stream()
          .filter(had -> had.reference().equals(notice.reference()))
          .filter(had -> had.status() != Status.WITHDRAWN)
          .filter(had -> had.until().map(end::isBefore).orElse(true))
          .forEach(
              had ->
                  add(
                      doubts,
                      notice,
                      "it is extended, but would end on %s, before the pack has it end"
                          .formatted(MomentStyle.MOMENT.format(end))));
    }
  }

  /** To ease a restriction is to let trains be faster; else a speed may be mistyped. */
  private static void slower(
      TemporaryRestriction notice, PackFile found, Map<String, List<String>> doubts) {
    double now = notice.speed().metresPerSecond();
    found.notices().stream()
        .filter(had -> notice.status() == Status.EASED && had.status() != Status.WITHDRAWN)
        .filter(had -> had.reference().equals(notice.reference()))
        .filter(had -> now < had.speed().metresPerSecond())
        .forEach(
            had -> add(doubts, notice, "it is eased, but its speed is lower than the pack has"));
  }

  private static String spelt(Path path, Extent extent) {
    return "%s to %s"
        .formatted(
            path.units().mileage(extent.from().mileage()),
            path.units().mileage(extent.to().mileage()));
  }

  /** A name of a feature was checked against the route when the notice was read. */
  private static boolean isTied(Particulars notice, Route route) {
    return !notice.route().isEmpty()
        || !notice.nearFrom().isEmpty()
        || !notice.nearTo().isEmpty()
        || route.stations().stream().anyMatch(s -> notice.between().contains(s.name()));
  }

  private static String refusal(String file, Map<String, List<String>> doubts) {
    StringBuilder out = new StringBuilder(file).append(": error: the notice may be a mistake");
    doubts.forEach(
        (key, all) -> all.forEach(why -> out.append("\n  ").append(key).append(": ").append(why)));
    out.append(
        "\n  Maybe correct its reference, or add its route; or, if it is right, confirm each by name:");
    doubts.keySet().forEach(key -> out.append(" --confirm \"%s\"".formatted(key)));
    return out.toString();
  }
}
