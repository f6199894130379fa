package gradepost.app;

import gradepost.route.Direction;
import gradepost.route.Location;
import gradepost.route.Route;
import gradepost.route.Section;
import gradepost.source.Reading;
import gradepost.units.Mileage;
import gradepost.units.Parsed;
import gradepost.units.QuantityKind;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Draws a route as a strip of plain text. */
public final class Show {

  /**
   * The strip, or what is wrong with the file or the places.
   *
   * @param from a mileage, or the name of a section and a mileage; empty for the whole route
   * @param width of the terminal, in characters
   */
  public Answer of(Path file, Optional<String> from, Optional<String> to, int width) {
    if (width < Strip.LEAST_WIDTH) {
      return Answer.refused("error: a strip is at least " + Strip.LEAST_WIDTH + " characters wide");
    }
    Reading<Route> reading = Disk.sources().route(Disk.name(file));
    if (!(reading instanceof Reading.Good<Route> good)) {
      return Answer.of(reading.problems());
    }
    try {
      Strip strip = new Strip(good.value());
      double begin = from.map(f -> metres(good.value(), f)).orElse(0.0);
      double end = to.map(t -> metres(good.value(), t)).orElse(strip.lengthM());
      return new Answer(
          strip.lines(Math.min(begin, end), Math.max(begin, end), width),
          List.of(),
          List.of(),
          true);
    } catch (IllegalArgumentException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  /**
   * The place that a clerk names.
   *
   * @throws IllegalArgumentException when it is nowhere or not at one place, with the reason
   */
  private static double metres(Route route, String typed) {
    Optional<Section> named =
        route.sections().stream().filter(s -> typed.startsWith(s.name() + " ")).findFirst();
    String text = named.map(s -> typed.substring(s.name().length())).orElse(typed);
    Parsed<Mileage> parsed = QuantityKind.MILEAGE.parse(text);
    if (parsed instanceof Parsed.Bad<Mileage> bad) {
      throw new IllegalArgumentException(
          bad.what()
              + "; allowed: "
              + bad.allowed()
              + (bad.maybe().isEmpty() ? "" : "\n  Maybe " + bad.maybe()));
    }
    Mileage mileage = ((Parsed.Ok<Mileage>) parsed).value();
    List<Section> holding =
        named.map(List::of).orElse(route.sections()).stream()
            .filter(s -> s.holds(mileage))
            .toList();
    gradepost.route.Path path = new gradepost.route.Path(route, Direction.FORWARD);
    List<Long> places =
        holding.stream()
            .map(s -> Math.round(path.metresAt(new Location(s.name(), mileage)) * 1000))
            .distinct()
            .toList();
    if (places.size() == 1) {
      return places.get(0) / 1000.0;
    }
    String sections =
        (holding.isEmpty() ? route.sections() : holding)
            .stream().map(Section::name).collect(Collectors.joining(", "));
    throw new IllegalArgumentException(
        holding.isEmpty()
            ? "%s is off the route; allowed: a mileage on %s".formatted(typed, sections)
            : "%s is on %s\n  Maybe \"%s %s\""
                .formatted(typed, sections, holding.get(0).name(), typed.strip()));
  }
}
