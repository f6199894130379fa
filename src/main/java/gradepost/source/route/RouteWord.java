package gradepost.source.route;

import gradepost.route.place.Direction;
import gradepost.units.Nearest;
import gradepost.yaml.Common;
import gradepost.yaml.OwnKind;
import gradepost.yaml.Reader;
import gradepost.yaml.ValueType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * A word that the route itself defines: one of its directions or of its running lines. Where the
 * route is not known the word is left unread.
 */
public sealed interface RouteWord<T> extends OwnKind<T> {

  @Override
  default boolean isOneText() {
    return true;
  }

  @Override
  default Optional<String> definition() {
    return Optional.empty();
  }

  @Override
  default List<ValueType<?>> written() {
    return List.of(Common.text(allowed()));
  }

  /** What each word means on this route. */
  Map<String, T> words(RouteFrame frame);

  @Override
  default Optional<T> read(Node node, String label, Reader in) {
    if (!(node instanceof ScalarNode scalar) || scalar.getValue().isBlank()) {
      in.error(node, RouteMistakes.NOT_A_WORD.with(label, node, this));
      return Optional.empty();
    }
    Map<String, T> words = words(RouteFrame.of(in));
    String word = scalar.getValue().strip();
    Optional<T> value = Optional.ofNullable(words.get(word));
    if (value.isEmpty() && !words.isEmpty()) {
      in.error(
          node,
          RouteMistakes.UNKNOWN_WORD.with(
              label, word, words.keySet(), Nearest.to(word, words.keySet())));
    }
    return value;
  }

  /** One direction. */
  record OneDirection() implements RouteWord<Direction> {
    @Override
    public String allowed() {
      return "the name of one direction of the route";
    }

    @Override
    public Map<String, Direction> words(RouteFrame frame) {
      Map<String, Direction> words = new LinkedHashMap<>();
      frame.names().forEach((direction, name) -> words.put(name, direction));
      return words;
    }
  }

  /** One direction, or "both". */
  record Directions() implements RouteWord<Set<Direction>> {
    public static final String BOTH = "both";
    static final Set<Direction> EITHER = Set.of(Direction.FORWARD, Direction.BACKWARD);

    @Override
    public String allowed() {
      return "the name of one direction of the route, or both";
    }

    @Override
    public Map<String, Set<Direction>> words(RouteFrame frame) {
      Map<String, Set<Direction>> words = new LinkedHashMap<>();
      frame.names().forEach((direction, name) -> words.put(name, Set.of(direction)));
      if (!words.isEmpty()) {
        words.put(BOTH, EITHER);
      }
      return words;
    }
  }

  /** One running line. */
  record Line() implements RouteWord<String> {
    @Override
    public String allowed() {
      return "the name of a running line of the route";
    }

    @Override
    public Map<String, String> words(RouteFrame frame) {
      Map<String, String> words = new LinkedHashMap<>();
      List<String> lines = new ArrayList<>(frame.lines());
      lines.forEach(line -> words.put(line, line));
      return words;
    }
  }
}
