package gradepost.route.audit;

import gradepost.units.Length;

/**
 * How much cant, cant deficiency and cant excess an operator allows; a curve beyond them is found
 * by the audit.
 *
 * @param cant most cant away from platforms
 * @param cantAtPlatform most cant beside a platform
 * @param deficiency most by which the cant may fall short of equilibrium at the highest permissible
 *     speed
 * @param excess most by which it may be above equilibrium at the lowest permissible speed
 */
public record CantLimits(Length cant, Length cantAtPlatform, Length deficiency, Length excess) {
  /**
   * British design practice: cant 150 mm, 110 mm at platforms, deficiency 110 mm on welded track
   * (read in a secondary source); excess 110 mm (from memory).
   */
  public static final CantLimits USUAL =
      new CantLimits(new Length(0.150), new Length(0.110), new Length(0.110), new Length(0.110));
}
