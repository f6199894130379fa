package gradepost.app;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.store.Disk;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.Signature;
import gradepost.source.pack.PackFile;
import gradepost.units.Nearest;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What a driver can be signed off for on a day, by the pack and its policy. */
final class SignOffTerms {
  private final PackFile pack;
  private final LocalDate today;

  SignOffTerms(PackFile pack, LocalDate today) {
    this.pack = pack;
    this.today = today;
  }

  /** By the pack of a registered issue, as the archive has it. */
  static SignOffTerms of(Store store, Entry issue, LocalDate today)
      throws RegisterException, IOException {
    PackFile pack =
        ArchivedInputs.pack(Disk.sources(), store.kept(), issue)
            .orElseThrow(() -> new RegisterException(AppText.INPUTS_LOST.with(issue.name())));
    return new SignOffTerms(pack, today);
  }

  void require(Entry issue, Signature signature) throws RegisterException {
    String direction = signature.direction();
    LocalDate lapses = signature.lapses();
    requireFormation(issue, signature.formation());
    List<String> directions =
        pack.directions().stream().map(d -> pack.route().nameOf(d.direction())).toList();
    if (!directions.contains(direction)) {
      throw new RegisterException(
          AppText.UNKNOWN_DIRECTION.with(
              issue.name(), direction, directions, Nearest.to(direction, directions)));
    }
    LocalDate last = latest().orElse(LocalDate.MAX);
    if (!lapses.isAfter(today) || lapses.isAfter(last)) {
      LocalDate first = today.plusDays(1);
      throw new RegisterException(
          latest()
              .map(
                  end ->
                      AppText.LAPSES_OUT_OF_RANGE.with(
                          today, lapses, first, end, pack.policy().name()))
              .orElseGet(() -> AppText.LAPSES_TOO_EARLY.with(today, lapses, first)));
    }
  }

  /** Each formation is signed by itself, so that one must be named where the pack has several. */
  private void requireFormation(Entry issue, String formation) throws RegisterException {
    List<String> formations = pack.formations().stream().map(f -> f.name()).toList();
    if (!formations.contains(formation) && !(formation.isEmpty() && formations.size() == 1)) {
      throw new RegisterException(
          formation.isEmpty()
              ? AppText.NO_FORMATION.with(issue.name(), formations)
              : AppText.UNKNOWN_FORMATION.with(
                  issue.name(), formation, formations, Nearest.to(formation, formations)));
    }
  }

  /** A signature lapses so many months after the last trip, and the last trip is not to come. */
  private Optional<LocalDate> latest() {
    return pack.policy().signOff().map(rules -> today.plusMonths(rules.currency().lapseMonths()));
  }
}
