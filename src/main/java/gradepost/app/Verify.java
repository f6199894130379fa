package gradepost.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.issue.Issue;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.render.Fingerprints;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Whether a paper was made from data as they are now. It compares the fingerprint that the paper
 * prints with that of the inputs; whether somebody altered the rest of the paper, it cannot tell.
 */
public final class Verify {

  /** Compares a PDF, HTML or JSON file with these packs, or every pack below these folders. */
  public Answer of(Path paper, List<Path> named) {
    try {
      Optional<String> printed = printed(paper);
      if (printed.isEmpty()) {
        return Answer.refused(
            paper
                + ": error: it has no fingerprint on its first page; allowed: a briefing or its reference"
                + " as PDF or HTML, or a hand-over as JSON");
      }
      return compare(paper, printed.get(), PackFiles.packs(named));
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  private static Answer compare(Path paper, String printed, List<Path> packs) {
    Answer problems = Answer.GOOD;
    List<String> others = new ArrayList<>();
    for (Path pack : packs) {
      Reading<PackFile> reading = Disk.sources().pack(Disk.name(pack));
      if (reading.found().isPresent()) {
        PackFile found = reading.found().get();
        String now = Issue.fingerprint(found.inputs());
        if (now.equals(printed)) {
          return Answer.said(
              "%s: made from the data of %s as they are now, issue %d"
                  .formatted(paper, pack, found.issue().number()));
        }
        others.add(pack + " is " + now.substring(0, 16) + "…");
      } else {
        problems = problems.and(Answer.of(reading.problems()));
      }
    }
    return problems.and(
        Answer.refused(
            "%s: error: no pack here has its fingerprint, %s…: %s%n  Maybe the data changed after it was printed: compare the issue numbers, and use the issue in force"
                .formatted(
                    paper,
                    printed.substring(0, 16),
                    others.isEmpty() ? "none can be read" : String.join(", ", others))));
  }

  private static Optional<String> printed(Path paper) throws IOException {
    byte[] bytes = Files.readAllBytes(paper);
    String name = String.valueOf(paper.getFileName()).toLowerCase(Locale.ROOT);
    if (name.endsWith(".pdf")) {
      return Fingerprints.ofPdf(bytes);
    } else if (name.endsWith(".json")) {
      return json(bytes);
    }
    return Fingerprints.ofHtml(new String(bytes, StandardCharsets.UTF_8));
  }

  private static Optional<String> json(byte[] bytes) throws IOException {
    try {
      String text = new ObjectMapper().readTree(bytes).path("fingerprint").asText();
      return Optional.of(text).filter(t -> t.matches("[0-9a-f]{64}"));
    } catch (JsonProcessingException e) {
      return Optional.empty();
    }
  }
}
