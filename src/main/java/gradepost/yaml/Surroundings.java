package gradepost.yaml;

import gradepost.units.Parsed.Convention;
import org.yaml.snakeyaml.nodes.Node;

/** What is known, while a file is read, of the world that the file speaks of. */
public interface Surroundings {

  /** Whether values are written in this convention there, as far as is known. */
  boolean has(Convention convention);

  /** Whether a value may be typed in this convention; reports it where it may not. */
  boolean accepts(Convention convention, Node node, String label, Reader in);
}
