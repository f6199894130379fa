package gradepost.source;

import gradepost.stock.Formation;
import gradepost.stock.Stock;
import gradepost.units.Nearest;
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
      Spot spot = pack.spot(PackTable.FORMATIONS, i);
      Optional<Formation> formation =
          stock.formations().stream().filter(f -> f.name().equals(name)).findFirst();
      if (formation.isEmpty()) {
        pack.in()
            .error(
                spot,
                "the stock has no formation " + Nodes.shown(name),
                String.join(", ", known),
                Nearest.to(name, known).orElse(""));
      } else if (found.contains(formation.get())) {
        pack.in()
            .error(
                spot,
                "formation " + Nodes.shown(name) + " is listed twice",
                "each formation once",
                "");
      } else {
        found.add(formation.get());
      }
    }
    return found;
  }

  private Formations() {}
}
