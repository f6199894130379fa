package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Property: what README says of the columns of a table is what an import asks for. */
class TableColumnsTest {
  private static List<String> needed(RouteList list) {
    return list.columns().stream().filter(list::requires).toList();
  }

  private static String row(RouteList list) {
    List<String> others = list.columns().stream().filter(c -> !list.requires(c)).toList();
    return "| `%s` | %s | %s |".formatted(list.word(), cells(needed(list)), cells(others));
  }

  private static String cells(List<String> columns) {
    return columns.isEmpty()
        ? "none"
        : columns.stream().map(c -> "`" + c + "`").collect(Collectors.joining(", "));
  }

  @Test
  void readmeNamesTheColumnsOfEachTable() throws Exception {
    String readme = Files.readString(Path.of("README.md"));
    for (RouteList list : RouteList.values()) {
      assertThat(readme).contains(row(list));
    }
  }

  @Test
  void whatIsMissingIsToldForEachTable() {
    for (RouteList list : RouteList.values()) {
      String last = list.columns().get(list.columns().size() - 1);
      String file = list.ofNotices() ? Fixture.NOTICES : Fixture.ROUTE;
      String told =
          new RouteCsv(Fixture.good(), file)
              .imported(
                  List.of(
                      new RouteCsv.Table(
                          list, "t.csv", (last + "\nx\n").getBytes(StandardCharsets.UTF_8))))
              .problems()
              .text();
      assertThat(told).contains("t.csv:1:1: error: these columns are missing: ");
      assertThat(told.replaceAll("(?s).*are missing: (.*?); allowed.*", "$1").split(", "))
          .containsAll(needed(list).stream().filter(c -> !c.equals(last)).toList());
    }
  }
}
