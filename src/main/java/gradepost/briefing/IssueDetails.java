package gradepost.briefing;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * What the cover says of the issue. Texts that are not known are empty and printed as not supplied.
 *
 * @param number as printed; amendments may be "3A"
 * @param knownUpTo until when information was taken in
 * @param checkedBy empty where nobody has yet: printed as a line to sign
 * @param copy number of this copy, where copies are counted
 * @param sources the records that the data was taken from
 * @param fingerprint of the canonical inputs, hexadecimal; the same inputs give the same one
 * @param highRisk what the depot wants to be said before all else
 */
public record IssueDetails(
    String number,
    LocalDateTime issued,
    LocalDateTime validFrom,
    LocalDateTime validTo,
    Optional<String> supersedes,
    Optional<LocalDateTime> knownUpTo,
    String preparedBy,
    String checkedBy,
    String copy,
    String holder,
    List<String> sources,
    String fingerprint,
    List<String> highRisk) {

  public IssueDetails {
    sources = List.copyOf(sources);
    highRisk = List.copyOf(highRisk);
    if (validTo.isBefore(validFrom)) {
      throw new IllegalArgumentException("an issue is valid until after it begins to be");
    }
  }
}
