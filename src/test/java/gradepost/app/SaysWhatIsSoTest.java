package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.route.Route;
import gradepost.route.Section;
import gradepost.units.Mileage;
import gradepost.units.Parsed;
import gradepost.units.QuantityKind;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Property: what the papers of the small lines say is so by the data, worked out here without the
 * code that says it.
 */
class SaysWhatIsSoTest {
  private static final Pattern MILEAGE =
      Pattern.compile("(\\d+m \\d\\d(\\.\\d)?ch|\\d+\\.\\d+ km)");

  /** The posts along a chart are those of the page that it stands on. */
  private static boolean onAScale(Said said) {
    return said.where().contains("/ticks/");
  }

  @Test
  void aMileageThatTheLineHasTwiceIsToldWithItsSection() {
    int twice = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      Route route = paper.pack().route();
      for (Said said : Said.of(paper.part())) {
        Matcher m = MILEAGE.matcher(said.text());
        while (m.find() && !onAScale(said)) {
          Mileage mileage = ((Parsed.Ok<Mileage>) QuantityKind.MILEAGE.parse(m.group())).value();
          List<String> on =
              route.sections().stream().filter(s -> s.holds(mileage)).map(Section::name).toList();
          String after = said.text().substring(m.end());
          boolean named = on.stream().anyMatch(s -> after.startsWith(" (" + s + ")"));
          assertThat(named).as("%s: %s", paper.name(), said).isEqualTo(on.size() > 1);
          twice += named ? 1 : 0;
        }
      }
    }
    assertThat(twice).isGreaterThan(200);
  }
}
