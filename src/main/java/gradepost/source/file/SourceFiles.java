package gradepost.source.file;

import gradepost.text.Mistake;
import java.util.Optional;
import java.util.function.Function;

/** Where file contents come from; handed in, so that reading needs no disk. */
public interface SourceFiles {

  /** The contents of a file by its name, parts separated by slashes. */
  Content read(String name);

  /** The same of a file that a recorder wrote: it may be larger than what people type. */
  default Content recorded(String name) {
    return read(name);
  }

  /**
   * The contents of a file that another file names: nobody has looked at that name, so it must not
   * lead astray.
   *
   * @param by the file that names it
   */
  default Content namedBy(String by, String name) {
    return read(name);
  }

  /** What is there. */
  sealed interface Content {
    /** One answer for each case. */
    <T> T match(Function<Bytes, T> bytes, Function<Unreadable, T> unreadable);

    /** The bytes, where they can be read. */
    default Optional<Bytes> held() {
      return match(Optional::of, unreadable -> Optional.empty());
    }
  }

  /** The bytes of the file; not to be changed. */
  @SuppressWarnings("ArrayRecordComponent") // handed on once, to be read; never compared
  record Bytes(byte[] bytes) implements Content {
    @Override
    public <T> T match(Function<Bytes, T> held, Function<Unreadable, T> unreadable) {
      return held.apply(this);
    }
  }

  /** Nothing can be read, with the reason. */
  record Unreadable(Mistake reason) implements Content {
    /** The reason in words: "there is no such file". */
    public String why() {
      return reason.what();
    }

    @Override
    public <T> T match(Function<Bytes, T> held, Function<Unreadable, T> unreadable) {
      return unreadable.apply(this);
    }
  }
}
