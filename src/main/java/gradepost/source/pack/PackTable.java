package gradepost.source.pack;

import gradepost.pack.CardSize;
import gradepost.pack.FormationRisk;
import gradepost.pack.IssueDetails;
import gradepost.pack.PaperKind;
import gradepost.route.Accepted;
import gradepost.source.file.FileHeading;
import gradepost.source.file.FileKind;
import gradepost.source.route.AcceptedTable;
import gradepost.source.route.Moment;
import gradepost.stock.LoadCase;
import gradepost.task.Edition;
import gradepost.units.QuantityKind;
import gradepost.units.Span;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import gradepost.yaml.WordMap;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The key table of a pack file, as typed: names not yet resolved. */
public final class PackTable {
  /** A call as typed. */
  record TypedCall(String station, String platform, Optional<Span> dwell, Optional<Span> booked) {}

  /** A direction as typed; junctions are a group whose keys are the names of the junctions. */
  record TypedDirection(
      String direction,
      List<String> lines,
      Map<String, String> junctions,
      List<TypedCall> calls,
      List<String> highRisk,
      List<FormationRisk> formationRisks) {}

  /** A pack as typed. */
  record TypedPack(
      Optional<String> id,
      Optional<String> title,
      String route,
      String stock,
      String policy,
      List<String> restrictions,
      List<TypedDirection> directions,
      List<String> formations,
      LoadCase load,
      IssueDetails issue,
      List<String> highRisk,
      List<FormationRisk> formationRisks,
      List<Accepted> accepted,
      CardSize cards,
      List<PaperKind> papers,
      List<Edition> editions) {}

  private static final Scalar<String> FILE =
      Common.text("the name of a file, as seen from this one");
  private static final Scalar<LocalDateTime> MOMENT = new Moment.DayAndHour();

  static final Key<String> STATION =
      Key.required("station", Common.text("the name of a station"), "The station by its name.");
  static final Key<String> PLATFORM =
      Key.required("platform", Common.text("the number of a platform"), "The platform as signed.");
  static final Key<Span> DWELL =
      Key.optional(
          "dwell",
          Scalar.Quantity.of(QuantityKind.TIME, "0 s", "60 min"),
          "Booked time at the platform; needed between the first call and the last.");
  static final Key<Span> BOOKED =
      Key.optional(
          "booked",
          Scalar.Quantity.of(QuantityKind.TIME, "1 s", "180 min"),
          "Booked running time from the call before, from start to stand; no plan is made for it.");
  static final ObjectSchema<TypedCall> CALL =
      ObjectSchema.of(
          "a call",
          List.of(STATION, PLATFORM, DWELL, BOOKED),
          v -> new TypedCall(v.get(STATION), v.get(PLATFORM), v.find(DWELL), v.find(BOOKED)));
  static final Key<String> DIRECTION =
      Key.required(
          "direction",
          Common.text("the name of one direction of the route"),
          "The direction by the route's own name.");
  static final Key<List<String>> LINES =
      Key.required(
          "lines", ListOf.some(Common.text("the name of a running line")), "The lines taken.");
  static final Key<Map<String, String>> JUNCTIONS =
      Key.preset(
          "junctions",
          new WordMap("the name of a way through the junction"),
          Map.of(),
          "the first route of each",
          "The way taken at each junction, by the junction's name.");
  static final Key<List<TypedCall>> CALLS =
      Key.required(
          "calls",
          new ListOf<>(CALL, 2, 200, List.of()),
          "The calls in order of travel; the train starts at the first and ends at the last.");
  static final Key<List<String>> HIGH_RISK_HERE =
      Key.preset(
          "high-risk",
          ListOf.any(Common.prose("an item in words")),
          List.of(),
          "none",
          "Items of this direction alone that a learner initials one by one.");
  static final Key<String> RISK_FORMATION =
      Key.required(
          "formation", Common.text("the name of a formation"), "The formation that it is about.");
  static final Key<String> RISK_ITEM =
      Key.required("item", Common.prose("an item in words"), "What is said and initialled.");
  static final ObjectSchema<FormationRisk> FORMATION_RISK =
      ObjectSchema.of(
          "an item of one formation",
          List.of(RISK_FORMATION, RISK_ITEM),
          v -> new FormationRisk(v.get(RISK_FORMATION), v.get(RISK_ITEM)));
  static final Key<List<FormationRisk>> FORMATION_RISKS_HERE =
      Key.preset(
          "formation-risks",
          ListOf.any(FORMATION_RISK),
          List.of(),
          "none",
          "Such items that stand on the papers of one formation only.");
  static final ObjectSchema<TypedDirection> DIRECTION_PART =
      ObjectSchema.of(
          "a direction of the pack",
          List.of(DIRECTION, LINES, JUNCTIONS, CALLS, HIGH_RISK_HERE, FORMATION_RISKS_HERE),
          v ->
              new TypedDirection(
                  v.get(DIRECTION),
                  v.get(LINES),
                  v.get(JUNCTIONS),
                  v.get(CALLS),
                  v.get(HIGH_RISK_HERE),
                  v.get(FORMATION_RISKS_HERE)));

