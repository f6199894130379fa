package gradepost.app.reissue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Changes;
import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.briefing.Messages;
import gradepost.source.file.Input;
import gradepost.source.pack.Amendment;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: a cover does not say of a restriction what was true in an earlier issue only. */
@Tag("slow")
class SaidFirstTest extends Changes {
  private static final String EASED =
      "reference: T 26/104, status: eased, from: 13m 20ch, to: 13m 04ch, lines: [Single],"
          + " speed: 40 mph, boards: none";

  private static Map<String, String> stale(PackFile before, PackFile now) {
    return new HighRiskItems(Messages.english()).stale(before, now);
  }

  private static PackFile edited(PackFile pack, String from, String to) {
    List<Input> inputs = new ArrayList<>(pack.inputs());
    String text = new String(inputs.get(0).bytes(), StandardCharsets.UTF_8);
    assertThat(text).contains(from);
    byte[] bytes = text.replace(from, to).getBytes(StandardCharsets.UTF_8);
    inputs.set(0, new Input(inputs.get(0).name(), bytes));
    return good(Disk.sources().pack(inputs));
  }

  @Test
  void whatNamesAChangedRestrictionIsMarkedInBothDirections() throws IOException {
    PackFile before = valley();
    PackFile now = with(before, EASED);
    assertThat(stale(before, now))
        .containsOnlyKeys(
            "60 to 20 mph at T 26/104, then a rise of 1 in 60 from a low speed.",
            "The warning board of T 26/104 comes late on a falling 1 in 60.")
        .containsValue(
            "The warning board of T 26/104 comes late on a falling 1 in 60. [written before issue"
                + " 3, which changed T 26/104: see “What changed”]");
    assertThat(stale(before, before)).isEmpty();
    assertThat(stale(before, with(before, EASED.replace("eased", "withdrawn")))).hasSize(2);
  }

  @Test
  void whatWasWrittenAnewOrNamesAnotherIsNot() throws IOException {
    PackFile before = valley();
    PackFile now = with(before, EASED);
    PackFile anew = edited(now, "60 to 20 mph at T 26/104", "60 to 40 mph at T 26/104");
    assertThat(stale(before, anew)).hasSize(1);
    PackFile other = edited(before, "20 mph at T 26/104", "20 mph at T 26/1045 and AT 26/104");
    assertThat(stale(other, with(other, EASED))).hasSize(1);
  }

  /** However it is typed, and once only. */
  @Test
  void theMarkStandsInThePackFileUntilItIsRewritten() throws IOException {
    String typed = "\"60 to 20 mph at T 26/104, then a rise of 1 in 60 from a low speed.\"";
    for (String style : List.of("'%s'", "%s", ">-\n        %s\n", "|\n        %s")) {
      String words = typed.substring(1, typed.length() - 1);
      PackFile before = edited(valley(), typed, style.formatted(words));
      PackFile now = with(before, EASED);
      Map<String, String> instead = stale(before, now);
      List<Input> inputs = new ArrayList<>(now.inputs());
      byte[] bytes = Amendment.highRisk(inputs.get(0).bytes(), instead);
      inputs.set(0, new Input(inputs.get(0).name(), bytes));
      PackFile marked = good(Disk.sources().pack(inputs));
      assertThat(marked.directions().get(0).highRisk().get(0)).isEqualTo(instead.get(words));
      assertThat(marked.directions().get(0).highRisk())
          .hasSameSizeAs(before.directions().get(0).highRisk());
      assertThat(marked.highRisk()).isEqualTo(before.highRisk());
      assertThat(stale(marked, with(marked, EASED.replace("40 mph", "30 mph")))).isEmpty();
    }
  }

  @Test
  void anItemOfOneFormationIsMarkedToo() throws IOException {
    String typed = "\"Sallowdene Halt platform 1 is shorter than the train.\"";
    PackFile before = edited(valley(), typed, "\"T 26/104 with eight cars: brake early.\"");
    PackFile now = with(before, EASED);
    Map<String, String> instead = stale(before, now);
    assertThat(instead).containsKey("T 26/104 with eight cars: brake early.");
    List<Input> inputs = new ArrayList<>(now.inputs());
    byte[] bytes = Amendment.highRisk(inputs.get(0).bytes(), instead);
    inputs.set(0, new Input(inputs.get(0).name(), bytes));
    assertThat(good(Disk.sources().pack(inputs)).directions().get(0).formationRisks().get(0).item())
        .startsWith("T 26/104 with eight cars: brake early. [written before issue");
  }

  @Test
  void aReissuePrintsTheMarkAndSaysSo() throws IOException {
    Path file = packs.get(0);
    String text = Files.readString(file);
    Files.writeString(file, text + "high-risk: [\"T 1: slow down early.\", \"T 2: as ever.\"]\n");
    Path notice = folder.resolve("notice.yaml");
    Files.writeString(notice, SyntheticNetwork.notice("T 1", 0, "Out", 900, 20));
    Answer answer =
        new Depot(folder).reissue(Depot.NOON, List.of(file), Optional.of(notice), false, false);
    String mark = "[written before issue 2, which changed T 1: see “What changed”]";
    assertThat(answer.said())
        .contains(
            "0000: brief these first: “T 1: slow down early.” was written for an earlier issue, and is"
                + " marked so");
    assertThat(Files.readString(file))
        .contains("T 1: slow down early. " + mark, "\"T 2: as ever.\"");
    String page = Files.readString(folder.resolve("out/0000-issue-2/0000-out-3-car.html"));
    assertThat(page.replace('\u00a0', ' '))
        .contains("T 1: slow down early. " + mark, "<li>T 2: as ever.</li>");
  }
}
