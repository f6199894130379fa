package gradepost.app.author;

import gradepost.app.author.Checked.At;
import gradepost.app.author.Checked.Strip;
import gradepost.briefing.Messages;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.line.BareStrip;
import gradepost.render.chart.Drawings;
import gradepost.render.chart.Fonts;
import gradepost.render.chart.SvgCanvas;
import gradepost.route.Path;
import gradepost.source.pack.PackFile;
import gradepost.source.route.PlaceKind;
import gradepost.source.route.RouteFrame;
import gradepost.task.Assignment;
import gradepost.yaml.Reader;
import gradepost.yaml.YamlText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Draws the line of a pack, and finds the lines of a text on the drawing. */
final class StripMaker {
  /** Room for so much of the line on every hundred pixels. */
  private static final double METRES_PER_100_PX = 1200;

  private static final int LEAST_PX = 500;
  private static final int MOST_PX = 20_000;
  private static final Pattern MILEAGE = Pattern.compile("-?\\d.{0,30}");

  /** A rule of style within an element is not loaded by a page of ours; an attribute is. */
  private static final Pattern INK = Pattern.compile(" style=\"fill:(var\\(--[a-z]+\\))\"");

  private final Messages messages = Messages.english();

  /** Read when the first strip is drawn: nobody who opens the desk waits for them. */
  private Optional<Fonts> fonts = Optional.empty();

  /**
   * The strip of the first direction and formation of a pack.
   *
   * @param text of a file that the pack uses
   */
  Strip of(PackFile pack, String text) throws IOException {
    Assignment assignment = pack.assignment(pack.directions().get(0), pack.formations().get(0));
    Path path = assignment.path();
    int room =
        (int) Math.max(LEAST_PX, Math.min(MOST_PX, path.lengthM() / METRES_PER_100_PX * 100));
    LineChart chart = BareStrip.of("strip", assignment, messages, room);
    String svg = drawn(chart);
    String of =
        "%s, %s, %s"
            .formatted(
                pack.route().nameOf(assignment.direction()), assignment.trainName(), pack.id());
    return new Strip(of, INK.matcher(svg).replaceAll(" fill=\"$1\""), places(text, path, chart));
  }

  /** One at a time: fonts serve one thread. */
  private synchronized String drawn(LineChart chart) throws IOException {
    if (fonts.isEmpty()) {
      fonts = Optional.of(new Fonts());
    }
    Fonts in = fonts.get();
    return SvgCanvas.svg(chart.id(), chart.name(), chart.says(), Drawings.of(chart, in), in);
  }

  private static List<At> places(String text, Path path, LineChart chart) {
    Map<Integer, At> out = new TreeMap<>();
    Reader in = new Reader("", RouteFrame.of(path.route()));
    YamlText.compose("", text.getBytes(StandardCharsets.UTF_8), p -> {})
        .ifPresent(root -> walk(root, path, in, chart, out));
    return new ArrayList<>(out.values());
  }

  private static void walk(Node node, Path path, Reader in, LineChart chart, Map<Integer, At> out) {
    place(node, in)
        .ifPresent(
            metres -> {
              double px = chart.headPx() + metres.at(path) / path.lengthM() * chart.heightPx();
              double at = px / (chart.headPx() + chart.heightPx());
              int line = node.getStartMark().getLine() + 1;
              out.merge(
                  line,
                  new At(line, at, at),
                  (a, b) -> new At(line, Math.min(a.from(), b.from()), Math.max(a.to(), b.to())));
            });
    if (node instanceof MappingNode group) {
      for (NodeTuple each : group.getValue()) {
        walk(each.getValueNode(), path, in, chart, out);
      }
    } else if (node instanceof SequenceNode list) {
      list.getValue().forEach(each -> walk(each, path, in, chart, out));
    }
  }

  /** Something at a place of a path. */
  private interface Placed {
    double at(Path path);
  }

  private static Optional<Placed> place(Node node, Reader in) {
    boolean may =
        node instanceof ScalarNode scalar
            ? MILEAGE.matcher(scalar.getValue()).matches()
            : node instanceof MappingNode group
                && group.getValue().size() == 2
                && Reader.valueOf(group, "section").isPresent()
                && Reader.valueOf(group, "at").isPresent();
    return may
        ? new PlaceKind().read(node, "place", in).map(found -> path -> path.metresAt(found))
        : Optional.empty();
  }
}
