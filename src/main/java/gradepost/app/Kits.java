package gradepost.app;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.source.Input;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import gradepost.source.Sources;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The inputs of an issue as one kit: kept, taken out, and read again. */
final class Kits {

  static List<Kept> keep(Archive archive, List<Input> inputs) throws IOException {
    List<Kept> out = new ArrayList<>();
    for (Input input : inputs) {
      out.add(new Kept(input.name(), archive.keep(input.bytes())));
    }
    return out;
  }

  /** The pack of a registered issue; empty where the archive does not hold it whole. */
  static Optional<PackFile> pack(Sources sources, Archive archive, Entry entry) throws IOException {
    List<Input> inputs = new ArrayList<>();
    for (Kept kept : entry.inputs()) {
      Optional<byte[]> bytes = archive.read(kept.digest());
      if (bytes.isEmpty()) {
        return Optional.empty();
      }
      inputs.add(new Input(kept.name(), bytes.get()));
    }
    return sources.pack(inputs) instanceof Reading.Good<PackFile> good
        ? Optional.of(good.value())
        : Optional.empty();
  }

  /** An issue that was made elsewhere: its inputs are kept, its papers are not known. */
  static Entry takenIn(Archive archive, String name, PackFile pack) throws IOException {
    return entry(
        name,
        pack,
        "",
        Optional.empty(),
        "",
        false,
        keep(archive, pack.inputs()),
        List.of(),
        List.of(),
        List.of());
  }

  static Entry entry(
      String name,
      PackFile pack,
      String maker,
      Optional<Integer> base,
      String notice,
      boolean urgent,
      List<Kept> inputs,
      List<Kept> found,
      List<Kept> papers,
      List<Entry.Sheet> sheets) {
    return new Entry(
        name,
        pack.issue().number(),
        Issue.fingerprint(pack.inputs()),
        maker,
        pack.issue().issued(),
        pack.issue().validFrom(),
        pack.issue().validTo(),
        base,
        notice,
        urgent,
        inputs,
        found,
        papers,
        sheets);
  }

  private Kits() {}
}
