package gradepost.source.file;

/** Where file contents come from; handed in, so that reading needs no disk. */
public interface SourceFiles {

  /** The contents of a file by its name, parts separated by slashes. */
  Content read(String name);

  /** What is there. */
  sealed interface Content {}

  /** The bytes of the file; not to be changed. */
  @SuppressWarnings("ArrayRecordComponent") // handed on once, to be read; never compared
  record Bytes(byte[] bytes) implements Content {}

  /** Nothing can be read, with the reason in words ("there is no such file"). */
  record Unreadable(String why) implements Content {}
}
