package gradepost.app.export;

import static gradepost.app.export.HandOverFigures.number;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The figures of one application of the brake and of what is left if it fails, from the file. */
final class HandOverFallbacks {
  /** Adds one instruction; the flag says whether a rising speed that it waits for is told. */
  interface Orders {
    void add(List<JsonNode> actions, boolean waits);
  }

  private final JsonNode file;
  private final HandOverGrid grid;
  private final HandOverCues cues;
  private final FigureLists out;
  private final Orders orders;
  private final JsonNode of;
  private final double ofM;

  HandOverFallbacks(
      JsonNode file,
      JsonNode approach,
      HandOverGrid grid,
      HandOverCues cues,
      FigureLists out,
      Orders orders) {
    this.file = file;
    this.grid = grid;
    this.cues = cues;
    this.out = out;
    this.orders = orders;
    this.of = approach.get("target");
    this.ofM = number(of, "atM");
  }

  void seen(HandOverCues.Seen seen) {
    for (Optional<HandOverCues.Told> told : List.of(seen.day(), seen.night())) {
      told.flatMap(HandOverCues.Told::past).ifPresent(m -> out.add("Seen.Thing.past", m));
      told.flatMap(HandOverCues.Told::count).ifPresent(s -> out.add("Seen.Thing.count", s));
    }
  }

  /** At the landmark that anchors it, where one does; that is told by its mileage all the same. */
  String point(JsonNode application) {
    return grid.placeTo(number(application, "brakingPointM"), ofM);
  }

  HandOverCues.Seen cueOf(JsonNode application) {
    double atM = number(application, "brakingPointM");
    HandOverCues.Seen counted = cues.counted(atM);
    return application.get("cues").has("anchor")
        ? new HandOverCues.Seen(cues.near(atM).day(), counted.night())
        : counted;
  }

  /**
   * @param line of the instruction that begins it
   * @param faster whether it is that of a faster train
   */
  void application(JsonNode application, int line, boolean whole, boolean faster) {
    boolean step = !application.get("toStand").isEmpty();
    JsonNode own = application.get("target");
    JsonNode target = step ? of : own;
    int poorest = faster ? 0 : poorest(application, target);
    out.add("PrintedApplication.line", line);
    if (own.has("speedMps")) {
      out.add("PrintedApplication.forSpeed", grid.speed(number(own, "speedMps")));
    }
    out.add("PrintedApplication.point", point(application));
    if (faster) {
      out.add("PrintedApplication.speed", grid.speed(number(application, "brakingSpeedMps")));
      seen(cues.near(number(application, "brakingPointM")));
    } else {
      cues(application);
    }
    for (int i = 0; i < application.get("cases").size(); i++) {
      one(application, i, target, i == poorest, whole);
    }
    out.add("PrintedApplication.poorest", poorest);
    if (whole && step) {
      stepAnswer(application, poorest, target);
    }
    boolean told = !faster && !whole && !answers(application, poorest).isEmpty();
    if (told && application.has("atBuffersMps")) {
      out.add(
          "PrintedApplication.atBuffers", grid.speedAtMost(number(application, "atBuffersMps")));
    }
    if (application.get("bySpeed").size() > 1) {
      application.get("bySpeed").forEach(this::row);
    }
  }

  private void cues(JsonNode application) {
    double atM = number(application, "brakingPointM");
    seen(cueOf(application));
    double on = number(application, "exactBrakingPointM") - atM;
    if (application.get("cues").has("anchor") && on >= grid.lengthUnitM()) {
      out.add("PrintedCues.computedOn", grid.room(on));
    }
    Optional<JsonNode> last = latestOfNext(application);
    double behindM = application.at("/cues/backstopAfterM").doubleValue();
    boolean inTime = last.filter(l -> atM + behindM <= number(l, "printedM") + 1e-6).isPresent();
    if (inTime && application.get("cues").has("backstop")) {
      out.add("PrintedCues.Backstop.beyond", grid.room(behindM));
      return;
    }
    double after = last.map(l -> number(l, "afterPlannedS")).orElse(0.0);
    if (after >= 1) {
      out.add("PrintedCues.Backstop.after", HandOverGrid.down(after));
    }
  }

