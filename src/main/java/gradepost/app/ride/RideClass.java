package gradepost.app.ride;

import gradepost.app.issue.Layout;
import gradepost.app.issue.Task;
import gradepost.app.store.Answer;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.Paper;
import gradepost.briefing.signoff.ClassReport;
import gradepost.policy.SignOffRules;
import gradepost.ride.RideResult;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.source.ride.RideFile;
import gradepost.source.ride.RideHeading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The rides of a class: what a folder holds. The lines above the headings of each file say who
 * drove, in which direction and with what; where they do not, it is what is asked for.
 */
final class RideClass {
  private static final String NAME = "ride-class";

  private final Path pack;
  private final PackFile found;
  private final List<Task> courses;
  private final SignOffRules rules;
  private final Layout layout;
  private final RideDetails details;
  private final Map<Task, RideOf> byCourse = new HashMap<>();

  RideClass(
      Path pack,
      PackFile found,
      List<Task> courses,
      SignOffRules rules,
      Layout layout,
      RideDetails details) {
    this.pack = pack;
    this.found = found;
    this.courses = courses;
    this.rules = rules;
    this.layout = layout;
    this.details = details;
  }

  /** Judges all of them; those that cannot be are told, and the rest is written. */
  Answer of(Path folder, Sources sources, Delivery delivery) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.list(folder)) {
      files =
          all.filter(f -> f.toString().toLowerCase(Locale.ROOT).endsWith(".csv")).sorted().toList();
    }
    Answer answer = Answer.wrote(List.of());
    List<Paper> papers = new ArrayList<>();
    List<ClassReport.Driven> driven = new ArrayList<>();
    for (Path file : files) {
      RideFile ride = sources.rideFile(Disk.name(file));
      RideHeading heading = ride.heading();
      List<Task> tasks = courses.stream().filter(t -> isOf(t, heading)).toList();
      if (tasks.size() != 1) {
        answer = answer.and(AssessRide.refused(file, AssessRide.choose(found, tasks.isEmpty())));
        continue;
      }
      RideOf rides = rides(tasks.get(0));
      RideDetails own = details.by(heading);
      RideOf.Judged judged = rides.judge(file, ride, own, sources);
      answer = answer.and(judged.answer());
      if (judged.result().isPresent()) {
        RideResult result = judged.result().get();
        String name = String.valueOf(file.getFileName());
        answer = answer.and(Answer.said(name + ": " + AssessRide.said(result)));
        papers.addAll(RidePapers.of(rides, file, own, result, layout));
        driven.add(
            new ClassReport.Driven(
                rides.course(), own.driver().orElse(""), name, AssessRide.outcome(result), result));
      }
    }
    if (driven.isEmpty()) {
      return answer.and(AssessRide.refused(folder, RideText.NO_RIDES));
    }
    papers.addAll(layout.papers(NAME, ClassReport.of(driven)));
    return answer.and(Answer.wrote(delivery.put(papers)));
  }

  private boolean isOf(Task task, RideHeading heading) {
    Optional<String> direction = heading.value("direction").or(details::direction);
    Optional<String> formation = heading.value("formation").or(details::formation);
    return direction.filter(d -> !d.equals(AssessRide.direction(task))).isEmpty()
        && formation.filter(f -> !f.equals(AssessRide.formation(task))).isEmpty();
  }

  private RideOf rides(Task task) throws IOException {
    RideOf rides = byCourse.get(task);
    if (rides == null) {
      rides = new RideOf(pack, found, task, courses, rules, layout);
      byCourse.put(task, rides);
    }
    return rides;
  }
}
