package gradepost.source.ride;

import gradepost.source.ride.RideReader.Cell;
import gradepost.yaml.Problem;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The lines above the headings of a form: for which issue, direction and formation it is. */
final class FormHeading {
  private static final int TOLD = 3;

  private final RideAsked asked;
  private final Reader in;
  private int told;

  FormHeading(RideAsked asked, Reader in) {
    this.asked = asked;
    this.in = in;
  }

  /** Tells where the form is for something else than what is asked for. */
  void check(List<List<Cell>> lines) {
    Map<String, String> wanted =
        Map.of(
            "issue", asked.issue(), "direction", asked.direction(), "formation", asked.formation());
    for (List<Cell> line : lines) {
      String what = RideReader.plain(line.get(0).text());
      Optional<String> is = Optional.ofNullable(wanted.get(what));
      if (is.isPresent() && line.size() > 1) {
        told++;
        Cell cell = line.get(1);
        if (!RideReader.plain(cell.text()).equals(RideReader.plain(is.get()))) {
          in.error(cell.spot(), RideMistakes.OTHER_FORM.with(what, cell.text(), is.get()));
        }
      }
    }
  }

  /** A form without these lines is believed, and that is told. */
  void tellIfMissing() {
    if (told < TOLD) {
      in.add(
          new Problem(
              new SourcePosition(in.file(), 1, 1),
              Severity.WARNING,
              RideMistakes.FORM_WITHOUT_HEADING));
    }
  }
}
