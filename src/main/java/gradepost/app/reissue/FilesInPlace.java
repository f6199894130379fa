package gradepost.app.reissue;

import gradepost.app.issue.Issue;
import gradepost.app.reissue.FilesTold.Different;
import gradepost.app.reissue.LastFiles.Held;
import gradepost.app.store.Answer;
import gradepost.app.store.Digest;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.Loss;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.pack.Amendment;
import gradepost.source.pack.PackFile;
import gradepost.units.UnitStyle;
import gradepost.yaml.KeyDifferences;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Compares the files of a pack with those of its last registered issue. What older files lack would
 * be printed as withdrawn, so nothing is issued from them; and what an edit by hand takes from a
 * driver has to be confirmed by its name.
 */
final class FilesInPlace {
  private final Order.Read order;
  private final Sources sources;
  private final Register register;
  private final LastFiles last;
  private final LocalDateTime when;

  /**
   * A pack beside its last issue.
   *
   * @param found as its files are
   * @param amended with the notice
   * @param named references that the notice names
   * @param base the last issue
   * @param met restrictions of the last issue that a train of this pack meets
   */
  record Beside(
      Path file,
      PackFile found,
      PackFile amended,
      Set<String> named,
      Entry latest,
      PackFile base,
      List<TemporaryRestriction> met) {}

  FilesInPlace(
      Order.Read order, Sources sources, Register register, LastFiles last, LocalDateTime when) {
    this.order = order;
    this.sources = sources;
    this.register = register;
    this.last = last;
    this.when = when;
  }

  /** Whether every file is, byte for byte, what belongs in place. */
  boolean areLast(Path file, PackFile found) {
    Map<String, String> there = digests(found.inputs());
    List<Held> wanted = last.of(file);
    return wanted.size() == there.size()
        && wanted.stream().allMatch(h -> h.digest().equals(there.get(h.name())));
  }

  private static Map<String, String> digests(List<Input> inputs) {
    Map<String, String> out = new LinkedHashMap<>();
    inputs.forEach(i -> out.put(i.name(), Digest.of(i.bytes())));
    return out;
  }

  /** The last issue as it was registered; empty, with a message, if the archive cannot give it. */
  Optional<PackFile> base(Path file, PackFile found, Entry latest, List<String> told)
      throws IOException {
    Optional<List<Input>> inputs =
        last.inputs(file, LastFiles.registered(latest), found.inputs(), told);
    return inputs.isPresent() && inputs.get().equals(found.inputs())
        ? Optional.of(found)
        : inputs.flatMap(i -> good(sources.pack(i), file, latest.name(), told));
  }

  private static <T> Optional<T> good(Reading<T> read, Path file, String issue, List<String> told) {
    if (read.found().isEmpty()) {
      told.add(FilesTold.unreadable(file, issue, read.problems()));
    }
    return read.found();
  }

  /** Good, with what was edited; or refused, with what would be lost and what to do. */
  Answer compared(Beside pack) throws IOException, RegisterException {
    boolean asRegistered = areLast(pack.file(), pack.found());
    List<String> told = new ArrayList<>();
    Optional<List<TemporaryRestriction>> before =
        asRegistered ? Optional.of(pack.found().notices()) : notices(pack, told);
    if (before.isEmpty()) {
      return new Answer(List.of(), List.of(), told, false);
    }
    List<Different> different =
        asRegistered ? List.of() : different(pack.file(), pack.found(), pack.latest());
    List<Loss> losses = losses(pack, before.get(), different);
    Map<String, String> doubts = new LinkedHashMap<>();
    UnitStyle units = pack.base().route().units();
    losses.forEach(l -> doubts.put(l.then().reference(), FilesTold.words(l, units)));
    List<String> restrictions = Amendment.restrictionFiles(pack.found());
    for (Different each : different) {
      boolean own = each.before().name().equals(pack.found().inputs().get(0).name());
      if (each.of().isPresent()
          && !each.keys().isEmpty()
          && !own
          && !restrictions.contains(each.before().name())) {
        doubts.put(each.before().name(), "older than the one in " + each.before().issue());
      }
    }
    List<String> confirmed =
        doubts.keySet().stream().filter(order.edits().confirmed()::contains).toList();
    confirmed.forEach(doubts::remove);
    boolean sameNumber = pack.found().issue().number() == pack.latest().number();
    if (!sameNumber || !doubts.isEmpty()) {
      return Answer.refused(
          FilesTold.refusal(
              pack.file(),
              pack.latest(),
              pack.found().issue().number(),
              older(pack),
              different,
              doubts));
    }
    return accepted(pack, different, confirmed);
  }

