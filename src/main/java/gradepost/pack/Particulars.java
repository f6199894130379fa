package gradepost.pack;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * What a notice says beside the restriction itself; none of it changes how a train is driven. Texts
 * that the notice does not give are empty.
 *
 * @param route the name of the route that the notice is for; empty means the one it is read with
 * @param between the stations between which it lies, in words
 * @param nearFrom the name of a feature of the route near where it begins
 * @param nearTo the name of a feature of the route near where it ends
 * @param aws what is done with the warning equipment of the track, in words
 * @param issued when the notice was issued
 * @param firstAppearance the issue of the notice in which it stood first
 * @param lastAppearance the issue in which it stands last
 */
public record Particulars(
    String route,
    String between,
    String nearFrom,
    String nearTo,
    String aws,
    Optional<LocalDateTime> issued,
    String firstAppearance,
    String lastAppearance) {
  public static final Particulars NONE =
      new Particulars("", "", "", "", "", Optional.empty(), "", "");
}
