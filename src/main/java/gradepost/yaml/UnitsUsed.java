package gradepost.yaml;

import gradepost.units.Parsed.Convention;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.yaml.snakeyaml.nodes.ScalarNode;

/** In which system of units the values of each key of a file were typed. */
public final class UnitsUsed {
  /** A key and its kind: "speed" of a brake is not "speed" of a restriction. */
  private record Where(String label, Scalar.Quantity<?> kind) {}

  private final Map<Where, Map<Convention, List<ScalarNode>>> typed = new LinkedHashMap<>();

  void note(String label, Scalar.Quantity<?> kind, Convention convention, ScalarNode node) {
    if (convention != Convention.NEUTRAL) {
      typed
          .computeIfAbsent(new Where(label, kind), w -> new LinkedHashMap<>())
          .computeIfAbsent(convention, c -> new ArrayList<>())
          .add(node);
    }
  }

  /**
   * A key whose values are in both systems.
   *
   * @param spot of the first value of the fewer
   * @param odd that value, and {@code usual} one of the others, as they were typed
   * @param usualSpot of the other one
   */
  public record Mixed(
      SourcePosition spot, String key, String odd, String usual, SourcePosition usualSpot) {}

  /** The keys whose values are in both systems. */
  public List<Mixed> mixed(String file) {
    List<Mixed> mixed = new ArrayList<>();
    typed.forEach(
        (where, uses) -> {
          if (uses.size() > 1) {
            List<ScalarNode> miles = uses.getOrDefault(Convention.MILES, List.of());
            List<ScalarNode> metric = uses.getOrDefault(Convention.METRIC, List.of());
            boolean milesFewer = miles.size() < metric.size();
            ScalarNode odd = (milesFewer ? miles : metric).get(0);
            ScalarNode usual = (milesFewer ? metric : miles).get(0);
            mixed.add(
                new Mixed(
                    SourcePosition.of(file, odd),
                    where.label(),
                    odd.getValue(),
                    usual.getValue(),
                    SourcePosition.of(file, usual)));
          }
        });
    return mixed;
  }
}
