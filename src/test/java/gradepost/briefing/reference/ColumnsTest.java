package gradepost.briefing.reference;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Property: tables in two columns keep their order, and no block is higher than half a page. */
class ColumnsTest {

  private static Table table(int number, int rows) {
    return new Table(
        "t" + number,
        "t",
        "t",
        "",
        List.of(new Table.Column("a", "text")),
        Collections.nCopies(rows, Table.Row.of("x")),
        "");
  }

  @Test
  void inOrderAndLow() {
    Random random = new Random(9);
    for (int round = 0; round < 200; round++) {
      List<Table> tables = new ArrayList<>();
      int count = 1 + random.nextInt(20);
      for (int i = 0; i < count; i++) {
        tables.add(table(i, 1 + random.nextInt(12)));
      }
      List<ReferenceSheet.Block> blocks = Columns.of(tables);
      assertThat(blocks.stream().flatMap(b -> b.tables().stream()))
          .containsExactlyElementsOf(tables);
      for (ReferenceSheet.Block block : blocks) {
        ReferenceSheet.Beside beside = (ReferenceSheet.Beside) block;
        assertThat(beside.left()).isNotEmpty();
        assertThat(lines(beside.left())).isLessThanOrEqualTo(25);
        assertThat(lines(beside.right())).isLessThanOrEqualTo(25);
      }
    }
  }

  private static int lines(List<Table> tables) {
    return tables.stream().mapToInt(t -> 2 + t.rows().size()).sum();
  }
}
