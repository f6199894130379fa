package gradepost.source.pack;

import gradepost.pack.TemporaryRestriction;
import gradepost.route.Route;
import gradepost.source.file.FileNames;
import gradepost.source.file.Input;
import gradepost.source.notice.NoticeText;
import gradepost.source.notice.NoticesTable;
import gradepost.source.route.SpeedTables;
import gradepost.units.MomentStyle;
import gradepost.yaml.Key;
import gradepost.yaml.Reader;
import gradepost.yaml.YamlText;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.DumperOptions.FlowStyle;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.nodes.CollectionNode;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * The files of a pack with a notice taken in and the issue moved on. Only what changes is written
 * anew; whatever else stands in a file, comments too, stays as it was typed.
 */
public final class Amendment {
  /** A stretch of a text, in UTF-16 units, and what is to stand there. */
  private record Cut(int from, int to, String by) {}

  /**
   * The inputs with these notices: one that stands under the same reference is replaced, any other
   * is added to the first file of restrictions.
   */
  public static List<Input> withNotices(PackFile pack, List<TemporaryRestriction> notices) {
    Map<String, TemporaryRestriction> open = new LinkedHashMap<>();
    notices.forEach(n -> open.put(n.reference(), n));
    List<String> files = restrictionFiles(pack);
    Map<String, byte[]> changed = new LinkedHashMap<>();
    for (String file : files) {
      changed.put(file, replaced(input(pack, file), open, pack.route()));
    }
    if (!open.isEmpty()) {
      String first = files.get(0);
      byte[] bytes = added(changed.getOrDefault(first, new byte[0]), open, pack.route());
      changed.put(first, bytes);
    }
    return pack.inputs().stream()
        .map(i -> new Input(i.name(), changed.getOrDefault(i.name(), i.bytes())))
        .toList();
  }

  /** The same as values: what the restrictions are when the notices are taken in. */
  public static List<TemporaryRestriction> merged(
      List<TemporaryRestriction> before, List<TemporaryRestriction> notices) {
    Map<String, TemporaryRestriction> all = new LinkedHashMap<>();
    before.forEach(n -> all.put(n.reference(), n));
    notices.forEach(n -> all.put(n.reference(), n));
    return List.copyOf(all.values());
  }

  /**
   * The pack file as that of a later issue.
   *
   * @param checkedBy who checked the data of that issue; who checked the last one has not
   */
  public static byte[] issue(
      byte[] packFile,
      int number,
      LocalDateTime issued,
      LocalDateTime validFrom,
      LocalDateTime knownUpTo,
      String supersedes,
      Optional<String> checkedBy) {
    String text = text(packFile);
    MappingNode root = (MappingNode) node(packFile);
    MappingNode issue = (MappingNode) Reader.valueOf(root, PackTable.ISSUE.name()).orElseThrow();
    List<Cut> cuts = new ArrayList<>();
    cut(cuts, text, issue, PackTable.NUMBER, String.valueOf(number));
    cut(cuts, text, issue, PackTable.ISSUED, MomentStyle.MOMENT.format(issued));
    cut(cuts, text, issue, PackTable.VALID_FROM, MomentStyle.MOMENT.format(validFrom));
    cut(cuts, text, issue, PackTable.KNOWN_UP_TO, MomentStyle.MOMENT.format(knownUpTo));
    put(cuts, text, issue, PackTable.SUPERSEDES, supersedes);
    if (checkedBy.isPresent()) {
      put(cuts, text, issue, PackTable.CHECKED_BY, checkedBy.get());
    } else {
      drop(cuts, text, issue, PackTable.CHECKED_BY);
    }
    return applied(text, cuts);
  }

  /**
   * The pack file with other words for some of what is to be said first.
   *
   * @param instead what stands in the place of each item, by the item's words
   */
  public static byte[] highRisk(byte[] packFile, Map<String, String> instead) {
    String text = text(packFile);
    MappingNode root = (MappingNode) node(packFile);
    List<Node> groups = new ArrayList<>(List.of(root));
    Reader.valueOf(root, PackTable.DIRECTIONS.name())
        .ifPresent(list -> groups.addAll(((SequenceNode) list).getValue()));
    List<Cut> cuts = new ArrayList<>();
    for (Node group : groups) {
      for (Node item : saidFirst((MappingNode) group)) {
        String words = instead.getOrDefault(((ScalarNode) item).getValue().strip(), "");
        if (!words.isEmpty()) {
          int from = index(text, item.getStartMark());
          cuts.add(new Cut(from, end(text, item), NoticeText.quoted(words)));
        }
      }
    }
    return applied(text, cuts);
  }

