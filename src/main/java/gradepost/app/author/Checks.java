package gradepost.app.author;

import gradepost.app.author.Checked.Found;
import gradepost.app.author.Checked.Strip;
import gradepost.app.store.Disk;
import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import gradepost.source.pack.PackFile;
import gradepost.source.pack.Shelves;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import gradepost.yaml.Severity;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Reads a file as it would be with another text, with the packs that use it. */
final class Checks {
  private static final int MOST_TOLD = 300;
  private static final int MOST_KEPT = 8;
  private final DataFolder folder;
  private final StripMaker strips = new StripMaker();

  /** Of what is typed only the one file is new. */
  private final Shelves shelves = new Shelves(MOST_KEPT);

  Checks(DataFolder folder) {
    this.folder = folder;
  }

  /**
   * What is found in a text.
   *
   * @param all whether all packs that use the file are read with it; else the first alone, as fast
   *     as one types
   */
  Checked of(LineFile file, String text, boolean all) throws IOException {
    List<Path> packs = folder.packsWith(file.at());
    String name = Disk.name(file.at());
    Sources sources =
        new Sources(
            new Edited(new DiskFiles(Path.of("")), name, text.getBytes(StandardCharsets.UTF_8)),
            shelves);
    Optional<Strip> strip = Optional.empty();
    boolean read = false;
    Problems problems = Problems.NONE;
    for (Path pack : all ? packs : packs.stream().limit(1).toList()) {
      Reading<PackFile> reading = sources.pack(Disk.name(pack));
      problems = problems.and(reading.problems());
      if (reading.found().isPresent()) {
        problems = problems.and(reading.found().get().early());
        read = true;
        if (strip.isEmpty()) {
          strip = Optional.of(strips.of(reading.found().get(), text));
        }
      }
    }
    if (!read) {
      problems = problems.and(sources.check(name));
    }
    List<Found> here = new ArrayList<>();
    List<Found> elsewhere = new ArrayList<>();
    for (Problem problem : problems.all()) {
      boolean own = problem.spot().file().equals(name);
      if (own || problem.severity() == Severity.ERROR) {
        (own ? here : elsewhere).add(found(problem));
      }
    }
    here.sort(Comparator.comparingInt(Found::line).thenComparingInt(Found::column));
    return new Checked(
        here.stream().distinct().limit(MOST_TOLD).toList(),
        elsewhere.stream().distinct().limit(MOST_TOLD).toList(),
        packs.stream().map(this::name).toList(),
        strip);
  }

  Found found(Problem problem) {
    String rule = problem.rule().isEmpty() ? "" : " [" + problem.rule() + "]";
    String allowed = problem.allowed().isEmpty() ? "" : "; allowed: " + problem.allowed();
    return new Found(
        fromFolder(problem.spot().file()),
        problem.spot().line(),
        problem.spot().column(),
        problem.severity().word(),
        fromFolder(problem.what() + allowed + rule),
        fromFolder(problem.maybe()));
  }

  private String name(Path file) {
    return fromFolder(Disk.name(file));
  }

  /** Files are called by their names from the folder of the desk. */
  private String fromFolder(String text) {
    return text.replace(Disk.name(folder.root()) + "/", "");
  }
}
