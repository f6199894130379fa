package gradepost.source.pack;

import gradepost.pack.PaperKind;
import gradepost.pack.Pictures;
import gradepost.pack.TemporaryRestriction;
import gradepost.policy.Policy;
import gradepost.route.Route;
import gradepost.route.audit.CantLimits;
import gradepost.source.file.FileHeading;
import gradepost.source.file.FileKind;
import gradepost.source.file.FileMistakes;
import gradepost.source.file.FileNames;
import gradepost.source.file.Input;
import gradepost.source.file.LineEnds;
import gradepost.source.file.SourceFiles;
import gradepost.source.file.SourceFiles.Content;
import gradepost.source.notice.NoticeAudit;
import gradepost.source.notice.Notices;
import gradepost.source.notice.NoticesTable;
import gradepost.source.pack.PackTable.TypedPack;
import gradepost.source.policy.PolicyAgainstStock;
import gradepost.source.policy.PolicyTable;
import gradepost.source.route.RouteFrame;
import gradepost.source.route.RouteTable;
import gradepost.source.route.SpeedTables;
import gradepost.source.stock.StockTable;
import gradepost.stock.Stock;
import gradepost.units.PrintedText;
import gradepost.yaml.Key;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Reading;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.Values;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.yaml.snakeyaml.nodes.Node;

/** Reads a pack, the files that it names, and then each against the others. */
public final class PackReader {
  private final SourceFiles files;
  private final Shelves shelves;
  private final Reader in;
  private final Map<String, Input> inputs = new LinkedHashMap<>();
  private Problems fromFiles = Problems.NONE;

  public PackReader(SourceFiles files, Shelves shelves, String name) {
    this.files = files;
    this.shelves = shelves;
    this.in = new Reader(name, RouteFrame.UNKNOWN);
  }

  /** One file that the pack names, and how it was read, for checks that come later. */
  private record Read<T>(T value, Reader in) {}

  /** The pack with all that it names, or what is wrong. */
  public Reading<PackFile> read() {
    Optional<Values> opened = open();
    if (opened.isEmpty()) {
      return new Reading.Rejected<>(in.problems());
    }
    Values values = opened.get();
    boolean good = PackTable.PACK.readAll(PackTable.PACK.keys(), values, in);
    Optional<TypedPack> typed = PackTable.PACK.finish(values, good, 0);
    Optional<PackFile> pack = resolve(values, typed);
    return done(pack);
  }

  /**
   * What the pack is called. A file that is broken elsewhere may still have a line that says it;
   * else it is called as its file.
   */
  public String id() {
    Optional<Values> opened = opened(PackTable.ID);
    return opened
        .flatMap(v -> v.find(PackTable.ID))
        .or(() -> opened.isPresent() ? Optional.empty() : idOfBroken())
        .orElseGet(this::nameOfFile);
  }

  private Optional<String> idOfBroken() {
    return files
        .read(in.file())
        .held()
        .flatMap(held -> PackId.lineOf(new String(held.bytes(), StandardCharsets.UTF_8)));
  }

  /** Whether the file opens as a pack, whatever may be wrong in it. */
  public boolean opens() {
    return open().isPresent();
  }

  private String nameOfFile() {
    return PackId.of(FileNames.last(in.file()));
  }

  /** The route alone, for those who need no more; what is wrong elsewhere is not looked at. */
  public Reading<Route> route() {
    return done(opened(PackTable.ROUTE).flatMap(this::route).map(Read::value));
  }

  /** The notices alone, in the order of the files. */
  public Reading<List<TemporaryRestriction>> notices() {
    return done(
        opened(PackTable.ROUTE, PackTable.RESTRICTIONS)
            .map(values -> all(notices(values, route(values)))));
  }

  private static List<TemporaryRestriction> all(List<Read<Notices>> read) {
    return read.stream().flatMap(n -> n.value().all().stream()).toList();
  }

  private <T> Reading<T> done(Optional<T> value) {
    Problems problems = in.problems().and(fromFiles);
    return Reading.of(value.filter(v -> !problems.hasErrors()), problems);
  }

  /** The pack file by itself, with only these of its keys read. */
  private Optional<Values> opened(Key<?>... some) {
    Optional<Values> opened = open();
    opened.ifPresent(values -> PackTable.PACK.readAll(List.of(some), values, in));
    return opened;
  }

