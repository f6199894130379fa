package gradepost.source.route;

import gradepost.route.LineHoles.Between;
import gradepost.route.LineHoles.Place;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.source.route.RouteMistakes.Range;
import gradepost.units.Mileage;
import gradepost.units.Nearest;
import gradepost.units.QuantityKind;
import gradepost.units.UnitStyle;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.OwnKind;
import gradepost.yaml.Reader;
import gradepost.yaml.Scalar;
import gradepost.yaml.ValueType;
import java.util.List;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;

/** A place on the route: a mileage, with its section where two sections have the same mileage. */
public record PlaceKind() implements OwnKind<Location> {
  public static final Scalar.Quantity<Mileage> MILEAGE =
      Scalar.Quantity.of(QuantityKind.MILEAGE, "", "").routeUnits();
  private static final double SAME_PLACE_M = 1e-3;

  /** A mileage and the name of its section, as typed. */
  record Sectioned(String section, Mileage at) {}

  static final Key<String> SECTION =
      Key.required(
          "section",
          Common.text("the name of a section of the route"),
          "The section whose mileage it is.");
  static final Key<Mileage> AT = Key.required("at", MILEAGE, "The mileage as signed.");
  public static final ObjectSchema<Sectioned> SECTIONED =
      ObjectSchema.of(
          "a place", List.of(SECTION, AT), v -> new Sectioned(v.get(SECTION), v.get(AT)));

  @Override
  public Optional<String> definition() {
    return Optional.of("place");
  }

  @Override
  public List<ValueType<?>> written() {
    return List.of(MILEAGE, SECTIONED);
  }

  @Override
  public String allowed() {
    return MILEAGE.kind().allowed() + ", or {section: …, at: …}";
  }

  @Override
  public Optional<Location> read(Node node, String label, Reader in) {
    List<Section> sections = RouteFrame.of(in).sections();
    if (node instanceof MappingNode mapping) {
      return SECTIONED
          .read(node, label, in)
          .filter(place -> !sections.isEmpty())
          .flatMap(place -> onSection(place, mapping, in));
    }
    return MILEAGE
        .read(node, label, in)
        .filter(mileage -> !sections.isEmpty())
        .flatMap(mileage -> onAny(mileage, node, label, in));
  }

  private static Optional<Location> onSection(Sectioned place, MappingNode node, Reader in) {
    List<Section> sections = RouteFrame.of(in).sections();
    Optional<Section> section =
        sections.stream().filter(s -> s.name().equals(place.section())).findFirst();
    List<String> names = sections.stream().map(Section::name).toList();
    if (section.isEmpty()) {
      in.error(
          Reader.valueOf(node, SECTION.name()).orElse(node),
          RouteMistakes.UNKNOWN_SECTION.with(
              place.section(), names, Nearest.to(place.section(), names)));
      return Optional.empty();
    }
    if (!section.get().holds(place.at())) {
      in.error(
          Reader.valueOf(node, AT.name()).orElse(node),
          RouteMistakes.OFF_THE_SECTION.with(place(place.at(), in), range(section.get(), in)));
      return Optional.empty();
    }
    return Optional.of(new Location(section.get().name(), place.at()));
  }

  private static Optional<Location> onAny(Mileage mileage, Node node, String label, Reader in) {
    List<Section> holding =
        RouteFrame.of(in).sections().stream().filter(s -> s.holds(mileage)).toList();
    if (holding.isEmpty()) {
      in.error(
          node,
          RouteMistakes.OFF_THE_ROUTE.with(
              label,
              place(mileage, in),
              RouteFrame.of(in).sections().stream().map(s -> range(s, in)).toList()));
      return Optional.empty();
    }
    List<Location> places = holding.stream().map(s -> new Location(s.name(), mileage)).toList();
    double first = RouteFrame.of(in).metresAt(places.get(0));
    boolean onePlace =
        places.stream()
            .allMatch(p -> Math.abs(RouteFrame.of(in).metresAt(p) - first) < SAME_PLACE_M);
    if (!onePlace) {
      String one = holding.get(0).name();
      List<String> all = holding.stream().map(Section::name).toList();
      in.error(node, RouteMistakes.ON_SEVERAL_SECTIONS.with(label, place(mileage, in), all, one));
      return Optional.empty();
    }
    return Optional.of(places.get(0));
  }

  private static Range range(Section section, Reader in) {
    return new Range(
        section.name(), new Between(place(section.from(), in), place(section.to(), in)));
  }

  private static Place place(Mileage mileage, Reader in) {
    return Place.of(RouteFrame.of(in).units().orElse(UnitStyle.METRIC), mileage);
  }
}
