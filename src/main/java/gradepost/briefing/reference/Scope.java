package gradepost.briefing.reference;

import gradepost.briefing.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The papers of a pack, by number from 0: which are there, and how some of them are called. */
final class Scope {
  /** Between names; a comma may stand within one. */
  private static final String AND = " / ";

  private final Messages messages;
  private final List<Paper> papers;

  /**
   * A paper by what tells it from the others.
   *
   * @param edition of a run with a brake short; empty text for an ordinary one
   */
  record Paper(String direction, String formation, String edition) {
    private String train() {
      return edition.isEmpty() ? formation : formation + ", " + edition;
    }
  }

  Scope(Messages messages, List<Paper> papers) {
    this.messages = messages;
    this.papers = List.copyOf(papers);
  }

  /** All of them. */
  Set<Integer> all() {
    Set<Integer> out = new TreeSet<>();
    for (int i = 0; i < papers.size(); i++) {
      out.add(i);
    }
    return out;
  }

  /** The papers of each direction. */
  Map<String, Set<Integer>> directions() {
    return by(all(), Paper::direction);
  }

  /** The papers of each formation. */
  Map<String, Set<Integer>> formations() {
    return by(all(), Paper::formation);
  }

  private Map<String, Set<Integer>> by(Set<Integer> of, Function<Paper, String> called) {
    return of.stream()
        .collect(
            Collectors.groupingBy(
                i -> called.apply(papers.get(i)),
                LinkedHashMap::new,
                Collectors.toCollection(TreeSet::new)));
  }

  /** What a paper is called. */
  String head(int paper) {
    Paper p = papers.get(paper);
    return messages.text("part.head", p.direction(), p.train());
  }

  /**
   * How some of these papers are called, as short as can be: by their formations, by whether they
   * are of an edition, by both, by their directions, else one by one. Empty text where they are all
   * of them.
   */
  String label(Set<Integer> some, Set<Integer> of) {
    if (some.containsAll(of)) {
      return "";
    }
    return whole(some, by(of, Paper::formation))
        .or(() -> whole(some, by(of, this::edition)))
        .or(() -> whole(some, by(of, this::train)))
        .or(() -> whole(some, by(of, Paper::direction)))
        .orElseGet(() -> heads(some));
  }

  /** The names of these papers. */
  String heads(Set<Integer> some) {
    return some.stream().map(this::head).collect(Collectors.joining(AND));
  }

  private String edition(Paper paper) {
    return paper.edition().isEmpty() ? messages.text("reference.ordinary") : paper.edition();
  }

  /** Beside editions an ordinary run says so: the name of a formation is for all its runs. */
  private String train(Paper paper) {
    return papers.stream().allMatch(p -> p.edition().isEmpty())
        ? paper.formation()
        : paper.formation() + ", " + edition(paper);
  }

  /** The names of those groups that are in it, if it is made of whole groups. */
  private static Optional<String> whole(Set<Integer> some, Map<String, Set<Integer>> groups) {
    Set<Integer> left = new TreeSet<>(some);
    List<String> names = new ArrayList<>();
    groups.forEach(
        (name, of) -> {
          if (some.containsAll(of)) {
            names.add(name);
            left.removeAll(of);
          }
        });
    return left.isEmpty() ? Optional.of(String.join(AND, names)) : Optional.empty();
  }

  /** A text with the papers that it is for, where it is not for all of these. */
  String labelled(String text, Set<Integer> some, Set<Integer> of) {
    String label = label(some, of);
    boolean says = label.isEmpty() || label.equals(text);
    return says ? text : messages.text("reference.of", label, text);
  }
}