  private Optional<Values> open() {
    Content content = files.read(in.file());
    PrintedText.obstacle(FileNames.last(in.file()))
        .ifPresent(
            why ->
                in.error(
                    new SourcePosition(in.file(), 1, 1),
                    PackMistakes.NAME_NOT_PRINTABLE.with(why)));
    Optional<Values> opened =
        FileHeading.load(content, in)
            .filter(root -> FileHeading.isKind(root, FileKind.PACK, in))
            .flatMap(root -> PackTable.PACK.open(root, "the file", in));
    if (opened.isPresent()) {
      String own = FileNames.last(in.file());
      inputs.put(own, new Input(own, LineEnds.plain(content.held().orElseThrow().bytes())));
    }
    return opened;
  }

  private Optional<Read<Route>> route(Values values) {
    return named(values, PackTable.ROUTE, FileKind.ROUTE, shelves.routes, RouteTable::read);
  }

  private Optional<PackFile> resolve(Values values, Optional<TypedPack> typed) {
    Optional<Read<Route>> route = route(values);
    Optional<Read<Stock>> stock =
        named(
            values,
            PackTable.STOCK,
            FileKind.STOCK,
            shelves.stocks,
            (root, reader) -> StockTable.STOCK.read(root, "the file", reader));
    Optional<Read<Policy>> policy =
        named(
            values,
            PackTable.POLICY,
            FileKind.POLICY,
            shelves.policies,
            (root, reader) -> PolicyTable.POLICY.read(root, "the file", reader));
    List<Read<Notices>> notices = notices(values, route);
    List<gradepost.stock.Formation> formations =
        stock.map(s -> Formations.named(values, s.value())).orElse(List.of());
    route.ifPresent(r -> audit(r, policy.map(p -> p.value().cant()).orElse(CantLimits.USUAL)));
    if (stock.isPresent() && policy.isPresent()) {
      Reader reader = new Reader(policy.get().in());
      PolicyAgainstStock.check(policy.get().value(), stock.get().value(), formations, reader);
      fromFiles = fromFiles.and(reader.problems());
    }
    List<DirectionPart> directions = new ArrayList<>();
    if (route.isPresent()) {
      DirectionResolver resolver = new DirectionResolver(route.get().value(), in);
      values
          .find(PackTable.DIRECTIONS)
          .ifPresent(all -> all.forEach(d -> resolver.resolve(d).ifPresent(directions::add)));
    }
    stock.ifPresent(s -> Formations.ofRisks(values, in, s.value()));
    if (stock.isPresent() && policy.isPresent()) {
      Reader reader = new Reader(policy.get().in());
      new Editions(stock.get().value(), policy.get().value(), formations, in, reader).check(values);
      fromFiles = fromFiles.and(reader.problems());
    }
    signOffHasRules(values, policy.map(Read::value));
    if (typed.isEmpty() || route.isEmpty() || stock.isEmpty() || policy.isEmpty()) {
      return Optional.empty();
    }
    Pictures pictures = pictures(values, route.get());
    TypedPack pack = typed.get();
    List<TemporaryRestriction> all = all(notices);
    return Optional.of(
        new PackFile(
            pack.id().orElseGet(this::nameOfFile),
            pack.title(),
            route.get().value(),
            stock.get().value(),
            policy.get().value(),
            all,
            notices.stream().flatMap(n -> n.value().none().stream()).toList(),
            directions,
            formations,
            pack.load(),
            pack.issue(),
            pack.highRisk(),
            pack.formationRisks(),
            pack.accepted(),
            pack.cards(),
            pack.papers(),
            pack.editions(),
            pictures,
            List.copyOf(inputs.values()),
            new Origins(readers(route, notices))));
  }

  private Pictures pictures(Values values, Read<Route> route) {
    Reader reader = new Reader(route.in());
    String reference =
        values.find(PackTable.ROUTE).flatMap(FileNames::tidy).orElse(route.in().file());
    PictureReader pictures = new PictureReader(files, reader, reference);
    Pictures found = pictures.of(route.value());
    pictures.inputs().forEach(i -> inputs.put(i.name(), i));
    fromFiles = fromFiles.and(reader.problems());
    return found;
  }

  private void audit(Read<Route> route, CantLimits limits) {
    fromFiles =
        fromFiles.and(
            shelves.audits.get(
                new Shelves.Audited(route.in(), limits),
                key -> Audit.of(route.value(), limits, route.in())));
  }

  /** Every reader, the pack's own first, so that any record can be found again in its file. */
  private List<Reader> readers(Optional<Read<Route>> route, List<Read<Notices>> notices) {
    List<Reader> readers = new ArrayList<>(List.of(in));
    route.ifPresent(r -> readers.add(r.in()));
    notices.forEach(n -> readers.add(n.in()));
    return readers;
  }

