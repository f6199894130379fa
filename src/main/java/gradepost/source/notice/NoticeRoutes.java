package gradepost.source.notice;

import gradepost.route.Route;
import gradepost.source.route.RouteFrame;
import gradepost.source.route.SpeedTables;
import gradepost.units.Nearest;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * Whether each notice of a file finds its route among those that it is to be taken into. One that
 * does not is passed over by every pack, so that a slip in a name would lose it without a word.
 */
public final class NoticeRoutes {
  /** A problem for each notice whose route is not among these. */
  public static Problems check(List<Node> all, String name, Collection<Route> routes) {
    Reader in = new Reader(name, RouteFrame.UNKNOWN);
    List<String> names = routes.stream().map(Route::name).distinct().sorted().toList();
    Set<String> strays = new LinkedHashSet<>();
    Optional<Node> first = Optional.empty();
    for (Node each : all) {
      Optional<ScalarNode> named = route(each);
      if (named.isEmpty()) {
        if (names.size() > 1 && each instanceof MappingNode) {
          in.error(each, NoticeMistakes.NO_ROUTE_NAMED.with(names));
        }
        continue;
      }
      String stated = named.get().getValue().strip();
      if (names.contains(stated)) {
        continue;
      }
      Optional<String> near = Nearest.to(stated, names);
      Optional<Route> owner = routes.stream().filter(r -> hasLine(r, stated)).findFirst();
      if (near.isPresent()) {
        in.error(named.get(), NoticeMistakes.UNKNOWN_ROUTE.with(stated, names, near.get()));
      } else if (owner.isPresent()) {
        in.error(
            named.get(),
            NoticeMistakes.A_LINE_FOR_A_ROUTE.with(stated, names, stated, owner.get().name()));
      } else {
        first = first.or(() -> Optional.of(named.get()));
        strays.add(stated);
      }
    }
    first.ifPresent(node -> in.add(stray(SourcePosition.of(name, node), strays, names)));
    return in.problems();
  }

  private static Problem stray(SourcePosition spot, Set<String> strays, List<String> names) {
    Optional<String> near =
        strays.stream().flatMap(s -> names.stream().filter(n -> sameBeginning(s, n))).findFirst();
    return new Problem(spot, Severity.NOTE, NoticeMistakes.PASSED_OVER.with(strays, names, near));
  }

  /** "Thrumble Valley" where the route is called "Thrumble Valley line", or the other way. */
  private static boolean sameBeginning(String one, String other) {
    String a = one.toLowerCase(Locale.ROOT) + " ";
    String b = other.toLowerCase(Locale.ROOT) + " ";
    return a.startsWith(b) || b.startsWith(a);
  }

  private static boolean hasLine(Route route, String name) {
    return route.lines().stream().anyMatch(line -> line.name().equalsIgnoreCase(name));
  }

  /** The route that a notice names; empty where it names none. */
  public static Optional<ScalarNode> route(Node notice) {
    return notice instanceof MappingNode group
        ? Reader.valueOf(group, SpeedTables.NOTICE_ROUTE.name())
            .filter(ScalarNode.class::isInstance)
            .map(ScalarNode.class::cast)
        : Optional.empty();
  }

  private NoticeRoutes() {}
}
