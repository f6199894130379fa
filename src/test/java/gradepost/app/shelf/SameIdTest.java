package gradepost.app.shelf;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a pack is opened by its id only where one pack alone is called so. */
class SameIdTest {
  @TempDir private Path folder = Path.of("");

  @Test
  void aCopyOfAPackIsNotOpenedInItsPlace() throws Exception {
    Path pack = new SyntheticNetwork(folder, 1).packs(2, 3).get(0);
    Shelf shelf = new Shelf(folder, Depot.NOON);
    assertThat(shelf.pack("0000").flatMap(ShelfPack::whole)).isPresent();
    Path copy = folder.resolve("line-000-before");
    Files.createDirectories(copy);
    for (Path file : List.of(pack, pack.resolveSibling("route.yaml"))) {
      Files.copy(file, copy.resolve(file.getFileName()));
    }
    Path restrictions = pack.resolveSibling("restrictions.yaml");
    if (Files.exists(restrictions)) {
      Files.copy(restrictions, copy.resolve("restrictions.yaml"));
    }
    Optional<ShelfPack> two = shelf.pack("0000");
    assertThat(two.flatMap(ShelfPack::whole)).isEmpty();
    assertThat(two.orElseThrow().problems().get(0))
        .contains("has the same id, 0000: their issues and papers would have the same names");
    assertThat(shelf.packs())
        .filteredOn(one -> one.whole().isPresent())
        .extracting(ShelfPack::id)
        .containsExactly("0001");
    Files.delete(copy.resolve(pack.getFileName()));
    assertThat(shelf.pack("0000").flatMap(ShelfPack::whole)).isPresent();
  }
}
