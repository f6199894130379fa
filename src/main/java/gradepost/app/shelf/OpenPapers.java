package gradepost.app.shelf;

import gradepost.app.issue.Issue;
import gradepost.app.issue.Layout;
import gradepost.app.issue.PaperMaker;
import gradepost.app.issue.Task;
import gradepost.app.store.Paper;
import gradepost.app.store.Unplanned;
import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.pack.PaperKind;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.source.pack.PackFile;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Predicate;

/**
 * Papers of a shelf, made when they are first asked for and kept for as long as the files are as
 * they were. Two who ask for one paper at once wait for the same work.
 */
public final class OpenPapers {
  /** So many are kept; the one that was asked for longest ago goes first. */
  private static final int KEPT = 64;

  private final Shelf shelf;
  private final Predicate<ShelfPack> edited;
  private final ConcurrentLinkedQueue<Layout> idle = new ConcurrentLinkedQueue<>();
  private final Messages messages = Messages.english();

  private final Map<Asked, Making> made =
      new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, Making> e) {
          return size() > KEPT;
        }
      };

  /** A paper of a pack. */
  private record Asked(Path pack, String stem) {}

  /** A paper as it is made, or was, from files that held this. */
  private record Making(String fingerprint, CompletableFuture<Made> paper) {
    boolean isAsNewAs(Making other) {
      return fingerprint.equals(other.fingerprint);
    }
  }

  /**
   * Papers of this shelf, with the templates of the program.
   *
   * @param edited whether the files of a pack are other ones than those that were issued: whoever
   *     checked that issue has not checked these, and their papers are drafts
   */
  public OpenPapers(Shelf shelf, Predicate<ShelfPack> edited) {
    this.shelf = shelf;
    this.edited = edited;
  }

  /** A paper, its plan and what it says; neither where there is no plan that is fit for issue. */
  record Made(OpenPaper paper, Optional<Plan> plan, Optional<Briefing> briefing) {}

  /**
   * The paper of a pack whose files are called so; empty where there is none.
   *
   * @throws IOException where a file cannot be read
   */
  public Optional<OpenPaper> of(ShelfPack pack, String stem) throws IOException {
    return made(pack, stem).map(Made::paper);
  }

  /** The same, with its plan. */
  Optional<Made> made(ShelfPack pack, String stem) throws IOException {
    Optional<PackFile> file = shelf.file(pack);
    if (file.isEmpty() || pack.whole().isEmpty()) {
      return Optional.empty();
    }
    Optional<Task> task =
        Task.of(file.get()).stream().filter(t -> t.stem().equals(stem)).findFirst();
    if (task.isEmpty()) {
      return Optional.empty();
    }
    Asked asked = new Asked(pack.file(), stem);
    // Of the files that it is made of: the pack as it was shown may be an older one by now.
    Making mine = new Making(Issue.fingerprint(file.get().inputs()), new CompletableFuture<>());
    Making making;
    synchronized (made) {
      // Once the files are other ones, nobody opens what was made of the old.
      making = made.merge(asked, mine, (known, own) -> known.isAsNewAs(own) ? known : own);
    }
    if (making.paper() == mine.paper()) {
      try {
        PackFile whole = edited.test(pack) ? file.get().checked(Optional.empty()) : file.get();
        mine.paper().complete(make(pack, whole, task.get()));
      } catch (RuntimeException e) {
        synchronized (made) {
          made.remove(asked, mine);
        }
        mine.paper().completeExceptionally(e);
      }
    }
    try {
      return Optional.of(making.paper().join());
    } catch (CompletionException e) {
      throw new IOException(e.getCause());
    }
  }

  private Made make(ShelfPack pack, PackFile file, Task task) {
    PaperMaker maker =
        new PaperMaker(pack.file(), file, Set.of(PaperKind.BRIEFING), OptionalLong.empty(), false);
    PaperMaker.Made done;
    try {
      done = maker.composed(task, messages);
    } catch (Unplanned e) {
      return new Made(
          OpenPaper.failed(List.of(String.valueOf(e.getMessage()))),
          Optional.empty(),
          Optional.empty());
    }
    Optional<Briefing> briefing = done.briefing();
    if (briefing.isEmpty()) {
      return new Made(OpenPaper.failed(done.failures()), Optional.empty(), briefing);
    }
    OpenPaper paper =
        new OpenPaper(
            List.of(),
            road(briefing.get(), file.route().units(), new Run(done.plan().trace())),
            List.of(
                face(".pdf", layout -> layout.pdf(task.stem(), briefing.get())),
                face(".html", layout -> layout.html(task.stem(), briefing.get()))));
    return new Made(paper, Optional.of(done.plan()), briefing);
  }

  /** Lays out what is told, once somebody looks. */
  private interface Laying {
    Paper by(Layout layout) throws IOException;
  }

  private OpenPaper.Face face(String ending, Laying laying) {
    return new OpenPaper.Face(ending, () -> laid(laying));
  }

  /** On a layout that nobody else uses meanwhile. */
  private Paper laid(Laying laying) throws IOException {
    Layout free = idle.poll();
    Layout layout = free == null ? new Layout(Optional.empty()) : free;
    Paper paper = laying.by(layout);
    idle.add(layout);
    return paper;
  }

  private static List<RoadStep> road(Briefing briefing, UnitStyle units, Run run) {
    List<RoadStep> out = new ArrayList<>();
    briefing.parts().stream()
        .flatMap(part -> part.line().stream())
        .forEach(
            sheet -> {
              for (int i = 0; i < sheet.rows().size(); i++) {
                double atM = sheet.chart().levels().get(i).atM();
                out.add(step(sheet.rows().get(i), units, run.timeAt(atM)));
              }
            });
    return out;
  }

  private static RoadStep step(LineSheet.Row row, UnitStyle units, double atS) {
    return new RoadStep(
        row.place(),
        row.speed().isEmpty() ? "" : row.speed() + " " + units.speedUnit(),
        row.what(),
        row.todo(),
        row.heading(),
        atS);
  }
}
