package gradepost.source.table;

import gradepost.yaml.Reader;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * Brings the entries of one list of a YAML text to what a table says, and touches nothing else:
 * comments, blank lines and the manner of writing stay. An entry that is the same stays byte for
 * byte; of one that differs only the values that differ are replaced.
 */
public final class ListEdit {
  private final String text;
  private final List<String> keys;
  private final List<Replacement> replacements = new ArrayList<>();
  private final String newline;
  private final boolean plain;

  /** Characters from one offset to another give way to others. */
  private record Replacement(int from, int to, String by) {}

  public ListEdit(String text, List<String> keys) {
    this.text = text;
    this.keys = List.copyOf(keys);
    this.newline = text.contains("\r\n") ? "\r\n" : "\n";
    this.plain = text.chars().noneMatch(c -> Character.isSurrogate((char) c));
  }

  /** The cells of an entry, in the order of the keys; empty where a key is left out. */
  public static List<String> cells(MappingNode entry, List<String> keys) {
    return keys.stream().map(k -> Reader.valueOf(entry, k).map(ListEdit::cell).orElse("")).toList();
  }

  private static String cell(Node value) {
    return value instanceof ScalarNode scalar ? scalar.getValue().strip() : InlineYaml.text(value);
  }

  /** Rows of cells, already in the form in which they are written into YAML. */
  public void bring(SequenceNode list, List<List<String>> rows, List<List<String>> written) {
    bring(list, rows, written, false);
  }

  /** The same of a list that may be in a group on one line, which has to stay so. */
  void bring(
      SequenceNode list, List<List<String>> rows, List<List<String>> written, boolean oneLine) {
    List<MappingNode> entries = new ArrayList<>();
    list.getValue().forEach(n -> entries.add((MappingNode) n));
    List<List<String>> present = entries.stream().map(e -> cells(e, keys)).toList();
    if (InlineYaml.flow(list) || entries.isEmpty() || rows.isEmpty()) {
      if (!present.equals(rows)) {
        whole(list, written, oneLine);
      }
      return;
    }
    int[] partner = Alignment.of(present, rows);
    int last = -1;
    for (int r = 0; r < rows.size(); r++) {
      if (partner[r] >= 0) {
        last = partner[r];
        change(entries.get(last), present.get(last), rows.get(r), written.get(r));
      } else if (last >= 0) {
        int at = endOfLine(offset(InlineYaml.end(entries.get(last))));
        String indent = " ".repeat(dash(entries.get(last)) - startOfLine(dash(entries.get(last))));
        add(at, at, newline + indent + "- " + entry(written.get(r)));
      } else {
        int at = startOfLine(dash(entries.get(0)));
        String indent = " ".repeat(dash(entries.get(0)) - at);
        add(at, at, indent + "- " + entry(written.get(r)) + newline);
      }
    }
    for (int e = 0; e < entries.size(); e++) {
      int index = e;
      if (java.util.Arrays.stream(partner).noneMatch(p -> p == index)) {
        int from = startOfLine(dash(entries.get(e)));
        int to = endOfLine(offset(InlineYaml.end(entries.get(e))));
        add(from, Math.min(text.length(), to + (to < text.length() ? newline.length() : 0)), "");
      }
    }
  }

  /** Where the list is on one line or has no entries, it is written anew. */
  private void whole(SequenceNode list, List<List<String>> written, boolean oneLine) {
    int from = offset(list.getStartMark().getIndex());
    int to = offset(InlineYaml.end(list));
    if (written.isEmpty() || oneLine) {
      add(from, to, "[" + String.join(", ", written.stream().map(this::entry).toList()) + "]");
      return;
    }
    int line = startOfLine(from);
    int indent = 0;
    while (line + indent < text.length() && text.charAt(line + indent) == ' ') {
      indent++;
    }
    StringBuilder block = new StringBuilder();
    for (List<String> row : written) {
      block.append(newline).append(" ".repeat(indent + 2)).append("- ").append(entry(row));
    }
    add(text.charAt(from - 1) == ' ' ? from - 1 : from, to, block.toString());
  }

  /** A whole new list at the end of the text. */
  public void append(String key, List<List<String>> written) {
    StringBuilder block = new StringBuilder();
    block.append(key).append(":").append(newline);
    written.forEach(row -> block.append("  - ").append(entry(row)).append(newline));
    appendText(block.toString());
  }

  /** A key of the file goes, with its lines; nothing happens where it is not there. */
  public void drop(MappingNode root, String key) {
    for (NodeTuple tuple : root.getValue()) {
      if (tuple.getKeyNode() instanceof ScalarNode name && name.getValue().equals(key)) {
        int from = startOfLine(offset(name.getStartMark().getIndex()));
        int to = endOfLine(offset(InlineYaml.end(tuple.getValueNode())));
        add(from, Math.min(text.length(), to + newline.length()), "");
      }
    }
  }

