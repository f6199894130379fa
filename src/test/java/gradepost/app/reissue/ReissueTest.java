package gradepost.app.reissue;

import static gradepost.app.Depot.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.FinalPapers;
import gradepost.app.Reproduce;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Lock;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a reissue touches what a notice touches, once, and nothing is lost on the way. */
@Tag("slow")
class ReissueTest {
  @TempDir Path folder;
  private Path routes;
  private Path notice;
  private Store store;

  @BeforeEach
  void network() throws IOException {
    routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(4, 7);
    notice = folder.resolve("notice.yaml");
    Files.writeString(notice, SyntheticNetwork.notice("T 1", 0, "Out", 900, 20));
    store = new Depot(folder).store();
  }

  private Answer reissue(Clock clock, Optional<Path> by, boolean dry) {
    return new Depot(folder).reissue(clock, List.of(routes), by, true, dry);
  }

  private Answer reissue() {
    return reissue(NOON, Optional.of(notice), false);
  }

  @Test
  void touchedPacksAreIssuedOnceAndCanBeMadeAgain() throws Exception {
    String untouched = Files.readString(routes.resolve("line-001/pack-0002.yaml"));
    Answer first = reissue();
    assertThat(first.problems()).allMatch(p -> p.toString().contains(": note: "));
    assertThat(first.said())
        .contains("0001: not touched")
        .contains("0002: not touched, the notice is for another route")
        .anyMatch(s -> s.startsWith("0000: issue 2 takes the place of 1: "));
    assertThat(names(folder.resolve("out"))).containsExactly("0000-issue-2");
    assertThat(names(folder.resolve("out/0000-issue-2")))
        .containsExactly(
            "0000-out-3-car-addendum.pdf",
            "0000-out-3-car-affected.pdf",
            "0000-out-3-car-slips.pdf",
            "0000-out-3-car-supplement.html",
            "0000-out-3-car-supplement.pdf",
            "0000-out-3-car.html",
            "0000-out-3-car.json",
            "0000-out-3-car.pdf",
            "0000-reference-supplement.html",
            "0000-reference-supplement.pdf",
            "0000-reference.html",
            "0000-reference.pdf");
    assertThat(routes.resolve("line-001/pack-0002.yaml")).hasContent(untouched);
    assertThat(Files.readString(routes.resolve("line-000/pack-0000.yaml")))
        .contains("number: 2", "issued: 2026-11-25 12:00", "supersedes: \"1\"")
        .doesNotContain("checked-by");
    assertThat(Files.readString(folder.resolve("out/0000-issue-2/0000-out-3-car.html")))
        .contains("not yet:\u00a0…")
        .doesNotContain("driver instructor");
    String reference = "out/0000-issue-2/0000-reference.pdf";
    assertThat(text(folder.resolve(reference)).replaceAll("\\s+", " "))
        .contains("DRAFT 2 · valid", "Sheet from issue 1, unchanged in issue 2");
    assertThat(Files.readString(routes.resolve("line-000/restrictions.yaml")))
        .contains("T 1")
        .doesNotContain("none:");

    Answer again = reissue();
    assertThat(again.said()).contains("0000: issue 2 has this notice");
    assertThat(again.written()).isEmpty();

    Reproduce reproduce = new Reproduce(store, Optional.empty(), Progress.SILENT);
    assertThat(reproduce.of("0000/2", Optional.empty()).said())
        .containsExactly("0000/2 reproduced byte for byte: 10 papers");
    damage();
    Answer damaged = reproduce.of("0000/2", Optional.empty());
    assertThat(damaged.good()).isFalse();
    assertThat(damaged.problems().get(0))
        .startsWith("error: 0000/2: the archive does not hold the input pack-0000.yaml whole (");
  }

  private void damage() throws IOException, RegisterException {
    try (Register register = store.open()) {
      String digest = register.issue("0000", 2).orElseThrow().inputs().get(0).digest();
      Path kept = store.archive().resolve(digest.substring(0, 2)).resolve(digest);
      Files.writeString(kept, "something else");
    }
  }