  private void signOffHasRules(Values values, Optional<Policy> policy) {
    boolean wanted =
        values.find(PackTable.PAPERS).filter(p -> p.stream().anyMatch(PaperKind::asks)).isPresent();
    if (wanted && policy.isPresent() && policy.get().signOff().isEmpty()) {
      values.error(PackTable.PAPERS, PackMistakes.NO_RULES_FOR_SIGN_OFF);
    }
  }

  private List<Read<Notices>> notices(Values values, Optional<Read<Route>> route) {
    RouteFrame frame = route.map(r -> RouteFrame.of(r.value())).orElse(RouteFrame.UNKNOWN);
    List<Read<Notices>> notices = new ArrayList<>();
    Map<String, SourcePosition> references = new LinkedHashMap<>();
    List<String> names = values.find(PackTable.RESTRICTIONS).orElse(List.of());
    for (int i = 0; i < names.size(); i++) {
      file(
              names.get(i),
              values.spot(PackTable.RESTRICTIONS, i),
              FileKind.RESTRICTIONS,
              frame,
              shelves.notices,
              (root, reader) -> NoticesTable.NOTICES_FILE.read(root, "the file", reader))
          .ifPresent(
              read -> {
                notices.add(read);
                route.ifPresent(r -> features(read, r.value()));
                uniqueReferences(read, references);
              });
    }
    return notices;
  }

  private void features(Read<Notices> read, Route route) {
    Reader reader = new Reader(read.in());
    new NoticeAudit(route, reader).features(read.value().all());
    fromFiles = fromFiles.and(reader.problems());
  }

  /** A reference is the name by which a driver is told of a restriction: one in the whole pack. */
  private void uniqueReferences(Read<Notices> read, Map<String, SourcePosition> references) {
    for (TemporaryRestriction notice : read.value().all()) {
      SourcePosition spot = read.in().spot(notice, SpeedTables.REFERENCE);
      Optional<SourcePosition> first =
          Optional.ofNullable(references.putIfAbsent(notice.reference(), spot));
      first.ifPresent(
          there ->
              fromFiles =
                  fromFiles.and(
                      new Problems(
                          List.of(
                              new Problem(
                                  spot,
                                  Severity.ERROR,
                                  PackMistakes.REFERENCE_TWICE.with(
                                      notice.reference(), there.file(), there))))));
    }
  }

  private <T> Optional<Read<T>> named(
      Values values,
      Key<String> key,
      FileKind kind,
      Shelves.Files<T> shelf,
      BiFunction<Node, Reader, Optional<T>> read) {
    return values
        .find(key)
        .flatMap(name -> file(name, values.spot(key), kind, RouteFrame.UNKNOWN, shelf, read));
  }

  private <T> Optional<Read<T>> file(
      String reference,
      SourcePosition spot,
      FileKind kind,
      RouteFrame frame,
      Shelves.Files<T> shelf,
      BiFunction<Node, Reader, Optional<T>> read) {
    Optional<String> tidy = FileNames.tidy(reference);
    if (tidy.isEmpty()) {
      in.error(
          spot,
          PackMistakes.NAME_NOT_RELATIVE.with(
              reference,
              Optional.of(reference.replace('\\', '/'))
                  .filter(r -> reference.contains("\\") && !reference.contains(":"))));
      return Optional.empty();
    }
    if (!FileNames.isYaml(tidy.get())) {
      in.error(spot, PackMistakes.NAME_NOT_YAML.with(reference));
      return Optional.empty();
    }
    String name = FileNames.seenFrom(in.file(), tidy.get());
    Content content = files.namedBy(in.file(), name);
    Optional<byte[]> held =
        content.match(
            there -> Optional.of(there.bytes()),
            unreadable -> {
              in.error(spot, FileMistakes.NAMED_UNREADABLE.with(name, unreadable));
              return Optional.empty();
            });
    if (held.isEmpty()) {
      return Optional.empty();
    }
    byte[] bytes = held.get();
    inputs.put(tidy.get(), new Input(tidy.get(), LineEnds.plain(bytes)));
    ReadCache.Read<T> found =
        shelf.read.get(
            new ReadCache.Key(new Input(name, bytes), frame),
            key -> {
              Reader reader = new Reader(name, frame);
              Optional<T> value =
                  FileHeading.load(content, reader)
                      .filter(root -> FileHeading.isKind(root, kind, reader))
                      .flatMap(root -> read.apply(root, reader));
              return new ReadCache.Read<>(value, reader);
            });
    fromFiles = fromFiles.and(found.in().problems());
    return found.value().map(v -> new Read<>(v, found.in()));
  }
}
