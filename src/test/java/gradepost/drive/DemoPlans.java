package gradepost.drive;

import gradepost.source.DirectionPart;
import gradepost.source.DiskFiles;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import gradepost.source.Sources;
import gradepost.stock.Formation;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The assignments of the demo packs. */
public final class DemoPlans {

  public static List<Assignment> assignments() {
    List<Assignment> all = new ArrayList<>();
    for (String file :
        new String[] {"thrumble-valley/pack-thrumble.yaml", "ormel-coast/pack-ormel.yaml"}) {
      Reading<PackFile> reading = new Sources(new DiskFiles(Path.of("routes"))).pack(file);
      if (!(reading instanceof Reading.Good<PackFile> good)) {
        throw new AssertionError(reading.problems().toString());
      }
      for (DirectionPart part : good.value().directions()) {
        for (Formation formation : good.value().formations()) {
          all.add(good.value().assignment(part, formation));
        }
      }
    }
    return all;
  }

  private DemoPlans() {}
}
