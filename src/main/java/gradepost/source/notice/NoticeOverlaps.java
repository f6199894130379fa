package gradepost.source.notice;

import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.route.LineHoles.Place;
import gradepost.route.Path;
import gradepost.route.Stretch;
import gradepost.route.place.Applies;
import gradepost.source.route.RouteKeys;
import gradepost.text.Mistake;
import gradepost.yaml.Problem;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * Restrictions that overlap for the same trains at the same time. Met in order of their beginnings,
 * each is compared only with those that have not ended before it: a file of ten thousand is looked
 * through in a moment.
 */
final class NoticeOverlaps {
  /** So many of those that one overlaps are told one by one. */
  private static final int NAMED = 5;

  private final Path forward;
  private final Reader in;

  /** A restriction by its place in the file, and where it stands in the forward direction. */
  private record Placed(int index, TemporaryRestriction notice, Stretch span) {}

  NoticeOverlaps(Path forward, Reader in) {
    this.forward = forward;
    this.in = in;
  }

  /** Each is told at the later of the two in the file. */
  void tell(List<TemporaryRestriction> notices) {
    List<Placed> stretches = new ArrayList<>();
    List<Earlier> earlier = new ArrayList<>();
    for (int i = 0; i < notices.size(); i++) {
      TemporaryRestriction n = notices.get(i);
      earlier.add(new Earlier());
      if (n.status() != Status.WITHDRAWN) {
        stretches.add(new Placed(i, n, forward.span(n.extent())));
      }
    }
    stretches.sort(Comparator.comparingDouble(s -> s.span().fromM()));
    List<Placed> open = new ArrayList<>();
    for (Placed next : stretches) {
      open.removeIf(s -> s.span().toM() <= next.span().fromM());
      for (Placed other : open) {
        if (other.span().fromM() < next.span().toM() && sameTrains(next.notice(), other.notice())) {
          boolean later = next.index() > other.index();
          earlier.get(later ? next.index() : other.index()).add(later ? other : next);
        }
      }
      open.add(next);
    }
    stretches.sort(Comparator.comparingInt(Placed::index));
    stretches.forEach(s -> tell(s, earlier.get(s.index())));
  }

  /**
   * The first ones that a restriction overlaps, in the order of the file, and how many there are.
   */
  private static final class Earlier {
    private final TreeSet<Placed> first = new TreeSet<>(Comparator.comparingInt(Placed::index));
    private int count;

    void add(Placed stretch) {
      count++;
      first.add(stretch);
      if (first.size() > NAMED) {
        first.pollLast();
      }
    }
  }

  private void tell(Placed second, Earlier earlier) {
    for (Placed first : earlier.first) {
      note(
          second,
          NoticeMistakes.OVERLAP.with(
              first.notice().reference(),
              second.notice().reference(),
              Place.of(forward, Math.max(first.span().fromM(), second.span().fromM())),
              Place.of(forward, Math.min(first.span().toM(), second.span().toM()))));
    }
    if (earlier.count > NAMED) {
      note(
          second,
          NoticeMistakes.MORE_OVERLAPS.with(second.notice().reference(), earlier.count - NAMED));
    }
  }

  private void note(Placed at, Mistake mistake) {
    in.add(new Problem(in.spot(at.notice(), RouteKeys.FROM), Severity.NOTE, mistake));
  }

  private static boolean sameTrains(TemporaryRestriction first, TemporaryRestriction second) {
    boolean sameTime =
        first.until().map(u -> u.isAfter(second.imposed())).orElse(true)
            && second.until().map(u -> u.isAfter(first.imposed())).orElse(true);
    return sameTime && sameTrains(first.applies(), second.applies());
  }

  static boolean sameTrains(Applies a, Applies b) {
    boolean lines =
        a.lines().isEmpty() || b.lines().isEmpty() || !Collections.disjoint(a.lines(), b.lines());
    return lines && !Collections.disjoint(a.directions(), b.directions());
  }
}
