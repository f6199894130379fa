package gradepost.route;

import gradepost.route.place.Extent;
import java.util.List;
import java.util.function.Function;

/**
 * What a train meets of a route along a stretch of its path. Sections, stations and lines stay
 * whole, so that every place keeps its mileage and its distance run; of all else only what reaches
 * into the stretch is left.
 */
public final class RoutePart {
  private final Path path;
  private final Stretch along;

  private RoutePart(Path path, Stretch along) {
    this.path = path;
    this.along = along;
  }

  /** The part of the path's route along a stretch of it; gradients still follow without a gap. */
  public static Route of(Path path, Stretch along) {
    return new RoutePart(path, along).part();
  }

  private Route part() {
    Route whole = path.route();
    return new Route(
        whole.name(),
        "",
        whole.units(),
        whole.forwardName(),
        whole.backwardName(),
        whole.posts(),
        whole.sections(),
        whole.lines(),
        met(whole.gradients(), GradientPiece::extent),
        met(whole.curves(), Curve::extent),
        met(whole.restrictions(), PermanentRestriction::extent),
        met(whole.junctions(), Junction::extent),
        whole.stations(),
        whole.signals().stream().filter(s -> meets(path.metresAt(s.location()))).toList(),
        whole.landmarks().stream().filter(l -> meets(path.metresAt(l.location()))).toList(),
        met(whole.structures(), Structure::extent),
        met(whole.railGaps(), RailGap::extent),
        met(whole.lowAdhesion(), LowAdhesionSite::extent),
        whole.brakeTests().stream().filter(b -> meets(path.metresAt(b.location()))).toList(),
        List.of(),
        List.of(),
        List.of(),
        whole.railCentres());
  }

  private <T> List<T> met(List<T> all, Function<T, Extent> extent) {
    return all.stream().filter(one -> along.overlaps(path.span(extent.apply(one)))).toList();
  }

  private boolean meets(double atM) {
    return atM >= along.fromM() && atM <= along.toM();
  }
}
