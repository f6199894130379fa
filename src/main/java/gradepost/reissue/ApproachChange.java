package gradepost.reissue;

import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
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
    /** Where the brake goes on, what set that place, and what the driver goes by there. */
    BRAKING_POINT,
    /** Where power is taken off. */
    SHUT_OFF,
    /** The speed at the braking point, or with which a lower speed is met without a brake. */
    ENTRY_SPEED,
    /** The main application. */
    PRESSURE,
    /** Where the brake goes on from another speed. */
    BY_SPEED,
    /** The last places of the brakes, or what happens when one fails. */
    FALLBACK,
    /** Another action, or one elsewhere. */
    ACTIONS,
    /** What the driver must know besides. */
    FINDINGS,
    /** Where runs end that the driver corrects. */
    SPREAD,
    /** The same run to another mark, board or permissible speed, or over another stretch. */
    TARGET;

    /** What differs between two sheets. */
    static Set<Aspect> between(InstructionSheet before, InstructionSheet after) {
      Set<Aspect> out = EnumSet.noneOf(Aspect.class);
      for (Aspect aspect : values()) {
        if (!aspect.of(before).equals(aspect.of(after))) {
          out.add(aspect);
        }
      }
      return out;
    }

    private List<Object> of(InstructionSheet sheet) {
      return switch (this) {
        case BRAKING_POINT -> each(sheet, a -> List.of(a.line(), a.point(), a.setBy(), a.cues()));
        case SHUT_OFF -> List.of(sheet.shutOff());
        case ENTRY_SPEED ->
            List.of(sheet.speed(), sheet.passing(), each(sheet, PrintedApplication::speed));
        case PRESSURE -> each(sheet, a -> a.cases().get(0).point().map(p -> p.technique()));
        case BY_SPEED -> each(sheet, PrintedApplication::bySpeed);
        case FALLBACK ->
            List.of(
                each(
                    sheet,
                    a ->
                        List.of(
                            a.forSpeed(),
                            a.cases(),
                            a.poorest(),
                            a.site(),
                            a.stepAnswer(),
                            a.atBuffers())),
                sheet.faster());
        case ACTIONS -> List.of(sheet.steps());
        case FINDINGS -> List.of(sheet.findings());
        case SPREAD -> List.of(sheet.spread());
        case TARGET -> List.of(sheet.target(), sheet.from());
      };
    }

    private static List<Object> each(
        InstructionSheet sheet, Function<PrintedApplication, Object> part) {
      return sheet.applications().stream().map(part).toList();
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
