package gradepost.app;

import gradepost.app.issue.Layout;
import gradepost.app.issue.LayoutPool;
import gradepost.app.issue.PaperMaker;
import gradepost.app.issue.SinceIssued;
import gradepost.app.store.Answer;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.FailOn;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.pack.PaperKind;
import gradepost.reissue.register.RegisterException;
import gradepost.render.chart.TemplateFault;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/** Makes the papers of packs: read, assign, plan, compose, lay out, put in place. */
public final class Brief {
  private final Optional<Path> templates;
  private final Wish wish;
  private final Progress progress;
  private final Optional<Store> store;

  /**
   * What is wanted of each pack.
   *
   * @param json whether the hand-overs are written too
   * @param with papers that are made beside those that the pack asks for
   * @param seed of the first knowledge paper; the issue's own where empty
   * @param now where it is to say what ended or begins, and to make nothing of an expired pack
   * @param expiredToo whether the papers of an expired pack are wanted all the same
   * @param failOn from which problems on it is not good; the papers are made all the same
   */
  public record Wish(
      boolean json,
      Set<PaperKind> with,
      OptionalLong seed,
      Optional<LocalDateTime> now,
      boolean expiredToo,
      FailOn failOn) {
    /** The papers that the pack asks for, whatever the day. */
    public static final Wish PAPERS =
        new Wish(false, Set.of(), OptionalLong.empty(), Optional.empty(), false, FailOn.ERRORS);

    /** Copies the set. */
    public Wish {
      with = Set.copyOf(with);
    }

    /** The same, with the hand-overs. */
    public Wish andJson() {
      return new Wish(true, with, seed, now, expiredToo, failOn);
    }

    /** The same, with these papers beside. */
    public Wish with(Set<PaperKind> papers) {
      return new Wish(json, papers, seed, now, expiredToo, failOn);
    }

    /** The same, with a seed of the first knowledge paper. */
    public Wish seeded(OptionalLong number) {
      return new Wish(json, with, number, now, expiredToo, failOn);
    }
  }

  /**
   * @param templates folder of a depot's own templates
   */
  public Brief(Optional<Path> templates, Wish wish, Progress progress) {
    this(templates, wish, progress, Optional.empty());
  }

  /** The same where a register, if it is there, knows what was issued. */
  public Brief(Optional<Path> templates, Wish wish, Progress progress, Optional<Store> store) {
    this.templates = templates;
    this.wish = wish;
    this.progress = progress;
    this.store = store;
  }

  /** Makes the papers of these packs, or of every pack below these folders. */
  public Answer of(List<Path> named, Path out) {
    try {
      Layout.requireFit(templates);
      List<Path> packs = PackFiles.packs(named);
      Optional<String> obstacle = PackFiles.obstacle(named, packs);
      if (obstacle.isPresent()) {
        return Answer.refused(obstacle.get());
      }
      try (LayoutPool presses = new LayoutPool(templates)) {
        return briefAll(packs, presses, new Delivery(out));
      }
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Answer briefAll(List<Path> packs, LayoutPool presses, Delivery delivery)
      throws IOException, RegisterException {
    Sources sources = Disk.sources();
    List<Reading<PackFile>> readings =
        packs.stream().map(pack -> sources.pack(Disk.name(pack))).toList();
    SinceIssued since =
        new SinceIssued(store, readings.stream().flatMap(r -> r.found().stream()).toList());
    presses.ready();
    progress.expect(PaperMaker.papers(readings));
    Answer answer = Answer.GOOD;
    for (int i = 0; i < packs.size(); i++) {
      Reading<PackFile> reading = readings.get(i);
      answer = answer.and(Answer.of(reading.problems(), wish.failOn()));
      if (reading.found().isPresent()) {
        PackFile pack = reading.found().get();
        answer = answer.and(since.told(packs.get(i), pack, wish.failOn()));
        answer = answer.and(alone(packs.get(i), since.printed(pack), presses, delivery));
      }
    }
    return answer;
  }

  /** A pack that cannot be laid out does not stop the others. */
  private Answer alone(Path file, PackFile pack, LayoutPool presses, Delivery delivery)
      throws IOException {
    try {
      return new PackBrief(file, pack, wish, progress).of(presses, delivery);
    } catch (TemplateFault e) {
      return Answer.refused(file + ": error: " + e.getMessage());
    }
  }
}
