package gradepost.app.store;

import gradepost.reissue.register.Contents;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** An archive in the database of the register: whoever reaches the register has its files. */
final class RegisterArchive implements Archive {
  private final Contents contents;

  /**
   * @param url JDBC address of a register that has been begun
   */
  RegisterArchive(String url) {
    this.contents = new Contents(url);
  }

  @Override
  public String keep(byte[] bytes) throws IOException {
    String digest = Digest.of(bytes);
    try {
      contents.keep(digest, bytes);
    } catch (RegisterException e) {
      throw new IOException(e.getMessage(), e);
    }
    return digest;
  }

  @Override
  public Optional<byte[]> read(String digest) throws IOException {
    try {
      return contents.read(digest).filter(bytes -> Digest.of(bytes).equals(digest));
    } catch (RegisterException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  @Override
  public List<String> digests() throws IOException {
    try {
      return contents.digests();
    } catch (RegisterException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  @Override
  public void remove(String digest) throws IOException {
    try {
      contents.remove(digest);
    } catch (RegisterException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  /** A transaction that was not finished has left nothing. */
  @Override
  public void tidy(Lock lock) {
    lock.require();
  }

  @Override
  public String where() {
    return Store.REGISTER;
  }

  @Override
  public String place(String digest) {
    return "%s in the register".formatted(digest);
  }
}
