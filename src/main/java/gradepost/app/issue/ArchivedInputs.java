package gradepost.app.issue;

import gradepost.app.store.Archive;
import gradepost.app.store.Digest;
import gradepost.app.store.Paper;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The inputs of an issue as one kit: kept, taken out, and read again. */
public final class ArchivedInputs {

  /** Keeps files, and says under which digests. */
  public static List<Kept> keep(Archive archive, List<Input> inputs) throws IOException {
    List<Kept> out = new ArrayList<>();
    for (Input input : inputs) {
      out.add(new Kept(input.name(), archive.keep(input.bytes())));
    }
    return out;
  }

  /** The pack of a registered issue; empty where the archive does not hold it whole. */
  public static Optional<PackFile> pack(Sources sources, Archive archive, Entry entry)
      throws IOException {
    Optional<List<Input>> inputs = whole(archive, entry.inputs());
    return inputs.isPresent() ? sources.pack(inputs.get()).found() : Optional.empty();
  }

  /** Files as they were kept; empty where the archive does not hold them all whole. */
  public static Optional<List<Input>> whole(Archive archive, List<Kept> files) throws IOException {
    List<Input> inputs = new ArrayList<>();
    for (Kept kept : files) {
      Optional<byte[]> bytes = archive.read(kept.digest());
      if (bytes.isEmpty()) {
        return Optional.empty();
      }
      inputs.add(new Input(kept.name(), bytes.get()));
    }
    return Optional.of(inputs);
  }

  /**
   * The files of an issue that the archive does not hold whole, each as a message.
   *
   * @param what they are: "input" or "paper"
   */
  public static List<String> damaged(Archive archive, Entry entry, List<Kept> files, String what)
      throws IOException {
    List<String> out = new ArrayList<>();
    for (Kept kept : files) {
      if (archive.read(kept.digest()).isEmpty()) {
        out.add(
            "error: "
                + IssueText.NOT_WHOLE
                    .with(entry.name(), what, kept.name(), kept.digest())
                    .inWords());
      }
    }
    return out;
  }

  /** An issue that was made elsewhere: its inputs are kept, its papers are not known. */
  public static Entry takenIn(Archive archive, PackFile pack) throws IOException {
    return issued(archive, pack, new Issued("", Because.FIRST, List.of(), List.of()));
  }

  /**
   * What there is to register of an issue beside its inputs.
   *
   * @param maker the version that made it; empty text where only the inputs are taken in
   * @param papers that are kept with it
   */
  public record Issued(
      String maker, Because because, List<Paper> papers, List<Entry.Sheet> sheets) {}

  /**
   * Why there is a new issue.
   *
   * @param base number of the issue that it was compared with
   * @param notice digest of the notice that it takes in; empty text where there is none
   * @param urgent whether an emergency addendum belongs to it
   * @param found files as they were when the issue was made, of those that it may change
   */
  public record Because(Optional<Integer> base, String notice, boolean urgent, List<Kept> found) {
    /** It is the first that is registered. */
    public static final Because FIRST = new Because(Optional.empty(), "", false, List.of());
  }

  /** Files by their names and digests; they are not kept. */
  public static List<Kept> named(List<Input> inputs) {
    return inputs.stream().map(i -> new Kept(i.name(), Digest.of(i.bytes()))).toList();
  }

  /** Keeps inputs and papers, and says what is to be registered. */
  public static Entry issued(Archive archive, PackFile pack, Issued issued) throws IOException {
    List<Kept> papers = new ArrayList<>();
    for (Paper paper : issued.papers()) {
      papers.add(new Kept(paper.name(), archive.keep(paper.bytes())));
    }
    Because because = issued.because();
    return new Entry(
        pack.id(),
        pack.issue().number(),
        Issue.fingerprint(pack.inputs()),
        issued.maker(),
        pack.issue().issued(),
        pack.issue().validFrom(),
        pack.issue().validTo(),
        because.base(),
        because.notice(),
        because.urgent(),
        keep(archive, pack.inputs()),
        because.base().isEmpty() ? List.of() : changed(because.found(), pack.inputs()),
        papers,
        issued.sheets());
  }

  /** The files that the issue changes, as they were. */
  private static List<Kept> changed(List<Kept> found, List<Input> now) {
    Map<String, String> old = new HashMap<>();
    found.forEach(i -> old.put(i.name(), i.digest()));
    List<Kept> changed = new ArrayList<>();
    for (Input input : now) {
      String was = old.getOrDefault(input.name(), "");
      if (!was.equals(Digest.of(input.bytes()))) {
        changed.add(new Kept(input.name(), was));
      }
    }
    return changed;
  }

  private ArchivedInputs() {}
}