  /** The last place of the brake that is used when the service brake fails. */
  private Optional<JsonNode> latestOfNext(JsonNode application) {
    List<JsonNode> ladder = ladder(application, 0);
    JsonNode rung =
        ladder.stream()
            .filter(r -> !role(r).equals("SERVICE"))
            .findFirst()
            .orElseGet(() -> ladder.get(0));
    return Optional.of(rung.get("latest")).filter(l -> l.has("printedM"));
  }

  private static String role(JsonNode of) {
    return of.at("/brake/role").textValue();
  }

  /** Before a step up a platform the service brake keeps the step; any other has to stand. */
  private static List<JsonNode> ladder(JsonNode application, int rail) {
    JsonNode own = application.get("cases").get(rail).get("ladder");
    JsonNode stand = application.get("toStand");
    List<JsonNode> all = new ArrayList<>();
    for (int i = 0; i < own.size(); i++) {
      boolean service = role(own.get(i)).equals("SERVICE");
      all.add(stand.isEmpty() || service ? own.get(i) : stand.get(rail).get("ladder").get(i));
    }
    return all;
  }

  private static JsonNode answers(JsonNode application, int rail) {
    JsonNode stand = application.get("toStand");
    return (stand.isEmpty() ? application.get("cases") : stand).get(rail).get("answers");
  }

  // States of the rail

  private void one(JsonNode application, int rail, JsonNode target, boolean told, boolean whole) {
    JsonNode result = application.get("cases").get(rail);
    if (result.has("plannedM")) {
      double atM = number(result, "plannedM");
      out.add("PrintedPoint.place", grid.placeTo(atM, ofM));
      if (rail == 0) {
        out.add("PrintedCommand.Brake.pressure", grid.pressure(number(result, "mainPressurePa")));
      } else {
        technique(result.get("actions"));
        if (whole) {
          out.add(
              "PrintedPoint.speed", grid.speed(number(result.get("actions").get(0), "speedMps")));
          cue(application, result, atM);
        }
      }
      Optional<Double> pastM =
          result.get("ladder").isEmpty()
              ? Optional.empty()
              : service(ladder(application, rail)).map(last -> atM - last);
      pastM
          .filter(m -> m > 0.01)
          .ifPresent(m -> out.add("PrintedPoint.pastLast", grid.lengthUp(m)));
    }
    for (JsonNode rung : ladder(application, rail)) {
      if (rung.get("latest").has("printedM")) {
        double printed = number(rung.get("latest"), "printedM");
        out.add("PrintedLatest.At.place", grid.placeTo(printed, ofM));
        out.add(
            "PrintedLatest.At.secondsAfter",
            HandOverGrid.down(number(rung.get("latest"), "afterPlannedS")));
        if (told && whole && role(rung).equals("FALLBACK")) {
          seen(cues.at(printed));
        }
      }
    }
    if (!application.get("toStand").isEmpty()) {
      stepLatest(application, rail);
    }
    answers(application, rail, target, told, whole);
    if (!answers(application, rail).isEmpty()) {
      protection(result);
    }
  }

  private void stepLatest(JsonNode application, int rail) {
    Optional<JsonNode> step = fallback(application.get("cases").get(rail));
    Optional<JsonNode> stand = fallback(application.get("toStand").get(rail));
    if (step.filter(s -> s.has("printedM")).isPresent()
        && stand
            .filter(s -> s.has("printedM"))
            .filter(s -> number(s, "printedM") <= number(step.get(), "printedM"))
            .isEmpty()) {
      out.add("PrintedLatest.At.place", grid.placeTo(number(step.get(), "printedM"), ofM));
      out.add(
          "PrintedLatest.At.secondsAfter", HandOverGrid.down(number(step.get(), "afterPlannedS")));
    }
  }

