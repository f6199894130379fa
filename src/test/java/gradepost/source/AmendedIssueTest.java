package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.IssueDetails;
import gradepost.source.pack.Amendment;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: nobody is said to have checked an issue that he has not seen. */
class AmendedIssueTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 12, 1, 12, 0);

  private static String amended(String pack, Optional<String> checkedBy) {
    byte[] bytes = pack.getBytes(StandardCharsets.UTF_8);
    return new String(
        Amendment.issue(bytes, 9, NOON, NOON, NOON, "8", checkedBy), StandardCharsets.UTF_8);
  }

  private static String pack(String issue) {
    String text = Fixture.good().text(Fixture.PACK);
    int from = text.indexOf("issue:");
    int to = text.indexOf("\n", text.indexOf("sources:")) + 1;
    return text.substring(0, from) + issue + text.substring(to);
  }

  private static IssueDetails details(String pack) {
    Fixture fixture = Fixture.good();
    fixture.put(Fixture.PACK, pack);
    var reading = fixture.sources().pack(Fixture.PACK);
    assertThat(reading).as(reading.problems().text()).isInstanceOf(Reading.Good.class);
    return ((Reading.Good<PackFile>) reading).value().issue();
  }

  private static final String BLOCK =
      "issue:\n  number: 3\n  checked-by: instructor # the old one\n  # kept\n"
          + "  issued: 2026-11-20 12:00\n  valid-from: 2026-11-23 04:00\n"
          + "  valid-to: 2027-02-28 04:00\n  known-up-to: 2026-11-19 18:00\n"
          + "  prepared-by: clerk\n  sources: [survey]\n";

  private static final List<String> FLOWS =
      List.of(
          "issue: {checked-by: instructor, number: 3, issued: 2026-11-20 12:00,"
              + " valid-from: 2026-11-23 04:00, valid-to: 2027-02-28 04:00,"
              + " known-up-to: 2026-11-19 18:00, prepared-by: clerk, sources: [survey]}\n",
          "issue: {number: 3, issued: 2026-11-20 12:00, valid-from: 2026-11-23 04:00,"
              + " valid-to: 2027-02-28 04:00, known-up-to: 2026-11-19 18:00, prepared-by: clerk,"
              + " sources: [survey], checked-by: instructor}\n");

  @Test
  void theNameIsTakenOutWithItsLine() {
    String after = amended(pack(BLOCK), Optional.empty());
    assertThat(after).contains("number: 9\n  # kept\n").doesNotContain("checked-by", "old one");
    assertThat(details(after).checkedBy()).isEmpty();
    String last = BLOCK.replace("  checked-by: instructor # the old one\n", "");
    String end = amended(pack(last + "  checked-by: instructor\n"), Optional.empty());
    assertThat(details(end).checkedBy()).isEmpty();
    for (String flow : FLOWS) {
      assertThat(details(amended(pack(flow), Optional.empty())).checkedBy()).isEmpty();
    }
  }

  @Test
  void whoHasCheckedItIsPutInItsPlace() {
    assertThat(details(amended(pack(BLOCK), Optional.of("a \"new\" one"))).checkedBy())
        .contains("a \"new\" one");
    for (String flow : FLOWS) {
      String gone = amended(pack(flow), Optional.empty());
      assertThat(details(amended(gone, Optional.of("another"))).checkedBy()).contains("another");
    }
  }
}
