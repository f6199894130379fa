package gradepost.app.author;

import gradepost.source.file.SourceFiles;

/**
 * The files of the disk, one of them as it would be.
 *
 * @param bytes of that one
 */
@SuppressWarnings("ArrayRecordComponent") // handed on, to be read; never compared
record Edited(SourceFiles disk, String name, byte[] bytes) implements SourceFiles {
  @Override
  public Content read(String asked) {
    return asked.equals(name) ? new Bytes(bytes) : disk.read(asked);
  }

  @Override
  public Content namedBy(String by, String asked) {
    return asked.equals(name) ? new Bytes(bytes) : disk.namedBy(by, asked);
  }
}
