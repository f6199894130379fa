package gradepost.route.audit;

import gradepost.route.Landmark;
import gradepost.route.LineHoles.Place;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
import gradepost.route.Signal;
import gradepost.route.Structure;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Names that stand in more than one place, and places that have more than one name. */
final class NameAudit {
  /** A landmark that is the thing itself. */
  private static final double SAME_M = 50;

  /** A landmark that is named after a thing near by ("whistle board, Mill crossing"). */
  private static final double NEAR_M = 500;

  /** A landmark that is named after a station. */
  private static final double STATION_M = 1200;

  private static final double ONE_PLACE_M = 3;

  private final Ground ground;
  private final List<AuditFinding> out;

  NameAudit(Ground ground, List<AuditFinding> out) {
    this.ground = ground;
    this.out = out;
  }

  /** Something with a name and a stretch that a landmark may be named after. */
  private record Named(
      String noun, String name, String folded, double fromM, double toM, double nearM) {
    Named(String noun, String name, double fromM, double toM, double nearM) {
      this(noun, name, fold(name), fromM, toM, nearM);
    }

    double off(double atM) {
      return Math.max(0, Math.max(fromM - atM, atM - toM));
    }
  }

  /** A record with its name, for the comparison of spellings. */
  private record Spelt(Object element, String key, String name, String squeezed) {
    Spelt(Object element, String name) {
      this(element, "name", name, fold(name).replaceAll("[^\\p{L}\\p{N}]", ""));
    }
  }

  void run() {
    List<Named> things = things();
    ground.route().landmarks().forEach(landmark -> mention(landmark, things));
    repeatedLandmarks();
    onePlace();
    spellings();
  }

  private List<Named> things() {
    Route route = ground.route();
    List<Named> things = new ArrayList<>();
    for (Signal s : route.signals()) {
      double at = ground.at(s.location());
      things.add(new Named("signal", s.id(), at, at, SAME_M));
    }
    for (Structure s : route.structures()) {
      String noun = s.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ');
      things.add(new Named(noun, s.name(), ground.from(s.extent()), ground.to(s.extent()), NEAR_M));
    }
    for (Station s : route.stations()) {
      double from =
          s.platforms().stream().mapToDouble(p -> ground.from(p.extent())).min().orElse(0);
      double to = s.platforms().stream().mapToDouble(p -> ground.to(p.extent())).max().orElse(0);
      things.add(new Named("station", s.name(), from, to, STATION_M));
    }
    things.sort(Comparator.comparingInt((Named t) -> t.name().length()).reversed());
    return things;
  }

  /** The longest name in the landmark's own name is the thing that it speaks of. */
  private void mention(Landmark landmark, List<Named> things) {
    double at = ground.at(landmark.location());
    String spoken = fold(landmark.name());
    List<Named> meant = things.stream().filter(t -> contains(spoken, t.folded())).toList();
    if (meant.isEmpty()) {
      return;
    }
    String name = meant.get(0).name();
    Named nearest =
        meant.stream()
            .filter(t -> t.name().equals(name))
            .min(Comparator.comparingDouble(t -> t.off(at)))
            .orElseThrow();
    boolean itself = fold(landmark.name()).equals(fold(name));
    if (nearest.off(at) > (itself ? SAME_M : nearest.nearM())) {
      out.add(
          new AuditFinding(
              AuditText.NAME_PLACE_FAR.with(
                  landmark.name(),
                  ground.place(landmark.location()),
                  nearest.noun(),
                  name,
                  ground.place(nearest.fromM()),
                  ground.length(itself ? SAME_M : nearest.nearM())),
              landmark,
              "at"));
    }
  }

  /** Whole words of a text; both in small letters. */
  private static boolean contains(String text, String name) {
    if (!text.contains(name)) {
      return false;
    }
    String pattern = "(?<![\\p{L}\\p{N}])" + Pattern.quote(name) + "(?![\\p{L}\\p{N}])";
    return Pattern.compile(pattern).matcher(text).find();
  }

