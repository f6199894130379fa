package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.told.TrainSheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The tests before leaving, and the signs that a brake has failed. */
final class LeavingWriter {
  private final TrainSheet told;
  private final Words words;

  LeavingWriter(TrainSheet told, Words words) {
    this.told = told;
    this.words = words;
  }

  /** Step by step; the name of a test stands at its first step. */
  Table tests(String part) {
    Tables table = new Tables(words, part, "leaving");
    for (TrainSheet.Test test : told.tests()) {
      String name = words.text("leaving.test", test.name(), test.brake());
      for (int i = 0; i < test.steps().size(); i++) {
        TrainSheet.Step step = test.steps().get(i);
        table.row(
            i == 0 ? name : words.text("leaving.same"),
            Integer.toString(i + 1),
            step.action(),
            shows(step.shows()));
      }
    }
    return table.build();
  }

  /** In the order in which a driver meets them. */
  Table signs(String part) {
    Tables table = new Tables(words, part, "signs");
    for (TrainSheet.Sign sign : told.signs()) {
      table.row(
          sign.brake(),
          words.text("sign." + TrackStripWriter.lower(sign.by())),
          sign.what(),
          shows(sign.shows()));
    }
    return table.build();
  }

  /** What is said below both, whatever is supplied. */
  List<String> rules() {
    List<String> out = new ArrayList<>();
    if (!told.tests().isEmpty() && !told.untested().isEmpty()) {
      out.add(words.text("leaving.untested", String.join(", ", told.untested())));
    }
    if (!told.signs().isEmpty() && !told.signless().isEmpty()) {
      out.add(words.text("leaving.signless", String.join(", ", told.signless())));
    }
    if (told.emergencyHeld()) {
      out.add(words.text("leaving.emergency"));
    }
    out.add(words.text("leaving.decides"));
    return out;
  }

  private String shows(Optional<TrainSheet.Reading> reading) {
    return reading
        .map(
            r ->
                words.text(
                    "leaving.shows",
                    words.text("gauge." + TrackStripWriter.lower(r.gauge())),
                    r.least().text(),
                    r.most().text()))
        .orElse("");
  }
}
