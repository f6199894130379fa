package gradepost.app.reissue;

import gradepost.app.store.Archive;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.file.Input;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The files of the last registered issues: what belongs in place before anything is issued anew.
 * Packs of one folder share files; what belongs there of a shared file is what the pack that was
 * reissued last has of it.
 */
final class LastFiles {
  private final Map<String, List<Held>> own = new HashMap<>();
  private final Map<Path, Held> reissued = new HashMap<>();
  private final Set<String> claimed = new HashSet<>();
  private final Archive archive;
  private final boolean heal;

  /**
   * A file as an issue has it.
   *
   * @param name as the pack names it
   * @param issue "valley/4"
   * @param order greater for an issue that was registered later
   */
  record Held(String name, String issue, String digest, int order) {}

  private LastFiles(Archive archive, boolean heal) {
    this.archive = archive;
    this.heal = heal;
  }

  /**
   * Asks the register once for all packs.
   *
   * @param packs those of a run; what lies beside them counts too
   * @param heal whether a file that the archive has lost is put back from the files at hand
   */
  static LastFiles of(Register register, Archive archive, List<Path> packs, boolean heal)
      throws RegisterException, IOException {
    LastFiles last = new LastFiles(archive, heal);
    Map<String, List<Held>> compared = new HashMap<>();
    int order = 0;
    for (List<String> row : register.list(Question.latestInputs()).rows()) {
      String pack = row.get(0);
      Held held = new Held(row.get(3), pack + "/" + row.get(1), row.get(4), order++);
      last.own.computeIfAbsent(pack, p -> new ArrayList<>()).add(held);
      if (!row.get(2).isEmpty()) {
        compared.computeIfAbsent(pack, p -> new ArrayList<>()).add(held);
      }
    }
    for (Path pack : withNeighbours(packs)) {
      last.claimed.add(PackFiles.id(pack));
      for (Held held : compared.getOrDefault(PackFiles.id(pack), List.of())) {
        last.reissued.merge(
            Disk.absolute(pack.resolveSibling(held.name())), held, LastFiles::later);
      }
    }
    return last;
  }

  static Held later(Held a, Held b) {
    return a.order() > b.order() ? a : b;
  }

  private static SortedSet<Path> withNeighbours(List<Path> packs) throws IOException {
    TreeSet<Path> folders = new TreeSet<>();
    TreeSet<Path> all = new TreeSet<>();
    for (Path pack : packs) {
      all.add(Disk.absolute(pack));
      folders.add(Disk.folder(Disk.absolute(pack)));
    }
    for (Path folder : folders) {
      if (Files.isDirectory(folder)) {
        all.addAll(PackFiles.beside(folder));
      }
    }
    return all;
  }

  /**
   * What a pack is called in the register. One whose file says nothing any more is the only one
   * that was registered with a file of this name, and that no other file claims.
   */
  private String registeredAs(Path pack) {
    String id = PackFiles.id(pack);
    if (own.containsKey(id) || PackFiles.opens(pack)) {
      return id;
    }
    String file = String.valueOf(pack.getFileName());
    List<String> left =
        own.keySet().stream()
            .filter(each -> !claimed.contains(each))
            .filter(each -> own.getOrDefault(each, List.of()).get(0).name().equals(file))
            .toList();
    return left.size() == 1 ? left.get(0) : id;
  }

  /** What belongs in place for a registered pack, in the order of its inputs. */
  List<Held> of(Path pack) {
    return own.getOrDefault(registeredAs(pack), List.of()).stream()
        .map(h -> shared(pack, h.name()).map(s -> latest(h, s)).orElse(h))
        .toList();
  }

  /** Whether these are what the last issue has, and what belongs in place. */
  boolean areThoseOfItsIssue(Path pack, List<Kept> there) {
    List<Kept> issued =
        own.getOrDefault(PackFiles.id(pack), List.of()).stream().map(LastFiles::kept).toList();
    return issued.equals(there) && of(pack).stream().map(LastFiles::kept).toList().equals(there);
  }

  private static Kept kept(Held held) {
    return new Kept(held.name(), held.digest());
  }

  /** The pack's own name of the file stays: it may be called otherwise from another folder. */
  private static Held latest(Held own, Held shared) {
    return shared.order() > own.order() && !shared.digest().equals(own.digest())
        ? new Held(own.name(), shared.issue(), shared.digest(), shared.order())
        : own;
  }

  /** What a reissued pack has of a file that this pack names. */
  Optional<Held> shared(Path pack, String name) {
    return Optional.ofNullable(reissued.get(Disk.absolute(pack.resolveSibling(name))));
  }

  /** The content from the archive, or from the files at hand where these are the same. */
  Optional<Input> input(Held held, List<Input> atHand) throws IOException {
    Optional<byte[]> kept = archive.read(held.digest());
    if (kept.isPresent()) {
      return kept.map(bytes -> new Input(held.name(), bytes));
    }
    Optional<Input> same =
        atHand.stream()
            .filter(i -> i.name().equals(held.name()))
            .filter(i -> Digest.of(i.bytes()).equals(held.digest()))
            .findFirst();
    if (heal && same.isPresent()) {
      archive.keep(same.get().bytes());
    }
    return same;
  }

  /** The same for an issue as it was registered. */
  static List<Held> registered(Entry entry) {
    List<Held> out = new ArrayList<>();
    for (Kept kept : entry.inputs()) {
      out.add(new Held(kept.name(), entry.name(), kept.digest(), 0));
    }
    return out;
  }

  /** All of them; empty, with a message, if one is missing. */
  Optional<List<Input>> inputs(Path pack, List<Held> all, List<Input> atHand, List<String> told)
      throws IOException {
    List<Input> out = new ArrayList<>();
    for (Held held : all) {
      Optional<Input> input = input(held, atHand);
      if (input.isEmpty()) {
        told.add(missing(pack, held));
      }
      input.ifPresent(out::add);
    }
    return out.size() == all.size() ? Optional.of(out) : Optional.empty();
  }

  private String missing(Path pack, Held held) {
    return pack
        + ": error: "
        + ReissueText.ARCHIVE_LOST.with(archive.where(), held.name(), held.issue()).inWords();
  }
}
