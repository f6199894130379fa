package gradepost.source.pack;

import gradepost.pack.TemporaryRestriction;
import gradepost.route.Route;
import gradepost.source.file.FileHeading;
import gradepost.source.file.FileKind;
import gradepost.source.file.SourceFiles.Bytes;
import gradepost.source.file.SourceFiles.Content;
import gradepost.source.notice.NoticeAudit;
import gradepost.source.notice.NoticeCsv;
import gradepost.source.notice.NoticeRoutes;
import gradepost.source.notice.NoticesTable;
import gradepost.source.route.RouteFrame;
import gradepost.source.route.SpeedTables;
import gradepost.yaml.ListOf;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Reading;
import gradepost.yaml.YamlText;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * A file of notices to be applied: YAML, or CSV where its name ends so. It is read from the disk
 * once, so that all packs get the same.
 */
public final class NoticeFile {
  private final String name;
  private final Optional<SequenceNode> list;
  private final Problems ofFile;

  public NoticeFile(Content content, String name) {
    Reader in = new Reader(name, RouteFrame.UNKNOWN);
    this.name = name;
    this.list = list(content, name, in);
    this.ofFile = in.problems();
  }

  /**
   * What is wrong with the file itself, whatever packs it is for: known before any of them is read.
   */
  public Problems ofFile() {
    return ofFile;
  }

  /** Whether it can be read and has no restriction in it. */
  public boolean isEmpty() {
    return list.filter(all -> all.getValue().isEmpty()).isPresent();
  }

  /** Whether every notice is for one of these routes. */
  public Problems fits(Collection<Route> routes) {
    // What is wrong with the file itself is told where it is read for a route.
    return NoticeRoutes.check(list.map(SequenceNode::getValue).orElse(List.of()), name, routes);
  }

  /**
   * Whether it may say anything of a pack of this route: there is a problem, or a notice that names
   * no route or this one.
   */
  public boolean mayConcern(String route) {
    return list.isEmpty()
        || !ofFile.all().isEmpty()
        || list.get().getValue().stream()
            .anyMatch(
                each ->
                    NoticeRoutes.route(each)
                        .filter(named -> !named.getValue().strip().equals(route))
                        .isEmpty());
  }

  /** The notices that are for the route of this pack; those that name another are left unread. */
  public Reading<List<TemporaryRestriction>> read(PackFile pack) {
    Route route = pack.route();
    Reader in = new Reader(name, RouteFrame.of(route));
    ofFile.all().forEach(in::add);
    Optional<List<TemporaryRestriction>> notices =
        list.flatMap(all -> NoticesTable.NOTICES.kind().read(of(route, all), "notices", in));
    notices.ifPresent(
        all -> {
          new NoticeAudit(route, in).all(all);
          new NoticeSequel(pack, in).all(all);
        });
    Problems problems = in.problems();
    return Reading.of(notices.filter(n -> !problems.hasErrors()), problems);
  }

  /** The entries as they stand in the file. */
  private static Optional<SequenceNode> list(Content content, String name, Reader in) {
    Optional<Node> list;
    Optional<Bytes> held = content.held();
    if (name.toLowerCase(Locale.ROOT).endsWith(".csv") && held.isPresent()) {
      list =
          YamlText.decode(in.file(), held.get().bytes(), in::add)
              .flatMap(text -> NoticeCsv.compose(text, in));
    } else {
      list =
          FileHeading.load(content, in)
              .filter(root -> FileHeading.isKind(root, FileKind.RESTRICTIONS, in))
              .filter(root -> NoticesTable.NOTICES_FILE.open(root, "the file", in).isPresent())
              .flatMap(root -> Reader.valueOf((MappingNode) root, NoticesTable.NOTICES.name()));
    }
    if (list.isPresent() && !(list.get() instanceof SequenceNode)) {
      NoticesTable.NOTICES.kind().read(list.get(), "notices", in);
      return Optional.empty();
    }
    return list.map(SequenceNode.class::cast).filter(all -> bounded(all, in));
  }

  private static boolean bounded(SequenceNode all, Reader in) {
    if (all.getValue().size() > ListOf.MOST) {
      // The list itself says so, and reads no further.
      NoticesTable.NOTICES.kind().read(all, NoticesTable.NOTICES.name(), in);
      return false;
    }
    return all.getValue().stream().allMatch(each -> SpeedTables.NOTICE.bounded(each, in));
  }

  private static SequenceNode of(Route route, SequenceNode all) {
    List<Node> kept = new ArrayList<>();
    for (Node each : all.getValue()) {
      Optional<String> named = NoticeRoutes.route(each).map(n -> n.getValue().strip());
      if (named.isEmpty() || named.get().equals(route.name())) {
        kept.add(each);
      }
    }
    return new SequenceNode(
        all.getTag(), true, kept, all.getStartMark(), all.getEndMark(), all.getFlowStyle());
  }
}
