package gradepost.reissue;

import gradepost.told.InstructionSheet;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * An approach that is not told as it was.
 *
 * @param aspects what differs in print; empty where it was added or fell away, or has another
 *     number only
 * @param outside whether no permissible speed changed on the approach itself: the driver would not
 *     look for a change there
 * @param movedM how far the printed braking point moved, metres in the direction of travel; empty
 *     where it did not, or where there was or is none
 */
public record ApproachChange(
    Optional<InstructionSheet> before,
    Optional<InstructionSheet> after,
    Set<Aspect> aspects,
    boolean outside,
    Optional<Double> movedM) {

  /** What differs: each part of a sheet belongs to one of them. */
  public enum Aspect {
    /** Where the brake goes on, and what the driver goes by there. */
    BRAKING_POINT(
        s -> s.applications().stream().map(a -> List.of(a.line(), a.point(), a.cues())).toList()),
    /** Where power is taken off. */
    SHUT_OFF(InstructionSheet::shutOff),
    /** The speed at the braking point, or with which a lower speed is met without a brake. */
    ENTRY_SPEED(
        s ->
            List.of(
                s.speed(), s.passing(), s.applications().stream().map(a -> a.speed()).toList())),
    /** The main application. */
    PRESSURE(
        s ->
            s.applications().stream()
                .map(a -> a.cases().get(0).point().map(p -> p.technique()))
                .toList()),
    /** The last places of the brakes, or what happens when one fails. */
    FALLBACK(
        s ->
            List.of(
                s.applications().stream()
                    .map(
                        a ->
                            List.of(
                                a.forSpeed(),
                                a.cases(),
                                a.poorest(),
                                a.site(),
                                a.stepAnswer(),
                                a.atBuffers()))
                    .toList(),
                s.faster())),
    /** Another action, or one elsewhere. */
    ACTIONS(InstructionSheet::steps),
    /** What the driver must know besides. */
    FINDINGS(InstructionSheet::findings),
    /** Where runs end that nobody corrects. */
    SPREAD(InstructionSheet::spread),
    /** The same run to another mark, board or permissible speed, or over another stretch. */
    TARGET(s -> List.of(s.target(), s.from()));

    private final Function<InstructionSheet, Object> part;

    Aspect(Function<InstructionSheet, Object> part) {
      this.part = part;
    }

    /** What differs between two sheets. */
    static Set<Aspect> between(InstructionSheet before, InstructionSheet after) {
      Set<Aspect> out = EnumSet.noneOf(Aspect.class);
      for (Aspect aspect : values()) {
        if (!aspect.part.apply(before).equals(aspect.part.apply(after))) {
          out.add(aspect);
        }
      }
      return out;
    }
  }

  /** The sheet as it is now; as it was, where it fell away. */
  public InstructionSheet any() {
    return after.or(() -> before).orElseThrow();
  }

  /** Whether nothing but the number differs. */
  public boolean renumberedOnly() {
    return aspects.isEmpty() && before.isPresent() && after.isPresent();
  }
}
