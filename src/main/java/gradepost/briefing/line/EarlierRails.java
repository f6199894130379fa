package gradepost.briefing.line;

import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedPlace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Tells beside an application on which rails the brake goes on earlier, and where. */
final class EarlierRails {
  private final Plan plan;
  private final Words words;

  EarlierRails(Plan plan, Words words) {
    this.plan = plan;
    this.words = words;
  }

  /**
   * The text of the application with them, and the earliest of their places.
   *
   * @param approach the number of its sheet
   */
  String told(String text, PrintedApplication application, int approach) {
    PrintedTarget target = plan.told().sheets().get(approach - 1).target();
    double targetM = plan.approaches().get(approach - 1).target().atM();
    String planned = words.place(application.point(), target);
    List<String> rails = new ArrayList<>();
    List<PrintedPlace> places = new ArrayList<>();
    for (PrintedCase rail : application.cases()) {
      rail.point()
          .map(PrintedPoint::place)
          .filter(place -> !words.place(place, target).equals(planned))
          .ifPresent(
              place -> {
                rails.add(rail.rail());
                places.add(place);
              });
    }
    return places.stream()
        .min(Comparator.comparingDouble(place -> words.grid().metres(place, targetM)))
        .map(
            place ->
                words.text(
                    "line.other-rail",
                    text,
                    String.join(words.text("road.or"), rails),
                    words.place(place, target)))
        .orElse(text);
  }
}
