package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.drive.grid.GuideChange;
import gradepost.drive.leg.LegChooser.Way;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Goes from a way of driving a leg to better ones near by, as long as there are any. A change is
 * looked at only along the stretch where it makes a difference; those that lie apart are made
 * together. What comes of them is worked out as a whole before it is taken.
 */
final class LegImprover {
  private final LegChooser chooser;
  private final PlannerSettings settings;
  private final double unitMps;
  private final double allowedS;

  /** By the change: it is the same as long as the way has not changed where it plays. */
  private final Map<GuideChange, ChangeEffect> known = new HashMap<>();

  /** So much road was looked at in search of a better way, with all changes taken together, m. */
  private double lookedM;

  /**
   * @param unitMps one unit of speed, as printed
   * @param allowedS the time that the leg may take
   */
  LegImprover(LegChooser chooser, PlannerSettings settings, double unitMps, double allowedS) {
    this.chooser = chooser;
    this.settings = settings;
    this.unitMps = unitMps;
    this.allowedS = allowedS;
  }

  /** The best way that is found from this one. */
  Way improved(Way from) {
    known.clear();
    lookedM = 0;
    double mostM =
        settings.choice().looksM() + settings.choice().looksAgain() * from.leg().lengthM();
    Way best = from;
    for (int round = 0; round < settings.choice().rounds(); round++) {
      Way better = next(best);
      boolean hardly =
          better.equals(best)
              || (best.stands()
                  && better.idle() == best.idle()
                  && best.timeS() <= allowedS
                  && better.dear() > best.dear() - settings.choice().leastGain());
      best = better;
      if (hardly || lookedM > mostM) {
        return best;
      }
    }
    return best;
  }

  private Way next(Way base) {
    ChangeSets choice =
        new ChangeSets(
            base.rerun().energyJ(), base.practice().power().movement(), allowedS - base.timeS());
    List<List<ChangeEffect>> sets = choice.of(effects(base));
    Way best = base;
    List<ChangeEffect> done = List.of();
    for (List<ChangeEffect> set : sets.stream().filter(s -> !s.isEmpty()).toList()) {
      Way way = made(base, set);
      if (best(best, List.of(way), allowedS).equals(way)) {
        best = way;
        done = set;
      }
    }
    List<ChangeEffect> first = sets.get(0);
    for (int i = 0;
        i < settings.choice().alone() && i < first.size() && first.size() > 1 && best.equals(base);
        i++) {
      done = List.of(first.get(i));
      best = best(base, List.of(made(base, done)), allowedS);
    }
    if (best.equals(base)) {
      known.clear();
      return best(base, coasting(base), allowedS);
    }
    List<ChangeEffect> changed = done;
    known.values().removeIf(e -> !changed.stream().allMatch(e::apartFrom));
    return best;
  }

  /** Power comes off sooner or later before every braking. */
  private List<Way> coasting(Way base) {
    List<Way> ways = new ArrayList<>();
    double longerS = settings.choice().longerCoastS();
    for (double by : new double[] {-longerS, longerS}) {
      DrivingStrategy manner = base.manner().coasting(base.manner().coastS() + by);
      if (manner.coastS() != base.manner().coastS()) {
        ways.add(chooser.way(manner, base));
      }
    }
    return ways;
  }

  private Way made(Way base, List<ChangeEffect> effects) {
    List<GuideChange> changes = effects.stream().map(ChangeEffect::change).toList();
    return chooser.way(base.manner().by(base.manner().guide().with(changes)), base);
  }

  private List<ChangeEffect> effects(Way base) {
    List<GuideChange> changes = base.manner().guide().changes(unitMps, settings.grid().nearM());
    changes.stream().filter(c -> !known.containsKey(c)).toList().parallelStream()
        .map(change -> chooser.effect(base, change))
        .toList()
        .forEach(this::looked);
    return changes.stream().flatMap(c -> Stream.ofNullable(known.get(c))).toList();
  }

  private void looked(ChangeEffect effect) {
    known.put(effect.change(), effect);
    lookedM += effect.toM() - effect.fromM();
  }

  /** Within the time that is allowed before all else; where none is, the quickest. */
  static Way best(Way first, List<Way> others, double allowedS) {
    Way best = first;
    for (Way way : others) {
      boolean inTime = way.timeS() <= allowedS;
      boolean was = best.stands() && best.timeS() <= allowedS;
      boolean better =
          inTime == was ? inTime ? way.betterThan(best) : way.timeS() < best.timeS() : inTime;
      best = way.stands() && better ? way : best;
    }
    return best;
  }
}
