package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Brief;
import gradepost.app.OneCourse;
import gradepost.app.ride.AssessRide;
import gradepost.app.ride.RideDetails;
import gradepost.app.store.Answer;
import gradepost.app.store.Progress;
import gradepost.drive.DemoPlans;
import gradepost.pack.PaperKind;
import gradepost.ride.Driven;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.core.VeraPDFException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** Property: an instructor's round: print, fill in, score. */
class SignOffIT {
  private static final Progress SILENT =
      new Progress() {
        @Override
        public void expect(int papers) {}

        @Override
        public void done(String paper) {}
      };

  @TempDir Path folder;

  @Test
  void printsAssessesAndReports() throws IOException {
    Path pack = oneCourse();
    Answer printed = brief(pack, "papers");
    assertThat(printed.problems()).isEmpty();
    assertThat(printed.written().stream().map(p -> p.getFileName().toString()))
        .containsExactly(
            "ormel-out-3-car.pdf",
            "ormel-out-3-car.html",
            "ormel-reference.pdf",
            "ormel-reference.html",
            "ormel-out-3-car-sign-off.pdf",
            "ormel-out-3-car-sign-off.html",
            "ormel-out-3-car-sign-off-keys.pdf",
            "ormel-out-3-car-sign-off-keys.html",
            "ormel-out-3-car-ride.csv");
    everyPageBearsItsIssue(printed.written().get(4));
    thePaperDoesNotHoldItsKey(printed.written().get(4), printed.written().get(6));
    pagesOfTheKeyAreWhereItSays(
        printed.written().get(0), printed.written().get(2), printed.written().get(6));

    Path form = printed.written().get(8);
    Answer blank = ride(form, pack);
    assertThat(blank.problems())
        .containsExactly(
            form + ":1:1: error: nothing was filled in; allowed: one observation at least");
    Files.writeString(
        form, Files.readString(form).replaceAll("(?m)^(\\d+,.*),,,,,,,$", "$1,,,,,none,none,"));
    Answer report = ride(form, pack);
    assertThat(report.problems()).isEmpty();
    assertThat(report.said().get(0)).startsWith("no result");
    everyPageBearsItsIssue(report.written().get(0));

    Path export = folder.resolve("export.csv");
    Files.writeString(
        export, Driven.Recorder.exact().csv(Driven.asPlanned(DemoPlans.plan(4)), new Random(1)));
    Answer driven = ride(export, pack);
    assertThat(driven.problems()).isEmpty();
    assertThat(driven.said().get(0)).startsWith("passed: ");
    assertThat(pages(driven.written().get(0)).get(2)).contains("Driven over planned");

    // Another driver's file of the same name has reports of its own.
    Path other = Files.createDirectories(folder.resolve("other")).resolve("export.csv");
    Files.writeString(other, Files.readString(export) + "\n");
    assertThat(ride(other, pack).written())
        .hasSize(4)
        .doesNotHaveDuplicates()
        .doesNotContainAnyElementsOf(driven.written());

    holds(PDFAFlavour.PDFUA_1, printed.written().get(4));
    holds(PDFAFlavour.PDFUA_1, driven.written().get(0));
    holds(PDFAFlavour.PDFA_2_A, driven.written().get(0));
  }

  /** A folder of rides: by driver and by approach, each of them told by its own file. */
  @Test
  @Tag("long")
  void theRidesOfAClassAreTakenTogether() throws IOException {
    Path pack = oneCourse();
    Path rides = Files.createDirectories(folder.resolve("class"));
    Driven run = Driven.asPlanned(DemoPlans.plan(4));
    Random random = new Random(1);
    for (String driver : List.of("Ada Moor", "Ben Fell")) {
      Files.writeString(
          rides.resolve(driver.substring(0, 3) + ".csv"),
          "driver," + driver + "\n" + Driven.Recorder.exact().csv(run, random));
    }
    Files.writeString(rides.resolve("not-a-ride.csv"), "distance (m),speed (km/h)\n0,0\n90,9\n");
    Answer answer =
        new AssessRide(Optional.empty(), RideDetails.none())
            .of(rides, pack, folder.resolve("class-report"));
    assertThat(answer.problems()).hasSize(1);
    assertThat(answer.problems().get(0)).contains("not-a-ride.csv: error: the train did not stand");
    Path report =
        answer.written().stream()
            .filter(w -> w.endsWith("ride-class.pdf"))
            .findFirst()
            .orElseThrow();
    assertThat(pages(report).get(0)).contains("Ada Moor").contains("Ben Fell");
    assertThat(answer.written()).filteredOn(w -> w.toString().endsWith("-debrief.pdf")).hasSize(2);
    holds(PDFAFlavour.PDFUA_1, report);
  }