  private static Optional<JsonNode> fallback(JsonNode result) {
    for (JsonNode rung : result.get("ladder")) {
      if (role(rung).equals("FALLBACK")) {
        return Optional.of(rung.get("latest"));
      }
    }
    return Optional.empty();
  }

  private static Optional<Double> service(List<JsonNode> ladder) {
    return ladder.stream()
        .filter(r -> role(r).equals("SERVICE"))
        .map(r -> r.get("latest"))
        .filter(l -> l.has("printedM"))
        .map(l -> number(l, "printedM"))
        .findFirst();
  }

  private void technique(JsonNode actions) {
    for (JsonNode action : actions) {
      if (!HandOverFigures.command(action).equals("Stand")) {
        orders.add(List.of(action), false);
      }
    }
  }

  /** A count holds on another rail where the train comes no faster to the place. */
  private void cue(JsonNode application, JsonNode result, double atM) {
    JsonNode actions = result.get("actions");
    boolean noFaster =
        !actions.isEmpty() && number(actions.get(0), "speedMps") <= cues.speedAt(atM) + 1e-3;
    if (noFaster && grid.placeTo(atM, ofM).equals(point(application))) {
      return;
    }
    HandOverCues.Seen both = noFaster ? cues.counted(atM) : cues.near(atM);
    seen(both.night().isPresent() ? new HandOverCues.Seen(Optional.empty(), both.night()) : both);
  }

  private void protection(JsonNode result) {
    if (!result.has("protectedM")) {
      return;
    }
    double atM = number(result, "protectedM");
    boolean same = result.has("plannedM") && Math.abs(atM - number(result, "plannedM")) < 0.5;
    if (!same) {
      out.add("PrintedProtection.At.place", grid.placeTo(atM, ofM));
      if (result.has("protectedCostS")) {
        out.add(
            "PrintedProtection.At.costs",
            HandOverGrid.up(Math.max(0, number(result, "protectedCostS"))));
      }
    }
  }

  // If the brake fails

  private void answers(
      JsonNode application, int rail, JsonNode target, boolean told, boolean whole) {
    boolean used = false;
    for (JsonNode answer : answers(application, rail)) {
      boolean suffices = bears(target, answer);
      Optional<Double> shortM = shortM(answer);
      shortM.ifPresent(
          m ->
              out.add(
                  m >= 0 ? "PrintedEnd.ShortBy.by" : "PrintedEnd.PastBy.by",
                  m >= 0 ? grid.room(m) : grid.lengthUp(-m)));
      if (!holds(answer)) {
        out.add("PrintedAnswer.atTarget", grid.speedAtMost(number(answer, "speedAtTargetMps")));
        boolean room = told && shortM.isPresent() && (!whole || (suffices && !used));
        if (room && target.has("buffersM")) {
          double left = number(target, "buffersM") - number(target, "atM") + shortM.orElseThrow();
          out.add("PrintedAnswer.leftToBuffers", grid.room(Math.max(0, left)));
        }
      }
      used |= suffices;
    }
  }

  private static Optional<Double> shortM(JsonNode answer) {
    return answer.get("met").has("shortM")
        ? Optional.of(number(answer.get("met"), "shortM"))
        : Optional.empty();
  }

  private static boolean holds(JsonNode answer) {
    return shortM(answer).filter(m -> m >= 0).isPresent();
  }

