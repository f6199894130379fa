package gradepost.app.store;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** The papers of registered issues, as the archive has them. */
public final class RegisteredFiles {
  private final Store store;

  /** Of this register and its archive. */
  public RegisteredFiles(Store store) {
    this.store = store;
  }

  /**
   * The names of the papers of an issue; none where the register cannot say.
   *
   * @param issue such as {@code valley/4}
   */
  public List<String> names(String issue) {
    return entry(issue)
        .map(e -> e.papers().stream().map(Entry.Kept::name).toList())
        .orElse(List.of());
  }

  /**
   * The bytes of one of them; empty where the issue has no paper of that name, or the archive does
   * not hold it whole.
   *
   * @throws IOException where the archive cannot be read
   */
  public Optional<byte[]> bytes(String issue, String paper) throws IOException {
    Optional<Entry.Kept> kept =
        entry(issue)
            .flatMap(e -> e.papers().stream().filter(k -> k.name().equals(paper)).findFirst());
    return kept.isEmpty() ? Optional.empty() : store.kept().read(kept.get().digest());
  }

  private Optional<Entry> entry(String issue) {
    if (!store.exists()) {
      return Optional.empty();
    }
    try (Register register = store.open()) {
      return register.find(issue);
    } catch (RegisterException e) {
      return Optional.empty();
    }
  }
}
