package gradepost.app;

import gradepost.app.reissue.Order;
import gradepost.app.reissue.Reissue;
import gradepost.app.store.Answer;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/**
 * An office with a clerk, who keeps everything in one folder.
 *
 * @param folder where register, archive and papers go
 */
public record Depot(Path folder) {
  public static final Clock NOON =
      Clock.fixed(Instant.parse("2026-11-25T12:00:00Z"), ZoneOffset.UTC);

  public Path out() {
    return folder.resolve("out");
  }

  Path register() {
    return folder.resolve("reg/register.db");
  }

  public Store store() {
    return Store.of(register().toString(), Optional.empty());
  }

  public Answer reissue(
      Clock clock, List<Path> packs, Optional<Path> notice, boolean emergency, boolean dry) {
    return reissue(clock, store(), packs, notice, emergency, dry, Order.Edits.NONE);
  }

  /** With a register that may be another depot's too. */
  public Answer reissue(
      Clock clock,
      Store store,
      List<Path> packs,
      Optional<Path> notice,
      boolean emergency,
      boolean dry,
      Order.Edits edits) {
    if (!dry) {
      begun(store);
    }
    return new Reissue(clock, "a clerk", Progress.SILENT)
        .of(
            new Order(
                new Order.Read(packs, notice, edits),
                new Order.Tell(Optional.empty(), Optional.empty(), emergency, Optional.empty()),
                new Order.Put(out(), store, dry),
                new Order.Pace(2, Duration.ofMillis(200))));
  }

  /** A clerk has begun the register; a reissue alone begins none. */
  public static void begun(Store store) {
    try {
      if (!store.exists() && !store.hasArchive()) {
        store.begin().close();
      }
    } catch (IOException | RegisterException e) {
      throw new IllegalStateException(e);
    }
  }
}