  /** Holds, or comes so near to it that no other brake is needed. */
  private boolean bears(JsonNode target, JsonNode answer) {
    if (holds(answer)) {
      return true;
    }
    Optional<Double> shortM = shortM(answer);
    if (shortM.isEmpty()) {
      return false;
    }
    if (!target.get("kind").textValue().equals("Stop")) {
      double over = file.at("/policy/safeSide/overspeed/metresPerSecond").doubleValue();
      return number(answer, "speedAtTargetMps") <= number(target, "speedMps") + over + 1e-6;
    }
    List<Double> signals = new ArrayList<>();
    for (JsonNode thing : file.get("lineside")) {
      if (thing.has("signal") && thing.get("signal").textValue().startsWith("STOP")) {
        signals.add(number(thing, "atM"));
      }
    }
    double margin = file.at("/policy/margins/beforeBuffers/metres").doubleValue();
    double end =
        target.has("buffersM")
            ? number(target, "buffersM") - margin
            : number(target, "platformEndM");
    double next =
        signals.stream()
            .filter(m -> m > number(target, "atM"))
            .mapToDouble(m -> m)
            .min()
            .orElse(end);
    boolean known = target.has("buffersM") || !signals.isEmpty();
    return known && -shortM.get() < Math.min(end, next) - number(target, "atM");
  }

  /** What the brake to use makes of the step: the first one that suffices, else the last. */
  private void stepAnswer(JsonNode application, int poorest, JsonNode target) {
    JsonNode all = answers(application, poorest);
    if (all.isEmpty()) {
      return;
    }
    int use = 0;
    while (use < all.size() - 1 && !bears(target, all.get(use))) {
      use++;
    }
    JsonNode brake = all.get(use).get("brake");
    for (JsonNode own : application.get("cases").get(poorest).get("answers")) {
      if (own.get("brake").equals(brake) && !holds(own)) {
        out.add(
            "PrintedApplication.StepAnswer.atStep",
            grid.speedAtMost(number(own, "speedAtTargetMps")));
      }
    }
  }

  /** The rail that is told first: the planned one, unless the braking passes a poor stretch. */
  private int poorest(JsonNode application, JsonNode target) {
    int worst = 0;
    for (int i = 1; i < application.get("cases").size(); i++) {
      if (onSite(application, i, number(target, "atM"))
          && !better(answers(application, i), answers(application, worst))) {
        worst = i;
      }
    }
    return worst;
  }

  private boolean onSite(JsonNode application, int rail, double targetM) {
    JsonNode result = application.get("cases").get(rail);
    if (!result.has("plannedM") || answers(application, rail).isEmpty()) {
      return false;
    }
    double rear = number(result, "plannedM");
    for (JsonNode length : file.at("/train/planned/lengthM")) {
      rear -= length.doubleValue();
    }
    for (JsonNode site : file.get("lowAdhesionSites")) {
      if (number(site, "fromM") < targetM && number(site, "toM") > rear) {
        return true;
      }
    }
    return false;
  }

  private static boolean better(JsonNode one, JsonNode other) {
    if (other.isEmpty()) {
      return false;
    }
    double a = shortM(one.get(0)).orElse(Double.NEGATIVE_INFINITY);
    double b = shortM(other.get(0)).orElse(Double.NEGATIVE_INFINITY);
    return a > b
        || (a == b
            && number(one.get(0), "speedAtTargetMps") < number(other.get(0), "speedAtTargetMps"));
  }

  // By speed

  private void row(JsonNode row) {
    out.add("PrintedSpeedRow.speed", grid.speed(number(row, "speedMps")));
    if (row.has("planned")) {
      JsonNode planned = row.get("planned");
      out.add("PrintedSpeedRow.Point.place", grid.placeTo(number(planned, "atM"), ofM));
      double most = 0;
      for (JsonNode action : planned.get("actions")) {
        most = Math.max(most, action.at("/command/pressurePa").asDouble(0));
      }
      out.add(
          "PrintedSpeedRow.Planned.most",
          grid.pressure(most > 0 ? most : number(planned, "brakeOnPa")));
    }
    if (row.has("poorest")) {
      JsonNode poor = row.get("poorest");
      out.add("PrintedSpeedRow.Point.place", grid.placeTo(number(poor, "atM"), ofM));
      technique(poor.get("actions"));
    }
  }
}
