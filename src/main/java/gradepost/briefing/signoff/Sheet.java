package gradepost.briefing.signoff;

import gradepost.briefing.Fact;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Table;
import gradepost.briefing.chart.Chart;
import java.util.List;

/** One sheet, or a few that belong together; it begins on a page of its own. */
public record Sheet(String id, String title, List<Block> blocks) {
  public Sheet {
    blocks = List.copyOf(blocks);
  }

  /** Something on a sheet; a template tells them apart by the name of what they hold. */
  public sealed interface Block {}

  /** A paragraph. */
  public record Words(String words) implements Block {}

  /** A heading within the sheet. */
  public record Heading(String heading) implements Block {}

  /** Words in a box: what decides. */
  public record Verdict(String verdict) implements Block {}

  /** Ruled items. */
  public record Items(List<String> items) implements Block {
    public Items {
      items = List.copyOf(items);
    }
  }

  /** A table; {@code fill} gives its rows the height of handwriting. */
  public record Grid(Table grid, boolean fill) implements Block {}

  /** A sheet of the line, on a page of its own. */
  public record Lined(LineSheet line) implements Block {}

  /** A drawing. */
  public record Drawn(Chart chart) implements Block {}

  /** Labels with a value, or with a line to write on where that is empty. */
  public record Fields(List<Fact> fields) implements Block {
    public Fields {
      fields = List.copyOf(fields);
    }
  }

  /** So many ruled lines to write on. */
  public record Lines(String label, int lines) implements Block {}

  /** Questions with their choices. */
  public record Quiz(List<Question> quiz) implements Block {
    public Quiz {
      quiz = List.copyOf(quiz);
    }
  }

  /** One question; {@code mark} is printed beside its number where it has to be right. */
  public record Question(String number, String mark, String ask, List<String> choices) {
    public Question {
      choices = List.copyOf(choices);
    }
  }
}
