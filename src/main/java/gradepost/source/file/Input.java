package gradepost.source.file;

import java.util.Arrays;

/**
 * A file that went into a pack.
 *
 * @param name relative to the folder of the pack file, so that it is the same wherever that lies
 * @param bytes as read; not to be changed
 */
@SuppressWarnings("ArrayRecordComponent") // compared by their contents
public record Input(String name, byte[] bytes) {
  @Override
  public boolean equals(Object other) {
    return other instanceof Input input
        && name.equals(input.name)
        && Arrays.equals(bytes, input.bytes);
  }

  @Override
  public int hashCode() {
    return 31 * name.hashCode() + Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    return name + " (" + bytes.length + " bytes)";
  }
}