  /** Lines at the end of the text, with a blank one before them. */
  void appendText(String block) {
    String gap = text.endsWith("\n") || text.isEmpty() ? newline : newline + newline;
    add(text.length(), text.length(), gap + block);
  }

  private String entry(List<String> cells) {
    return entry(keys, cells);
  }

  /** An entry on one line; a key without a cell is left out. */
  static String entry(List<String> keys, List<String> cells) {
    List<String> parts = new ArrayList<>();
    for (int i = 0; i < keys.size(); i++) {
      if (!cells.get(i).isEmpty()) {
        parts.add(keys.get(i) + ": " + cells.get(i));
      }
    }
    return "{" + String.join(", ", parts) + "}";
  }

  private void change(
      MappingNode entry, List<String> present, List<String> wanted, List<String> written) {
    Map<String, String> added = new LinkedHashMap<>();
    for (int i = 0; i < keys.size(); i++) {
      if (present.get(i).equals(wanted.get(i))) {
        continue;
      }
      Optional<Node> value = Reader.valueOf(entry, keys.get(i));
      if (value.isEmpty()) {
        added.put(keys.get(i), written.get(i));
      } else if (wanted.get(i).isEmpty()) {
        remove(entry, keys.get(i));
      } else {
        int from = offset(value.get().getStartMark().getIndex());
        int to = trimmed(from, offset(InlineYaml.end(value.get())));
        add(from, to, written.get(i));
      }
    }
    int end = trimmed(0, offset(InlineYaml.end(entry)));
    if (InlineYaml.flow(entry)) {
      StringBuilder more = new StringBuilder();
      added.forEach((k, v) -> more.append(", ").append(k).append(": ").append(v));
      add(end - 1, end - 1, more.toString());
    } else if (!added.isEmpty()) {
      int first = offset(entry.getValue().get(0).getKeyNode().getStartMark().getIndex());
      String indent = " ".repeat(first - startOfLine(first));
      StringBuilder more = new StringBuilder();
      added.forEach((k, v) -> more.append(newline).append(indent).append(k + ": " + v));
      int at = endOfLine(end);
      add(at, at, more.toString());
    }
  }

  /** A key with its value; in a group on one line with the comma, else with its lines. */
  private void remove(MappingNode entry, String key) {
    List<NodeTuple> tuples = entry.getValue();
    for (int i = 0; i < tuples.size(); i++) {
      if (((ScalarNode) tuples.get(i).getKeyNode()).getValue().equals(key)) {
        int from = offset(tuples.get(i).getKeyNode().getStartMark().getIndex());
        int to = trimmed(from, offset(InlineYaml.end(tuples.get(i).getValueNode())));
        if (InlineYaml.flow(entry) && i + 1 < tuples.size()) {
          to = offset(tuples.get(i + 1).getKeyNode().getStartMark().getIndex());
        } else if (InlineYaml.flow(entry) && i > 0) {
          from = trimmed(0, offset(InlineYaml.end(tuples.get(i - 1).getValueNode())));
        } else if (!InlineYaml.flow(entry) && i > 0) {
          from = startOfLine(from);
          to = Math.min(text.length(), endOfLine(to) + newline.length());
        } else if (!InlineYaml.flow(entry) && tuples.size() > 1) {
          to = offset(tuples.get(1).getKeyNode().getStartMark().getIndex());
        }
        add(from, to, "");
      }
    }
  }

  private void add(int from, int to, String by) {
    if (to > from || !by.isEmpty()) {
      replacements.add(new Replacement(from, to, by));
    }
  }

  /** The text with everything done; insertions at one place in the order in which they came. */
  public String done() {
    List<Replacement> inOrder = new ArrayList<>(replacements);
    inOrder.sort(Comparator.comparingInt(Replacement::from));
    StringBuilder result = new StringBuilder(text.length());
    int at = 0;
    for (Replacement each : inOrder) {
      result.append(text, at, Math.max(at, each.from())).append(each.by());
      at = Math.max(at, each.to());
    }
    return result.append(text, at, text.length()).toString();
  }

  /** Marks count code points. */
  private int offset(int codePoints) {
    return plain ? codePoints : text.offsetByCodePoints(0, codePoints);
  }

  private int trimmed(int least, int end) {
    int at = end;
    while (at > least && Character.isWhitespace(text.charAt(at - 1))) {
      at--;
    }
    return at;
  }

  private int dash(MappingNode entry) {
    return text.lastIndexOf('-', offset(entry.getStartMark().getIndex()) - 1);
  }

  private int startOfLine(int at) {
    return text.lastIndexOf('\n', at - 1) + 1;
  }

  private int endOfLine(int at) {
    int end = text.indexOf('\n', trimmed(0, at));
    int stop = end < 0 ? text.length() : end;
    return stop > 0 && text.charAt(stop - 1) == '\r' ? stop - 1 : stop;
  }
}
