package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.FileInPlace;
import gradepost.app.store.IoErrorText;
import gradepost.source.RouteCsv;
import gradepost.source.file.DiskFiles;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Lists of a route out into a table and in again. */
public final class Exchange {
  private static final int LARGEST_MB = 4;

  /** Says the table. */
  public Answer export(RouteCsv.Part part, Path route) {
    Reading<String> reading = csv(part, route).export();
    return reading.match(
        good -> Answer.said(good.value().stripTrailing()),
        rejected -> Answer.of(rejected.problems()));
  }

  /** Writes the route anew with the table in it, or leaves it as it is and says why. */
  public Answer into(RouteCsv.Part part, Path table, Path route) {
    try {
      Reading<String> reading =
          csv(part, route).imported(Disk.name(table), Disk.bytes(table, LARGEST_MB));
      if (reading.found().isEmpty()) {
        return Answer.of(reading.problems());
      }
      byte[] bytes = reading.found().get().getBytes(StandardCharsets.UTF_8);
      if (java.util.Arrays.equals(bytes, Files.readAllBytes(route))) {
        return Answer.said(route + " already has all that");
      }
      new FileInPlace(route).put(bytes);
      return Answer.wrote(java.util.List.of(route));
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  private static RouteCsv csv(RouteCsv.Part part, Path route) {
    return new RouteCsv(new DiskFiles(Path.of("")), Disk.name(route), part);
  }
}
