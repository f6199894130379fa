package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.issue.Task;
import gradepost.app.store.Disk;
import gradepost.plan.BookedLeg;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.source.pack.PackFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a booked running time that the plan does not keep is told, leg by leg. */
@Tag("slow")
class BookedTimesTest {
  private static final String BRINK = "{station: Brink, platform: \"1\", dwell: 30 s";
  private static final String CORROW = "{station: Corrow, platform: \"1\"";

  @TempDir Path folder;
  private Clerk clerk;

  @BeforeEach
  void office() throws Exception {
    clerk = new Clerk(folder).at("2026-11-29T09:00");
  }

  private Plan plan() {
    PackFile pack = Disk.sources().pack(Disk.name(clerk.pack)).found().orElseThrow();
    return Task.of(pack).get(0).plan();
  }

  @Test
  void aLegThatThePlanCannotKeepIsToldByCheckAndOnThePaper() throws Exception {
    clerk.edit(clerk.pack, BRINK, BRINK + ", booked: 20 min");
    clerk.edit(clerk.pack, CORROW, CORROW + ", booked: 40.5 s");
    Plan plan = plan();
    List<BookedLeg> legs = BookedLeg.of(plan);
    double first = plan.standS(new Run(plan.trace()), plan.approaches().get(0));
    assertThat(legs).extracting(l -> l.to().station().name()).containsExactly("Brink", "Corrow");
    assertThat(legs.get(0).planned().seconds()).isEqualTo((long) Math.ceil(first));
    assertThat(legs.get(1).booked().seconds()).isEqualTo(40);
    assertThat((double) legs.get(0).planned().seconds() + legs.get(1).planned().seconds())
        .isBetween(plan.runningTimeS() - 0.1, plan.runningTimeS() + 2);

    String planned = printed(legs.get(1).planned().seconds());
    clerk.types(1, "check", clerk.pack.toString());
    assertThat(clerk.err)
        .containsPattern("pack-0000.yaml:\\d\\d:\\d\\d: warning: ")
        .contains(
            "3-car, Out: Brink to Corrow is booked in 0 min 40 s, and the plan takes " + planned)
        .contains("a booked time of " + planned + " at least")
        .doesNotContain("Aldery to Brink is booked");

    clerk.types(0, "brief", clerk.pack.toString(), "--out", clerk.papers());
    String paper = text(Path.of(clerk.papers(), "0000-reference.html"));
    assertThat(paper)
        .contains("Booked running times")
        .contains("Aldery Brink 20 min 00 s " + printed(legs.get(0).planned().seconds()))
        .contains(printed(-legs.get(0).lateS()) + " to spare")
        .contains("Brink Corrow 0 min 40 s " + planned)
        .contains("the plan takes " + printed(legs.get(1).lateS()) + " longer");
  }

  /** One second less than the plan takes is told; the very second is not. */
  @Test
  void itIsToldFromTheFirstSecondOn() throws Exception {
    clerk.edit(clerk.pack, BRINK, BRINK + ", booked: 1 s");
    long takes = BookedLeg.of(plan()).get(0).planned().seconds();
    clerk.edit(clerk.pack, "booked: 1 s", "booked: " + (takes - 1) + " s");
    clerk.types(1, "check", clerk.pack.toString());
    assertThat(clerk.err).contains("Aldery to Brink is booked in " + printed(takes - 1));
    clerk.edit(clerk.pack, "booked: " + (takes - 1) + " s", "booked: " + takes + " s");
    clerk.types(0, "check", clerk.pack.toString());
  }

  @Test
  void withoutBookedTimesNothingIsSaidAndTheStartHasNone() throws Exception {
    assertThat(BookedLeg.of(plan())).isEmpty();
    clerk.edit(clerk.pack, "Aldery, platform: \"1\"", "Aldery, platform: \"1\", booked: 2 min");
    clerk.types(1, "check", clerk.pack.toString());
    assertThat(clerk.err)
        .contains("the first call has the key \"booked\", but the train starts there")
        .contains("booked running times from the second call on");
  }

  private static String printed(long seconds) {
    return "%d min %02d s".formatted(seconds / 60, seconds % 60);
  }

  private static String text(Path html) throws Exception {
    return Files.readString(html)
        .replaceAll("<[^>]*>", " ")
        .replace('\u00a0', ' ')
        .replaceAll("\\s+", " ");
  }
}
