package gradepost.app.ride;

import gradepost.app.issue.Layout;
import gradepost.app.issue.LayoutPool;
import gradepost.app.issue.Task;
import gradepost.app.store.Answer;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.FailOn;
import gradepost.app.store.IoErrorText;
import gradepost.policy.SignOffRules;
import gradepost.ride.RideResult;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.source.ride.RideFile;
import gradepost.source.ride.RideHeading;
import gradepost.text.Mistake;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Lays driven runs against the plan of a pack and prints what comes of them. */
public final class AssessRide {
  private final Optional<Path> templates;
  private final RideDetails details;

  /** For one ride, or for those of a class. */
  public AssessRide(Optional<Path> templates, RideDetails details) {
    this.templates = templates;
    this.details = details;
  }

  /**
   * Lays a driven run against the plan of a pack and writes the report of it.
   *
   * @param ride a file, or a folder of them: then what their drivers have in common is written too
   */
  public Answer of(Path ride, Path pack, Path out) {
    try (LayoutPool layouts = new LayoutPool(templates)) {
      Layout.requireFit(templates);
      Sources sources = Disk.sources();
      Optional<RideFile> file =
          Files.isDirectory(ride)
              ? Optional.empty()
              : Optional.of(sources.rideFile(Disk.name(ride)));
      Problems unreadable = file.map(RideFile::unreadable).orElse(Problems.NONE);
      if (unreadable.hasErrors()) {
        return Answer.of(unreadable);
      }
      Reading<PackFile> reading = sources.pack(Disk.name(pack));
      Answer answer = Answer.of(reading.problems(), FailOn.ERRORS);
      if (reading.found().isEmpty()) {
        return answer;
      }
      PackFile found = reading.found().get();
      Optional<SignOffRules> rules = found.policy().signOff();
      if (rules.isEmpty()) {
        return answer.and(refused(pack, RideText.NO_RIDE_RULES));
      }
      List<Task> courses = Task.of(found).stream().filter(t -> t.assignment().ordinary()).toList();
      Layout layout = layouts.first();
      if (file.isEmpty()) {
        return answer.and(
            new RideClass(pack, found, courses, rules.get(), layout, details)
                .of(ride, sources, new Delivery(out)));
      }
      RideHeading heading = file.get().heading();
      List<Task> tasks = courses.stream().filter(t -> isAsked(t, heading)).toList();
      RideDetails own = details.by(heading);
      if (tasks.size() != 1) {
        return answer.and(refused(pack, choose(found, tasks.isEmpty())));
      }
      RideOf rides = new RideOf(ride, found, tasks.get(0), courses, rules.get(), layout);
      RideOf.Judged judged = rides.judge(ride, file.get(), own, sources);
      answer = answer.and(judged.answer());
      if (judged.result().isEmpty()) {
        return answer;
      }
      RideResult result = judged.result().get();
      return answer
          .and(Answer.said(said(result)))
          .and(
              Answer.wrote(new Delivery(out).put(RidePapers.of(rides, ride, own, result, layout))));
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  /** What is not asked for is what the file says of itself. */
  private boolean isAsked(Task task, RideHeading heading) {
    Optional<String> direction = details.direction().or(() -> heading.value("direction"));
    Optional<String> formation = details.formation().or(() -> heading.value("formation"));
    return direction.filter(d -> !d.equals(direction(task))).isEmpty()
        && formation.filter(f -> !f.equals(formation(task))).isEmpty();
  }

  /** A refusal that names the file. */
  static Answer refused(Path file, Mistake mistake) {
    return Answer.refused(
        file
            + ": error: "
            + mistake.what()
            + (mistake.allowed().isEmpty() ? "" : "; allowed: " + mistake.allowed())
            + (mistake.maybe().isEmpty() ? "" : "\n  Maybe " + mistake.maybe()));
  }

  /** The outcome in a line. */
  static String said(RideResult result) {
    return "%s: %d of %d points observed, %d possible"
        .formatted(outcome(result), result.points(), result.observed(), result.possible());
  }

  /** The outcome in a few words. */
  static String outcome(RideResult result) {
    return switch (result.outcome()) {
      case PASSED -> "passed";
      case BELOW_THE_SCORE, FAILED_BY_FAULT -> "not passed";
      case NO_RESULT -> "no result: too little was observed";
    };
  }

  static Mistake choose(PackFile value, boolean none) {
    List<String> directions =
        value.directions().stream().map(d -> value.route().nameOf(d.direction())).toList();
    List<String> formations = value.formations().stream().map(f -> f.name()).toList();
    return none
        ? RideText.NO_SUCH_COURSE.with(directions, formations)
        : RideText.SEVERAL_COURSES.with(directions, formations);
  }

  static String direction(Task task) {
    return task.assignment().route().nameOf(task.assignment().direction());
  }

  static String formation(Task task) {
    return task.assignment().formation().name();
  }
}
