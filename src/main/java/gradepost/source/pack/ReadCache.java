package gradepost.source.pack;

import gradepost.source.file.Input;
import gradepost.source.route.RouteFrame;
import gradepost.yaml.Reader;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Files of one kind that many packs name, read once for all: the same bytes under the same name,
 * read with the same knowledge of the route, give the same value.
 */
final class ReadCache<T> {
  private final Map<Key, Read<T>> kept = new ConcurrentHashMap<>();

  /**
   * What a reading hangs on.
   *
   * @param frame what was known of the route; {@code UNKNOWN} for kinds that need no other file
   */
  record Key(Input file, RouteFrame frame) {}

  /**
   * A file as it was read.
   *
   * @param in for checks that come later: a second look is to be taken with a second reader
   */
  record Read<T>(Optional<T> value, Reader in) {}

  Read<T> get(Key key, Function<Key, Read<T>> reading) {
    return kept.computeIfAbsent(key, reading);
  }
}
