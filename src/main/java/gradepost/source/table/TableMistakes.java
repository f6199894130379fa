package gradepost.source.table;

import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.yaml.Holes;
import java.util.Collection;
import java.util.Optional;

/**
 * What can be wrong with a table, above all with one that is to go into a route. Its sentences
 * stand in {@code mistakes.properties}.
 */
public final class TableMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(TableMistakes.class);

  public static final Mistake LOSSY = MISTAKES.declare("lossy");
  public static final Mistake NOT_UTF_8 = MISTAKES.declare("not-utf-8");
  public static final Mistake NO_COLUMN_NAMES = MISTAKES.declare("no-column-names");
  public static final Three<String, Collection<String>, Optional<String>> UNKNOWN_COLUMN =
      MISTAKES.declare(
          "unknown-column", Holes.quoted("column"), Hole.list("columns"), Hole.perhaps("near"));
  public static final One<String> COLUMN_TWICE =
      MISTAKES.declare("column-twice", Holes.quoted("column"));
  public static final Two<Collection<String>, Collection<String>> MISSING_COLUMNS =
      MISTAKES.declare("missing-columns", Hole.list("missing"), Hole.list("columns"));
  static final One<Integer> TOO_MANY_COLUMNS =
      MISTAKES.declare("too-many-columns", Hole.count("most"));
  static final One<Integer> TOO_MANY_ROWS = MISTAKES.declare("too-many-rows", Hole.count("most"));
  public static final Two<String, Collection<String>> UNKNOWN_TABLE =
      MISTAKES.declare("unknown-table", Holes.quoted("file"), Hole.list("tables"));
  public static final One<Collection<String>> NO_TABLES =
      MISTAKES.declare("no-tables", Hole.list("tables"));
  public static final One<String> NO_GROUP = MISTAKES.declare("no-group", Hole.word("column"));
  public static final Three<Integer, Integer, Integer> TOO_MANY_CELLS =
      MISTAKES.declare(
          "too-many-cells", Hole.count("row"), Hole.count("cells"), Hole.count("columns"));
  public static final Three<String, String, Mistake> CELL_WRONG =
      MISTAKES.declare(
          "cell-wrong", Holes.quoted("cell"), Hole.word("column"), Hole.mistake("fault"));
  public static final Two<String, Collection<String>> UNKNOWN_STATION =
      MISTAKES.declare("unknown-station", Holes.quoted("station"), Hole.list("stations"));
  public static final Mistake NOT_WRITABLE = MISTAKES.declare("not-writable");
  public static final One<Integer> OPEN_QUOTATION =
      MISTAKES.declare("open-quotation", Hole.count("line"));

  private TableMistakes() {}
}