  private Answer accepted(Beside pack, List<Different> different, List<String> confirmed) {
    Answer answer = Answer.GOOD;
    String name = pack.found().id();
    if (!different.isEmpty()) {
      String files = String.join("; ", different.stream().map(Different::words).toList());
      String said = "%s: the files are not those of %s: %s";
      answer = answer.and(Answer.said(said.formatted(name, pack.latest().name(), files)));
    }
    return confirmed.isEmpty()
        ? answer
        : answer.and(Answer.said(name + ": confirmed: " + String.join(", ", confirmed)));
  }

  /** The earlier issue of the pack whose files these are, all of them. */
  private Optional<String> older(Beside pack) throws RegisterException {
    String fingerprint = Issue.fingerprint(pack.found().inputs());
    if (fingerprint.equals(pack.latest().fingerprint())) {
      return Optional.empty();
    }
    synchronized (register) {
      return register
          .find(fingerprint)
          .filter(e -> e.pack().equals(pack.latest().pack()))
          .map(Entry::name);
    }
  }

  /**
   * The restrictions of the files that belong in place. They alone are read, and only where these
   * files are not those of the pack's own last issue: another pack's issue has altered one.
   */
  private Optional<List<TemporaryRestriction>> notices(Beside pack, List<String> told)
      throws IOException {
    List<Held> files = last.of(pack.file());
    Optional<List<Input>> inputs = last.inputs(pack.file(), files, pack.found().inputs(), told);
    return inputs.isPresent() && inputs.get().equals(pack.base().inputs())
        ? Optional.of(pack.base().notices())
        : inputs.flatMap(i -> good(sources.noticesOf(i), pack.file(), files.get(0).issue(), told));
  }

  private List<Different> different(Path file, PackFile found, Entry latest)
      throws IOException, RegisterException {
    List<Different> out = new ArrayList<>();
    Map<String, Input> there = new LinkedHashMap<>();
    found.inputs().forEach(i -> there.put(i.name(), i));
    for (Held held : last.of(file)) {
      Optional<Input> now = Optional.ofNullable(there.remove(held.name()));
      if (now.isEmpty()) {
        out.add(new Different(held, Optional.empty(), List.of("dropped from the pack file")));
      } else if (!Digest.of(now.get().bytes()).equals(held.digest())) {
        byte[] then = last.input(held, List.of()).map(Input::bytes).orElse(new byte[0]);
        out.add(
            new Different(
                held,
                issueWith(Digest.of(now.get().bytes()), latest.pack()),
                KeyDifferences.between(then, now.get().bytes())));
      }
    }
    for (String name : there.keySet()) {
      Held none = new Held(name, latest.name(), "", 0);
      out.add(new Different(none, Optional.empty(), List.of("added to the pack file")));
    }
    return out;
  }

  /** An issue that was made from a file with this content, one of this pack before others. */
  private Optional<String> issueWith(String digest, String pack) throws RegisterException {
    synchronized (register) {
      List<List<String>> rows = register.list(Question.madeFrom(digest)).rows();
      return rows.stream()
          .filter(row -> row.get(0).equals(pack))
          .findFirst()
          .or(() -> rows.stream().findFirst())
          .map(row -> row.get(0) + "/" + row.get(1));
    }
  }

  /**
   * What the files lose. In a run without a notice the edit is what is asked for, and what it eases
   * is told with what changes; with a notice, or from an older file, that is to be confirmed too.
   */
  private List<Loss> losses(
      Beside pack, List<TemporaryRestriction> before, List<Different> different) {
    Map<String, Loss> out = new LinkedHashMap<>();
    List<TemporaryRestriction> after = pack.amended().notices();
    boolean older = different.stream().anyMatch(d -> d.of().isPresent());
    boolean easedToo = order.notice().isPresent() || older;
    for (Loss loss : Loss.between(before, after, when)) {
      if (loss.gone() || easedToo) {
        out.put(loss.then().reference(), loss);
      }
    }
    // What another pack's issue withdrew or eased in a shared file is registered with that issue.
    for (Loss loss : Loss.between(pack.met(), after, when)) {
      if (loss.now().isEmpty()) {
        out.put(loss.then().reference(), loss);
      }
    }
    out.keySet().removeAll(pack.named());
    return List.copyOf(out.values());
  }

  /** A pack without a registered issue, beside a registered pack that shares a file with it. */
  Answer unregistered(Path file, PackFile found) throws RegisterException {
    Answer answer = Answer.GOOD;
    for (Input input : found.inputs()) {
      Optional<Held> shared = last.shared(file, input.name());
      String digest = Digest.of(input.bytes());
      if (shared.isPresent() && !shared.get().digest().equals(digest)) {
        Optional<String> older = issueWith(digest, found.id());
        if (older.isPresent()) {
          answer =
              answer.and(
                  Answer.refused(
                      "%s: error: %s is from %s, but the last issue with this file is %s: nothing is issued from older files\n  Maybe restore the files of %s: reissue that pack with --from-archive"
                          .formatted(
                              file,
                              input.name(),
                              older.get(),
                              shared.get().issue(),
                              shared.get().issue())));
        }
      }
    }
    return answer;
  }
}
