package gradepost.source.pack;

import gradepost.source.file.Input;
import gradepost.source.route.RouteFrame;
import gradepost.yaml.Reader;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What was read, by all on which it depends, so that what many packs name is read once for all, and
 * what an edit leaves alone is not read again. The last are kept; the one that was asked for
 * longest ago goes first. May be asked by many threads at once: two who ask for the same wait for
 * one reading.
 *
 * @param <K> what a reading depends on
 * @param <V> what was read
 */
final class ReadCache<K, V> {
  private final Map<K, Once<V>> kept;

  /**
   * What a file's reading depends on: the same bytes under the same name, read with the same
   * knowledge of the route, give the same value.
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

  /** A value that is worked out by the first who asks. */
  private static final class Once<V> {
    private @Nullable V value;

    synchronized <K> V of(K key, Function<K, V> reading) {
      if (value == null) {
        value = reading.apply(key);
      }
      return value;
    }
  }

  /**
   * @param most so many are kept
   */
  ReadCache(int most) {
    kept =
        new LinkedHashMap<>(16, 0.75f, true) {
          @Override
          protected boolean removeEldestEntry(Map.Entry<K, Once<V>> eldest) {
            return size() > most;
          }
        };
  }

  V get(K key, Function<K, V> reading) {
    Once<V> once;
    synchronized (kept) {
      once = kept.computeIfAbsent(key, k -> new Once<>());
    }
    return once.of(key, reading);
  }
}