  /** What belongs to a paper is never without it, nor it without that. */
  @Test
  void aReferenceIsDeliveredRecalledAndMadeAgainWithItsPaper() throws Exception {
    List<String> both =
        List.of(
            "0000-out-3-car.pdf",
            "0000-out-3-car.html",
            "0000-reference.pdf",
            "0000-reference.html");
    reissue();
    FinalPapers checked =
        new FinalPapers(store, folder.resolve("out"), Optional.empty(), NOON, "an instructor");
    assertThat(checked.of(List.of("0000/2"), Duration.ofSeconds(1), Progress.SILENT).problems())
        .isEmpty();
    try (Register register = store.open()) {
      register.handOut(
          new Register.By("a clerk", LocalDateTime.of(2026, 11, 25, 12, 0)),
          register.issue("0000", 2).orElseThrow(),
          "7",
          "A Driver");
    }
    Files.writeString(notice, SyntheticNetwork.notice("T 2", 0, "Out", 1500, 30));
    reissue();
    Path out = folder.resolve("out");
    for (String issue : List.of("0000-issue-2", "0000-issue-3")) {
      assertThat(names(out.resolve(issue))).containsAll(both);
    }
    Archive archive = store.kept();
    try (Register register = store.open()) {
      Entry entry = register.issue("0000", 2).orElseThrow();
      assertThat(entry.papers()).extracting(Entry.Kept::name).containsAll(both);
      for (Entry.Kept kept : entry.papers()) {
        assertThat(archive.read(kept.digest())).as(kept.name()).isPresent();
      }
      assertThat(entry.sheets())
          .extracting(Entry.Sheet::title)
          .contains("Reference: How to read it; the train");
      assertThat(register.list(Question.issues()).rows().toString())
          .contains("superseded by issue 3");
    }
    assertThat(text(out.resolve("0000-issue-3/0000-out-3-car-affected.pdf")))
        .contains("Return each copy with its reference.");
    Answer again =
        new Reproduce(store, Optional.empty(), Progress.SILENT)
            .of("0000/2", Optional.of(folder.resolve("again")));
    assertThat(again.good()).isTrue();
    for (String name : both) {
      assertThat(folder.resolve("again/0000-issue-2").resolve(name))
          .hasSameBinaryContentAs(out.resolve("0000-issue-2").resolve(name));
    }
    damage(store, name -> name.endsWith("-reference.pdf"));
    assertThat(
            new Reproduce(store, Optional.empty(), Progress.SILENT)
                .of("0000/2", Optional.empty())
                .problems())
        .anyMatch(p -> p.contains("does not hold the paper 0000-reference.pdf whole"));
  }

  private static void damage(Store store, Predicate<String> which)
      throws IOException, RegisterException {
    try (Register register = store.open()) {
      for (Entry.Kept kept : register.issue("0000", 2).orElseThrow().papers()) {
        if (which.test(kept.name())) {
          Files.writeString(Path.of(store.kept().place(kept.digest())), "something else");
        }
      }
    }
  }

  /** A restriction changes its tables: they go out with the supplement, as of the reference. */
  @Test
  @Tag("long")
  void aChangedSheetOfTheReferenceGoesOutAsOne() throws IOException {
    reissue();
    String supplement =
        text(folder.resolve("out/0000-issue-2/0000-reference-supplement.pdf"))
            .replaceAll("\\s+", " ");
    assertThat(supplement)
        .contains("The reference has a supplement of its own if any of its sheets changed.")
        .contains("Reference: Tables: Out replace the old one")
        .contains("All other sheets stay in use.")
        .doesNotContain("Reference: How to read it; the train")
        .contains("Temporary restrictions in order of travel")
        .doesNotContain("Power notches");
    String head = "Reference: Tables: Out Out";
    assertThat(supplement.split(head, -1).length).isGreaterThan(1);
  }

