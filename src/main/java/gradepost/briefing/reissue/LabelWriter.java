package gradepost.briefing.reissue;

import gradepost.briefing.CoverIssue;
import gradepost.briefing.Labels;
import gradepost.briefing.Labels.Grid;
import gradepost.briefing.Labels.Label;
import gradepost.briefing.Messages;
import java.util.ArrayList;
import java.util.List;

/** Writes labels: one for each person, in the order in which they are handed in. */
public final class LabelWriter {
  /** Room that is left free on each side of a label, millimetres. */
  private static final double EDGE_MM = 5;

  /** The size of a name, and that of the lines under it, with what a line takes. */
  private static final Type NAME = new Type(2.6, 5.6);

  private static final Type LINE = new Type(2.0, 4.4);

  /** A label of this height has room for a name of two lines. */
  private static final double TALL_MM = 30;

  private final Messages messages;
  private final Grid grid;

  public LabelWriter(Messages messages, Grid grid) {
    this.messages = messages;
    this.grid = grid;
  }

  /**
   * What somebody is given of an issue.
   *
   * @param issue such as "valley/4"
   * @param copies numbers of the copies that the supplements are for; none where only a slip is
   *     given
   */
  public record Given(String issue, List<String> copies) {
    /** Copies the list. */
    public Given {
      copies = List.copyOf(copies);
    }
  }

  /**
   * Whose label it is.
   *
   * @param depot empty where it is not known
   */
  public record Addressed(String name, String depot, List<Given> given) {
    /** Copies the list. */
    public Addressed {
      given = List.copyOf(given);
    }
  }

  /**
   * The sheets.
   *
   * @param issue whose date and fingerprint the file is known by
   * @param skip so many labels of the first sheet are used up already
   */
  public Labels of(CoverIssue issue, List<Addressed> people, int skip) {
    List<Label> all = new ArrayList<>();
    for (int i = 0; i < skip; i++) {
      all.add(Label.FREE);
    }
    people.forEach(each -> all.addAll(labels(each)));
    List<List<Label>> sheets = new ArrayList<>();
    for (int i = 0; i < all.size(); i += grid.places()) {
      sheets.add(all.subList(i, Math.min(all.size(), i + grid.places())));
    }
    return new Labels(
        "en-GB",
        messages.text("labels.title"),
        messages.text("labels.subject"),
        "",
        issue,
        grid,
        sheets);
  }

  private List<Label> labels(Addressed each) {
    double widthMm = grid.widthMm() - 2 * EDGE_MM;
    List<String> name = NAME.lines(each.name(), widthMm, grid.heightMm() < TALL_MM ? 1 : 2);
    double free = grid.heightMm() - 2 * EDGE_MM - NAME.heightMm() * name.size();
    int room = Math.max(2, (int) (free / LINE.heightMm()));
    List<List<String>> pieces = pieces(each, widthMm, each.depot().isEmpty() ? room : room - 1);
    if (pieces.size() > 1) {
      pieces = pieces(each, widthMm, room - 1);
    }
    List<Label> labels = new ArrayList<>();
    for (List<String> piece : pieces) {
      int number = labels.size() + 1;
      String under =
          pieces.size() == 1
              ? each.depot()
              : messages.text(
                  each.depot().isEmpty() ? "labels.piece" : "labels.piece-at",
                  number,
                  pieces.size(),
                  each.depot());
      labels.add(new Label(name, String.join("", LINE.lines(under, widthMm, 1)), piece));
    }
    return labels;
  }

  /** What is given, as much on a label as it has room for; what has room on one is not divided. */
  private List<List<String>> pieces(Addressed each, double widthMm, int room) {
    List<List<String>> pieces = new ArrayList<>();
    int free = 0;
    for (Given given : each.given()) {
      List<String> lines = LINE.lines(words(given), widthMm, Integer.MAX_VALUE);
      free = lines.size() <= room && lines.size() > free ? 0 : free;
      for (String line : lines) {
        if (free == 0) {
          pieces.add(new ArrayList<>());
          free = room;
        }
        pieces.get(pieces.size() - 1).add(line);
        free--;
      }
    }
    return pieces;
  }

  private String words(Given given) {
    if (given.copies().isEmpty()) {
      return messages.text("labels.slip", given.issue());
    }
    return messages.text(
        given.copies().size() == 1 ? "labels.copy" : "labels.copies",
        given.issue(),
        String.join(", ", given.copies()));
  }

  /**
   * A size of type.
   *
   * @param letterMm what a small letter takes, narrow and wide ones apart
   * @param heightMm what a line takes
   */
  private record Type(double letterMm, double heightMm) {
    /** The text in lines, at spaces where there are any; what has no room is left out: "…". */
    List<String> lines(String text, double widthMm, int most) {
      List<String> lines = new ArrayList<>();
      String rest = text.strip();
      while (!rest.isEmpty() && lines.size() < most) {
        int fits = fits(rest, widthMm);
        if (fits < rest.length() && lines.size() == most - 1) {
          lines.add(rest.substring(0, fits(rest, widthMm - letterMm * 2)).strip() + "…");
          break;
        }
        int space = fits < rest.length() ? rest.lastIndexOf(' ', fits) : fits;
        int end = space > 0 ? space : fits;
        lines.add(rest.substring(0, end).strip());
        rest = rest.substring(end).strip();
      }
      return lines;
    }

    private int fits(String text, double widthMm) {
      double takes = 0;
      int end = 0;
      while (end < text.length()) {
        takes += letterMm * width(text.charAt(end));
        if (takes > widthMm) {
          return end;
        }
        end++;
      }
      return end;
    }

    /** In small letters. */
    private static double width(char letter) {
      if ("MWmw@%—…".indexOf(letter) >= 0 || (letter > 'ɏ' && Character.isUpperCase(letter))) {
        return 1.6;
      }
      if (" fijlrt.,:;'!|()/-".indexOf(letter) >= 0) {
        return 0.65;
      }
      return Character.isUpperCase(letter) || letter > 'ɏ' ? 1.3 : 1;
    }
  }
}
