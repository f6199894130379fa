package gradepost.app;

import gradepost.app.issue.Issue;
import gradepost.app.issue.Layout;
import gradepost.app.issue.Task;
import gradepost.app.store.Answer;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.briefing.Briefing;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.signoff.Course;
import gradepost.briefing.signoff.Papers;
import gradepost.briefing.signoff.RideReport;
import gradepost.plan.Plan;
import gradepost.policy.SignOffRules;
import gradepost.ride.Ride;
import gradepost.ride.RideJudge;
import gradepost.ride.RideResult;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Lays a driven run against the plan and prints the report: read, plan, score, compose, put. */
public final class AssessRide {
  private final Optional<Path> templates;
  private final Optional<LocalDate> on;

  /**
   * @param on the day of the ride
   */
  public AssessRide(Optional<Path> templates, Optional<LocalDate> on) {
    this.templates = templates;
    this.on = on;
  }

  /**
   * Lays a driven run against the plan of a pack and writes the report of it.
   *
   * @param direction by the route's own name; may be left out where the pack has one
   * @param formation likewise
   */
  public Answer of(
      Path ride, Path pack, Optional<String> direction, Optional<String> formation, Path out) {
    try {
      Sources sources = Disk.sources();
      Reading<PackFile> reading = sources.pack(Disk.name(pack));
      Answer answer = Answer.of(reading.problems());
      if (reading.found().isEmpty()) {
        return answer;
      }
      PackFile found = reading.found().get();
      List<Task> tasks =
          Task.of(pack, found).stream()
              .filter(t -> t.assignment().degraded().isEmpty())
              .filter(t -> direction.isEmpty() || direction.get().equals(direction(t)))
              .filter(t -> formation.isEmpty() || formation.get().equals(formation(t)))
              .toList();
      Optional<SignOffRules> rules = found.policy().signOff();
      if (rules.isEmpty()) {
        return answer.and(
            Answer.refused(
                pack
                    + ": error: the policy has no rules for a ride; allowed: a policy with the"
                    + " group sign-off"));
      } else if (tasks.size() != 1) {
        return answer.and(Answer.refused(choose(pack, found, tasks.isEmpty())));
      }
      return answer.and(assess(ride, found, tasks.get(0), rules.get(), sources, new Delivery(out)));
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  private Answer assess(
      Path file, PackFile pack, Task task, SignOffRules rules, Sources sources, Delivery delivery)
      throws IOException {
    Plan plan = task.plan(file);
    Reading<Ride> reading = sources.ride(Disk.name(file), plan);
    Answer answer = Answer.of(reading.problems());
    if (reading.found().isEmpty()) {
      return answer;
    }
    Ride ride = reading.found().get();
    RideResult result = new RideJudge(plan, rules.ride()).judge(ride);
    Layout layout = new Layout(templates);
    Briefing briefing =
        new Composer(layout.messages())
            .compose(task.title(), List.of(plan), Issue.of(pack, task.assignment()), List.of());
    Course course = new Course(new BriefingFacts(plan, layout.messages()), briefing, rules);
    String name = String.valueOf(file.getFileName());
    Papers report = new RideReport(course).of(ride, result, name, on);
    String stem = name.replaceFirst("\\.[A-Za-z]{1,4}$", "") + "-report";
    return answer
        .and(Answer.said(said(result)))
        .and(Answer.wrote(delivery.put(layout.papers(stem, report))));
  }

  private static String said(RideResult result) {
    String outcome =
        switch (result.outcome()) {
          case PASSED -> "passed";
          case BELOW_THE_SCORE, FAILED_BY_FAULT -> "not passed";
          case NO_RESULT -> "no result: too little was observed";
        };
    return "%s: %d of %d points observed, %d possible"
        .formatted(outcome, result.points(), result.observed(), result.possible());
  }

  private static String choose(Path pack, PackFile value, boolean none) {
    return "%s: error: %s; allowed: --direction %s, --formation %s"
        .formatted(
            pack,
            none
                ? "the pack has no such direction or formation"
                : "the pack has more than one direction or formation",
            value.directions().stream()
                .map(d -> value.route().nameOf(d.direction()))
                .collect(Collectors.joining(" or ")),
            value.formations().stream().map(f -> f.name()).collect(Collectors.joining(" or ")));
  }

  private static String direction(Task task) {
    return task.assignment().route().nameOf(task.assignment().direction());
  }

  private static String formation(Task task) {
    return task.assignment().formation().name();
  }
}
