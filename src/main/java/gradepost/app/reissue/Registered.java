package gradepost.app.reissue;

import gradepost.app.store.Digest;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.notice.NoticeText;
import gradepost.source.pack.PackFile;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * What the register has of a pack and of a notice.
 *
 * @param latest issue of the pack
 * @param taken number of the issue that took the notice in
 * @param waits whether the latest issue has not been put in place yet
 */
record Registered(Optional<Entry> latest, Optional<Integer> taken, boolean waits) {

  /**
   * @param register empty where there is none yet
   * @param notice digest of the notice
   */
  static Registered of(Optional<Register> register, String pack, String notice)
      throws RegisterException {
    if (register.isEmpty()) {
      return new Registered(Optional.empty(), Optional.empty(), false);
    }
    // The register has one connection: one question at a time.
    synchronized (register.get()) {
      Optional<Entry> latest = register.get().latest(pack);
      Optional<Integer> taken = register.get().withNotice(pack, notice);
      boolean waits = latest.isPresent() && !register.get().isDelivered(latest.get());
      return new Registered(latest, taken, waits);
    }
  }

  /** The digest by which the register knows a notice; empty text where there is none. */
  static String digest(PackFile pack, List<TemporaryRestriction> notices) {
    return notices.isEmpty()
        ? ""
        : Digest.of(
            new NoticeText(pack.route()).yaml(notices, "").getBytes(StandardCharsets.UTF_8));
  }

  /** Whether the latest issue has the notice. */
  boolean hasNotice() {
    return latest.isPresent() && latest.map(Entry::number).equals(taken);
  }
}
