package gradepost.app.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

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
    List<Part> beside = new ArrayList<>();
    try {
      for (Paper paper : papers) {
        Part part = Part.beside(inside(paper.name()));
        beside.add(part);
        part.write(paper.bytes());
      }
      List<Path> placed = new ArrayList<>();
      for (int i = 0; i < papers.size(); i++) {
        Path place = folder.resolve(papers.get(i).name());
        beside.get(i).become(place);
        placed.add(place);
      }
      return placed;
    } finally {
      for (Part part : beside) {
        part.drop();
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
    Path beside = Files.createDirectory(folder.resolve(Part.name(name)));
    new Delivery(beside).put(papers);
    Files.move(beside, place, StandardCopyOption.ATOMIC_MOVE);
    FolderArchive.force(folder);
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

  /** Takes away what a killed run left of a folder that it did not finish. */
  public void tidy(String name) throws IOException {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (Stream<Path> all = Files.list(folder)) {
      for (Path left : all.filter(f -> Part.of(name, f)).toList()) {
        try (Stream<Path> inside = Files.walk(left)) {
          for (Path each : inside.sorted(Comparator.reverseOrder()).toList()) {
            Files.delete(each);
          }
        }
      }
    }
  }
}
