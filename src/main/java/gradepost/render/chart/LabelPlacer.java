package gradepost.render.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Remembers where something stands, so that no label is put upon it. */
final class LabelPlacer {
  /** A rectangle. */
  record Box(double x, double y, double width, double height) {
    boolean meets(Box other) {
      return x < other.x + other.width
          && other.x < x + width
          && y < other.y + other.height
          && other.y < y + height;
    }

    boolean inside(Box other) {
      return x >= other.x
          && y >= other.y
          && x + width <= other.x + other.width
          && y + height <= other.y + other.height;
    }
  }

  private final Box bounds;
  private final List<Box> taken = new ArrayList<>();

  LabelPlacer(Box bounds) {
    this.bounds = bounds;
  }

  boolean free(Box box) {
    return box.inside(bounds) && taken.stream().noneMatch(box::meets);
  }

  void take(Box box) {
    taken.add(box);
  }

  /** Takes the first that is free; empty where none is. */
  Optional<Box> place(List<Box> wanted) {
    Optional<Box> found = wanted.stream().filter(this::free).findFirst();
    found.ifPresent(this::take);
    return found;
  }
}
