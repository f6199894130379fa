package gradepost.source.ride;

import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.route.LineHoles.Place;
import gradepost.route.Path;
import gradepost.route.place.Location;
import gradepost.source.ride.RideReader.Cell;
import gradepost.units.Mileage;
import gradepost.units.QuantityKind;
import gradepost.yaml.Reader;
import java.util.Comparator;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads places on the plan's path: a mileage, its section behind it where that is needed. */
final class RidePlaces {
  private static final Pattern IN_SECTION = Pattern.compile("(.*\\S) \\((.+)\\)");

  /** A mileage in miles may stop at the number of its chains. */
  private static final Pattern CHAINS = Pattern.compile("\\d{1,4}m \\d{1,2}");

  /** A brake may go on so far before the approach's own stretch, and so far past its target. */
  private static final double ABOUT_M = 400;

  private final Path path;
  private final Reader in;

  RidePlaces(Plan plan, Reader in) {
    this.path = plan.assignment().path();
    this.in = in;
  }

  /** On an approach's stretch: a mileage that is on two sections is none on two approaches. */
  Optional<Double> on(Cell cell, String name, Approach a) {
    double from = Math.max(0, a.fromM() - ABOUT_M);
    double to = Math.min(path.lengthM(), a.target().atM() + ABOUT_M);
    double wanted = a.brakingPointM().orElse(a.target().atM());
    Optional<Told> told = told(cell, name);
    Optional<Double> found = told.flatMap(t -> nearest(t, from, to, wanted));
    if (told.isPresent() && found.isEmpty()) {
      in.error(
          cell.spot(),
          RideMistakes.NOT_ON_THE_APPROACH.with(
              name, cell.text(), a.number(), Place.of(path, from), Place.of(path, to)));
    }
    return found;
  }

  /** Anywhere on the path. */
  Optional<Double> on(Cell cell, String name) {
    Optional<Told> told = told(cell, name);
    Optional<Double> found = told.flatMap(t -> nearest(t, 0, path.lengthM(), 0));
    if (told.isPresent() && found.isEmpty()) {
      in.error(cell.spot(), RideMistakes.NOT_ON_THE_ROUTE.with(name, cell.text()));
    }
    return found;
  }

  /** A mileage, perhaps with the section that it is on; an empty name where it is not told. */
  private record Told(String section, Mileage mileage) {}

  private Optional<Told> told(Cell cell, String name) {
    Matcher told = IN_SECTION.matcher(cell.text());
    boolean sectioned = told.matches() && isSection(told.group(2));
    String plain = sectioned ? told.group(1) : cell.text();
    return mileage(CHAINS.matcher(plain).matches() ? plain + "ch" : plain, cell, name)
        .map(mileage -> new Told(sectioned ? told.group(2) : "", mileage));
  }

  private Optional<Double> nearest(Told told, double from, double to, double wanted) {
    return path.sections().stream()
        .filter(s -> told.section().isEmpty() || told.section().equals(s.name()))
        .filter(s -> s.holds(told.mileage()))
        .map(s -> path.metresAt(new Location(s.name(), told.mileage())))
        .filter(at -> at >= from && at <= to)
        .min(Comparator.comparingDouble(at -> Math.abs(at - wanted)));
  }

  private Optional<Mileage> mileage(String text, Cell cell, String name) {
    return QuantityKind.MILEAGE
        .parse(text)
        .match(
            ok -> Optional.of(ok.value()),
            bad -> {
              in.error(cell.spot(), bad.told(name, QuantityKind.MILEAGE));
              return Optional.empty();
            });
  }

  private boolean isSection(String name) {
    return path.sections().stream().anyMatch(s -> s.name().equals(name));
  }
}
