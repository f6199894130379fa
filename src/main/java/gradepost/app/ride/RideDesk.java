package gradepost.app.ride;

import gradepost.app.issue.Task;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.Paper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** A ride that was handed in, not a file: its reports are given, and nothing stays on the disk. */
public final class RideDesk {

  /**
   * What was handed in.
   *
   * @param name of the export or the form, as whoever handed it in calls it
   * @param ride its bytes
   * @param form the assessor's form beside an export; empty where there is none
   */
  @SuppressWarnings("ArrayRecordComponent") // handed on once, to be read; never compared
  public record Handed(String name, byte[] ride, Optional<byte[]> form) {}

  /**
   * What is known of it beside what it says itself; empty texts where nothing is.
   *
   * @param on the day
   * @param from where the run begins in the export, by its own clock
   * @param to where it ends
   */
  public record Told(
      Optional<LocalDate> on, String driver, String assessor, String from, String to) {}

  /**
   * What came of it.
   *
   * @param papers report and debrief; none where it was refused
   */
  public record Assessed(Answer answer, List<Paper> papers) {
    /** Copies the list. */
    public Assessed {
      papers = List.copyOf(papers);
    }
  }

  /**
   * Lays a ride against the paper of a pack whose files are called so.
   *
   * @param stem of that paper; empty text where the ride says its direction and formation itself
   */
  public Assessed of(Path pack, String stem, Handed handed, Told told) throws IOException {
    Optional<Task> task =
        Disk.sources().pack(Disk.name(pack)).found().stream()
            .map(Task::of)
            .flatMap(List::stream)
            .filter(t -> t.stem().equals(stem))
            .findFirst();
    Path work = Files.createTempDirectory("ride");
    try {
      Path ride = work.resolve(plain(handed.name()));
      Files.write(ride, handed.ride());
      Optional<Path> form = Optional.empty();
      if (handed.form().isPresent()) {
        Path beside = Files.createDirectory(work.resolve("beside")).resolve("form.csv");
        Files.write(beside, handed.form().get());
        form = Optional.of(beside);
      }
      RideDetails details =
          new RideDetails(
              task.map(AssessRide::direction),
              task.map(AssessRide::formation),
              told.on(),
              said(told.driver()),
              said(told.assessor()),
              said(told.from()),
              said(told.to()),
              Map.of(),
              form,
              false);
      Path out = work.resolve("out");
      Answer answer = new AssessRide(Optional.empty(), details).of(ride, pack, out);
      List<Paper> papers = new ArrayList<>();
      for (Path file : answer.written()) {
        papers.add(new Paper(String.valueOf(file.getFileName()), Files.readAllBytes(file)));
      }
      return new Assessed(named(answer, work), papers);
    } finally {
      clear(work);
    }
  }

  private static Optional<String> said(String text) {
    return Optional.of(text.strip()).filter(t -> !t.isEmpty());
  }

  /** A name that means nothing to a file system. */
  private static String plain(String name) {
    String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    String letters = last.replaceAll("[^\\p{L}\\p{N} ._-]", "_").replaceFirst("^[. ]+", "");
    String cut = letters.length() > 60 ? letters.substring(letters.length() - 60) : letters;
    return cut.isEmpty() ? "ride.csv" : cut;
  }

  /** It has no place that anybody knows: it is called by its name alone. */
  private static Answer named(Answer answer, Path work) {
    String folder = Disk.name(work) + "/";
    return new Answer(
        answer.said().stream().map(line -> line.replace(folder, "")).toList(),
        List.of(),
        answer.problems().stream().map(line -> line.replace(folder, "")).toList(),
        answer.good());
  }

  private static void clear(Path work) throws IOException {
    try (Stream<Path> all = Files.walk(work)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(each);
      }
    } catch (UncheckedIOException e) {
      throw Optional.ofNullable(e.getCause()).orElseThrow(() -> e);
    }
  }
}