  static final Key<Double> NUMBER =
      Key.required(
          "number",
          new Scalar.PlainNumber("a number of issue", true, 1, 99999),
          "Number of the issue.");
  static final Key<LocalDateTime> ISSUED = Key.required("issued", MOMENT, "When it is issued.");
  static final Key<LocalDateTime> VALID_FROM =
      Key.required("valid-from", MOMENT, "From when it is valid.");
  static final Key<LocalDateTime> VALID_TO =
      Key.required("valid-to", MOMENT, "Until when it is valid.");
  static final Key<String> SUPERSEDES =
      Key.optional("supersedes", Common.text("an issue"), "The issue that it takes the place of.");
  static final Key<LocalDateTime> KNOWN_UP_TO =
      Key.required("known-up-to", MOMENT, "Until when information was taken in.");
  static final Key<String> PREPARED_BY =
      Key.required("prepared-by", Common.text("a person by office"), "Who prepared the data.");
  static final Key<String> CHECKED_BY =
      Key.optional(
          "checked-by",
          Common.text("a person by office"),
          "Who checked the data of this issue; left out, the cover has a line to sign.");
  static final Key<String> COPY =
      Key.optional("copy", Common.text("a copy"), "Number or name of the copy.");
  static final Key<String> HOLDER =
      Key.optional("holder", Common.text("a holder"), "Who holds the copy.");
  static final Key<List<String>> SOURCES =
      Key.required(
          "sources", ListOf.some(Common.prose("a source")), "What the data were taken from.");
  static final ObjectSchema<IssueDetails> ISSUE_SHAPE =
      ObjectSchema.of(
              "the issue",
              List.of(
                  NUMBER,
                  ISSUED,
                  VALID_FROM,
                  VALID_TO,
                  SUPERSEDES,
                  KNOWN_UP_TO,
                  PREPARED_BY,
                  CHECKED_BY,
                  COPY,
                  HOLDER,
                  SOURCES),
              PackTable::issue)
          .checked(PackTable::momentsInOrder);

  static final Key<FileKind> KIND = FileHeading.key(FileKind.PACK);
  static final Key<String> ID =
      Key.optional(
          "id",
          new PackId(),
          "What the pack is called in the register and on its papers; left out, as its file.");
  static final Key<String> TITLE =
      Key.optional("title", Common.text("a title"), "The title on the cover, if not the route's.");
  static final Key<String> ROUTE = Key.required("route", FILE, "The route file.");
  static final Key<String> STOCK = Key.required("stock", FILE, "The stock file.");
  static final Key<String> POLICY = Key.required("policy", FILE, "The policy file.");
  static final Key<List<String>> RESTRICTIONS =
      Key.required(
          "restrictions", ListOf.some(FILE).upTo(50), "The files of temporary restrictions.");
  static final Key<List<TypedDirection>> DIRECTIONS =
      Key.required(
          "directions",
          ListOf.some(DIRECTION_PART).upTo(2).unique("direction"),
          "One direction or both; each prints its own part.");
  static final Key<List<String>> FORMATIONS =
      Key.required(
          "formations",
          ListOf.some(Common.text("the name of a formation")).upTo(12),
          "The formations of the stock file that are printed.");
  static final Key<LoadCase> LOAD =
      Key.required("load", Scalar.Choice.of(LoadCase.class), "The load of the planned run.");
  static final Key<IssueDetails> ISSUE = Key.required("issue", ISSUE_SHAPE, "The issue.");
  static final Key<List<String>> HIGH_RISK =
      Key.preset(
          "high-risk",
          ListOf.any(Common.prose("an item in words")),
          List.of(),
          "none",
          "Items of both directions that a learner initials one by one.");
  static final Key<List<FormationRisk>> FORMATION_RISKS =
      Key.preset(
          "formation-risks",
          ListOf.any(FORMATION_RISK),
          List.of(),
          "none",
          "Such items that stand on the papers of one formation only, in both directions.");

