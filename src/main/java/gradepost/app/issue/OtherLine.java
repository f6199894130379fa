package gradepost.app.issue;

import gradepost.app.store.PackFiles;
import gradepost.reissue.register.Entry;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.util.Optional;

/** Two packs with the same name, of two lines: the one may not go on from issues of the other. */
public final class OtherLine {

  /**
   * Why a pack may not follow an issue that has its name, if it is of another line.
   *
   * @param last that issue, as it was registered
   */
  public static Optional<String> obstacle(Path file, PackFile found, Entry issue, PackFile last) {
    String own = found.route().name();
    String other = last.route().name();
    return own.equals(other)
        ? Optional.empty()
        : Optional.of(
            ("%s: error: %s is an issue of “%s”, and this pack is of “%s”: nothing is issued\n"
                    + "  Maybe rename the file, so that its name is not “%s”; or, if the route was"
                    + " renamed: reissue --confirm \"%s\"")
                .formatted(file, issue.name(), other, own, PackFiles.stem(file), own));
  }

  private OtherLine() {}
}
