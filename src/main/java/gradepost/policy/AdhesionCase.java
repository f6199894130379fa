package gradepost.policy;

import gradepost.stock.law.AdhesionLaw;
import java.util.Optional;

/**
 * A state of the rail that every approach is computed for; {@code note} says what it stands for.
 *
 * @param sites what holds on the low-adhesion sites of the route in this state; empty where they
 *     are like the rest
 */
public record AdhesionCase(String name, AdhesionLaw law, String note, Optional<AdhesionLaw> sites) {

  /** The same rail everywhere. */
  public AdhesionCase(String name, AdhesionLaw law, String note) {
    this(name, law, note, Optional.empty());
  }

  /** The same with another law on the low-adhesion sites. */
  public AdhesionCase withSites(AdhesionLaw onSites) {
    return new AdhesionCase(name, law, note, Optional.of(onSites));
  }
}
