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
import java.time.LocalDateTime;
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
  private static final int LARGEST_MB = 64;
  private static final String JSON = ".json";
  private final Optional<Store> store;
  private final LocalDateTime now;
  private final String notLookedAt;

  /** A paper that was made from these data. */
  record Made(Path paper, Path pack, int issue) {}

  /** A pack, and the fingerprint of its data. */
  record Printed(Path pack, String fingerprint) {}

  /** Without a register. */
  public Verify() {
    this.store = Optional.empty();
    this.notLookedAt = AppText.NO_REGISTER_ASKED;
    this.now = LocalDateTime.MIN;
  }

  /**
   * With a register, if there is one there.
   *
   * @param now when an issue is to be in force
   */
  public Verify(Store store, LocalDateTime now) {
    this.store = Optional.of(store).filter(Store::exists);
    this.notLookedAt =
        store.exists() ? AppText.NEVER_REGISTERED : AppText.NO_REGISTER_THERE.of(store.where());
    this.now = now;
  }

  /** Compares a PDF, HTML or JSON file with the register, and with these packs or folders. */
  public Answer of(Path paper, List<Path> named) {
    try {
      byte[] bytes = Disk.bytes(paper, LARGEST_MB);
      Optional<Answer> registered =
          store.isPresent()
              ? new RegisteredPaper(store.get(), paper, now).with(bytes)
              : Optional.empty();
      if (registered.isPresent()) {
        return registered.get();
      }
      Optional<String> printed = printed(paper, bytes);
      if (printed.isEmpty()) {
        return Answer.refused(
            paper
                + ": error: "
                + AppText.noFingerprint(name(paper).endsWith(JSON), store.isPresent()).inWords());
      }
      Optional<Answer> changed =
          store.isPresent()
              ? new RegisteredPaper(store.get(), paper, now).changed(printed.get())
              : Optional.empty();
      if (changed.isPresent()) {
        return changed.get();
      }
      Answer compared = compare(paper, printed.get(), PackFiles.packs(named));
      return compared.good() ? compared.and(Answer.said(notLookedAt)) : compared;
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private static String name(Path paper) {
    return String.valueOf(paper.getFileName()).toLowerCase(Locale.ROOT);
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
          return Answer.said(AppText.MADE_FROM.of(new Made(paper, pack, found.issue().number())));
        }
        others.add(AppText.OTHER_FINGERPRINT.of(new Printed(pack, now)));
      } else {
        problems = problems.and(Answer.of(reading.problems()));
      }
    }
    return problems.and(
        Answer.refused(
            paper
                + ": error: "
                + (others.isEmpty()
                        ? AppText.NO_PACK_READ.with(printed)
                        : AppText.NO_PACK_HAS_IT.with(printed, others))
                    .inWords()));
  }

  private static Optional<String> printed(Path paper, byte[] bytes) throws IOException {
    if (name(paper).endsWith(".pdf")) {
      return Fingerprints.ofPdf(bytes);
    } else if (name(paper).endsWith(JSON)) {
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
