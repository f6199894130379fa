package gradepost.source;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Files of one kind that many packs name, read once for all. One that has changed since is read
 * again. Only for kinds that are read without knowing any other file.
 */
final class Shelf<T> {
  private final Map<String, Read<T>> kept = new ConcurrentHashMap<>();

  /**
   * A file as it was read.
   *
   * @param in for checks that come later: a second look is to be taken with a second reader
   */
  record Read<T>(byte[] bytes, Optional<T> value, Reader in) {}

  Read<T> get(String name, byte[] bytes, Function<byte[], Read<T>> reading) {
    return Optional.ofNullable(kept.get(name))
        .filter(there -> Arrays.equals(there.bytes(), bytes))
        .orElseGet(
            () -> {
              Read<T> fresh = reading.apply(bytes);
              kept.put(name, fresh);
              return fresh;
            });
  }
}
