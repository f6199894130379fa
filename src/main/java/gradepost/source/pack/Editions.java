package gradepost.source.pack;

import gradepost.policy.DegradedRules.Clause;
import gradepost.policy.Policy;
import gradepost.source.file.FileNames;
import gradepost.source.policy.PolicyAgainstStock;
import gradepost.stock.BrakeSystem;
import gradepost.stock.BrakeSystem.Role;
import gradepost.stock.Formation;
import gradepost.stock.Stock;
import gradepost.task.DegradedRun;
import gradepost.task.Edition;
import gradepost.units.Nearest;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.Values;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Whether the editions of a pack can be made: that train, and permitted by the policy. */
final class Editions {
  /** A share so little under a whole number of vehicles is that number. */
  private static final double WHOLE = 1e-9;

  private final Stock stock;
  private final Policy policy;
  private final List<Formation> formations;
  private final Reader in;
  private final Reader ofPolicy;

  /**
   * @param formations that the pack prints
   * @param in has read the pack
   * @param ofPolicy has read the policy
   */
  Editions(Stock stock, Policy policy, List<Formation> formations, Reader in, Reader ofPolicy) {
    this.stock = stock;
    this.policy = policy;
    this.formations = formations;
    this.in = in;
    this.ofPolicy = ofPolicy;
  }

  void check(Values pack) {
    Map<String, Edition> files = new HashMap<>();
    for (Edition edition : pack.find(EditionTable.EDITIONS).orElse(List.of())) {
      String file = FileNames.asName(edition.name());
      Optional<Edition> first = Optional.ofNullable(files.putIfAbsent(file, edition));
      SourcePosition spot = in.spot(edition, EditionTable.NAME);
      if (file.isEmpty()) {
        in.error(spot, PackMistakes.EDITION_NAMES_NO_FILE.with(edition.name()));
      }
      first.ifPresent(
          f -> in.error(spot, PackMistakes.EDITION_FILE_TWICE.with(edition.name(), f.name())));
      List<Formation> of = formations(edition);
      Optional<DegradedRun> run = permitted(edition);
      of.forEach(f -> vehicles(edition, f));
      run.ifPresent(r -> of.forEach(f -> fits(r, f)));
    }
  }

  private List<Formation> formations(Edition edition) {
    List<String> known = formations.stream().map(Formation::name).toList();
    var key =
        edition.kind() == Edition.Kind.EP_OUT_OF_USE
            ? EditionTable.FORMATIONS
            : EditionTable.FORMATION;
    for (int i = 0; i < edition.formations().size(); i++) {
      String name = edition.formations().get(i);
      if (!known.contains(name)) {
        in.error(
            in.spot(edition, key, i),
            PackMistakes.FORMATION_NOT_PRINTED.with(name, known, Nearest.to(name, known)));
      }
    }
    return formations.stream().filter(f -> edition.isFor(f.name())).toList();
  }

  private Optional<DegradedRun> permitted(Edition edition) {
    Optional<Clause> clause = policy.degraded().flatMap(edition::clause);
    if (clause.isEmpty()) {
      in.error(
          in.spot(edition, EditionTable.BRAKE),
          PackMistakes.NO_CLAUSE.with(policy.name(), edition.kind().word()));
    } else if (clause.get().permit().isEmpty()) {
      in.error(
          in.spot(edition, EditionTable.BRAKE),
          PackMistakes.CLAUSE_FORBIDS.with(
              policy.name(), edition.kind().word(), clause.get().reference()));
    }
    return DegradedRun.of(edition, policy);
  }

  private void vehicles(Edition edition, Formation formation) {
    Set<Integer> seen = new HashSet<>();
    for (int i = 0; i < edition.vehicles().size(); i++) {
      int number = edition.vehicles().get(i);
      if (number > formation.cars()) {
        in.error(
            in.spot(edition, EditionTable.VEHICLES, i),
            PackMistakes.NO_SUCH_VEHICLE.with(number, formation.name(), formation.cars()));
      } else if (!seen.add(number)) {
        in.error(
            in.spot(edition, EditionTable.VEHICLES, i), PackMistakes.VEHICLE_TWICE.with(number));
      }
    }
  }

  private void fits(DegradedRun run, Formation formation) {
    Edition edition = run.edition();
    if (edition.vehicles().stream().anyMatch(n -> n > formation.cars())) {
      return;
    }
    switch (edition.kind()) {
      case EP_OUT_OF_USE -> withoutService(run);
      case EP_ON_PART -> leaves(run, formation, List.of(Role.SERVICE));
      case BRAKES_ISOLATED ->
          leaves(run, formation, stock.brakes().stream().map(BrakeSystem::role).toList());
    }
  }

  private void withoutService(DegradedRun run) {
    Optional<Stock> without = run.on(stock);
    if (without.isEmpty()) {
      in.error(
          in.spot(run.edition(), EditionTable.BRAKE),
          PackMistakes.NOTHING_BEHIND.with(stock.name(), stock.service().name()));
      return;
    }
    run.permit().technique().ifPresent(t -> PolicyAgainstStock.check(t, without.get(), ofPolicy));
  }

  /** No more than the clause permits, and one brake at least beside the policy's own share. */
  private void leaves(DegradedRun run, Formation formation, List<Role> roles) {
    SourcePosition spot = in.spot(run.edition(), EditionTable.VEHICLES);
    int named = run.edition().vehicles().size();
    int most = (int) Math.floor(run.permit().mostVehicles() * formation.cars() + WHOLE);
    int share = formation.wholeVehicles(policy.safeSide().isolatedShare());
    Formation working = run.on(formation);
    if (named > most) {
      in.error(
          spot, PackMistakes.MORE_THAN_PERMITTED.with(named, formation.name(), run.clause(), most));
    } else if (roles.stream().anyMatch(role -> working.braked(role) <= share)) {
      in.error(spot, PackMistakes.NO_BRAKE_LEFT.with(formation.name(), share));
    }
  }
}
