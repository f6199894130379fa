package gradepost.app.making;

import gradepost.app.issue.Differences;
import gradepost.app.issue.Layout;
import gradepost.app.making.Outcome.State;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Makes issues by the threads of this process. */
public final class MakingHere implements Making {
  private final Optional<Registry> registry;
  private final Optional<Path> templates;
  private final int threads;
  private final Consumer<Differences> watching;

  /**
   * @param registry empty for a dry run
   */
  public MakingHere(Optional<Registry> registry, Optional<Path> templates, int threads) {
    this(registry, templates, threads, differences -> {});
  }

  /**
   * @param registry empty for a dry run
   * @param watching is shown what differs, by any of the threads
   */
  public MakingHere(
      Optional<Registry> registry,
      Optional<Path> templates,
      int threads,
      Consumer<Differences> watching) {
    this.watching = watching;
    this.registry = registry;
    this.templates = templates;
    this.threads = threads;
  }

  @Override
  public List<Outcome> of(List<Due> due, Consumer<Path> done) throws IOException {
    ThreadLocal<Optional<Layout>> layouts = ThreadLocal.withInitial(Optional::empty);
    return ParallelPacks.results(
        threads,
        due,
        one -> {
          if (layouts.get().isEmpty()) {
            layouts.set(Optional.of(new Layout(templates)));
          }
          Outcome outcome =
              new PackReissue(layouts.get().orElseThrow(), registry, watching).of(one);
          done.accept(outcome.file());
          return outcome;
        },
        (one, why) -> Outcome.of(one.file(), State.LEFT, why));
  }
}
