package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import java.util.List;

/** Tells a place as a driver knows it: by what he has passed last, with its mileage behind it. */
final class Where {
  /** What was passed further back than this tells no place. */
  private static final double NEAR_M = 800;

  private final BriefingFacts taught;
  private final List<BriefingFacts.At<String>> cues;

  Where(BriefingFacts taught) {
    this.taught = taught;
    cues = taught.cues();
  }

  /** The mileage alone where nothing with a name is near. */
  String of(double atM) {
    BriefingFacts.At<String> last = null;
    for (BriefingFacts.At<String> cue : cues) {
      last = cue.atM() <= atM && cue.atM() > atM - NEAR_M ? cue : last;
    }
    return last == null
        ? taught.place(atM)
        : taught.text("ask.where", taught.place(atM), last.what());
  }
}
