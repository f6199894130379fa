package gradepost.source.table;

import gradepost.yaml.Reader;
import gradepost.yaml.YamlText;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * Brings a list of groups, each with a list of its own, to what a table says. A group that stays
 * keeps its text, with the comments above it; its own list is changed row by row.
 *
 * @param key of the list of groups
 * @param heads keys of a group that are one text each, its name first
 * @param inner key of the list that each group has
 * @param keys of an entry of that list
 */
public record GroupEdit(String key, List<String> heads, String inner, List<String> keys) {

  /**
   * A group as the table has it.
   *
   * @param head a cell for each of the heads
   * @param rows cells of its own list
   * @param written the same in the form in which they are written into YAML
   */
  public record Group(List<String> head, List<List<String>> rows, List<List<String>> written) {}

  /** The text with these groups and no others, in this order. */
  public String bring(String text, List<Group> groups) {
    String newline = text.contains("\r\n") ? "\r\n" : "\n";
    String changed = text;
    Optional<SequenceNode> list = list(changed);
    if (list.isEmpty()) {
      ListEdit edit = new ListEdit(changed, keys);
      edit.appendText(key + ":" + newline + blocks(groups, "  ", newline));
      return edit.done();
    }
    if (!InlineYaml.flow(list.get()) && !list.get().getValue().isEmpty()) {
      for (Group group : groups) {
        changed = inside(changed, group);
      }
      list = list(changed);
      if (heads(list.orElseThrow()).equals(groups.stream().map(Group::head).toList())) {
        return changed;
      }
      return reordered(changed, list.orElseThrow(), groups, newline);
    }
    int from = offset(changed, list.get().getStartMark().getIndex());
    int to = offset(changed, InlineYaml.end(list.get()));
    String blocks =
        groups.isEmpty() ? "[]" : newline + blocks(groups, "  ", newline).stripTrailing();
    return changed.substring(0, from) + blocks + changed.substring(to);
  }

  /** The list of a group that stays. */
  private String inside(String text, Group group) {
    for (Node each : list(text).orElseThrow().getValue()) {
      MappingNode node = (MappingNode) each;
      Optional<SequenceNode> own = listed(node);
      if (head(node).equals(group.head()) && own.isPresent()) {
        ListEdit edit = new ListEdit(text, keys);
        edit.bring(own.get(), group.rows(), group.written(), InlineYaml.flow(node));
        return edit.done();
      }
    }
    return text;
  }

  private String reordered(String text, SequenceNode list, List<Group> groups, String newline) {
    Map<List<String>, String> present = new LinkedHashMap<>();
    int first = -1;
    int at = -1;
    String indent = "  ";
    for (Node each : list.getValue()) {
      int start = offset(text, each.getStartMark().getIndex());
      int line = text.lastIndexOf('\n', start - 1) + 1;
      if (first < 0) {
        first = line;
        at = line;
        int dash = text.lastIndexOf('-', start - 1);
        indent = " ".repeat(Math.max(0, dash - line));
      }
      int end = text.indexOf('\n', Math.max(line, offset(text, InlineYaml.end(each)) - 1));
      int next = end < 0 ? text.length() : end + 1;
      String own = text.substring(at, next);
      present.put(head((MappingNode) each), end < 0 ? own + newline : own);
      at = next;
    }
    StringBuilder out = new StringBuilder(text.substring(0, first));
    for (Group group : groups) {
      String own = present.get(group.head());
      out.append(own == null ? block(group, indent, newline) : own);
    }
    return out.append(text.substring(at)).toString();
  }

  private String blocks(List<Group> groups, String indent, String newline) {
    StringBuilder out = new StringBuilder();
    groups.forEach(g -> out.append(block(g, indent, newline)));
    return out.toString();
  }

  private String block(Group group, String indent, String newline) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < heads.size(); i++) {
      String lead = i == 0 ? "- " : "  ";
      String value = InlineYaml.scalar(group.head().get(i));
      out.append(indent).append(lead).append(heads.get(i)).append(": ").append(value);
      out.append(newline);
    }
    out.append(indent).append("  ").append(inner).append(':').append(newline);
    for (List<String> row : group.written()) {
      out.append(indent).append("    - ").append(ListEdit.entry(keys, row)).append(newline);
    }
    return out.toString();
  }

  private Optional<SequenceNode> list(String text) {
    return YamlText.compose("", text.getBytes(StandardCharsets.UTF_8), p -> {})
        .filter(MappingNode.class::isInstance)
        .flatMap(root -> Reader.valueOf((MappingNode) root, key))
        .filter(SequenceNode.class::isInstance)
        .map(SequenceNode.class::cast)
        .filter(l -> l.getValue().stream().allMatch(MappingNode.class::isInstance));
  }

  private Optional<SequenceNode> listed(MappingNode group) {
    return Reader.valueOf(group, inner)
        .filter(SequenceNode.class::isInstance)
        .map(SequenceNode.class::cast);
  }

  private List<List<String>> heads(SequenceNode list) {
    List<List<String>> out = new ArrayList<>();
    list.getValue().forEach(each -> out.add(head((MappingNode) each)));
    return out;
  }

  /** The cells of a group by which it is known. */
  public List<String> head(MappingNode group) {
    return heads.stream()
        .map(
            h ->
                Reader.valueOf(group, h)
                    .filter(ScalarNode.class::isInstance)
                    .map(n -> ((ScalarNode) n).getValue().strip())
                    .orElse(""))
        .toList();
  }

  private static int offset(String text, int codePoints) {
    return text.offsetByCodePoints(0, codePoints);
  }
}
