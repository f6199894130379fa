package gradepost.app.export;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The figures of one sheet, worked out again from a hand-over file alone, by kind and in the order
 * in which a sheet holds them.
 */
final class HandOverFigures {
  private static final double HAIR = 1e-6;

  private final JsonNode file;
  private final HandOverGrid grid;
  private final HandOverCues cues;
  private final HandOverFallbacks fallbacks;
  private final FigureLists out = new FigureLists();
  private final JsonNode approach;
  private final double targetM;
  private final boolean stops;

  /** Of an approach. */
  static FigureLists of(JsonNode file, JsonNode approach) {
    HandOverFigures sheet = new HandOverFigures(file, approach);
    sheet.all();
    return sheet.out;
  }

  private HandOverFigures(JsonNode file, JsonNode approach) {
    this.file = file;
    this.approach = approach;
    this.grid = new HandOverGrid(file);
    this.cues = new HandOverCues(file, grid);
    this.fallbacks = new HandOverFallbacks(file, approach, grid, cues, out, this::order);
    this.targetM = approach.at("/target/atM").doubleValue();
    this.stops = isStop(approach);
  }

  static boolean isStop(JsonNode approach) {
    return approach.at("/target/kind").textValue().equals("Stop");
  }

  static double number(JsonNode of, String field) {
    return of.get(field).doubleValue();
  }

  private void all() {
    JsonNode applications = approach.get("applications");
    boolean braked = !applications.isEmpty();
    out.add("InstructionSheet.number", approach.get("number").intValue());
    target();
    double from =
        braked
            ? number(applications.get(0), "brakingPointM")
            : number(approach, approach.has("shutOffM") ? "shutOffM" : "fromM");
    out.add("InstructionSheet.from", grid.place(from));
    if (braked) {
      out.add("InstructionSheet.speed", grid.speed(number(approach, "brakingSpeedMps")));
    }
    List<Integer> lines = lines(applications);
    steps(lines);
    for (int i = 0; i < applications.size(); i++) {
      fallbacks.application(applications.get(i), lines.get(i), i == 0, false);
    }
    if (!stops && !braked) {
      passing();
    }
    faster();
    spread();
    approach.get("findings").forEach(f -> HandOverFindings.add(f, grid, out));
  }

  private void target() {
    JsonNode target = approach.get("target");
    out.add("PrintedTarget.at", grid.place(targetM));
    if (stops) {
      if (target.has("buffersM")) {
        out.add("PrintedTarget.buffers", grid.room(number(target, "buffersM") - targetM));
      }
      return;
    }
    out.add("PrintedTarget.speed", grid.speed(number(target, "speedMps")));
    out.add("PrintedTarget.from", grid.speed(number(target, "fromMps")));
    if (target.has("warningM")) {
      out.add("PrintedTarget.warning", grid.place(number(target, "warningM")));
    }
  }

  // Instructions

  static String command(JsonNode action) {
    return action.at("/command/kind").textValue();
  }

  private static String trigger(JsonNode action) {
    return action.at("/trigger/kind").textValue();
  }

  /**
   * Notch after notch is one instruction, a first application with the main one, a brake test, and
   * a brake that is eased again as the speed drops.
   */
  private static List<List<JsonNode>> grouped(JsonNode actions) {
    List<List<JsonNode>> out = new ArrayList<>();
    for (JsonNode action : actions) {
      List<JsonNode> open = out.isEmpty() ? List.of() : out.get(out.size() - 1);
      boolean waits = trigger(action).equals("After") && !open.isEmpty();
      boolean notch =
          waits && command(action).equals("Power") && command(open.get(0)).equals("Power");
      boolean main =
          waits
              && open.size() == 1
              && action.at("/command/stage").asText().equals("MAIN")
              && open.get(0).at("/command/stage").asText().equals("FIRST");
      boolean released =
          waits
              && open.size() == 1
              && command(action).equals("Release")
              && open.get(0).at("/command/stage").asText().equals("TEST");
      boolean eased =
          trigger(action).equals("SpeedDownTo")
              && !open.isEmpty()
              && action.at("/command/stage").asText().equals("EASE")
              && open.get(0).at("/command/stage").asText().equals("EASE");
      if (notch || main || released || eased) {
        open.add(action);
      } else {
        out.add(new ArrayList<>(List.of(action)));
      }
    }
    return out;
  }

  /** The number of the instruction that begins each application; 0 where this sheet has none. */
  private List<Integer> lines(JsonNode applications) {
    List<List<JsonNode>> steps = grouped(approach.get("actions"));
    List<Integer> lines = new ArrayList<>();
    int next = 0;
    for (JsonNode application : applications) {
      int line = next;
      while (line < steps.size() && !begins(steps.get(line).get(0), application)) {
        line++;
      }
      boolean found = line < steps.size();
      next = found ? line + 1 : next;
      lines.add(found ? line + 1 : 0);
    }
    return lines;
  }

  private static boolean begins(JsonNode action, JsonNode application) {
    String stage = action.at("/command/stage").asText();
    return command(action).equals("Brake")
        && !stage.equals("CHECK")
        && !stage.equals("TEST")
        && number(action, "atM") >= number(application, "brakingPointM") - 1;
  }

