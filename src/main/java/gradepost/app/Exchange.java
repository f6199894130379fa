package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.FailOn;
import gradepost.app.store.FileInPlace;
import gradepost.app.store.IoErrorText;
import gradepost.route.Route;
import gradepost.source.RouteCsv;
import gradepost.source.RouteCsv.Table;
import gradepost.source.RouteList;
import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import gradepost.source.file.SourceFiles;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Lists of a route out into tables and in again. */
public final class Exchange {
  private static final String NOTICES = "restrictions.yaml";

  /** Says the table. */
  public Answer export(RouteList list, Path file) {
    return csv(file)
        .export(list)
        .match(
            good -> Answer.said(good.value().stripTrailing()),
            rejected -> Answer.of(rejected.problems()));
  }

  /** Writes the file anew with the table in it, or leaves it as it is and says why. */
  public Answer into(RouteList list, Path table, Path file) {
    try {
      Reading<String> reading = csv(file).imported(List.of(TableFolder.table(list, table)));
      return answer(Map.of(file, reading));
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  /**
   * Every table of a folder, each called after its list, such as {@code gradients.csv}. That of the
   * notices goes into the file of restrictions beside the route. All go in, or none.
   */
  public Answer all(Path folder, Path route) {
    try {
      List<Problem> problems = new ArrayList<>();
      List<Table> tables = TableFolder.tables(folder, problems);
      if (!problems.isEmpty()) {
        return Answer.of(new Problems(problems));
      }
      Map<Path, Reading<String>> readings = new LinkedHashMap<>();
      List<Table> own = tables.stream().filter(t -> !t.list().ofNotices()).toList();
      Optional<Route> known = Optional.empty();
      if (own.isEmpty()) {
        known = Disk.sources().route(Disk.name(route)).found();
      } else {
        Reading<String> reading = csv(route).imported(own);
        readings.put(route, reading);
        known = reading.found().flatMap(text -> route(route, text));
      }
      List<Table> notices = tables.stream().filter(t -> t.list().ofNotices()).toList();
      if (!notices.isEmpty()) {
        Path file = route.resolveSibling(NOTICES);
        readings.put(
            file,
            new RouteCsv(new DiskFiles(Path.of("")), Disk.name(file), known).imported(notices));
      }
      return answer(readings);
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  private static Optional<Route> route(Path file, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return new Sources(name -> new SourceFiles.Bytes(bytes)).route(Disk.name(file)).found();
  }

  private static Answer answer(Map<Path, Reading<String>> readings) throws IOException {
    Answer answer = Answer.GOOD;
    boolean good = true;
    for (Reading<String> reading : readings.values()) {
      answer = answer.and(Answer.of(reading.problems(), FailOn.ERRORS));
      good &= reading.found().isPresent();
    }
    if (!good) {
      return answer;
    }
    for (Map.Entry<Path, Reading<String>> each : readings.entrySet()) {
      byte[] text = each.getValue().found().orElseThrow().getBytes(StandardCharsets.UTF_8);
      FileInPlace file = new FileInPlace(each.getKey());
      if (file.says(text)) {
        answer = answer.and(Answer.said(each.getKey() + " already has all that"));
      } else {
        file.put(text);
        answer = answer.and(Answer.wrote(List.of(each.getKey())));
      }
    }
    return answer;
  }

  private static RouteCsv csv(Path file) {
    return new RouteCsv(new DiskFiles(Path.of("")), Disk.name(file));
  }
}
