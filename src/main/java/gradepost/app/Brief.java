package gradepost.app;

import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.compose.Composer;
import gradepost.drive.Assignment;
import gradepost.drive.Plan;
import gradepost.drive.Planner;
import gradepost.source.DirectionPart;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import gradepost.stock.Formation;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
