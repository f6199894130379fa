package gradepost.app.reissue;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.store.Archive;
import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Packs that lie beside a touched one and name a file that it names. They are registered as they
 * are before that file is altered: afterwards nobody could tell what their last issue said, and a
 * notice that is taken into one of them alone would never reach the drivers of the others.
 */
final class PacksSharingFiles {

  static void takeIn(
      Sources disk, List<Seen.Touched> touched, By by, Register register, Archive archive)
      throws IOException, RegisterException {
    Set<Path> known = new TreeSet<>();
    Map<Path, Set<Path>> folders = new TreeMap<>();
    for (Seen.Touched each : touched) {
      Path pack = Disk.absolute(each.outcome().file());
      known.add(pack);
      folders
          .computeIfAbsent(Disk.folder(pack), f -> new TreeSet<>())
          .addAll(others(pack, each.found()));
    }
    for (Map.Entry<Path, Set<Path>> folder : folders.entrySet()) {
      Set<Path> shared = folder.getValue();
      for (Path pack : PackFiles.beside(folder.getKey())) {
        String name = PackFiles.id(pack);
        if (!known.contains(pack) && !register.knows(name)) {
          Optional<PackFile> found = read(disk, pack);
          if (found.isPresent() && others(pack, found.get()).stream().anyMatch(shared::contains)) {
            register.takeIn(by, ArchivedInputs.takenIn(archive, found.get()));
          }
        }
      }
    }
  }

  private static Optional<PackFile> read(Sources disk, Path pack) {
    return disk.pack(Disk.name(pack)).found();
  }

  /** The files that it names, its own left out. */
  private static List<Path> others(Path pack, PackFile read) {
    List<Path> files = new ArrayList<>();
    for (Input input : read.inputs()) {
      files.add(Disk.absolute(pack.resolveSibling(input.name())));
    }
    files.remove(pack);
    return files;
  }

  private PacksSharingFiles() {}
}
