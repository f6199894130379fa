package gradepost.source;

import gradepost.pack.TemporaryRestriction;
import gradepost.policy.Policy;
import gradepost.route.Route;
import gradepost.route.audit.CantLimits;
import gradepost.source.file.FileHeading;
import gradepost.source.file.FileKind;
import gradepost.source.file.FileNames;
import gradepost.source.file.Input;
import gradepost.source.file.LineEnds;
import gradepost.source.file.MemoryFiles;
import gradepost.source.file.SourceFiles;
import gradepost.source.notice.Notices;
import gradepost.source.notice.NoticesTable;
import gradepost.source.pack.Audit;
import gradepost.source.pack.NoticeFile;
import gradepost.source.pack.PackFile;
import gradepost.source.pack.PackReader;
import gradepost.source.pack.Shelves;
import gradepost.source.policy.PolicyTable;
import gradepost.source.ride.RideFile;
import gradepost.source.route.RouteFrame;
import gradepost.source.route.RouteTable;
import gradepost.source.stock.StockTable;
import gradepost.stock.Stock;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Reading;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.yaml.snakeyaml.nodes.Node;

/**
 * The way in: reads any of the five kinds of file, a pack with all that it names. What several
 * packs name is read once, so that one of these serves a whole folder of them.
 */
public final class Sources {
  private final SourceFiles files;
  private final Consumer<String> packsRead;
  private final Shelves shelves;
  private final Map<String, Reading<PackFile>> packs = new ConcurrentHashMap<>();

  public Sources(SourceFiles files) {
    this(files, name -> {});
  }

  /**
   * The same; what others with these shelves have read is not read again.
   *
   * @param shelves what several of these have in common
   */
  public Sources(SourceFiles files, Shelves shelves) {
    this(files, name -> {}, shelves);
  }

  /**
   * The same with somebody who is told of readings.
   *
   * @param packsRead is told the name of each pack when its files are read; not when a reading that
   *     is known still holds, nor when only its route or its notices are asked for
   */
  public Sources(SourceFiles files, Consumer<String> packsRead) {
    this(files, packsRead, new Shelves());
  }

  private Sources(SourceFiles files, Consumer<String> packsRead, Shelves shelves) {
    this.files = files;
    this.packsRead = packsRead;
    this.shelves = shelves;
  }

  /** Reads a route by itself, and audits it. */
  public Reading<Route> route(String name) {
    return alone(name, FileKind.ROUTE, RouteFrame.UNKNOWN, Sources::audited);
  }

  /** A route by itself has no policy: the usual limits of cant apply. */
  private static Optional<Route> audited(Node root, Reader in) {
    Optional<Route> route = RouteTable.read(root, in);
    route.ifPresent(r -> Audit.of(r, CantLimits.USUAL, in).all().forEach(in::add));
    return route;
  }

  /** Reads a type of train by itself. */
  public Reading<Stock> stock(String name) {
    return alone(
        name,
        FileKind.STOCK,
        RouteFrame.UNKNOWN,
        (root, in) -> StockTable.STOCK.read(root, "the file", in));
  }

  /** Reads a policy by itself. */
  public Reading<Policy> policy(String name) {
    return alone(
        name,
        FileKind.POLICY,
        RouteFrame.UNKNOWN,
        (root, in) -> PolicyTable.POLICY.read(root, "the file", in));
  }

  /** Notices on a route that has been read. */
  public Reading<Notices> restrictions(String name, Route route) {
    return alone(
        name,
        FileKind.RESTRICTIONS,
        RouteFrame.of(route),
        (root, in) -> NoticesTable.NOTICES_FILE.read(root, "the file", in));
  }

  /** Notices to be taken into packs, from YAML or CSV. */
  public NoticeFile noticeFile(String name) {
    return new NoticeFile(files.read(name), name);
  }

  /** A pack whose files still hold what they held when it was last read here is not read anew. */
  public Reading<PackFile> pack(String name) {
    return Optional.ofNullable(packs.get(name))
        .filter(there -> there.found().filter(pack -> stillThere(name, pack)).isPresent())
        .orElseGet(
            () -> {
              Reading<PackFile> reading = read(files, name);
              if (reading.found().isPresent()) {
                packs.put(name, reading);
              }
              return reading;
            });
  }

  private boolean stillThere(String name, PackFile pack) {
    return pack.inputs().stream().allMatch(input -> stillThere(name, input));
  }

  private boolean stillThere(String pack, Input input) {
    return files
        .read(FileNames.seenFrom(pack, input.name()))
        .held()
        .filter(now -> LineEnds.same(now.bytes(), input.bytes()))
        .isPresent();
  }

  /** The pack of these inputs, its own file the first, whatever lies on the disk by now. */
  public Reading<PackFile> pack(List<Input> inputs) {
    return read(new MemoryFiles(inputs), inputs.get(0).name());
  }

  /** What a pack is called; nothing else of it is read. */
  public String idOf(String pack) {
    return new PackReader(files, shelves, pack).id();
  }

  /** Whether a file opens as a pack, whatever may be wrong in it. */
  public boolean opensPack(String pack) {
    return new PackReader(files, shelves, pack).opens();
  }

  /** The route of a pack; nothing else of the pack is read. */
  public Reading<Route> routeOf(String pack) {
    return new PackReader(files, shelves, pack).route();
  }

  /** The notices of the pack of these inputs; nothing of it is read but these and its route. */
  public Reading<List<TemporaryRestriction>> noticesOf(List<Input> inputs) {
    return new PackReader(new MemoryFiles(inputs), shelves, inputs.get(0).name()).notices();
  }

  private Reading<PackFile> read(SourceFiles from, String name) {
    packsRead.accept(name);
    return new PackReader(from, shelves, name).read();
  }

  /** The file of a ride: what can be known of it before there is a plan to lay it against. */
  public RideFile rideFile(String name) {
    return RideFile.of(files, name);
  }

  /** What kind of file it says that it is. */
  public Reading<FileKind> kind(String name) {
    Reader in = new Reader(name, RouteFrame.UNKNOWN);
    Optional<FileKind> kind =
        FileHeading.load(files.read(name), in).flatMap(root -> FileHeading.stated(root, in));
    return Reading.of(kind, in.problems());
  }

  /**
   * All that is wrong with a file of any kind. A file of restrictions by itself has no route: its
   * places are read as texts, and compared with the route when a pack names both.
   */
  public Problems check(String name) {
    Reading<FileKind> kind = kind(name);
    return kind.match(
        good ->
            switch (good.value()) {
              case ROUTE -> route(name).problems();
              case STOCK -> stock(name).problems();
              case POLICY -> policy(name).problems();
              case RESTRICTIONS -> notices(name);
              case PACK -> pack(name).problems();
            },
        rejected -> rejected.problems());
  }

  private Problems notices(String name) {
    Reader in = new Reader(name, RouteFrame.UNKNOWN);
    FileHeading.load(files.read(name), in)
        .ifPresent(root -> NoticesTable.NOTICES_FILE.read(root, "the file", in));
    return in.problems();
  }

  private <T> Reading<T> alone(
      String name, FileKind kind, RouteFrame frame, BiFunction<Node, Reader, Optional<T>> read) {
    Reader in = new Reader(name, frame);
    Optional<T> value =
        FileHeading.load(files.read(name), in)
            .filter(root -> FileHeading.isKind(root, kind, in))
            .flatMap(root -> read.apply(root, in));
    return Reading.of(value, in.problems());
  }
}
