package gradepost.yaml;

import gradepost.text.Mistake;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Reading of one file: where problems go, where records came from, what is known already. */
public final class Reader {
  private final String file;
  private final Surroundings surroundings;
  private final Collected problems;
  private final Map<Object, MappingNode> origins;
  private final UnitsUsed unitsUsed;

  /** The problems so far, with the errors counted: every group of keys asks how many there are. */
  private static final class Collected {
    private final List<Problem> all = new ArrayList<>();
    private int errors;

    void add(Problem problem) {
      all.add(problem);
      errors += problem.severity() == Severity.ERROR ? 1 : 0;
    }
  }

  private Reader(
      String file,
      Surroundings surroundings,
      Collected problems,
      Map<Object, MappingNode> origins,
      UnitsUsed unitsUsed) {
    this.file = file;
    this.surroundings = surroundings;
    this.problems = problems;
    this.origins = origins;
    this.unitsUsed = unitsUsed;
  }

  public Reader(String file, Surroundings surroundings) {
    this(file, surroundings, new Collected(), new IdentityHashMap<>(), new UnitsUsed());
  }

  /** In which system of units the values of each key were typed. */
  public UnitsUsed unitsUsed() {
    return unitsUsed;
  }

  /** A second look at what was read, with problems of its own. */
  public Reader(Reader first) {
    this(first.file, first.surroundings, new Collected(), first.origins, first.unitsUsed);
  }

  /** The same reading, now that more is known. */
  public Reader within(Surroundings known) {
    return new Reader(file, known, problems, origins, unitsUsed);
  }

  /** The name of the file. */
  public String file() {
    return file;
  }

  /** What is known already. */
  public Surroundings surroundings() {
    return surroundings;
  }

  /** The problems so far. */
  public Problems problems() {
    return new Problems(problems.all);
  }

  /** How many errors there are so far. */
  public int count() {
    return problems.errors;
  }

  /** Adds a problem. */
  public void add(Problem problem) {
    problems.add(problem);
  }

  /** Adds an error at a node. */
  public void error(Node node, Mistake mistake) {
    error(SourcePosition.of(file, node), mistake);
  }

  /** Adds an error at a place. */
  public void error(SourcePosition spot, Mistake mistake) {
    add(Problem.error(spot, mistake));
  }

  /** Remembers that {@code value} was read from {@code node}, for checks that come later. */
  void remember(Object value, MappingNode node) {
    origins.put(value, node);
  }

  /** What was made of a record that was read stands where that was read. */
  public <T> T readAs(Object read, T made) {
    Optional.ofNullable(origins.get(read)).ifPresent(node -> origins.put(made, node));
    return made;
  }

  /** Where a record was read. */
  public SourcePosition spot(Object record) {
    return Optional.ofNullable(origins.get(record))
        .map(n -> SourcePosition.of(file, n))
        .orElse(new SourcePosition(file, 1, 1));
  }

  /** Where the value of a key of a record stands; the record itself where the key was left out. */
  public SourcePosition spot(Object record, Key<?> key) {
    return Optional.ofNullable(origins.get(record))
        .flatMap(n -> valueOf(n, key.name()))
        .map(n -> SourcePosition.of(file, n))
        .orElse(spot(record));
  }

  /** Whether the key stands in what a record was read from. */
  public boolean says(Object record, Key<?> key) {
    return Optional.ofNullable(origins.get(record))
        .flatMap(n -> valueOf(n, key.name()))
        .isPresent();
  }

  /** The same by the name of the key, which may be empty. */
  public SourcePosition spot(Object record, String key) {
    return Optional.ofNullable(origins.get(record))
        .flatMap(n -> valueOf(n, key))
        .map(n -> SourcePosition.of(file, n))
        .orElse(spot(record));
  }

  /** Whether the record was read here. */
  public boolean knows(Object record) {
    return origins.containsKey(record);
  }

  /** Where an entry of a list under a key of a record stands. */
  public SourcePosition spot(Object record, Key<?> key, int index) {
    return Optional.ofNullable(origins.get(record))
        .flatMap(n -> valueOf(n, key.name()))
        .filter(SequenceNode.class::isInstance)
        .map(list -> SourcePosition.of(file, ((SequenceNode) list).getValue().get(index)))
        .orElse(spot(record, key));
  }

  /** Where the value of a word in a group under a key of a record stands. */
  public SourcePosition spot(Object record, Key<?> key, String word) {
    return Optional.ofNullable(origins.get(record))
        .flatMap(n -> valueOf(n, key.name()))
        .filter(MappingNode.class::isInstance)
        .flatMap(group -> valueOf((MappingNode) group, word))
        .map(n -> SourcePosition.of(file, n))
        .orElse(spot(record, key));
  }

  /** Where a word itself stands as a key in a group under a key of a record. */
  public SourcePosition keySpot(Object record, Key<?> key, String word) {
    return Optional.ofNullable(origins.get(record))
        .flatMap(n -> valueOf(n, key.name()))
        .filter(MappingNode.class::isInstance)
        .flatMap(group -> keyOf((MappingNode) group, word))
        .map(n -> SourcePosition.of(file, n))
        .orElse(spot(record, key));
  }

  private static Optional<Node> keyOf(MappingNode node, String key) {
    return node.getValue().stream()
        .map(NodeTuple::getKeyNode)
        .filter(n -> n instanceof ScalarNode name && name.getValue().equals(key))
        .findFirst();
  }

  /** The node under a key; empty where the key is not there. */
  public static Optional<Node> valueOf(MappingNode node, String key) {
    for (NodeTuple tuple : node.getValue()) {
      if (tuple.getKeyNode() instanceof ScalarNode name && name.getValue().equals(key)) {
        return Optional.of(tuple.getValueNode());
      }
    }
    return Optional.empty();
  }
}
