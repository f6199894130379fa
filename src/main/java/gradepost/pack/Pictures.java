package gradepost.pack;

import java.util.List;
import java.util.Optional;

/** The pictures that a pack has of landmarks, signals and stations, each once. */
public record Pictures(List<Picture> all) {
  /** A pack without pictures. */
  public static final Pictures NONE = new Pictures(List.of());

  public Pictures {
    all = List.copyOf(all);
  }

  /** The one that the route names so; empty where it could not be read. */
  public Optional<Picture> find(String file) {
    return all.stream().filter(p -> p.file().equals(file)).findFirst();
  }
}
