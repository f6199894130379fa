package gradepost.app;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Leavers.Held;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which records of people who left are due to be removed on a day, and why the others are kept. The
 * policy of the latest issue of a pack counts for all records of that pack.
 */
final class Retention {
  /** A record, and the last day on which it is kept. */
  record Kept(Held held, LocalDate until) {}

  private final List<Held> due = new ArrayList<>();
  private final Set<String> kept = new LinkedHashSet<>();
  private final List<String> problems = new ArrayList<>();

  Retention(Store store, Register register, LocalDate today) throws RegisterException, IOException {
    Map<String, Optional<PackFile>> packs = new HashMap<>();
    for (Held held : register.leavers().held()) {
      if (!packs.containsKey(held.pack())) {
        packs.put(held.pack(), pack(store, register, held.pack()));
      }
      packs.getOrDefault(held.pack(), Optional.empty()).ifPresent(pack -> judge(held, pack, today));
    }
  }

  private Optional<PackFile> pack(Store store, Register register, String name)
      throws RegisterException, IOException {
    Entry latest = register.latest(name).orElseThrow();
    Optional<PackFile> pack = ArchivedInputs.pack(Disk.sources(), store.kept(), latest);
    if (pack.isEmpty()) {
      problems.add("error: " + AppText.INPUTS_LOST.with(latest.name()).inWords());
    }
    return pack;
  }

  private void judge(Held held, PackFile pack, LocalDate today) {
    Optional<Integer> months =
        pack.policy().signOff().flatMap(rules -> rules.currency().keepMonths());
    if (held.out()) {
      kept.add(AppText.RECORD_OUT.of(held));
    } else if (months.isEmpty()) {
      kept.add(AppText.RECORD_FOR_EVER.of(held));
    } else {
      LocalDate until = held.left().plusMonths(months.get());
      if (today.isAfter(until)) {
        due.add(held);
      } else {
        kept.add(AppText.RECORD_UNTIL.of(new Kept(held, until)));
      }
    }
  }

  /** What is to be removed. */
  List<Held> due() {
    return due;
  }

  /** What is removed and what is kept, a line each. */
  Answer told(boolean dryRun) {
    List<String> said = new ArrayList<>();
    due.forEach(held -> said.add((dryRun ? AppText.RECORD_DUE : AppText.RECORD_REMOVED).of(held)));
    said.addAll(kept);
    if (said.isEmpty() && problems.isEmpty()) {
      said.add(AppText.NO_RECORDS);
    }
    return new Answer(said, List.of(), problems, problems.isEmpty());
  }
}
