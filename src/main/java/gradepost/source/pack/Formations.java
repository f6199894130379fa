package gradepost.source.pack;

import gradepost.pack.FormationRisk;
import gradepost.source.file.FileNames;
import gradepost.stock.Formation;
import gradepost.stock.Stock;
import gradepost.units.Nearest;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the formations that a pack names. */
final class Formations {

  static List<Formation> named(Values pack, Stock stock) {
    List<String> known = stock.formations().stream().map(Formation::name).toList();
    List<String> names = pack.find(PackTable.FORMATIONS).orElse(List.of());
    List<Formation> found = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      SourcePosition spot = pack.spot(PackTable.FORMATIONS, i);
      Optional<Formation> formation =
          stock.formations().stream().filter(f -> f.name().equals(name)).findFirst();
      if (formation.isEmpty()) {
        pack.in()
            .error(spot, PackMistakes.UNKNOWN_FORMATION.with(name, known, Nearest.to(name, known)));
      } else if (found.contains(formation.get())) {
        pack.in().error(spot, PackMistakes.FORMATION_TWICE.with(name));
      } else {
        sameFile(name, found)
            .ifPresent(
                first ->
                    pack.in().error(spot, PackMistakes.FORMATION_FILE_TWICE.with(name, first)));
        found.add(formation.get());
      }
    }
    return found;
  }

  /** Papers are named after formations, and only by their letters and figures. */
  private static Optional<String> sameFile(String name, List<Formation> before) {
    return before.stream()
        .map(Formation::name)
        .filter(other -> FileNames.asName(other).equals(FileNames.asName(name)))
        .findFirst();
  }

  /** Items of one formation name one that the stock has; it need not be printed now. */
  static void ofRisks(Values pack, Reader in, Stock stock) {
    List<String> known = stock.formations().stream().map(Formation::name).toList();
    List<FormationRisk> risks = new ArrayList<>();
    pack.find(PackTable.DIRECTIONS)
        .ifPresent(all -> all.forEach(d -> risks.addAll(d.formationRisks())));
    pack.find(PackTable.FORMATION_RISKS).ifPresent(risks::addAll);
    for (FormationRisk risk : risks) {
      if (!known.contains(risk.formation())) {
        in.error(
            in.spot(risk, PackTable.RISK_FORMATION),
            PackMistakes.UNKNOWN_FORMATION.with(
                risk.formation(), known, Nearest.to(risk.formation(), known)));
      }
    }
  }

  private Formations() {}
}
