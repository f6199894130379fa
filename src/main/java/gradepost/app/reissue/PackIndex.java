package gradepost.app.reissue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.Maker;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.file.LineEnds;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What each pack rests on, as it was when it was last read: so that one that a run cannot touch is
 * not read again. What it says of a pack holds only while every file of it has the same digest.
 */
final class PackIndex {
  /** Goes up when facts mean something else. */
  private static final int FORMAT = 1;

  private static final ObjectMapper MAPPER = new ObjectMapper();
  private final Map<String, String> known;
  private final Map<String, String> fresh = new ConcurrentHashMap<>();
  private final Map<Path, String> digests = new ConcurrentHashMap<>();

  private PackIndex(Map<String, String> known) {
    this.known = known;
  }

  /**
   * Of a pack that could be read.
   *
   * @param route its name
   * @param firstEnd of its restrictions, the first moment at which one ends, in ISO notation; empty
   *     text where none has an end
   * @param files all that it names, its own the first
   */
  record Facts(String route, String firstEnd, List<Kept> files) {
    Facts {
      files = List.copyOf(files);
    }

    /** Whether all its restrictions end later, or never. */
    boolean standAllAt(LocalDateTime moment) {
      return firstEnd.isEmpty() || LocalDateTime.parse(firstEnd).isAfter(moment);
    }
  }

  /**
   * As the register has it.
   *
   * @param register empty where there is none yet: then nothing is known
   */
  static PackIndex of(Optional<Register> register) throws RegisterException {
    return new PackIndex(register.isEmpty() ? Map.of() : register.get().packFacts().all(format()));
  }

  /** Another version may read a pack otherwise. */
  private static String format() {
    return FORMAT + " " + Maker.version();
  }

  /** What is known of a pack, if its files are still those; another thread may ask meanwhile. */
  Optional<Facts> facts(Path pack) throws IOException {
    Optional<String> text = Optional.ofNullable(known.get(PackFiles.id(pack)));
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Facts facts = MAPPER.readValue(text.get(), Facts.class);
    for (Kept file : facts.files()) {
      if (!digest(Disk.absolute(pack.resolveSibling(file.name()))).equals(file.digest())) {
        return Optional.empty();
      }
    }
    Path own = Disk.absolute(pack.resolveSibling(facts.files().get(0).name()));
    return own.equals(Disk.absolute(pack)) ? Optional.of(facts) : Optional.empty();
  }

  /** A file that several packs name is read once in a run. */
  private String digest(Path file) throws IOException {
    try {
      return digests.computeIfAbsent(
          file,
          f -> {
            try {
              return Files.isRegularFile(f) ? Digest.of(LineEnds.plain(Files.readAllBytes(f))) : "";
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          });
    } catch (UncheckedIOException e) {
      throw Optional.ofNullable(e.getCause()).orElseThrow(() -> e);
    }
  }

  /** Notes what a pack rests on that has been read. */
  void note(PackFile pack) {
    String firstEnd =
        pack.standing().stream()
            .map(TemporaryRestriction::until)
            .flatMap(Optional::stream)
            .min(LocalDateTime::compareTo)
            .map(LocalDateTime::toString)
            .orElse("");
    Facts facts = new Facts(pack.route().name(), firstEnd, ArchivedInputs.named(pack.inputs()));
    try {
      fresh.put(pack.id(), MAPPER.writeValueAsString(facts));
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Keeps what was noted and is new. */
  void keep(Register register) throws RegisterException {
    Map<String, String> changed = new TreeMap<>(fresh);
    changed.entrySet().removeIf(e -> e.getValue().equals(known.get(e.getKey())));
    if (!changed.isEmpty()) {
      register.packFacts().keep(format(), changed);
    }
  }
}
