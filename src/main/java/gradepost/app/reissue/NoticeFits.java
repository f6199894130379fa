package gradepost.app.reissue;

import gradepost.app.making.ParallelPacks;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.route.Route;
import gradepost.source.Sources;
import gradepost.source.pack.NoticeFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Whether a notice can be for these packs at all: it has restrictions, each for one of the routes.
 */
final class NoticeFits {

  static Answer of(
      Optional<NoticeFile> notice, Order order, List<Path> packs, Sources sources, PackIndex index)
      throws IOException {
    if (notice.isEmpty()) {
      return Answer.GOOD;
    } else if (notice.get().isEmpty()) {
      return Answer.refused(
          "%s: error: the notice holds no restriction: nothing was issued"
              .formatted(order.read().notice().orElseThrow()));
    }
    Answer fits = Answer.of(notice.get().fits(routes(order, packs, sources, index).values()));
    return fits.good() ? fits : fits.and(Answer.refused("error: nothing was issued"));
  }

  /** What cannot be read is told later. A route that many packs name is read once or twice. */
  private static Map<String, Route> routes(
      Order order, List<Path> packs, Sources sources, PackIndex index) throws IOException {
    Map<String, Route> routes = new ConcurrentHashMap<>();
    ParallelPacks.results(
        order.pace().threads(),
        packs,
        pack -> {
          Optional<PackIndex.Facts> facts = index.facts(pack);
          if (facts.isEmpty() || !routes.containsKey(facts.get().route())) {
            Optional<Route> found = sources.routeOf(Disk.name(pack)).found();
            found.ifPresent(route -> routes.put(route.name(), route));
          }
          return pack;
        },
        (pack, why) -> pack);
    return routes;
  }

  private NoticeFits() {}
}