  /** What a group says first, of every formation and of one. */
  private static List<Node> saidFirst(MappingNode group) {
    List<Node> items = new ArrayList<>(listed(group, PackTable.HIGH_RISK));
    for (Node risk : listed(group, PackTable.FORMATION_RISKS)) {
      Reader.valueOf((MappingNode) risk, PackTable.RISK_ITEM.name()).ifPresent(items::add);
    }
    return items;
  }

  private static List<Node> listed(MappingNode group, Key<?> key) {
    return Reader.valueOf(group, key.name())
        .map(list -> ((SequenceNode) list).getValue())
        .orElse(List.of());
  }

  private static void put(
      List<Cut> cuts, String text, MappingNode group, Key<?> key, String words) {
    String quoted = NoticeText.quoted(words);
    if (Reader.valueOf(group, key.name()).isPresent()) {
      cut(cuts, text, group, key, quoted);
      return;
    }
    Mark first = group.getValue().get(0).getKeyNode().getStartMark();
    int at = index(text, first);
    String gap =
        group.getFlowStyle() == FlowStyle.FLOW ? ", " : "\n" + " ".repeat(first.getColumn());
    cuts.add(new Cut(at, at, key.name() + ": " + quoted + gap));
  }

  /** A block loses the whole lines of the key, a comment behind its value too. */
  private static void drop(List<Cut> cuts, String text, MappingNode group, Key<?> key) {
    List<NodeTuple> all = group.getValue();
    for (int i = 0; i < all.size(); i++) {
      int from = index(text, all.get(i).getKeyNode().getStartMark());
      int to = end(text, all.get(i).getValueNode());
      if (!((ScalarNode) all.get(i).getKeyNode()).getValue().equals(key.name())) {
        continue;
      }
      if (group.getFlowStyle() != FlowStyle.FLOW) {
        int next = text.indexOf('\n', to);
        cuts.add(
            new Cut(text.lastIndexOf('\n', from) + 1, next < 0 ? text.length() : next + 1, ""));
      } else if (i + 1 < all.size()) {
        cuts.add(new Cut(from, index(text, all.get(i + 1).getKeyNode().getStartMark()), ""));
      } else {
        cuts.add(new Cut(end(text, all.get(i - 1).getValueNode()), to, ""));
      }
    }
  }

  private static void cut(List<Cut> cuts, String text, MappingNode group, Key<?> key, String by) {
    Node value = Reader.valueOf(group, key.name()).orElseThrow();
    cuts.add(new Cut(index(text, value.getStartMark()), end(text, value), by));
  }

  /** Names of the files of restrictions, as the pack file has them among its inputs. */
  public static List<String> restrictionFiles(PackFile pack) {
    MappingNode root = (MappingNode) node(pack.inputs().get(0).bytes());
    SequenceNode list =
        (SequenceNode) Reader.valueOf(root, PackTable.RESTRICTIONS.name()).orElseThrow();
    return list.getValue().stream()
        .map(n -> FileNames.tidy(((ScalarNode) n).getValue().strip()).orElseThrow())
        .toList();
  }

  private static byte[] input(PackFile pack, String name) {
    return pack.inputs().stream()
        .filter(i -> i.name().equals(name))
        .findFirst()
        .orElseThrow()
        .bytes();
  }

  private static byte[] replaced(
      byte[] bytes, Map<String, TemporaryRestriction> open, Route route) {
    String text = text(bytes);
    SequenceNode list = notices(bytes);
    List<Cut> cuts = new ArrayList<>();
    NoticeText writer = new NoticeText(route);
    for (Node entry : list.getValue()) {
      Optional<TemporaryRestriction> by =
          Reader.valueOf((MappingNode) entry, SpeedTables.REFERENCE.name())
              .map(n -> ((ScalarNode) n).getValue().strip())
              .flatMap(reference -> Optional.ofNullable(open.remove(reference)));
      by.ifPresent(notice -> cuts.add(entry(text, list, entry, writer, notice)));
    }
    return applied(text, cuts);
  }

  private static Cut entry(
      String text, SequenceNode list, Node entry, NoticeText writer, TemporaryRestriction notice) {
    int from = index(text, entry.getStartMark());
    if (list.getFlowStyle() == FlowStyle.FLOW) {
      return new Cut(from, end(text, entry), flow(writer, notice));
    }
    int hyphen = hyphen(text, from);
    int column = hyphen - (text.lastIndexOf('\n', hyphen) + 1);
    String block = writer.yaml(notice, " ".repeat(column)).stripTrailing();
    return new Cut(hyphen, end(text, entry), block.stripLeading());
  }

