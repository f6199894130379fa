package gradepost.app;

import java.nio.file.Path;
import java.util.Optional;

/** Makes the papers of packs: read, assign, plan, compose, lay out, put in place. */
public final class Brief {
  private final Optional<Path> templates;
  private final boolean json;
  private final Progress progress;

  /**
   * @param templates folder of a depot's own templates
   * @param json whether the hand-overs are written too
   */
  public Brief(Optional<Path> templates, boolean json, Progress progress) {
    this.templates = templates;
    this.json = json;
    this.progress = progress;
  }
}
