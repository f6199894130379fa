package gradepost.source.pack;

import gradepost.route.audit.AuditFinding;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import java.util.List;

/** Where the records of a pack stand in its files; what is found about them is placed by it. */
public final class Origins {
  private final List<Reader> readers;

  /**
   * @param readers that of the pack file first
   */
  Origins(List<Reader> readers) {
    this.readers = List.copyOf(readers);
  }

  Problems problems(PackFile pack, List<AuditFinding> findings) {
    List<Problem> found =
        findings.stream().map(f -> Audit.problem(f, spot(f.element(), f.key()))).toList();
    return new Problems(Audit.open(found, pack.accepted(), a -> spot(a, "")));
  }

  /** A record that was made and not read belongs to the pack as a whole. */
  SourcePosition spot(Object element, String key) {
    return readers.stream()
        .filter(r -> r.knows(element))
        .findFirst()
        .map(r -> r.spot(element, key))
        .orElse(new SourcePosition(readers.get(0).file(), 1, 1));
  }
}
