package gradepost.app.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Files by the digest of their content, in a folder or in the register. Under its digest a content
 * is whole or absent; nothing is ever changed, and only what names people is ever taken away.
 */
public interface Archive {
  /** One that is a folder. */
  static Archive in(Path folder) {
    return new FolderArchive(folder);
  }

  /** Keeps a content and says under which digest. */
  String keep(byte[] bytes) throws IOException;

  /** The content; empty where it is not there or is not what its digest says. */
  Optional<byte[]> read(String digest) throws IOException;

  /** Takes a content away for good: one that may no longer be kept. */
  void remove(String digest) throws IOException;

  /** The digests of what it holds, sorted; what a digest stands for may be damaged. */
  List<String> digests() throws IOException;

  /**
   * Takes away what a killed run left unfinished.
   *
   * @param lock held, so that no other run is at work
   */
  void tidy(Lock lock) throws IOException;

  /** Where it lies, in words: the folder, or "register". */
  String where();

  /** Where a content lies, in words, if it is there. */
  String place(String digest);
}
