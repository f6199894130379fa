package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.route.Route;
import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.text.Mistake;
import gradepost.units.Mileage;
import gradepost.units.Parsed;
import gradepost.units.QuantityKind;
import gradepost.yaml.Reading;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Shows a route, or a part of it: read, find the part, draw. */
public final class Show {
  private final Drawing drawing;

  /** How a part of a route is shown, in lines of text. */
  public interface Drawing {
    /**
     * The lines of one part.
     *
     * @param fromM distance run in the forward direction where the part begins
     * @param toM where it ends, not less than {@code fromM}
     */
    List<String> lines(Route route, double fromM, double toM);
  }

  /** Shows routes in this way. */
  public Show(Drawing drawing) {
    this.drawing = drawing;
  }

  /**
   * The strip, or what is wrong with the file or the places.
   *
   * @param from a mileage, or the name of a section and a mileage; empty for the whole route
   * @param to likewise
   */
  public Answer of(Path file, Optional<String> from, Optional<String> to) {
    Reading<Route> reading = Disk.sources().route(Disk.name(file));
    return reading.match(
        good -> of(good.value(), from, to), rejected -> Answer.of(rejected.problems()));
  }

  private Answer of(Route route, Optional<String> from, Optional<String> to) {
    try {
      double begin = from.map(f -> metres(route, "from", f)).orElse(0.0);
      double end = to.map(t -> metres(route, "to", t)).orElseGet(() -> forward(route).lengthM());
      return new Answer(
          drawing.lines(route, Math.min(begin, end), Math.max(begin, end)),
          List.of(),
          List.of(),
          true);
    } catch (IllegalArgumentException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private static gradepost.route.Path forward(Route route) {
    return new gradepost.route.Path(route, Direction.FORWARD);
  }

  /**
   * The place that a clerk names.
   *
   * @throws IllegalArgumentException when it is nowhere or not at one place, with the reason
   */
  private static double metres(Route route, String key, String typed) {
    Optional<Section> named =
        route.sections().stream().filter(s -> typed.startsWith(s.name() + " ")).findFirst();
    String text = named.map(s -> typed.substring(s.name().length())).orElse(typed);
    Parsed<Mileage> parsed = QuantityKind.MILEAGE.parse(text);
    Mileage mileage =
        parsed.match(
            Parsed.Ok::value,
            bad -> {
              throw new IllegalArgumentException(bad.told(key, QuantityKind.MILEAGE).inWords());
            });
    List<Section> holding =
        named.map(List::of).orElse(route.sections()).stream()
            .filter(s -> s.holds(mileage))
            .toList();
    gradepost.route.Path path = forward(route);
    List<Long> places =
        holding.stream()
            .map(s -> Math.round(path.metresAt(new Location(s.name(), mileage)) * 1000))
            .distinct()
            .toList();
    if (places.size() == 1) {
      return places.get(0) / 1000.0;
    }
    Mistake mistake =
        holding.isEmpty()
            ? AppText.OFF_THE_ROUTE.with(typed, names(route.sections()))
            : AppText.ON_SEVERAL_SECTIONS.with(
                typed.strip(), names(holding), holding.get(0).name());
    throw new IllegalArgumentException(mistake.inWords());
  }

  private static List<String> names(List<Section> sections) {
    return sections.stream().map(Section::name).toList();
  }
}