  private static void holds(PDFAFlavour flavour, Path pdf) throws IOException {
    VeraGreenfieldFoundryProvider.initialise();
    try (InputStream in = Files.newInputStream(pdf);
        PDFAParser parser = Foundries.defaultInstance().createParser(in, flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      assertThat(
              validator.validate(parser).getTestAssertions().stream()
                  .filter(a -> a.getStatus() == TestAssertion.Status.FAILED)
                  .map(a -> a.getRuleId().getClause() + " " + a.getMessage())
                  .distinct())
          .as(pdf.getFileName() + " " + flavour)
          .isEmpty();
    } catch (VeraPDFException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void aRideThatCannotBeReadIsToldAtItsPlaceAndNothingIsWritten() throws IOException {
    Path ride = folder.resolve("ride.csv");
    Files.writeString(ride, "approach,speed\n1,40\n");
    Answer answer = ride(ride, oneCourse());
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems()).hasSize(1);
    assertThat(answer.problems().get(0)).startsWith(ride + ":2:3: error: speed \"40\" has no unit");
    assertThat(folder.resolve("report")).doesNotExist();
  }

  @Test
  void withoutRulesThereAreNoSignOffPapers() throws IOException {
    Path pack = oneCourse();
    Path policy = pack.resolveSibling("../policy/km-bar.yaml").normalize();
    String text = Files.readString(policy);
    Files.writeString(policy, text.substring(0, text.indexOf("\nsign-off:") + 1));
    Answer answer = brief(pack, "papers");
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems())
        .containsExactly(
            pack
                + ": error: sign-off papers are wanted, and the policy has no rules for them;"
                + " allowed: a policy with the group sign-off");
    assertThat(folder.resolve("papers")).doesNotExist();
  }

  private static void everyPageBearsItsIssue(Path pdf) throws IOException {
    for (String page : pages(pdf)) {
      assertThat(page).contains("Issue 1 · valid 2026-11-23 04:00", "Training aid. The rule book");
    }
  }

  private static void thePaperDoesNotHoldItsKey(Path paper, Path key) throws IOException {
    assertThat(String.join("", pages(paper)))
        .contains("Knowledge paper 1")
        .doesNotContain("Key to");
    assertThat(pages(key).get(0)).contains("not for the learner", "Key to knowledge paper 1");
  }

  private static void pagesOfTheKeyAreWhereItSays(Path briefing, Path reference, Path key)
      throws IOException {
    String told = String.join(" ", pages(key)).replaceAll("\\s+", " ");
    List<String> taught = pages(briefing);
    int seen = 0;
    for (int page = 1; page <= taught.size(); page++) {
      Matcher head =
          Pattern.compile("^(.+?, (?:platform \\d+|[\\d.]+ km)) (?:Out|In) ·")
              .matcher(taught.get(page - 1).replaceAll("\\s+", " ").strip());
      if (head.find()) {
        Matcher said =
            Pattern.compile(Pattern.quote(head.group(1)) + ", page (\\d+)").matcher(told);
        while (said.find()) {
          seen++;
          assertThat(said.group(1)).as(head.group(1)).isEqualTo(Integer.toString(page));
        }
      }
    }
    assertThat(seen).isGreaterThan(4);
    Matcher tables =
        Pattern.compile(
                "(Gradients in the direction of travel|Curves in the direction of travel"
                    + "|Brake pipe: what the gauges show|Signals), reference page (\\d+)")
            .matcher(String.join(" ", pages(key)).replaceAll("[\\s\u00a0]+", " "));
    List<String> looked = pages(reference);
    int found = 0;
    while (tables.find()) {
      found++;
      assertThat(looked.get(Integer.parseInt(tables.group(2)) - 1)).contains(tables.group(1));
    }
    assertThat(found).as("tables by their page").isGreaterThan(2);
    assertThat(String.join(" ", pages(key))).doesNotContain("tables from");
  }

  private static List<String> pages(Path pdf) throws IOException {
    List<String> out = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      PDFTextStripper stripper = new PDFTextStripper();
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        out.add(stripper.getText(document));
      }
    }
    return out;
  }

  private Answer brief(Path pack, String out) {
    return new Brief(
            Optional.empty(),
            Brief.Wish.PAPERS.with(Set.of(PaperKind.SIGN_OFF)).seeded(OptionalLong.of(5)),
            SILENT)
        .of(List.of(pack), folder.resolve(out));
  }

  private Answer ride(Path csv, Path pack) {
    return new AssessRide(Optional.empty(), RideDetails.none().on(LocalDate.of(2026, 12, 4)))
        .of(csv, pack, folder.resolve("report"));
  }

  private Path oneCourse() throws IOException {
    return OneCourse.in(folder.resolve("routes"));
  }
}