  private void repeatedLandmarks() {
    List<Landmark> all = ground.route().landmarks();
    for (int i = 0; i < all.size(); i++) {
      for (int j = 0; j < i; j++) {
        Landmark first = all.get(j);
        Landmark second = all.get(i);
        if (!first.name().equals(second.name())) {
          continue;
        }
        double apart = Math.abs(ground.at(first.location()) - ground.at(second.location()));
        boolean toOneTrain =
            first.applies().directions().stream().anyMatch(second.applies().directions()::contains);
        if (apart > ONE_PLACE_M && toOneTrain) {
          out.add(
              new AuditFinding(
                  AuditText.NAME_PLACE_AGAIN.with(
                      second.name(),
                      ground.place(second.location()),
                      ground.place(first.location())),
                  second,
                  "at"));
        }
      }
    }
  }

  private void onePlace() {
    Route route = ground.route();
    for (Structure a : route.structures()) {
      for (Structure b : before(route.structures(), a)) {
        boolean same =
            a.kind() == b.kind()
                && Math.abs(ground.from(a.extent()) - ground.from(b.extent())) < ONE_PLACE_M
                && Math.abs(ground.to(a.extent()) - ground.to(b.extent())) < ONE_PLACE_M;
        if (same) {
          twoNames(a, "name", a.name(), b.name(), ground.place(a.extent().from()));
        }
      }
    }
    for (Signal a : route.signals()) {
      for (Signal b : before(route.signals(), a)) {
        boolean same =
            a.line().equals(b.line())
                && a.direction() == b.direction()
                && Math.abs(ground.at(a.location()) - ground.at(b.location())) < ONE_PLACE_M;
        if (same) {
          twoNames(a, "id", a.id(), b.id(), ground.place(a.location()));
        }
      }
    }
    for (PermanentRestriction a : route.restrictions()) {
      for (PermanentRestriction b : before(route.restrictions(), a)) {
        if (a.extent().equals(b.extent()) && a.applies().equals(b.applies())) {
          twoNames(a, "name", a.name(), b.name(), ground.place(a.extent().from()));
        }
      }
    }
    for (Station a : route.stations()) {
      for (Station b : before(route.stations(), a)) {
        if (a.platforms().stream()
            .anyMatch(p -> b.platforms().stream().anyMatch(q -> samePlatform(p, q)))) {
          twoNames(
              a, "name", a.name(), b.name(), ground.place(a.platforms().get(0).extent().from()));
        }
      }
    }
  }

  private boolean samePlatform(Platform a, Platform b) {
    return a.applies().equals(b.applies())
        && a.side() == b.side()
        && ground.from(a.extent()) < ground.to(b.extent())
        && ground.from(b.extent()) < ground.to(a.extent());
  }

  private static <T> List<T> before(List<T> all, T one) {
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i) == one) {
        return all.subList(0, i);
      }
    }
    return List.of();
  }

  private void spellings() {
    List<Spelt> all = new ArrayList<>();
    Route route = ground.route();
    route.stations().forEach(s -> all.add(new Spelt(s, s.name())));
    route.structures().forEach(s -> all.add(new Spelt(s, s.name())));
    route.junctions().forEach(j -> all.add(new Spelt(j, j.name())));
    route.restrictions().forEach(r -> all.add(new Spelt(r, r.name())));
    route.railGaps().forEach(g -> all.add(new Spelt(g, g.name())));
    route.lowAdhesion().forEach(s -> all.add(new Spelt(s, s.name())));
    for (int i = 0; i < all.size(); i++) {
      for (int j = 0; j < i; j++) {
        Spelt a = all.get(i);
        Spelt b = all.get(j);
        if (!a.name().equals(b.name()) && a.squeezed().equals(b.squeezed())) {
          out.add(
              new AuditFinding(
                  AuditText.TWO_NAMES_SPELT.with(a.name(), b.name()), a.element(), a.key()));
        }
      }
    }
  }

  private void twoNames(Object element, String key, String name, String other, Place place) {
    if (!name.equals(other)) {
      out.add(
          new AuditFinding(
              AuditText.TWO_NAMES_AT_ONE_PLACE.with(name, other, place), element, key));
    }
  }

  private static String fold(String name) {
    return name.toLowerCase(Locale.ROOT);
  }
}
