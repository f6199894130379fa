package gradepost.drive;

import gradepost.route.Board;
import gradepost.route.GradientPiece;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.route.station.StopMark;
import gradepost.source.Frozen;
import gradepost.source.pack.PackFile;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.units.Mileage;
import gradepost.units.Span;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The first of the two open lines (test data, see the README beside it), once or end to end several
 * times in one leg: from its first stop to the last stop of the last repeat.
 */
public final class OpenLine {
  private static final Path FOLDER = Path.of("src/test/resources/gradepost/open-lines");

  /** One of the open lines as it is: "one" or "two". */
  public static Assignment assignment(String line) {
    PackFile pack = Frozen.pack(FOLDER, line + "/pack.yaml");
    return pack.assignment(pack.directions().get(0), pack.formations().get(0));
  }

  /** Line one so many times end to end, without a stop between. */
  public static Assignment repeated(int times) {
    Assignment once = assignment("one");
    Route route = once.route();
    Section section = route.sections().get(0);
    double byM = section.lengthM();
    List<GradientPiece> gradients = new ArrayList<>();
    List<PermanentRestriction> restrictions = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      double on = i * byM;
      for (GradientPiece piece : route.gradients()) {
        gradients.add(new GradientPiece(moved(piece.extent(), on), piece.gradient()));
      }
      for (PermanentRestriction limit : route.restrictions()) {
        restrictions.add(
            new PermanentRestriction(
                limit.name() + " of repeat " + (i + 1),
                moved(limit.extent(), on),
                limit.applies(),
                limit.speed(),
                limit.differentials(),
                limit.boards().stream()
                    .map(b -> new Board(b.kind(), moved(b.location(), on), b.direction()))
                    .toList(),
                limit.reason()));
      }
    }
    double end = (times - 1) * byM;
    Station first = route.stations().get(0);
    Station last = moved(route.stations().get(route.stations().size() - 1), end);
    RunningLine main = route.lines().get(0);
    Section longer =
        new Section(
            section.name(), section.from(), new Mileage(section.from().metres() + times * byM));
    Extent whole =
        new Extent(
            new Location(section.name(), longer.from()), new Location(section.name(), longer.to()));
    Route all =
        new Route(
            route.name(),
            route.description(),
            route.units(),
            route.forwardName(),
            route.backwardName(),
            route.posts(),
            List.of(longer),
            List.of(new RunningLine(main.name(), List.of(whole), main.directions())),
            gradients,
            List.of(),
            restrictions,
            List.of(),
            List.of(first, last),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of());
    List<Call> calls =
        List.of(
            new Call(first, first.platforms().get(0), new Span(30)),
            new Call(last, last.platforms().get(0), new Span(30)));
    return new Assignment(
        all,
        once.direction(),
        once.lines(),
        once.junctionRoutes(),
        calls,
        once.stock(),
        once.formation(),
        once.load(),
        once.policy(),
        List.of());
  }

  private static Location moved(Location from, double byM) {
    return new Location(from.section(), new Mileage(from.mileage().metres() + byM));
  }

  private static Extent moved(Extent from, double byM) {
    return new Extent(moved(from.from(), byM), moved(from.to(), byM));
  }

  private static Station moved(Station station, double byM) {
    List<Platform> platforms = new ArrayList<>();
    for (Platform platform : station.platforms()) {
      List<StopMark> marks =
          platform.stopMarks().stream()
              .map(m -> new StopMark(m.cars(), moved(m.location(), byM), m.direction()))
              .toList();
      platforms.add(
          new Platform(
              platform.number(),
              moved(platform.extent(), byM),
              platform.applies(),
              platform.side(),
              platform.bufferStops().map(b -> moved(b, byM)),
              marks,
              platform.doorInstruction()));
    }
    return new Station(station.name(), station.code(), platforms);
  }

  private OpenLine() {}
}