  private void steps(List<Integer> lines) {
    List<List<JsonNode>> steps = grouped(approach.get("actions"));
    double last = Double.NaN;
    for (int i = 0; i < steps.size(); i++) {
      JsonNode first = steps.get(i).get(0);
      int begun = lines.indexOf(i + 1);
      Optional<JsonNode> application =
          begun < 0 ? Optional.empty() : Optional.of(approach.get("applications").get(begun));
      order(steps.get(i), true);
      out.add(
          "PrintedStep.where",
          application
              .filter(a -> trigger(first).equals("AtPlace"))
              .map(fallbacks::point)
              .orElseGet(() -> where(first)));
      out.add("PrintedStep.speed", grid.speed(number(first, "speedMps")));
      double now = number(first, "timeS");
      if (i > 0) {
        out.add("PrintedStep.sinceLast", Math.round(now - last));
      }
      last = now;
      fallbacks.seen(application.map(fallbacks::cueOf).orElseGet(() -> seen(first)));
    }
  }

  private String where(JsonNode first) {
    double atM = number(first, "atM");
    if (trigger(first).equals("Start")) {
      return grid.place(standM(atM));
    }
    return command(first).equals("Stand") ? grid.place(targetM) : grid.placeTo(atM, targetM);
  }

  /** A stand is told at its mark. */
  private double standM(double atM) {
    for (JsonNode other : file.get("approaches")) {
      if (isStop(other) && Math.abs(number(other, "endM") - atM) < 25) {
        return other.at("/target/atM").doubleValue();
      }
    }
    return atM;
  }

  private HandOverCues.Seen seen(JsonNode first) {
    boolean stands = command(first).equals("Stand") && stops;
    boolean starts = command(first).equals("Power") && number(first, "speedMps") < 0.5;
    return stands || starts ? HandOverCues.Seen.NOTHING : cues.at(number(first, "atM"));
  }

  /**
   * One instruction.
   *
   * @param waits whether what it waits for is told; else only the time and the speed are
   */
  private void order(List<JsonNode> actions, boolean waits) {
    on(actions.get(0).get("trigger"), waits);
    does(actions.get(0).get("command"));
    for (JsonNode further : actions.subList(1, actions.size())) {
      does(further.get("command"));
      on(further.get("trigger"), true);
    }
  }

  private void on(JsonNode on, boolean waits) {
    switch (on.get("kind").textValue()) {
      case "SpeedUpTo" -> {
        if (waits) {
          out.add("PrintedTrigger.SpeedUpTo.speed", grid.speed(number(on, "speedMps")));
        }
      }
      case "SpeedDownTo" ->
          out.add("PrintedTrigger.SpeedDownTo.speed", grid.speed(number(on, "speedMps")));
      case "After" -> out.add("PrintedTrigger.After.time", Math.round(number(on, "seconds")));
      default -> {}
    }
  }

  private void does(JsonNode command) {
    switch (command.get("kind").textValue()) {
      case "Power" -> out.add("PrintedCommand.Power.notch", command.get("notch").intValue());
      case "Brake" ->
          out.add("PrintedCommand.Brake.pressure", grid.pressure(number(command, "pressurePa")));
      case "Hold" -> {
        JsonNode by = command.get("by");
        if (by.has("notch")) {
          out.add("PrintedCommand.InNotch.notch", by.get("notch").intValue());
        } else {
          out.add("PrintedCommand.WithBrake.pressure", grid.pressure(number(by, "pressurePa")));
        }
        out.add("PrintedCommand.Hold.lower", grid.speed(number(command, "lowerMps")));
        out.add("PrintedCommand.Hold.upper", grid.speed(number(command, "upperMps")));
        out.add("PrintedCommand.Hold.until", grid.place(number(command, "untilM")));
      }
      default -> {}
    }
  }

  // The rest of a sheet

  private void passing() {
    out.add("PrintedPassing.speed", grid.speedAtMost(cues.speedAt(targetM)));
    JsonNode actions = file.at("/plan/actions");
    int last = -1;
    while (last + 1 < actions.size() && number(actions.get(last + 1), "atM") <= targetM) {
      last++;
    }
    if (last < 0
        || !command(actions.get(last)).equals("Brake")
        || actions.get(last).get("approach").equals(approach.get("number"))) {
      return;
    }
    while (last > 0 && command(actions.get(last - 1)).equals("Brake")) {
      last--;
    }
    out.add("PrintedPassing.since", grid.place(number(actions.get(last), "atM")));
    out.add("PrintedPassing.sheet", actions.get(last).get("approach").intValue());
  }

  private void faster() {
    JsonNode faster = approach.get("ifFaster");
    if (faster == null) {
      return;
    }
    if (faster.has("application")) {
      fallbacks.application(faster.get("application"), 0, false, true);
      grouped(faster.get("actions")).forEach(step -> order(step, true));
    } else {
      out.add("PrintedFaster.most", grid.speedAtMost(number(faster, "mostMps")));
    }
  }

  /** Neither end is made to look nearer than it is. */
  private void spread() {
    JsonNode corrected = approach.at("/spread/corrected");
    if (!corrected.has("shortM05")) {
      return;
    }
    for (String end : List.of("shortM95", "shortM05")) {
      double shortM = number(corrected, end);
      out.add(
          shortM >= 0 ? "PrintedEnd.ShortBy.by" : "PrintedEnd.PastBy.by",
          grid.lengthUp(Math.abs(shortM)));
    }
    out.add(
        "PrintedSpread.fullShare",
        (long) Math.ceil(100 * number(corrected, "fullShare") - HAIR / 1000));
  }
}
