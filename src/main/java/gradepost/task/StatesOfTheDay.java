package gradepost.task;

import gradepost.pack.DailyHours;
import gradepost.pack.TemporaryRestriction;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** Which of some restrictions stand at which hours of the day. */
final class StatesOfTheDay {
  /**
   * Each state in which one of them does not stand, with its hours; empty where all stand all day.
   *
   * @param all those that stand on a day, some of them by hours
   */
  static Map<List<TemporaryRestriction>, List<DailyHours>> of(List<TemporaryRestriction> all) {
    TreeSet<LocalTime> cuts = new TreeSet<>();
    all.forEach(r -> r.hours().ifPresent(h -> cuts.addAll(List.of(h.from(), h.to()))));
    Map<List<TemporaryRestriction>, List<DailyHours>> states = new LinkedHashMap<>();
    for (LocalTime from : cuts) {
      LocalTime next = cuts.higher(from);
      LocalTime to = next == null ? cuts.first() : next;
      List<TemporaryRestriction> state = all.stream().filter(r -> stands(r, from)).toList();
      if (!state.equals(all)) {
        add(states.computeIfAbsent(state, s -> new ArrayList<>()), new DailyHours(from, to));
      }
    }
    return states;
  }

  private static boolean stands(TemporaryRestriction restriction, LocalTime time) {
    return restriction.hours().map(hours -> hours.contains(time)).orElse(true);
  }

  /** Hours that meet are one; those of the night come last, and may meet the first of the day. */
  private static void add(List<DailyHours> hours, DailyHours more) {
    int last = hours.size() - 1;
    if (last >= 0 && hours.get(last).to().equals(more.from())) {
      hours.set(last, new DailyHours(hours.get(last).from(), more.to()));
    } else {
      hours.add(more);
    }
    last = hours.size() - 1;
    if (last > 0 && hours.get(last).to().equals(hours.get(0).from())) {
      hours.set(last, new DailyHours(hours.get(last).from(), hours.get(0).to()));
      hours.remove(0);
    }
  }

  private StatesOfTheDay() {}
}
