package gradepost.app.issue;

import gradepost.reissue.register.Entry;
import gradepost.source.file.FileNames;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.util.Optional;

/** Two packs with the same id, of two lines: the one may not go on from issues of the other. */
public final class OtherLine {

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
            ("%s: error: %s is an issue of “%s”, and this pack is of “%s”: nothing is issued;"
                    + " that issue was made from a file %s\n"
                    + "  Maybe give this pack its own name by a line “id: %s”; or, if the route was"
                    + " renamed: reissue --confirm \"%s\"")
                .formatted(
                    file,
                    issue.name(),
                    other,
                    own,
                    issue.inputs().get(0).name(),
                    FileNames.asName(own),
                    own));
  }

  private OtherLine() {}
}
