package gradepost.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.issue.Issue;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.app.store.RegisteredPaper;
import gradepost.app.store.Store;
import gradepost.reissue.register.RegisterException;
import gradepost.render.Fingerprints;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Whether a paper is genuine. With a register, its whole content is compared with the papers that
 * were registered, so that one changed letter is found. Without one, only the fingerprint that it
 * prints is compared with that of the data; then it says what it did not look at.
 */
public final class Verify {
  private final Optional<Store> store;
  private static final int LARGEST_MB = 64;

  /** Without a register. */
  public Verify() {
    this.store = Optional.empty();
  }

  /** With a register, if there is one there. */
  public Verify(Store store) {
    this.store = Optional.of(store).filter(Store::exists);
  }

  /** Compares a PDF, HTML or JSON file with the register, and with these packs or folders. */
  public Answer of(Path paper, List<Path> named) {
    try {
      byte[] bytes = Disk.bytes(paper, LARGEST_MB);
      Optional<Answer> registered =
          store.isPresent()
              ? new RegisteredPaper(store.get(), paper).with(bytes)
              : Optional.empty();
      if (registered.isPresent()) {
        return registered.get();
      }
      Optional<String> printed = printed(paper, bytes);
      if (printed.isEmpty()) {
        return Answer.refused(
            paper
                + ": error: it has no fingerprint on its first page; allowed: a briefing or its reference"
                + " as PDF or HTML, or a hand-over as JSON");
      }
      Optional<Answer> changed =
          store.isPresent()
              ? new RegisteredPaper(store.get(), paper).changed(printed.get())
              : Optional.empty();
      if (changed.isPresent()) {
        return changed.get();
      }
      Answer compared = compare(paper, printed.get(), PackFiles.packs(named));
      return compared.good() ? compared.and(Answer.said(notLookedAt())) : compared;
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private String notLookedAt() {
    return store.isPresent()
        ? "  it was never registered: only its fingerprint was compared, not its other content"
        : "  without a register: only its fingerprint was compared, not its other content";
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

  private static Optional<String> printed(Path paper, byte[] bytes) throws IOException {
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
