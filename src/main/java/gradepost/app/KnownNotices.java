package gradepost.app;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.store.Archive;
import gradepost.app.store.Disk;
import gradepost.app.store.Store;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads which restrictions are on the papers of issues in force, and of those to come. */
final class KnownNotices {
  private final Store store;
  private final Register register;
  private final LocalDateTime now;

  KnownNotices(Store store, Register register, LocalDateTime now) {
    this.store = store;
    this.register = register;
    this.now = now;
  }

  /**
   * All of them.
   *
   * @param lost what is said where the inputs of an issue cannot be read
   */
  List<KnownNotice> all(List<String> lost) throws IOException, RegisterException {
    Set<String> packs = new LinkedHashSet<>();
    register.list(Question.latestInputs()).rows().forEach(row -> packs.add(row.get(0)));
    Sources sources = Disk.sources();
    Archive archive = store.kept();
    Map<KnownNotice, List<String>> issues = new LinkedHashMap<>();
    for (String pack : new TreeSet<>(packs)) {
      for (Entry issue : inUse(pack)) {
        Optional<PackFile> read = ArchivedInputs.pack(sources, archive, issue);
        if (read.isEmpty()) {
          lost.add("error: " + AppText.INPUTS_LOST.with(issue.name()).inWords());
        } else {
          met(read.get())
              .forEach(k -> issues.computeIfAbsent(k, none -> new ArrayList<>()).add(issue.name()));
        }
      }
    }
    return issues.entrySet().stream()
        .map(
            e ->
                new KnownNotice(
                    e.getKey().restriction(),
                    e.getKey().route(),
                    e.getKey().where(),
                    e.getKey().speed(),
                    e.getValue()))
        .toList();
  }

  /** The issues of a pack that are in force, or to come, in their order; none that is recalled. */
  private List<Entry> inUse(String pack) throws RegisterException {
    List<Entry> inUse = new ArrayList<>();
    for (int number = register.latest(pack).orElseThrow().number(); number > 0; number--) {
      Optional<Entry> issue = register.issue(pack, number);
      if (issue.isPresent()) {
        Optional<String> recalled = register.recalled(issue.get(), now);
        if (recalled.isEmpty()) {
          inUse.add(0, issue.get());
        } else if (Register.isSuperseded(recalled.get())) {
          // So are all before it.
          break;
        }
      }
    }
    return inUse;
  }

  /** Those on the papers of an issue; its trains can meet them. */
  private static List<KnownNotice> met(PackFile pack) {
    UnitStyle units = pack.route().units();
    return pack.standing().stream()
        .filter(r -> r.status() != Status.WITHDRAWN)
        .filter(
            r ->
                pack.directions().stream()
                    .anyMatch(d -> r.applies().to(d.direction(), Set.copyOf(d.lines()))))
        .map(
            r ->
                new KnownNotice(
                    r,
                    pack.route().name(),
                    "%s to %s"
                        .formatted(
                            units.mileage(r.extent().from().mileage()),
                            units.mileage(r.extent().to().mileage())),
                    units.speed(r.speed().metresPerSecond(), Rounding.NEAREST),
                    List.of()))
        .toList();
  }
}
