package gradepost.drive;

import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import gradepost.stock.Formation;
import gradepost.task.Assignment;
import gradepost.yaml.Reading;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The assignments of the valley packs that are kept as they are. */
public final class FrozenPlans {
  private static final Path FOLDER = Path.of("src/test/resources/gradepost/frozen");

  public static List<Assignment> assignments() {
    Reading<PackFile> reading =
        new Sources(new DiskFiles(FOLDER)).pack("thrumble-valley/pack-thrumble.yaml");
    if (!(reading instanceof Reading.Good<PackFile> good)) {
      throw new AssertionError(reading.problems().toString());
    }
    List<Assignment> all = new ArrayList<>();
    for (DirectionPart part : good.value().directions()) {
      for (Formation formation : good.value().formations()) {
        all.add(good.value().assignment(part, formation));
      }
    }
    return all;
  }

  private FrozenPlans() {}
}
