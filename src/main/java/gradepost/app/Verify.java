package gradepost.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.app.issue.Issue;
import gradepost.app.store.Answer;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Store;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
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
      Optional<Answer> registered = store.isPresent() ? registered(paper, bytes) : Optional.empty();
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
          store.isPresent() ? changed(paper, printed.get()) : Optional.empty();
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

  /** What the register says of a file with exactly this content, if it has one. */
  private Optional<Answer> registered(Path paper, byte[] bytes) throws RegisterException {
    try (Register register = store.orElseThrow().open()) {
      List<List<String>> found = register.list(Question.paper(Digest.of(bytes))).rows();
      if (found.isEmpty()) {
        return Optional.empty();
      }
      List<String> row = found.get(0);
      Answer genuine =
          Answer.said(
              "%s: genuine, byte for byte %s of %s, issued %s"
                  .formatted(paper, row.get(1), row.get(0), row.get(3).replace('T', ' ')));
      if (row.get(2).equals("draft")) {
        return Optional.of(
            genuine.and(
                Answer.refused(
                    "%s: error: it is the DRAFT of %s, from before it was checked"
                        .formatted(paper, row.get(0)))));
      }
      if (!row.get(4).isEmpty()) {
        return Optional.of(
            genuine.and(
                Answer.refused(
                    "%s: error: %s is recalled: %s".formatted(paper, row.get(0), row.get(4)))));
      }
      return Optional.of(genuine);
    }
  }

  /** A paper that says which issue it is, and is none of that issue's papers. */
  private Optional<Answer> changed(Path paper, String printed) throws RegisterException {
    try (Register register = store.orElseThrow().open()) {
      return register
          .find(printed)
          .filter(entry -> !entry.papers().isEmpty())
          .map(
              entry ->
                  Answer.refused(
                      "%s: error: its fingerprint is that of %s, but it is none of the %d papers registered for it: it was changed, or made apart from them\n  Maybe use the registered paper: gradepost reproduce %s --out DIR"
                          .formatted(paper, entry.name(), entry.papers().size(), entry.name())));
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
