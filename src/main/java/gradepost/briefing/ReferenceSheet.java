package gradepost.briefing;

import gradepost.briefing.chart.Chart;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * A sheet of the reference, or a few that belong together; it begins on a page of its own.
 *
 * @param id of its heading
 * @param key what it is, the same in every issue
 * @param head for running heads: the train, direction or paper that it is about; empty text where
 *     it is about all
 * @param papers names of the files of the papers that it belongs to
 */
public record ReferenceSheet(
    String id, String key, String title, String head, List<String> papers, List<Block> blocks) {

  /** The key of the sheet that says how to read the paper; its chapter is about the trains. */
  public static final String READING = "reading";

  /** Something on a sheet; a template tells them apart by the name of what they hold. */
  public sealed interface Block {
    /** Its tables. */
    default List<Table> tables() {
      return List.of();
    }

    /** What begins with it, if it begins a chapter. */
    default Optional<String> begins() {
      return Optional.empty();
    }

    /** The same with each table replaced. */
    default Block with(UnaryOperator<Table> other) {
      return this;
    }

    /**
     * All that is printed of it, for the identity of its sheet.
     *
     * @param table what is printed of a table
     */
    List<Object> printed(Function<Table, Object> table);
  }

  /** Begins what a sheet holds of one paper; the headings that follow are of the next rank. */
  public record Chapter(String chapter) implements Block {
    @Override
    public Optional<String> begins() {
      return Optional.of(chapter);
    }

    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of(chapter);
    }
  }

  /** A heading within the sheet. */
  public record Heading(String heading) implements Block {
    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of(heading);
    }
  }

  /** A paragraph. */
  public record Words(String words) implements Block {
    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of(words);
    }
  }

  /** A list. */
  public record Items(List<String> items) implements Block {
    public Items {
      items = List.copyOf(items);
    }

    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of(items);
    }
  }

  /** Labels, each with what it stands for. */
  public record Labelled(List<Fact> facts) implements Block {
    public Labelled {
      facts = List.copyOf(facts);
    }

    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of(facts);
    }
  }

  /** Figures of the whole run: by themselves they make no sheet new. */
  public record Figures(Table grid) implements Block {
    @Override
    public List<Table> tables() {
      return List.of(grid);
    }

    @Override
    public Block with(UnaryOperator<Table> other) {
      return new Figures(other.apply(grid));
    }

    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of();
    }
  }

  /** A table over the whole width. */
  public record Grid(Table grid) implements Block {
    @Override
    public List<Table> tables() {
      return List.of(grid);
    }

    @Override
    public Block with(UnaryOperator<Table> other) {
      return new Grid(other.apply(grid));
    }

    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of(table.apply(grid));
    }
  }

  /** Two columns of tables; they are read one after the other. */
  public record Beside(List<Table> left, List<Table> right) implements Block {
    public Beside {
      left = List.copyOf(left);
      right = List.copyOf(right);
    }

    @Override
    public List<Table> tables() {
      return Stream.concat(left.stream(), right.stream()).toList();
    }

    @Override
    public Block with(UnaryOperator<Table> other) {
      return new Beside(left.stream().map(other).toList(), right.stream().map(other).toList());
    }

    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return tables().stream().map(table).toList();
    }
  }

  /** A drawing. */
  public record Drawn(Chart chart) implements Block {
    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of(chart);
    }
  }

  /** A drawing of which only the words count: its curve follows from the run. */
  public record Sketched(Chart chart) implements Block {
    @Override
    public List<Object> printed(Function<Table, Object> table) {
      return List.of(chart.name(), chart.says());
    }
  }

  public ReferenceSheet {
    papers = List.copyOf(papers);
    blocks = List.copyOf(blocks);
  }

  /** All its tables, in order. */
  public Stream<Table> tables() {
    return blocks.stream().flatMap(b -> b.tables().stream());
  }

  /** The same with each table replaced. */
  public ReferenceSheet with(UnaryOperator<Table> other) {
    return new ReferenceSheet(
        id, key, title, head, papers, blocks.stream().map(b -> b.with(other)).toList());
  }
}