  private static String text(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return new PDFTextStripper().getText(document);
    }
  }

  @Test
  void aDryRunWritesNothing() throws IOException {
    List<String> before = all();
    Answer answer = reissue(NOON, Optional.of(notice), true);
    assertThat(answer.said())
        .anyMatch(s -> s.startsWith("0000: issue 2 would take the place of 1: "))
        .endsWith("dry run: nothing was written");
    assertThat(all()).isEqualTo(before);
  }

  @Test
  void aClockThatJumpsBackDatesNoIssueBeforeTheLast() throws Exception {
    Clock early = Clock.fixed(Instant.parse("2026-11-01T08:00:00Z"), ZoneOffset.UTC);
    Answer answer = reissue(early, Optional.of(notice), false);
    assertThat(answer.said())
        .contains(
            "0000: the clock says 2026-11-01 08:00, before the last issue: dated 2026-11-20 12:00");
    try (Register register = store.open()) {
      assertThat(register.latest("0000").orElseThrow().issued())
          .isEqualTo(LocalDateTime.of(2026, 11, 20, 12, 0));
    }
  }

  @Test
  @Tag("long")
  void aClockThatJumpsBackBetweenTwoIssuesKeepsTheirOrder() throws Exception {
    reissue();
    Clock early = Clock.fixed(Instant.parse("2026-10-01T08:00:00Z"), ZoneOffset.UTC);
    Path eased = folder.resolve("eased.yaml");
    Files.writeString(eased, SyntheticNetwork.notice("T 1", 0, "Out", 900, 50));
    Answer answer = reissue(early, Optional.of(eased), false);
    assertThat(answer.said())
        .contains(
            "0000: the clock says 2026-10-01 08:00, before the last issue: dated 2026-11-25 12:00")
        .anyMatch(s -> s.startsWith("0000: issue 3 takes the place of 2: "));
    try (Register register = store.open()) {
      var latest = register.latest("0000").orElseThrow();
      assertThat(latest.number()).isEqualTo(3);
      assertThat(latest.issued()).isEqualTo(LocalDateTime.of(2026, 11, 25, 12, 0));
      assertThat(latest.validFrom()).isEqualTo(LocalDateTime.of(2026, 11, 25, 12, 0));
      // The log tells what the clock said, in the order in which things were done.
      assertThat(register.list(Question.acts()).rows())
          .extracting(row -> row.get(0))
          .isSortedAccordingTo(java.util.Comparator.reverseOrder());
    }
  }

  @Test
  @Tag("long")
  void anEmergencyThatIsThoughtOfLateIsToldWhereItStands() throws IOException {
    new Depot(folder).reissue(NOON, List.of(routes), Optional.of(notice), false, false);
    Answer late = reissue();
    assertThat(late.written()).isEmpty();
    assertThat(late.said())
        .contains(
            "0000: issue 2 has this notice; it was issued without an emergency addendum, and none"
                + " can be made now: its supplement says the same");
  }

  @Test
  void aNoticeWithoutARestrictionIsTold() throws IOException {
    Files.writeString(notice, "gradepost: restrictions\nnotices: []\nnone: none in force\n");
    assertThat(reissue().problems())
        .containsExactly(notice + ": error: the notice holds no restriction: nothing was issued");
  }

  @Test
  void aNoticeForAnotherYearIsToldToTouchNothing() throws IOException {
    Files.writeString(
        notice, Files.readString(notice).replace("imposed: 2026-11-26", "imposed: 2028-11-26"));
    assertThat(reissue().said())
        .contains(
            "0000: not touched: the notice is not in force from 2026-11-23 04:00 to"
                + " 2027-05-31 04:00, while the pack is valid",
            "0002: not touched, the notice is for another route");
  }

  @Test
  void aSlipInTheNameOfTheRouteKeepsEverythingBack() throws Exception {
    String slip = Files.readString(notice).replace(SyntheticNetwork.name(0), "Invented lime 000");
    Files.writeString(notice, slip);
    for (boolean dry : new boolean[] {true, false}) {
      Answer answer = reissue(NOON, Optional.of(notice), dry);
      assertThat(answer.good()).isFalse();
      assertThat(answer.problems())
          .anyMatch(p -> p.contains("there is no route \"Invented lime 000\" here"));
      assertThat(answer.problems()).endsWith("error: nothing was issued");
      assertThat(answer.said()).isEmpty();
    }
    try (Register register = store.open()) {
      assertThat(register.list(Question.issues()).rows()).isEmpty();
      assertThat(register.list(Question.acts()).rows()).isEmpty();
    }
    assertThat(store.hasArchive()).isFalse();
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void whatTheClerkEditedByHandIsComparedWithTheLastIssue() throws IOException {
    reissue();
    Path file = routes.resolve("line-000/restrictions.yaml");
    Files.writeString(file, Files.readString(file).replace("20 km/h", "50 km/h"));
    Answer answer = reissue(NOON, Optional.empty(), false);
    assertThat(answer.said())
        .anyMatch(s -> s.startsWith("0000: issue 3 takes the place of 2: "))
        .anyMatch(s -> s.contains("eased, 0.90 km to 1.10 km: T 1: was 20 km/h"));
  }

  @Test
  void anEditMadeMeanwhileIsNotOverwritten() throws Exception {
    reissue();
    Path file = routes.resolve("line-000/restrictions.yaml");
    Files.writeString(file, Files.readString(file) + "# mine\n");
    try (Register register = store.open()) {
      Answer answer =
          new IssueInstaller(store, folder.resolve("out"))
              .place(
                  routes.resolve("line-000/pack-0000.yaml"), register.latest("0000").orElseThrow());
      assertThat(answer.problems().get(0)).contains("edited since it was read for 0000/2");
    }
    assertThat(Files.readString(file)).endsWith("# mine\n");
  }

  @Test
  @Tag("long")
  void aSecondRunWaitsOrIsToldWhoIsAtWork() throws Exception {
    try (Lock lock = store.take("B Clerk (process 1)", Duration.ZERO)) {
      lock.require();
      assertThat(reissue().problems())
          .containsExactly(
              "error: "
                  + store.lock()
                  + " is held by B Clerk (process 1); nothing was done\n"
                  + "  Maybe wait with --wait SECONDS");
    }
    ExecutorService two = Executors.newFixedThreadPool(2);
    Future<Answer> a = two.submit(() -> reissue());
    Future<Answer> b = two.submit(() -> reissue());
    List<Answer> both = List.of(a.get(), b.get());
    two.shutdown();
    try (Register register = store.open()) {
      // The pack beside it names the same restrictions and is registered as it was.
      assertThat(register.list(Question.issues()).rows())
          .extracting(row -> row.get(0))
          .containsExactly("0000/1", "0000/2", "0001/1");
    }
    assertThat(both).anyMatch(Answer::good);
  }

  @Test
  void whatWasNotPutInPlaceIsByTheNextRun() throws Exception {
    reissue();
    Path out = folder.resolve("out/0000-issue-2");
    byte[] before = Files.readAllBytes(out.resolve("0000-out-3-car.pdf"));
    // As a run that was killed between the register and the folder leaves it.
    try (Stream<Path> files = Files.walk(out)) {
      for (Path file : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
    try (java.sql.Connection c = java.sql.DriverManager.getConnection(store.url());
        java.sql.Statement s = c.createStatement()) {
      s.executeUpdate("UPDATE issue SET delivered = 0 WHERE number = 2");
    }
    assertThat(reissue().written()).isNotEmpty();
    assertThat(out.resolve("0000-out-3-car.pdf")).hasBinaryContent(before);
  }

  @Test
  void aMistakeInTheNoticeStopsEverythingAndSaysWhere() throws IOException {
    Files.writeString(notice, Files.readString(notice).replace("speed: 20 km/h", "speed: 20"));
    Answer answer = reissue();
    assertThat(answer.problems().get(0)).contains("notice.yaml:3:", "speed \"20\" has no unit");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  /** Restrictions far from the pack may be anybody's: they are read, and never written. */
  @Test
  void aFileOutsideOfTheDataIsNotChanged() throws IOException {
    Path away = Files.createDirectories(folder.resolve("away")).resolve("restrictions.yaml");
    Path own = routes.resolve("line-000/restrictions.yaml");
    Files.move(own, away);
    String before = Files.readString(away);
    for (String pack : List.of("pack-0000.yaml", "pack-0001.yaml")) {
      Path file = routes.resolve("line-000").resolve(pack);
      String text = Files.readString(file);
      Files.writeString(file, text.replace("[restr", "[../../away/restr"));
    }
    Answer answer = reissue();
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems())
        .anyMatch(
            p ->
                p.contains("pack-0000.yaml: error: the notice would change " + away)
                    && p.contains("which lies outside of " + routes));
    assertThat(away).hasContent(before);
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void aReferenceThatLooksLikeAPathIsOnlyAReference() throws IOException {
    Path route = routes.resolve("line-000/route.yaml");
    Files.writeString(route, Files.readString(route).replace("Out", "../../Out"));
    Path pack = routes.resolve("line-000/pack-0000.yaml");
    Files.writeString(pack, Files.readString(pack).replace("Out", "../../Out"));
    Files.delete(routes.resolve("line-000/pack-0001.yaml"));
    Files.writeString(notice, SyntheticNetwork.notice("../../T", 0, "../../Out", 900, 20));
    Answer answer = reissue();
    assertThat(answer.said())
        .as(answer.problems().toString())
        .anyMatch(s -> s.startsWith("0000: issue 2 takes the place of 1: "));
    assertThat(names(folder)).containsExactly("notice.yaml", "out", "reg", "routes");
    assertThat(names(folder.resolve("out"))).containsExactly("0000-issue-2");
    assertThat(names(folder.resolve("out/0000-issue-2"))).contains("0000-out-3-car.pdf");
  }

  private List<String> all() throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.map(String::valueOf).sorted().toList();
    }
  }

  private static List<String> names(Path of) throws IOException {
    try (Stream<Path> files = Files.list(of)) {
      return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
    }
  }
}
