package gradepost.app.shelf;

import gradepost.route.Route;
import gradepost.route.place.Location;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The lines of a shelf, each with the places that a notice may name. */
public final class NoticeLines {
  private final Shelf shelf;

  /** Of the routes as they were read last. */
  private volatile IdentityHashMap<Route, NoticeLine> known = new IdentityHashMap<>();

  /** Of the packs of this shelf. */
  public NoticeLines(Shelf shelf) {
    this.shelf = shelf;
  }

  /** By name; those of packs that cannot be read are left out. */
  public List<NoticeLine> all() throws IOException {
    IdentityHashMap<Route, NoticeLine> before = known;
    IdentityHashMap<Route, NoticeLine> now = new IdentityHashMap<>();
    Map<String, NoticeLine> out = new TreeMap<>();
    for (ShelfPack pack : shelf.packs()) {
      shelf
          .file(pack)
          .map(PackFile::route)
          .filter(route -> !out.containsKey(route.name()))
          .ifPresent(
              route -> {
                NoticeLine line =
                    Optional.ofNullable(before.get(route)).orElseGet(() -> line(route));
                now.put(route, line);
                out.put(route.name(), line);
              });
    }
    known = now;
    return List.copyOf(out.values());
  }

  private static NoticeLine line(Route route) {
    Map<Location, List<String>> at = new LinkedHashMap<>();
    route
        .stations()
        .forEach(
            s ->
                s.platforms()
                    .forEach(
                        p -> {
                          note(
                              at,
                              p.extent().from(),
                              "%s, platform %s".formatted(s.name(), p.number()));
                          note(
                              at,
                              p.extent().to(),
                              "%s, platform %s".formatted(s.name(), p.number()));
                        }));
    route.junctions().forEach(j -> note(at, j.extent().from(), j.name()));
    route.signals().forEach(s -> note(at, s.location(), "signal " + s.id()));
    route.landmarks().forEach(l -> note(at, l.location(), l.name()));
    route
        .structures()
        .forEach(
            s -> {
              note(at, s.extent().from(), s.name());
              note(at, s.extent().to(), s.name());
            });
    List<NoticeLine.Place> places = new ArrayList<>();
    at.entrySet().stream()
        .sorted(
            java.util.Comparator.comparingInt(
                    (Map.Entry<Location, List<String>> e) -> section(route, e.getKey()))
                .thenComparingDouble(e -> e.getKey().mileage().metres()))
        .forEach(
            e ->
                places.add(
                    new NoticeLine.Place(
                        text(route, e.getKey()), String.join(", ", e.getValue()))));
    return new NoticeLine(
        route.name(),
        route.forwardName(),
        route.backwardName(),
        route.units().speedUnit(),
        route.lines().stream().map(l -> l.name()).toList(),
        places);
  }

  private static void note(Map<Location, List<String>> at, Location place, String what) {
    List<String> there = at.computeIfAbsent(place, p -> new ArrayList<>());
    if (!there.contains(what)) {
      there.add(what);
    }
  }

  private static int section(Route route, Location place) {
    for (int i = 0; i < route.sections().size(); i++) {
      if (route.sections().get(i).name().equals(place.section())) {
        return i;
      }
    }
    return route.sections().size();
  }

  private static String text(Route route, Location place) {
    String mileage = route.units().mileage(place.mileage());
    long holding = route.sections().stream().filter(s -> s.holds(place.mileage())).count();
    return holding > 1 ? "%s (%s)".formatted(mileage, place.section()) : mileage;
  }
}
