package gradepost.route;

import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import java.util.List;

/**
 * A junction or a set of points that can be taken more than one way.
 *
 * @param extent the pointwork
 * @param routes the ways through it, the usual one first
 */
public record Junction(String name, Extent extent, Applies applies, List<JunctionRoute> routes) {
  public Junction {
    routes = List.copyOf(routes);
    if (routes.isEmpty()) {
      throw new IllegalArgumentException("junction " + name + " leads nowhere");
    }
  }
}
