package gradepost.pack;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * The issue of a paper.
 *
 * @param supersedes the issue that it takes the place of, in words; empty for a first issue
 * @param knownUpTo until when information was taken in
 * @param checkedBy who checked the data of this very issue; empty where nobody has yet
 * @param copy number or name of the copy; empty where copies are not numbered
 * @param holder who holds the copy; empty where it is not assigned
 * @param sources what the data were taken from
 */
public record IssueDetails(
    int number,
    LocalDateTime issued,
    LocalDateTime validFrom,
    LocalDateTime validTo,
    Optional<String> supersedes,
    LocalDateTime knownUpTo,
    String preparedBy,
    Optional<String> checkedBy,
    Optional<String> copy,
    Optional<String> holder,
    List<String> sources) {
  public IssueDetails {
    sources = List.copyOf(sources);
    if (!validTo.isAfter(validFrom)) {
      throw new IllegalArgumentException("valid-to is not after valid-from");
    }
  }

  /** Who checked the data, another than who prepared them; empty where they are a draft. */
  public Optional<String> checker() {
    return checkedBy.filter(name -> !PersonName.same(name, preparedBy));
  }

  /** The same, checked by somebody; a draft where nobody is named. */
  public IssueDetails checked(Optional<String> name) {
    return new IssueDetails(
        number,
        issued,
        validFrom,
        validTo,
        supersedes,
        knownUpTo,
        preparedBy,
        name,
        copy,
        holder,
        sources);
  }

  /**
   * The details of the next issue, as {@code Amendment.issue} writes them.
   *
   * @param last number of the issue that it takes the place of
   * @param checked who checked the data of the next issue
   */
  public IssueDetails next(
      int last, LocalDateTime when, LocalDateTime valid, Optional<String> checked) {
    return new IssueDetails(
        last + 1,
        when,
        valid,
        validTo,
        Optional.of(String.valueOf(last)),
        when,
        preparedBy,
        checked,
        copy,
        holder,
        sources);
  }

  /** The same issue, of a paper that is valid for a part of the time only. */
  public IssueDetails within(LocalDateTime from, LocalDateTime to) {
    return new IssueDetails(
        number,
        issued,
        from,
        to,
        supersedes,
        knownUpTo,
        preparedBy,
        checkedBy,
        copy,
        holder,
        sources);
  }
}
