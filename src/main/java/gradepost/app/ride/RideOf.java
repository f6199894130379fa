package gradepost.app.ride;

import gradepost.app.issue.Issue;
import gradepost.app.issue.Layout;
import gradepost.app.issue.Task;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.FailOn;
import gradepost.briefing.Briefing;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.signoff.Course;
import gradepost.plan.Plan;
import gradepost.policy.SignOffRules;
import gradepost.ride.Measured;
import gradepost.ride.Ride;
import gradepost.ride.RideJudge;
import gradepost.ride.RideResult;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.source.ride.RideAsked;
import gradepost.source.ride.RideFile;
import gradepost.text.Mistake;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/** Rides of one course of a pack: each is read, judged, and put on paper. */
final class RideOf {
  private final PackFile pack;
  private final Task task;
  private final List<Task> courses;
  private final SignOffRules rules;
  private final Plan plan;

  /** Written while the ride is read. */
  private final CompletableFuture<Course> course;

  /**
   * @param file of the pack, for messages
   * @param courses all of the pack
   */
  RideOf(Path file, PackFile pack, Task task, List<Task> courses, SignOffRules rules, Layout layout)
      throws IOException {
    this.pack = pack;
    this.task = task;
    this.courses = courses;
    this.rules = rules;
    plan = task.plan(file);
    course = CompletableFuture.supplyAsync(() -> course(layout));
  }

  private Course course(Layout layout) {
    Briefing briefing =
        new Composer(layout.messages())
            .compose(task.title(), List.of(plan), Issue.of(pack, task.assignment()), List.of());
    return new Course(new BriefingFacts(plan, layout.messages()), briefing, rules);
  }

  /** A ride as it was judged; the answer alone where it cannot be. */
  record Judged(Answer answer, Optional<RideResult> result) {}

  Course course() {
    return course.join();
  }

  PackFile pack() {
    return pack;
  }

  Task task() {
    return task;
  }

  /**
   * Reads a ride and judges it.
   *
   * @param file of the ride, for messages
   */
  Judged judge(Path file, RideFile ride, RideDetails details, Sources sources) {
    Reading<Ride> reading = read(ride, details);
    Answer answer = Answer.of(reading.problems(), FailOn.ERRORS);
    Map<Integer, Measured> stops = new HashMap<>();
    if (details.form().isPresent()) {
      Reading<Ride> form = read(sources.rideFile(Disk.name(details.form().get())), details);
      answer = answer.and(Answer.of(form.problems(), FailOn.ERRORS));
      form.found().ifPresent(f -> stops.putAll(stops(f)));
    }
    if (reading.found().isEmpty() || !answer.good()) {
      return new Judged(answer, Optional.empty());
    }
    Ride found = reading.found().get();
    Optional<RideRoad> road =
        found.match(
            typed -> Optional.empty(),
            recorded -> Optional.of(new RideRoad(task, courses, rules.ride(), recorded)));
    Optional<Mistake> mistake = road.flatMap(RideRoad::mistake).or(() -> noApproach(details));
    Optional<Mistake> doubt = road.flatMap(RideRoad::doubt);
    if (doubt.isPresent()) {
      answer = answer.and(Answer.said(file + ": warning: " + doubt.get().what()));
    }
    return mistake.isPresent()
        ? new Judged(answer.and(AssessRide.refused(file, mistake.get())), Optional.empty())
        : new Judged(
            answer,
            Optional.of(new RideJudge(plan, rules.ride()).judge(found, details.leftOut(), stops)));
  }

  private Reading<Ride> read(RideFile file, RideDetails details) {
    return file.over(
        plan,
        new RideAsked(
            Integer.toString(pack.issue().number()),
            AssessRide.direction(task),
            AssessRide.formation(task),
            this::names,
            details.from(),
            details.to()));
  }

  private static Map<Integer, Measured> stops(Ride form) {
    Map<Integer, Measured> stops = new HashMap<>();
    form.match(Ride.Typed::approaches, recorded -> List.<Ride.Observed>of())
        .forEach(o -> o.stopErrorM().ifPresent(e -> stops.put(o.approach(), e)));
    return stops;
  }

  private Optional<Mistake> noApproach(RideDetails details) {
    return details.leftOut().keySet().stream()
        .filter(n -> plan.approaches().stream().noneMatch(a -> a.number() == n))
        .findFirst()
        .map(n -> RideText.NO_APPROACH.with(n, plan.approaches().size()));
  }

  List<String> names() {
    return plan.approaches().stream().map(course().taught()::title).toList();
  }
}
