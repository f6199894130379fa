package gradepost.briefing.question;

import gradepost.policy.Subject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Questions of the kind "which of these": of things with names a few have something that the others
 * have not. Whoever does not know the road cannot tell them apart.
 */
final class WhichOf {
  /** One thing alone would be the answer on every paper. */
  private static final int SEVERAL = 2;

  /**
   * A thing.
   *
   * @param atM where it is, distance run
   * @param has whether it has what is asked for
   */
  record Thing(String name, double atM, boolean has, Item.Reference taught) {}

  /**
   * A question of each thing that has it, among those that have not; where more have it than not,
   * the other way about.
   *
   * @param has which of these has it
   * @param hasNot which has it not, where that can be asked
   */
  static List<Item> items(
      Subject subject, List<Thing> things, String has, Optional<String> hasNot) {
    List<Thing> named =
        things.stream()
            .filter(t -> things.stream().filter(o -> o.name().equals(t.name())).count() == 1)
            .toList();
    List<Thing> with = named.stream().filter(Thing::has).toList();
    List<Thing> without = named.stream().filter(t -> !t.has()).toList();
    if (with.size() <= without.size()) {
      return items(subject, with, without, has);
    }
    return hasNot.map(ask -> items(subject, without, with, ask)).orElse(List.of());
  }

  private static List<Item> items(
      Subject subject, List<Thing> right, List<Thing> wrong, String ask) {
    List<Item> out = new ArrayList<>();
    if (wrong.size() < Distractors.WRONG || right.size() < SEVERAL) {
      return out;
    }
    for (Thing thing : right) {
      List<String> near =
          wrong.stream()
              .sorted(Comparator.comparingDouble(w -> Math.abs(w.atM() - thing.atM())))
              .map(Thing::name)
              .toList();
      out.add(
          new Item(subject, thing.name(), thing.atM(), ask, thing.name(), near, thing.taught()));
    }
    return out;
  }

  private WhichOf() {}
}
