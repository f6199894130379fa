package gradepost.yaml;

import gradepost.units.Parsed.Convention;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.yaml.snakeyaml.nodes.Node;

/** In which system of units the values of each key of a file were typed. */
public final class UnitsUsed {
  /** A key and its kind: "speed" of a brake is not "speed" of a restriction. */
  private record Where(String label, Scalar.Quantity<?> kind) {}

  private final Map<Where, Map<Convention, List<Node>>> typed = new LinkedHashMap<>();

  void note(String label, Scalar.Quantity<?> kind, Convention convention, Node node) {
    if (convention != Convention.NEUTRAL) {
      typed
          .computeIfAbsent(new Where(label, kind), w -> new LinkedHashMap<>())
          .computeIfAbsent(convention, c -> new ArrayList<>())
          .add(node);
    }
  }

  /**
   * One warning for a key whose values are in both systems, at the first of the fewer.
   *
   * @param rule code of the rule by which this is doubted
   */
  public List<Problem> mixed(String file, String rule) {
    List<Problem> problems = new ArrayList<>();
    typed.forEach(
        (where, uses) -> {
          if (uses.size() > 1) {
            List<Node> miles = uses.getOrDefault(Convention.MILES, List.of());
            List<Node> metric = uses.getOrDefault(Convention.METRIC, List.of());
            boolean milesFewer = miles.size() < metric.size();
            Node odd = (milesFewer ? miles : metric).get(0);
            Node usual = (milesFewer ? metric : miles).get(0);
            problems.add(
                new Problem(
                    SourcePosition.of(file, odd),
                    Severity.WARNING,
                    "%s %s is in other units than %s on %s"
                        .formatted(
                            where.label(),
                            Nodes.described(odd),
                            Nodes.described(usual),
                            SourcePosition.of(file, usual).inWords()),
                    "one system of units for all values of a key",
                    "",
                    rule));
          }
        });
    return problems;
  }
}
