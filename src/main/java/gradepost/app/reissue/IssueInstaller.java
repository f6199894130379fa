package gradepost.app.reissue;

import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Delivery;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.FileInPlace;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Paper;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.file.LineEnds;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Puts a registered issue in place from the archive: its papers into a folder of their own, its
 * changed inputs over the files that they were made from. Done twice it does no harm.
 */
public final class IssueInstaller {
  private final Archive archive;
  private final Path out;

  public IssueInstaller(Store store, Path out) {
    this.archive = store.kept();
    this.out = out;
  }

  /** Puts in place what is registered of these packs and does not lie there yet. */
  Map<Entry, Answer> waiting(List<Path> packs, By by, Register register) throws RegisterException {
    Map<Entry, Answer> placed = new LinkedHashMap<>();
    Set<String> waiting = register.undelivered();
    for (Path pack : packs) {
      if (waiting.contains(PackFiles.id(pack))) {
        Entry entry = register.latest(PackFiles.id(pack)).orElseThrow();
        Answer answer = place(pack, entry);
        placed.put(entry, answer);
        if (answer.good()) {
          register.delivered(by, entry);
        }
      }
    }
    return placed;
  }

  /** A disk that refuses leaves the issue to the next run. */
  public Answer place(Path pack, Entry entry) {
    try {
      return placed(pack, entry);
    } catch (IOException e) {
      return Answer.refused(
          "%s\n  Maybe run it again when the cause is removed: %s is registered, and its files will be written then"
              .formatted(IoErrorText.inWords(e), entry.name()));
    }
  }

  private Answer placed(Path pack, Entry entry) throws IOException {
    List<Paper> papers = new ArrayList<>();
    for (Kept kept : entry.papers()) {
      papers.add(new Paper(kept.name(), taken(kept, entry)));
    }
    String name = "%s-issue-%d".formatted(entry.pack(), entry.number());
    Delivery delivery = new Delivery(out);
    delivery.tidy(name);
    Answer answer = Answer.wrote(delivery.putTogether(name, papers));
    Map<String, Kept> inputs = new HashMap<>();
    entry.inputs().forEach(i -> inputs.put(i.name(), i));
    for (Kept found : entry.found()) {
      Kept now = Optional.ofNullable(inputs.get(found.name())).orElseThrow();
      answer = answer.and(source(pack.resolveSibling(found.name()), found, now, entry));
    }
    return answer;
  }

  private byte[] taken(Kept kept, Entry entry) throws IOException {
    return archive
        .read(kept.digest())
        .orElseThrow(
            () ->
                new IOException(
                    "the archive does not hold %s of %s whole"
                        .formatted(kept.name(), entry.name())));
  }

  /** A file that the clerk has edited since is his. */
  private Answer source(Path file, Kept found, Kept now, Entry entry) throws IOException {
    String there = Files.exists(file) ? Digest.of(LineEnds.plain(Files.readAllBytes(file))) : "";
    if (there.equals(now.digest())) {
      return Answer.GOOD;
    }
    if (!there.equals(found.digest())) {
      return Answer.refused(
          "%s: error: edited since it was read for %s; it was not overwritten\n  Maybe restore it with: reissue --from-archive; or copy in by hand what %s has, then: register placed %s"
              .formatted(
                  file.normalize(), entry.name(), archive.place(now.digest()), entry.name()));
    }
    new Delivery(Disk.folder(file)).tidy(String.valueOf(file.getFileName()));
    new FileInPlace(file.normalize()).put(taken(now, entry));
    return Answer.wrote(List.of(file.normalize()));
  }
}
