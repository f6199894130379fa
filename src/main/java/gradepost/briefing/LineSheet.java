package gradepost.briefing;

import gradepost.briefing.chart.LineChart;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * One sheet of the line, drawn and told: to scale on the left, and level with it what is there and
 * what to do.
 *
 * @param id the target of links
 * @param title the same in every issue
 */
public record LineSheet(String id, String title, LineChart chart, List<Row> rows) {

  /**
   * Everything that is told of one place.
   *
   * @param speed of the run there; empty text where it does not come
   * @param what is there
   * @param todo what to do there: each instruction of the plan once
   * @param heading a station
   * @param link the anchor of the approach that it belongs to; empty text where there is none
   * @param changed since the issue before
   * @param pictures of what is there, but for those on the plates
   */
  public record Row(
      String place,
      String speed,
      List<String> what,
      List<String> todo,
      boolean heading,
      String link,
      boolean changed,
      Set set,
      List<Shown> pictures) {
    /** One without pictures. */
    public Row(
        String place,
        String speed,
        List<String> what,
        List<String> todo,
        boolean heading,
        String link,
        boolean changed,
        Set set) {
      this(place, speed, what, todo, heading, link, changed, set, List.of());
    }

    public Row {
      what = List.copyOf(what);
      todo = List.copyOf(todo);
      pictures = List.copyOf(pictures);
    }

    /** All that is read and seen in it on paper. */
    public List<Object> told() {
      List<Object> words = List.of(place, speed, what, todo, heading);
      List<Shown> seen = pictures.stream().filter(Shown::onPaper).toList();
      return seen.isEmpty() ? words : Stream.concat(words.stream(), Stream.of(seen)).toList();
    }

    private Row with(String anchor, boolean differs) {
      return new Row(place, speed, what, todo, heading, anchor, differs, set, pictures);
    }
  }

  /**
   * How a row is set on paper.
   *
   * @param place its lines, as {@code what} and {@code todo}
   * @param beside whether what is there stands beside what there is to do, not above it
   * @param heightPx CSS pixels to the next row
   */
  public record Set(
      List<String> place, List<String> what, List<String> todo, boolean beside, int heightPx) {
    public Set {
      place = List.copyOf(place);
      what = List.copyOf(what);
      todo = List.copyOf(todo);
    }
  }

  public LineSheet {
    rows = List.copyOf(rows);
  }

  /** The same with a mark on each row that is not known. */
  public LineSheet marked(Predicate<Row> known) {
    return new LineSheet(
        id, title, chart, rows.stream().map(r -> r.with(r.link(), !known.test(r))).toList());
  }

  /** The same; a link that leads out of the document is none. */
  public LineSheet linkedTo(Predicate<String> anchors) {
    return new LineSheet(
        id,
        title,
        chart,
        rows.stream()
            .map(r -> r.with(anchors.test(r.link()) ? r.link() : "", r.changed()))
            .toList());
  }
}
