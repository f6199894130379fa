package gradepost.yaml;

import gradepost.text.Hole;
import gradepost.units.Length;
import gradepost.units.PrintedText;
import java.util.Locale;
import org.yaml.snakeyaml.nodes.Node;

/** Holes of texts about files. */
public final class Holes {

  /** A hole for a text as it was typed, which is shown in quotation marks. */
  public static Hole<String> quoted(String name) {
    return PrintedText.quoted(name);
  }

  /** A hole for what stands in a file: the text, or what it is instead. */
  public static Hole<Node> node(String name) {
    return new Hole<>(name, Nodes::described);
  }

  /** A hole for a second place in one message. */
  public static Hole<SourcePosition> line(String name) {
    return new Hole<>(name, SourcePosition::inWords);
  }

  /** A hole for a key, by its name. */
  public static Hole<Key<?>> key(String name) {
    return new Hole<>(name, Key::name);
  }

  /** A hole for a length in whole metres: "912 m". */
  public static Hole<Length> metres(String name) {
    return new Hole<>(name, length -> String.format(Locale.ROOT, "%.0f m", length.metres()));
  }

  private Holes() {}
}
