package gradepost.app.reissue;

import gradepost.app.making.Outcome.State;
import gradepost.app.making.ParallelPacks;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.pack.NoticeFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Looks at the packs of a run, each by the index first, and then, if there is need, at its files.
 */
final class AllLooks {
  private final Order order;
  private final Sources sources;
  private final Optional<NoticeFile> notice;
  private final By by;

  /**
   * @param notice empty where the files in place have been edited by hand
   */
  AllLooks(Order order, Sources sources, Optional<NoticeFile> notice, By by) {
    this.order = order;
    this.sources = sources;
    this.notice = notice;
    this.by = by;
  }

  /**
   * What is seen of each, in their order.
   *
   * @param register empty where there is none yet
   * @param done is told the file of each pack for which there is nothing to do
   */
  List<Seen> at(List<Path> packs, Optional<Register> register, Consumer<Path> done)
      throws IOException, RegisterException {
    LastIssues last = LastIssues.of(order, sources, register, packs, by.when());
    PackIndex index = PackIndex.of(register);
    PackLook look = new PackLook(order, sources, notice, register, last, by.when());
    FirstLook first = new FirstLook(order, notice, index, last, by.when());
    List<Seen> seen =
        ParallelPacks.results(
            order.pace().threads(),
            packs,
            pack -> {
              Optional<Seen> known = first.at(pack);
              Seen one = known.isPresent() ? known.get() : look.at(pack, index);
              if (one.outcome().state() != State.TOUCHED) {
                done.accept(pack);
              }
              return one;
            },
            (pack, why) -> Seen.done(pack, State.LEFT, why));
    if (register.isPresent() && !order.put().dryRun()) {
      index.keep(register.get());
    }
    return seen;
  }
}
