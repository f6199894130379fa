package gradepost.app.reissue;

import gradepost.app.store.Digest;
import gradepost.app.store.Store;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What is asked of a reissue.
 *
 * @param read which packs, with which notice
 * @param tell what the new issues say beside it
 * @param put where issues and papers go
 * @param pace how the run goes about it
 */
public record Order(Read read, Tell tell, Put put, Pace pace) {

  /** Why there are new issues, as a digest: the same for two runs of one notice. */
  public String cause() throws IOException {
    if (read.notice().isEmpty()) {
      return Digest.of((tell.asOf() + " " + tell.reason()).getBytes(StandardCharsets.UTF_8));
    }
    return Digest.of(Files.readAllBytes(read.notice().get()));
  }

  /**
   * What is read.
   *
   * @param packs files, or folders with packs below them
   * @param notice empty where the files in place have been edited by hand
   */
  public record Read(List<Path> packs, Optional<Path> notice, Edits edits) {
    /** Copies the list. */
    public Read {
      packs = List.copyOf(packs);
    }
  }

  /**
   * What becomes of files that are not those of the last issue.
   *
   * @param fromArchive whether the last issue's files are restored first
   * @param confirmed references of restrictions, or names of files, for which an edit is right
   */
  public record Edits(boolean fromArchive, Set<String> confirmed) {
    /** Nothing is restored, nothing is confirmed. */
    public static final Edits NONE = new Edits(false, Set.of());

    /** Copies the set. */
    public Edits {
      confirmed = Set.copyOf(confirmed);
    }
  }

  /**
   * What the new issues say.
   *
   * @param validFrom empty means from the moment of issue
   * @param asOf from when the papers show what stands: what ended before is taken out, and it is
   *     valid from then; empty where a notice or an edit is the cause
   * @param reason why, for the register; empty where a notice says it
   * @param checkedBy who checked the data of the new issues; empty leaves a line to sign
   * @param emergency whether an addendum goes out at once
   * @param templates folder of a depot's own templates
   */
  public record Tell(
      Optional<LocalDateTime> validFrom,
      Optional<LocalDateTime> asOf,
      Optional<String> reason,
      Optional<String> checkedBy,
      boolean emergency,
      Optional<Path> templates) {
    /** Because of a notice or an edit. */
    public Tell(
        Optional<LocalDateTime> validFrom,
        Optional<String> checkedBy,
        boolean emergency,
        Optional<Path> templates) {
      this(validFrom, Optional.empty(), Optional.empty(), checkedBy, emergency, templates);
    }
  }

  /**
   * Where issues and papers go.
   *
   * @param out folder of the papers
   * @param store register and archive
   * @param dryRun whether nothing is written
   */
  public record Put(Path out, Store store, boolean dryRun) {}

  /**
   * How the run goes about it.
   *
   * @param threads how many packs are worked on at once
   * @param patience how long to wait for another run
   */
  public record Pace(int threads, Duration patience) {}
}
