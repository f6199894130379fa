package gradepost.briefing.signoff;

import gradepost.briefing.signoff.Sheet.Block;
import gradepost.briefing.signoff.Sheet.Grid;
import gradepost.briefing.signoff.Sheet.Heading;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.ride.RideResult;
import gradepost.ride.RideResult.Aspect;
import gradepost.ride.RideResult.OfApproach;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The rides of a class together: by driver, and by approach, the hardest first. */
public final class ClassReport {
  /**
   * A ride of it.
   *
   * @param driver empty where it is not known
   * @param file what it was read from
   * @param outcome in a few words
   */
  public record Driven(
      Course course, String driver, String file, String outcome, RideResult result) {}

  /** An approach over all rides of its course. */
  private static final class Approached {
    final String course;
    final String name;
    int rides;
    int lost;
    final Map<Aspect, Integer> byAspect = new LinkedHashMap<>();

    Approached(String course, String name) {
      this.course = course;
      this.name = name;
    }

    void add(OfApproach a) {
      rides++;
      boolean any = false;
      for (Aspect aspect : Aspect.values()) {
        if (a.outside(aspect)) {
          byAspect.merge(aspect, 1, Integer::sum);
          any = true;
        }
      }
      lost += any ? 1 : 0;
    }

    double share() {
      return rides == 0 ? 0 : lost / (double) rides;
    }
  }

  /**
   * The report.
   *
   * @param rides one at least
   */
  public static Papers of(List<Driven> rides) {
    Course first = rides.get(0).course();
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading(first.text("signoff.class.rides")));
    blocks.add(new Grid(first.table("class-rides", drivers(rides)), false));
    blocks.add(new Heading(first.text("signoff.class.approaches")));
    blocks.add(new Words(first.text("signoff.class.says")));
    blocks.add(new Grid(first.table("class-approaches", approaches(rides)), false));
    return first.papers(
        "signoff.class.kind",
        List.of(),
        List.of(new Sheet("so-class", first.text("signoff.class.title"), blocks)));
  }

  private static List<List<String>> drivers(List<Driven> rides) {
    List<List<String>> rows = new ArrayList<>();
    rides.stream()
        .sorted(Comparator.comparing(Driven::driver))
        .forEach(
            r ->
                rows.add(
                    List.of(
                        r.driver().isEmpty() ? r.course().text("dash") : r.driver(),
                        r.file(),
                        name(r.course()),
                        Integer.toString(r.result().points()),
                        Integer.toString(r.result().observed()),
                        r.outcome())));
    return rows;
  }

  private static List<List<String>> approaches(List<Driven> rides) {
    Map<String, Approached> all = new LinkedHashMap<>();
    for (Driven ride : rides) {
      for (OfApproach a : ride.result().approaches()) {
        if (a.marks().stream().anyMatch(m -> m.good().isPresent())) {
          String course = name(ride.course());
          String name = ride.course().taught().title(a.approach());
          all.computeIfAbsent(course + "\n" + name, k -> new Approached(course, name)).add(a);
        }
      }
    }
    List<List<String>> rows = new ArrayList<>();
    all.values().stream()
        .filter(a -> a.lost > 0)
        .sorted(Comparator.comparingDouble(Approached::share).reversed())
        .forEach(a -> rows.add(row(a, rides.get(0).course())));
    return rows;
  }

  private static List<String> row(Approached a, Course course) {
    List<String> row =
        new ArrayList<>(
            List.of(a.course, a.name, Integer.toString(a.rides), Integer.toString(a.lost)));
    for (Aspect aspect : Aspect.values()) {
      Integer count = a.byAspect.get(aspect);
      row.add(count == null ? course.text("dash") : count.toString());
    }
    return row;
  }

  private static String name(Course course) {
    return course.direction() + ", " + course.taught().assignment().formation().name();
  }

  private ClassReport() {}
}
