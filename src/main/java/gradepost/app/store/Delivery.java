package gradepost.app.store;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/**
 * Puts the papers of one pack into a folder. All are written beside their places first and moved
 * only then, so that a full disk leaves the papers of the last issue as they were.
 */
public final class Delivery {
  private final Path folder;

  public Delivery(Path folder) {
    this.folder = folder;
  }

  /** Where the papers lie now, in the order given. */
  public List<Path> put(List<Paper> papers) throws IOException {
    Files.createDirectories(folder);
    List<Path> beside = new ArrayList<>();
    try {
      for (Paper paper : papers) {
        inside(paper.name());
        Path part = Files.createTempFile(folder, "." + paper.name() + "-", ".part");
        beside.add(part);
        Archive.write(part, paper.bytes());
        readableAsUsual(part);
      }
      List<Path> placed = new ArrayList<>();
      for (int i = 0; i < papers.size(); i++) {
        Path place = folder.resolve(papers.get(i).name());
        move(beside.get(i), place);
        placed.add(place);
      }
      return placed;
    } finally {
      for (Path part : beside) {
        Files.deleteIfExists(part);
      }
    }
  }

  /**
   * Puts all papers of an issue into a folder of their own, which is there whole or not at all.
   *
   * @param name of that folder
   */
  public List<Path> putTogether(String name, List<Paper> papers) throws IOException {
    Path place = inside(name);
    if (Files.exists(place)) {
      return new Delivery(place).put(papers);
    }
    Files.createDirectories(folder);
    Path beside = Files.createTempDirectory(folder, "." + name + "-");
    new Delivery(beside).put(papers);
    beside.toFile().setReadable(true, false);
    beside.toFile().setExecutable(true, false);
    Files.move(beside, place, StandardCopyOption.ATOMIC_MOVE);
    Archive.force(folder);
    return papers.stream().map(p -> place.resolve(p.name())).toList();
  }

  /** A place in the folder itself: a name that leads elsewhere is refused. */
  private Path inside(String name) throws IOException {
    Path place = folder.resolve(name);
    if (!Path.of(name).equals(place.getFileName()) || name.equals("..") || name.equals(".")) {
      throw new IOException("the name " + name + " leads out of the folder " + folder);
    }
    return place;
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** A temporary file is its owner's alone; a paper is for whoever may look into the folder. */
  private static void readableAsUsual(Path file) {
    file.toFile().setReadable(true, false);
  }
}
