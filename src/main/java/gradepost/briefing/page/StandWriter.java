package gradepost.briefing.page;

import gradepost.briefing.chart.StandsChart;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.route.station.Platform;
import gradepost.route.station.StopMark;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Where the formation stands at each platform that it is booked to call at. */
final class StandWriter {
  /** Nobody on a platform sees less. */
  private static final double NEAR_M = 0.5;

  private final Plan plan;
  private final Assignment assignment;
  private final Words words;
  private final double lengthM;

  StandWriter(Plan plan, Words words) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.words = words;
    this.lengthM = assignment.formation().lengthM();
  }

  StandsChart chart(String part) {
    List<StandsChart.Stand> stands = new ArrayList<>();
    for (Call call : assignment.calls()) {
      stands.add(stand(call));
    }
    String name = words.text("chart.stands", assignment.formation().name());
    String says =
        stands.stream()
            .map(s -> words.text("chart.stands.one", s.station(), s.at(), s.room()))
            .collect(Collectors.joining(" "));
    return new StandsChart(
        part + "-stands",
        name,
        says,
        assignment.formation().vehicles().stream().map(v -> v.length().metres()).toList(),
        stands);
  }

  private StandsChart.Stand stand(Call call) {
    Platform platform = call.platform();
    double start = Stops.platformStartM(assignment.path(), platform);
    double end = Stops.platformEndM(assignment.path(), platform);
    double front = Stops.markM(assignment, call);
    double rear = front - lengthM;
    List<Double> buffersM = buffersM(call);
    String at =
        Stops.mark(assignment, platform)
            .map(m -> words.text("stands.mark", m.cars(), words.place(front)))
            .orElseGet(() -> words.text("stands.no-mark", words.place(end)));
    boolean past = front > end + NEAR_M;
    boolean off = rear < start - NEAR_M;
    String ahead =
        !buffersM.isEmpty()
            ? words.text("stands.buffers", words.room(buffersM.get(0) - front))
            : past
                ? words.text("stands.front-past", words.overrun(front - end))
                : words.text("stands.front", words.room(end - front));
    String behind =
        off
            ? words.text("stands.rear-off", words.overrun(start - rear))
            : words.text("stands.rear", words.room(rear - start));
    return new StandsChart.Stand(
        words.text("approach.stop", call.station().name(), platform.number()),
        at,
        words.text("stands.room", ahead, behind),
        end - start < lengthM || past || off,
        start - front,
        end - front,
        Stops.marks(assignment, platform).stream().map(m -> mark(m, front)).toList(),
        buffersM.stream().map(b -> b - front).toList());
  }

  private StandsChart.Mark mark(StopMark mark, double front) {
    return new StandsChart.Mark(
        Integer.toString(mark.cars()),
        assignment.path().metresAt(mark.location()) - front,
        mark.cars() == assignment.formation().cars());
  }

  /** As the plan has them: only those that this train comes up to. */
  private List<Double> buffersM(Call call) {
    return plan.approaches().stream()
        .flatMap(a -> a.target().stop().stream())
        .filter(stop -> stop.call().equals(call))
        .flatMap(stop -> stop.buffersM().stream())
        .toList();
  }
}
