package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.drive.Planner;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import gradepost.stock.Formation;
import gradepost.task.Assignment;
import gradepost.units.Mileage;
import gradepost.units.Speed;
import gradepost.yaml.Reading;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: what a page says of a brake is so on that page. A point is a braking point only where a
 * brake goes on, and a brake that is on at a board stands in the table of its page.
 */
@Tag("slow")
class BrakeOfItsPageTest {
  private static List<Plan> plans = List.of();

  /** The kept valley with a restriction on a long fall, at several places one after another. */
  @BeforeAll
  static void plan() {
    Path kept = Path.of("src/test/resources/gradepost/frozen");
    Reading<PackFile> reading =
        new Sources(new DiskFiles(kept)).pack("thrumble-valley/pack-thrumble.yaml");
    PackFile pack = ((Reading.Good<PackFile>) reading).value();
    List<Plan> all = new ArrayList<>();
    for (Formation formation : pack.formations()) {
      Assignment a = pack.assignment(down(pack), formation);
      for (int chains : new int[] {25, 28, 31}) {
        all.add(Planner.plan(a.withRestrictions(with(a, chains))));
      }
    }
    plans = List.copyOf(all);
  }

  private static DirectionPart down(PackFile pack) {
    return pack.directions().stream()
        .filter(d -> d.direction() == Direction.FORWARD)
        .findFirst()
        .orElseThrow();
  }

  private static List<TemporaryRestriction> with(Assignment a, int chains) {
    List<TemporaryRestriction> all = new ArrayList<>(a.restrictions());
    all.add(
        new TemporaryRestriction(
            "T 26/131",
            TemporaryRestriction.Kind.TEMPORARY,
            TemporaryRestriction.Status.IN_FORCE,
            new Extent(place(3, chains), place(3, chains + 11)),
            new Applies(Set.of(Direction.FORWARD), Set.of("Down Main")),
            Speed.ofMph(30),
            List.of(),
            Optional.empty(),
            "a wet bed",
            LocalDateTime.of(2026, 11, 24, 4, 0),
            Optional.empty(),
            Optional.empty(),
            List.of(new Board(BoardKind.WARNING, place(3, chains - 22), Direction.FORWARD)),
            ""));
    return all;
  }

  private static Location place(int miles, int chains) {
    return new Location("Valley", Mileage.ofMilesChains(miles, chains));
  }

  @Test
  void aBoardIsTooLateOnlyForAPlannedBraking() {
    for (Plan plan : plans) {
      for (Approach approach : plan.approaches()) {
        for (Finding finding : approach.findings()) {
          if (finding instanceof Finding.BoardTooLate late) {
            assertThat(approach.brakingPointM()).contains(late.plannedM());
          }
        }
      }
    }
  }

  /** In the words of the page. */
  @Test
  void aBrakeThatIsOnAtTheBoardStandsInTheTableOfThePage() {
    int spoken = 0;
    for (Plan plan : plans) {
      var part =
          new Composer(Messages.english())
              .compose("", List.of(plan), SampleIssue.issue(), List.of())
              .parts()
              .get(0);
      for (Approach approach : plan.approaches()) {
        ApproachPage page = part.approaches().get(approach.number() - 1);
        String said = String.join(" ", page.unbraked());
        Matcher since = Pattern.compile("braking since (.+) \\(see (.+?)\\)\\. If").matcher(said);
        if (since.find()) {
          spoken++;
          assertThat(part.approaches())
              .as(page.title() + ": " + said)
              .filteredOn(other -> other.title().equals(since.group(2)))
              .flatExtracting(ApproachPage::actions)
              .anyMatch(a -> a.where().contains(since.group(1)) && a.gauge().contains("psi"));
        }
        if (said.contains("with the brake") && !said.contains("braking since ")) {
          spoken++;
          List<Command> own = approach.actions().stream().map(Action::command).toList();
          assertThat(own).as(page.title()).anyMatch(Command.Brake.class::isInstance);
          assertThat(page.actions().stream().map(ApproachPage.ActionLine::todo))
              .anyMatch(t -> t.contains("psi") || t.contains("check the speed"));
        }
      }
    }
    assertThat(spoken).isPositive();
  }
}
