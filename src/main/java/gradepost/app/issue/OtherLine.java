package gradepost.app.issue;

import gradepost.reissue.register.Entry;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.util.Optional;

/** Two packs with the same id, of two lines: the one may not go on from issues of the other. */
public final class OtherLine {
  /** The line of a pack, and that of the issue which has its id. */
  record Lines(String own, String other) {}

  /**
   * Why a pack may not follow an issue that has its id, if it is of another line.
   *
   * @param last that issue, as it was registered
   */
  public static Optional<String> obstacle(Path file, PackFile found, Entry issue, PackFile last) {
    String own = found.route().name();
    String other = last.route().name();
    return own.equals(other)
        ? Optional.empty()
        : Optional.of(
            file
                + ": error: "
                + IssueText.OTHER_LINE
                    .with(issue, issue.inputs().get(0).name(), new Lines(own, other))
                    .inWords());
  }

  private OtherLine() {}
}
