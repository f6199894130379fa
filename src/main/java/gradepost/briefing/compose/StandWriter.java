package gradepost.briefing.compose;

import gradepost.briefing.StandsChart;
import gradepost.drive.Assignment;
import gradepost.drive.Call;
import gradepost.drive.Plan;
import gradepost.drive.Target;
import gradepost.route.Platform;
import gradepost.route.StopMark;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** Where the formation stands at each platform that it is booked to call at. */
final class StandWriter {
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
    double from = words.path().metresAt(platform.extent().from());
    double to = words.path().metresAt(platform.extent().to());
    double start = Math.min(from, to);
    double end = Math.max(from, to);
    List<StopMark> marks =
        platform.stopMarks().stream()
            .filter(m -> m.direction() == assignment.direction())
            .sorted(Comparator.comparingInt(StopMark::cars))
            .toList();
    List<StopMark> own =
        marks.stream().filter(m -> m.cars() == assignment.formation().cars()).toList();
    double front = own.isEmpty() ? end : words.path().metresAt(own.get(0).location());
    String at =
        own.isEmpty()
            ? words.text("stands.no-mark", words.place(end))
            : words.text("stands.mark", own.get(0).cars(), words.place(front));
    return new StandsChart.Stand(
        words.text("approach.stop", call.station().name(), platform.number()),
        at,
        room(start, end, front, buffersM(call)),
        end - start < lengthM || front > end + 0.5 || front - lengthM < start - 0.5,
        start - front,
        end - front,
        marks.stream()
            .map(
                m ->
                    new StandsChart.Mark(
                        Integer.toString(m.cars()),
                        words.path().metresAt(m.location()) - front,
                        own.contains(m)))
            .toList(),
        buffersM(call).stream().map(b -> b - front).toList());
  }

  /** As the plan has them: only those that this train comes up to. */
  private List<Double> buffersM(Call call) {
    return plan.approaches().stream()
        .map(a -> a.target())
        .filter(t -> t instanceof Target.Stop stop && stop.call().equals(call))
        .flatMap(t -> ((Target.Stop) t).buffersM().stream())
        .toList();
  }

  private String room(double start, double end, double front, List<Double> buffersM) {
    double rear = front - lengthM;
    String ahead =
        buffersM.isEmpty()
            ? words.text(
                front > end + 0.5 ? "stands.front-past" : "stands.front",
                front > end + 0.5 ? words.overrun(front - end) : words.room(end - front))
            : words.text("stands.buffers", words.room(buffersM.get(0) - front));
    String behind =
        rear < start - 0.5
            ? words.text("stands.rear-off", words.overrun(start - rear))
            : words.text("stands.rear", words.room(rear - start));
    return words.text("stands.room", ahead, behind);
  }
}
