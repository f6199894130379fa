package gradepost.app.reissue;

import gradepost.app.reissue.LastFiles.Held;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.FileInPlace;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.file.Input;
import gradepost.source.file.LineEnds;
import gradepost.text.Mistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Restores the files of the last issues. A replaced file is not lost: if no issue has it, it goes
 * into the archive first.
 */
final class FromArchive {
  private final LastFiles last;
  private final Register register;
  private final Archive archive;

  FromArchive(LastFiles last, Register register, Archive archive) {
    this.last = last;
    this.register = register;
    this.archive = archive;
  }

  /** Restores the last issues' files, if the order says so. */
  static Answer asOrdered(Order order, List<Path> packs, Register register)
      throws IOException, RegisterException {
    if (!order.read().edits().fromArchive()) {
      return Answer.GOOD;
    }
    boolean dryRun = order.put().dryRun();
    Archive archive = order.put().store().kept();
    LastFiles last = LastFiles.of(register, archive, packs, !dryRun);
    return new FromArchive(last, register, archive).lay(packs, dryRun);
  }

  /**
   * The inputs of each registered pack as they belong in place.
   *
   * @param told what is missing in the archive
   */
  Map<Path, List<Input>> inputs(List<Path> packs, List<String> told) throws IOException {
    Map<Path, Held> wanted = new HashMap<>();
    for (Path pack : packs) {
      for (Held held : last.of(pack)) {
        wanted.merge(place(pack, held.name()), held, LastFiles::later);
      }
    }
    Map<Path, List<Input>> out = new LinkedHashMap<>();
    for (Path pack : packs) {
      List<Held> all = new ArrayList<>();
      List<Input> atHand = new ArrayList<>();
      for (Held own : last.of(pack)) {
        Path place = place(pack, own.name());
        Held held = Optional.ofNullable(wanted.get(place)).orElse(own);
        all.add(new Held(own.name(), held.issue(), held.digest(), held.order()));
        if (Files.isRegularFile(place)) {
          atHand.add(new Input(own.name(), LineEnds.plain(Files.readAllBytes(place))));
        }
      }
      last.inputs(pack, all, atHand, told)
          .filter(i -> !i.isEmpty())
          .ifPresent(i -> out.put(pack, i));
    }
    return out;
  }

  private static Path place(Path pack, String name) {
    return Disk.absolute(pack.resolveSibling(name));
  }

  /** Writes what differs, unless it is a dry run. Nothing is written where anything is missing. */
  Answer lay(List<Path> packs, boolean dryRun) throws IOException, RegisterException {
    List<String> told = new ArrayList<>();
    Map<Path, List<Input>> all = inputs(packs, told);
    all.forEach((pack, inputs) -> inputs.forEach(i -> outside(pack, i).ifPresent(told::add)));
    if (!told.isEmpty()) {
      return new Answer(List.of(), List.of(), told.stream().distinct().toList(), false);
    }
    Answer answer = Answer.GOOD;
    Set<Path> done = new HashSet<>();
    for (Path pack : packs) {
      if (!all.containsKey(pack)) {
        answer =
            answer.and(Answer.said(ReissueText.NOT_REGISTERED.with(PackFiles.id(pack)).inWords()));
      }
      for (Input input : all.getOrDefault(pack, List.of())) {
        if (done.add(place(pack, input.name()))) {
          answer = answer.and(laid(pack, input, dryRun));
        }
      }
    }
    return answer;
  }

  private Answer laid(Path pack, Input input, boolean dryRun)
      throws IOException, RegisterException {
    Path file = pack.resolveSibling(input.name()).normalize();
    Optional<byte[]> there =
        Files.isRegularFile(file) ? Optional.of(Files.readAllBytes(file)) : Optional.empty();
    if (there.isPresent() && LineEnds.same(there.get(), input.bytes())) {
      return Answer.GOOD;
    }
    if (dryRun) {
      return Answer.said(ReissueText.WOULD_RESTORE.with(file).inWords());
    }
    Mistake done = ReissueText.RESTORED.with(file);
    if (there.isPresent()) {
      String digest = Digest.of(LineEnds.plain(there.get()));
      if (register.list(Question.madeFrom(digest)).rows().isEmpty()) {
        done = ReissueText.RESTORED_KEPT.with(file, archive.place(archive.keep(there.get())));
      }
    }
    Files.createDirectories(Disk.folder(file));
    new FileInPlace(file).put(input.bytes());
    return Answer.wrote(List.of(file)).and(Answer.said(done.inWords()));
  }

  /** Files outside the folder of the packs may belong to somebody else. */
  private static Optional<String> outside(Path pack, Input input) {
    Path data = PackFiles.data(pack);
    Path file = place(pack, input.name());
    boolean same = false;
    try {
      same = new FileInPlace(file).says(input.bytes());
    } catch (IOException e) {
      return Optional.of(IoErrorText.inWords(e));
    }
    return same || file.startsWith(data)
        ? Optional.empty()
        : Optional.of(pack + ": error: " + ReissueText.OUTSIDE.with(file, data).inWords());
  }
}