  private static byte[] added(byte[] bytes, Map<String, TemporaryRestriction> open, Route route) {
    SequenceNode list = notices(bytes);
    NoticeText writer = new NoticeText(route);
    List<TemporaryRestriction> notices = List.copyOf(open.values());
    String text = text(bytes);
    if (list.getValue().isEmpty()) {
      return firstOnes(text, bytes, list, notices, writer);
    }
    Node last = list.getValue().get(list.getValue().size() - 1);
    if (list.getFlowStyle() == FlowStyle.FLOW) {
      StringBuilder by = new StringBuilder();
      notices.forEach(n -> by.append(", ").append(flow(writer, n)));
      return applied(text, List.of(new Cut(end(text, last), end(text, last), by.toString())));
    }
    int hyphen = hyphen(text, index(text, last.getStartMark()));
    String indent = " ".repeat(hyphen - (text.lastIndexOf('\n', hyphen) + 1));
    int lineEnd = text.indexOf('\n', end(text, last));
    StringBuilder by = new StringBuilder(lineEnd < 0 ? "\n" : "");
    notices.forEach(n -> by.append(writer.yaml(n, indent)));
    int at = lineEnd < 0 ? text.length() : lineEnd + 1;
    return applied(text, List.of(new Cut(at, at, by.toString())));
  }

  /** Where there was none, what was stated of there being none goes. */
  private static byte[] firstOnes(
      String text,
      byte[] bytes,
      SequenceNode list,
      List<TemporaryRestriction> notices,
      NoticeText writer) {
    StringBuilder by = new StringBuilder();
    notices.forEach(n -> by.append('\n').append(writer.yaml(n, "  ").stripTrailing()));
    List<Cut> cuts = new ArrayList<>();
    cuts.add(new Cut(index(text, list.getStartMark()), end(text, list), by.toString()));
    MappingNode root = (MappingNode) node(bytes);
    for (NodeTuple tuple : root.getValue()) {
      if (((ScalarNode) tuple.getKeyNode()).getValue().equals(NoticesTable.NONE.name())) {
        int from = index(text, tuple.getKeyNode().getStartMark());
        cuts.add(new Cut(from, end(text, tuple.getValueNode()), ""));
      }
    }
    return applied(text, cuts);
  }

  /** That of an entry which begins there; a comment between them may have hyphens of its own. */
  private static int hyphen(String text, int entry) {
    for (int line = text.lastIndexOf('\n', entry - 1); ; line = text.lastIndexOf('\n', line - 1)) {
      int at = line + 1;
      while (text.charAt(at) == ' ') {
        at++;
      }
      if (text.charAt(at) == '-') {
        return at;
      }
      if (line < 0) {
        throw new IllegalArgumentException("no entry of a list begins at " + entry);
      }
    }
  }

  private static String flow(NoticeText writer, TemporaryRestriction notice) {
    String lines = writer.yaml(notice, "").strip().substring(2);
    return "{" + lines.lines().map(String::strip).reduce((a, b) -> a + ", " + b).orElse("") + "}";
  }

  private static SequenceNode notices(byte[] bytes) {
    return (SequenceNode)
        Reader.valueOf((MappingNode) node(bytes), NoticesTable.NOTICES.name()).orElseThrow();
  }

  private static byte[] applied(String text, List<Cut> cuts) {
    StringBuilder out = new StringBuilder();
    int at = 0;
    for (Cut cut : cuts.stream().distinct().sorted(Comparator.comparingInt(Cut::from)).toList()) {
      out.append(text, at, cut.from()).append(cut.by());
      at = cut.to();
    }
    out.append(text, at, text.length());
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** The end of what is typed: that of a block is where its last word ends. */
  private static int end(String text, Node node) {
    if (node instanceof CollectionNode<?> group
        && group.getFlowStyle() != FlowStyle.FLOW
        && !group.getValue().isEmpty()) {
      Object last = group.getValue().get(group.getValue().size() - 1);
      return end(text, last instanceof NodeTuple tuple ? tuple.getValueNode() : (Node) last);
    }
    int end = index(text, node.getEndMark());
    while (end > 0 && Character.isWhitespace(text.charAt(end - 1))) {
      end--;
    }
    return end;
  }

  private static int index(String text, Mark mark) {
    return text.offsetByCodePoints(0, mark.getIndex());
  }

  private static Node node(byte[] bytes) {
    return YamlText.compose("", bytes, p -> {}).orElseThrow();
  }

  private static String text(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  private Amendment() {}
}
