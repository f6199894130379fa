package gradepost.source.pack;

import gradepost.pack.Picture;
import java.nio.ByteBuffer;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Pictures made small, the last ones kept: a pack that is read at every keystroke decodes its
 * pictures once. A picture depends on its file's name and bytes alone, so that it may be kept as
 * long as there is room. May be asked by many threads at once.
 */
final class SmallPictures {
  /** Of the whole process: no more of them than some 10 MB with their files. */
  static final SmallPictures KEPT = new SmallPictures();

  private static final int MOST = 32;

  /** A file above this is decoded at each reading. */
  private static final int LARGEST_KEPT_BYTES = 256 * 1024;

  private final Map<Held, Picture> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Held, Picture> eldest) {
          return size() > MOST;
        }
      };

  /** What a file of this name and format holds. */
  private record Held(String file, PictureFormat format, ByteBuffer bytes) {}

  /** The picture as it is printed; empty where the bytes are none of this format, or too large. */
  Optional<Picture> of(String file, PictureFormat format, byte[] bytes) {
    if (bytes.length > LARGEST_KEPT_BYTES) {
      return format.shrunk(file, bytes);
    }
    Held held = new Held(file, format, ByteBuffer.wrap(bytes).asReadOnlyBuffer());
    synchronized (kept) {
      Picture known = kept.get(held);
      if (known != null) {
        return Optional.of(known);
      }
    }
    Optional<Picture> made = format.shrunk(file, bytes);
    made.ifPresent(
        picture -> {
          synchronized (kept) {
            kept.put(held, picture);
          }
        });
    return made;
  }
}
