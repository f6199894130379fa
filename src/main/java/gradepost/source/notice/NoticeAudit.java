package gradepost.source.notice;

import gradepost.pack.TemporaryRestriction;
import gradepost.route.Board;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.LineHoles.Place;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.source.route.RouteKeys;
import gradepost.source.route.SpeedTables;
import gradepost.text.Mistake;
import gradepost.units.Length;
import gradepost.units.Nearest;
import gradepost.units.Speed;
import gradepost.yaml.Key;
import gradepost.yaml.Problem;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What a second pair of eyes looks for in notices: each against the route and the others. */
public final class NoticeAudit {
  /** "Near" in a notice: a quarter of a mile, the distance between two posts. */
  private static final double NEAR_M = 402.336;

  private static final double BOARD_M = 20.2;
  private final Route route;
  private final Reader in;
  private final Path forward;
  private final Map<String, List<Extent>> features;

  public NoticeAudit(Route route, Reader in) {
    this.route = route;
    this.in = in;
    this.forward = new Path(route, Direction.FORWARD);
    this.features = featuresByName();
  }

  /** A feature that is not where the notice says it is: one of the two is wrong. */
  public void features(List<TemporaryRestriction> notices) {
    for (TemporaryRestriction n : notices) {
      near(n, SpeedTables.NEAR_FROM, n.particulars().nearFrom(), n.extent().from());
      near(n, SpeedTables.NEAR_TO, n.particulars().nearTo(), n.extent().to());
    }
  }

  /** Looks at each notice, and at each against those before it. */
  public void all(List<TemporaryRestriction> notices) {
    features(notices);
    for (TemporaryRestriction notice : notices) {
      boards(notice);
      dates(notice);
      slows(notice);
    }
    new NoticeOverlaps(forward, in).tell(notices);
  }

  private void near(TemporaryRestriction n, Key<String> key, String feature, Location at) {
    if (feature.isEmpty()) {
      return;
    }
    List<Extent> found = features.getOrDefault(feature, List.of());
    SourcePosition spot = in.spot(n, key);
    if (found.isEmpty()) {
      in.error(
          spot,
          NoticeMistakes.UNKNOWN_FEATURE.with(feature, Nearest.to(feature, features.keySet())));
      return;
    }
    double place = forward.metresAt(at);
    double off = found.stream().mapToDouble(e -> forward.span(e).offM(place)).min().orElse(0);
    if (off > NEAR_M) {
      Extent first = found.get(0);
      in.error(
          spot,
          NoticeMistakes.FEATURE_FAR_OFF.with(
              feature,
              Place.of(forward, forward.metresAt(first.from())),
              new InUnits<>(forward.units(), new Length(off)),
              Place.of(forward, place),
              new InUnits<>(forward.units(), new Length(NEAR_M))));
    }
  }

  private Map<String, List<Extent>> featuresByName() {
    Map<String, List<Extent>> out = new LinkedHashMap<>();
    route.stations().forEach(s -> s.platforms().forEach(p -> add(out, s.name(), p.extent())));
    route.junctions().forEach(j -> add(out, j.name(), j.extent()));
    route.structures().forEach(s -> add(out, s.name(), s.extent()));
    route.signals().forEach(s -> add(out, s.id(), new Extent(s.location(), s.location())));
    route.landmarks().forEach(l -> add(out, l.name(), new Extent(l.location(), l.location())));
    return out;
  }

  private static void add(Map<String, List<Extent>> out, String name, Extent extent) {
    out.computeIfAbsent(name, n -> new ArrayList<>()).add(extent);
  }

  private void boards(TemporaryRestriction n) {
    for (int i = 0; i < n.boards().size(); i++) {
      Board board = n.boards().get(i);
      Path path = new Path(route, board.direction());
      double at = path.metresAt(board.location());
      double begins = path.span(n.extent()).fromM();
      double ends = path.span(n.extent()).toM();
      SourcePosition spot = in.spot(n, SpeedTables.BOARDS, i);
      String word = board.kind().name().toLowerCase(Locale.ROOT);
      String trains = route.nameOf(board.direction());
      Place where = Place.of(path, at);
      switch (board.kind()) {
        case WARNING, REPEATING -> {
          if (at > begins) {
            Place from = Place.of(path, begins);
            warn(spot, NoticeMistakes.BOARD_BEYOND_THE_BEGINNING.with(word, trains, where, from));
          }
        }
        case COMMENCEMENT -> {
          if (Math.abs(at - begins) > BOARD_M) {
            Place from = Place.of(path, begins);
            warn(spot, NoticeMistakes.BOARD_NOT_AT_THE_BEGINNING.with(word, trains, where, from));
          }
        }
        case TERMINATION -> {
          if (Math.abs(at - ends) > BOARD_M) {
            Place to = Place.of(path, ends);
            warn(spot, NoticeMistakes.BOARD_NOT_AT_THE_END.with(word, trains, where, to));
          }
        }
      }
    }
  }

  /** Twenty typed as ninety slows nobody, and would be issued without a word. */
  private void slows(TemporaryRestriction n) {
    List<PermanentRestriction> there =
        route.restrictions().stream()
            .filter(p -> NoticeOverlaps.sameTrains(p.applies(), n.applies()))
            .filter(p -> overlap(p.extent(), n.extent()))
            .toList();
    boolean classes =
        !n.differentials().isEmpty() || there.stream().anyMatch(p -> !p.differentials().isEmpty());
    if (n.status() == TemporaryRestriction.Status.WITHDRAWN || there.isEmpty() || classes) {
      return;
    }
    double most = there.stream().mapToDouble(p -> p.speed().metresPerSecond()).max().orElseThrow();
    if (n.speed().metresPerSecond() >= most) {
      InUnits<Speed> permissible = new InUnits<>(route.units(), new Speed(most));
      warn(
          in.spot(n, RouteKeys.SPEED),
          NoticeMistakes.SLOWS_NO_TRAIN.with(n.reference(), permissible));
    }
  }

  private boolean overlap(Extent one, Extent other) {
    return forward.span(one).overlaps(forward.span(other));
  }

  private void dates(TemporaryRestriction n) {
    n.particulars()
        .issued()
        .filter(i -> i.isAfter(n.imposed()))
        .filter(i -> n.kind() != TemporaryRestriction.Kind.EMERGENCY)
        .ifPresent(i -> warn(in.spot(n, SpeedTables.NOTICE_ISSUED), NoticeMistakes.ISSUED_LATE));
    if (n.normalSpeed()
        .filter(s -> s.metresPerSecond() <= n.speed().metresPerSecond())
        .isPresent()) {
      warn(in.spot(n, SpeedTables.NORMAL_SPEED), NoticeMistakes.NORMAL_SPEED_NOT_ABOVE);
    }
  }

  private void warn(SourcePosition spot, Mistake mistake) {
    in.add(new Problem(spot, Severity.WARNING, mistake));
  }
}