  static final Key<List<Accepted>> ACCEPTED =
      Key.preset(
          "accepted",
          ListOf.any(AcceptedTable.ACCEPTED),
          List.of(),
          "none",
          AcceptedTable.DESCRIPTION);

  static final Key<CardSize> CARDS =
      Key.preset(
          "cards",
          cardSizes(),
          CardSize.A5_PORTRAIT,
          CardSize.A5_PORTRAIT.word(),
          "The size of the cab cards, when they are printed.");
  static final Key<List<PaperKind>> PAPERS =
      Key.preset(
          "papers",
          ListOf.some(paperWords()),
          List.of(PaperKind.BRIEFING),
          "[briefing]",
          "The papers that are printed; sign-off needs the group sign-off in the policy.");

  public static final ObjectSchema<TypedPack> PACK =
      ObjectSchema.of(
          "a pack file",
          List.of(
              KIND,
              ID,
              TITLE,
              ROUTE,
              STOCK,
              POLICY,
              RESTRICTIONS,
              DIRECTIONS,
              FORMATIONS,
              LOAD,
              ISSUE,
              HIGH_RISK,
              FORMATION_RISKS,
              ACCEPTED,
              CARDS,
              PAPERS,
              EditionTable.EDITIONS),
          v ->
              new TypedPack(
                  v.find(ID),
                  v.find(TITLE),
                  v.get(ROUTE),
                  v.get(STOCK),
                  v.get(POLICY),
                  v.get(RESTRICTIONS),
                  v.get(DIRECTIONS),
                  v.get(FORMATIONS),
                  v.get(LOAD),
                  v.get(ISSUE),
                  v.get(HIGH_RISK),
                  v.get(FORMATION_RISKS),
                  v.get(ACCEPTED),
                  v.get(CARDS),
                  v.get(PAPERS),
                  v.get(EditionTable.EDITIONS)));

  private static Scalar<CardSize> cardSizes() {
    Map<String, CardSize> words = new LinkedHashMap<>();
    for (CardSize size : CardSize.values()) {
      words.put(size.word(), size);
    }
    return new Scalar.Choice<>(words);
  }

  private static Scalar<PaperKind> paperWords() {
    Map<String, PaperKind> words = new LinkedHashMap<>();
    for (PaperKind kind : PaperKind.values()) {
      words.put(kind.word(), kind);
    }
    return new Scalar.Choice<>(words);
  }

  private static IssueDetails issue(Values v) {
    return new IssueDetails(
        v.get(NUMBER).intValue(),
        v.get(ISSUED),
        v.get(VALID_FROM),
        v.get(VALID_TO),
        v.find(SUPERSEDES),
        v.get(KNOWN_UP_TO),
        v.get(PREPARED_BY),
        v.find(CHECKED_BY),
        v.find(COPY),
        v.find(HOLDER),
        v.get(SOURCES));
  }

  private static void momentsInOrder(Values v) {
    Common.whenBoth(
        v,
        VALID_FROM,
        VALID_TO,
        (from, to) -> {
          if (!to.isAfter(from)) {
            v.error(VALID_TO, PackMistakes.VALID_TO_BEFORE_VALID_FROM);
          }
        });
    Common.whenBoth(
        v,
        KNOWN_UP_TO,
        ISSUED,
        (known, issued) -> {
          if (known.isAfter(issued)) {
            v.error(KNOWN_UP_TO, PackMistakes.KNOWN_AFTER_ISSUED);
          }
        });
  }

  private PackTable() {}
}
