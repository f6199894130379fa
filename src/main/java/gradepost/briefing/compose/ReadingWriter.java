package gradepost.briefing.compose;

import gradepost.briefing.Fact;
import gradepost.briefing.Reading;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.policy.AdhesionCase;
import gradepost.policy.BrakePractice;
import gradepost.policy.CoastPractice;
import gradepost.policy.CorrectionPractice;
import gradepost.policy.HandlePractice;
import gradepost.policy.LinePractice;
import gradepost.policy.Policy;
import gradepost.policy.PowerPractice;
import gradepost.policy.TaughtRules;
import gradepost.policy.Technique;
import gradepost.policy.WarningPractice;
import gradepost.stock.law.AdhesionLaw;
import gradepost.task.Assignment;
import gradepost.units.Acceleration;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** How to read the pack. */
final class ReadingWriter {
  private final Assignment assignment;
  private final Words words;

  ReadingWriter(Assignment assignment, Words words) {
    this.assignment = assignment;
    this.words = words;
  }

  /**
   * @param holds whether a speed is held on any of its runs
   */
  Reading reading(boolean holds) {
    String world = words.units() == UnitStyle.MILES ? "miles" : "metric";
    List<Fact> units = new ArrayList<>();
    for (String key : List.of("places", "speeds", "lengths", "pressures", "gradients")) {
      units.add(new Fact(words.text("unit." + key), words.text("unit." + key + "." + world)));
    }
    units.add(
        new Fact(
            words.text("unit.posts"),
            assignment.route().posts().isBlank()
                ? words.text("not-supplied")
                : assignment.route().posts()));
    List<Fact> symbols = new ArrayList<>();
    List<String> keys =
        holds
            ? List.of(
                "finding", "dash", "change", "pin", "lines", "hatch", "held", "check", "beside",
                "later", "past")
            : List.of(
                "finding", "dash", "change", "pin", "lines", "hatch", "check", "beside", "later",
                "past");
    for (String key : keys) {
      symbols.add(new Fact(words.text("symbol." + key), words.text("symbol." + key + ".says")));
    }
    return assumed(units, symbols);
  }

  private List<String> method() {
    Policy policy = assignment.policy();
    List<String> out = new ArrayList<>();
    out.add(words.text("method.planned", policy.adhesion().get(0).name()));
    out.add(
        words.text(
            "method.technique", technique(policy.stopping()), technique(policy.restriction())));
    out.add(words.text("method.adapted"));
    out.add(words.text("method.stays-on"));
    out.add(
        words.text(
            "method.latest",
            words.text("load." + TrackStripWriter.lower(policy.safeSide().load())),
            words.speedAtMost(policy.safeSide().overspeed().metresPerSecond()),
            percent(policy.safeSide().brakeFactor()),
            isolated()));
    out.add(
        words.text(
            "method.nothing",
            words.seconds(policy.noticing().seconds()),
            words.speedAtMost(policy.safeSide().overspeed().metresPerSecond())));
    out.add(words.text("method.emergency"));
    if (policy.adhesion().size() > 1) {
      out.add(words.text("method.light"));
    }
    out.add(
        words.text(
            "method.count",
            policy.adhesion().get(0).name(),
            words.time(words.grid().timeLeft(policy.practice().line().cueWithin().seconds()))));
    out.add(words.text("method.by-speed"));
    if (!policy.terminal().isEmpty()) {
      out.add(words.text("method.terminal"));
    }
    out.add(words.text("method.rounding"));
    return out;
  }

  /** The share of the policy, and what that is in whole cars: rounded up. */
  private String isolated() {
    int cars = assignment.formation().cars();
    double share = assignment.policy().safeSide().isolatedShare();
    int off = assignment.formation().wholeVehicles(share);
    return off == 0 ? percent(share) : words.text("safe-side.cars", percent(share), off, cars);
  }

  private String percent(double share) {
    return words.grid().share(share) + " %";
  }

  private static String tenths(double share) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }

  private String technique(Technique t) {
    if (t.eases().isEmpty()) {
      return words.text(
          "method.pressures-kept",
          words.pressure(t.first().pascals()),
          words.seconds(t.firstHeld().seconds()),
          words.pressure(t.main().pascals()));
    }
    return words.text(
        "method.pressures",
        words.pressure(t.first().pascals()),
        words.seconds(t.firstHeld().seconds()),
        words.pressure(t.main().pascals()),
        t.eases().stream()
            .map(
                e ->
                    e.slows()
                        .map(
                            slows ->
                                words.text(
                                    "method.ease-slows",
                                    words.pressure(e.to().pascals()),
                                    words.speed(e.aboveTarget().metresPerSecond()),
                                    rate(slows)))
                        .orElseGet(
                            () ->
                                words.text(
                                    "method.ease",
                                    words.pressure(e.to().pascals()),
                                    words.speed(e.aboveTarget().metresPerSecond()))))
            .collect(Collectors.joining(", ")));
  }

  /** Every value of the operator's policy, by its key; those without a purpose apart. */
  private Reading assumed(List<Fact> units, List<Fact> symbols) {
    Policy p = assignment.policy();
    Map<String, String> values = new TreeMap<>();
    values.put("noticing-time", words.seconds(p.noticing().seconds()));
    values.put("safe-side.load", words.text("load." + TrackStripWriter.lower(p.safeSide().load())));
    values.put(
        "safe-side.overspeed", words.speedAtMost(p.safeSide().overspeed().metresPerSecond()));
    values.put("safe-side.brake-factor", percent(p.safeSide().brakeFactor()));
    values.put("safe-side.isolated-share", isolated());
    values.put("margins.stop-tolerance", words.room(p.margins().stopTolerance().metres()));
    values.put("margins.before-board", words.room(p.margins().beforeBoard().metres()));
    values.put("margins.under-speed", words.speed(p.margins().underSpeed().metresPerSecond()));
    values.put("margins.before-buffers", words.room(p.margins().beforeBuffers().metres()));
    values.put("margins.before-signal", words.room(p.margins().beforeSignal().metres()));
    values.put("run.off-below", words.speed(p.run().offBelow().metresPerSecond()));
    values.put("run.on-below", words.speed(p.run().onBelow().metresPerSecond()));
    values.put("run.least-power", words.seconds(p.run().leastPower().seconds()));
    values.put("run.coast-before-braking", words.seconds(p.run().coastBeforeBraking().seconds()));
    values.put("run.check-from", words.speed(p.run().checkFrom().metresPerSecond()));
    values.put("run.check-to", words.speed(p.run().checkTo().metresPerSecond()));
    values.put("run.check-pressure", words.pressure(p.run().checkPressure().pascals()));
    values.put("run.time-allowance", percent(p.run().timeAllowance()));
    values.put("run.landmark-reach", words.room(p.run().landmarkReach().metres()));
    practice(values);
    values.put(
        "terminal",
        p.terminal().stream()
            .map(
                t ->
                    words.text(
                        "assumption.terminal-step",
                        words.speed(t.speed().metresPerSecond()),
                        words.room(t.beforeMark().metres())))
            .collect(Collectors.joining("; ")));
    p.adhesion().forEach(a -> values.put("adhesion." + a.name(), range(a.law())));
    values.put("site-adhesion", siteAdhesion(p));
    Tables table = new Tables(words, "reading", "assumptions");
    Tables usual = new Tables(words, "reading", "practice");
    Map<String, String> purposes = new TreeMap<>(p.purposes());
    p.adhesion().forEach(a -> purposes.putIfAbsent("adhesion." + a.name(), a.note()));
    values.forEach(
        (key, value) -> {
          String label =
              words.messages().has("assumption." + key)
                  ? words.text("assumption." + key)
                  : key.replace('.', ' ').replace('-', ' ');
          if (key.startsWith("practice.") && !purposes.containsKey(key)) {
            usual.row(label, value);
          } else if (!value.isBlank()) {
            table.row(label, value, purposes.getOrDefault(key, ""));
          }
        });
    return new Reading(units, symbols, method(), table.build(), usual.build());
  }

  /** Driving practice, by the keys of the policy. */
  private void practice(Map<String, String> values) {
    BrakePractice brake = assignment.policy().practice().brake();
    PowerPractice power = assignment.policy().practice().power();
    CoastPractice coast = assignment.policy().practice().coast();
    HandlePractice handles = assignment.policy().practice().handles();
    values.put("practice.eased-deceleration", rate(brake.eased()));
    values.put("practice.first-felt-above", words.speed(brake.feltAbove().metresPerSecond()));
    values.put("practice.lowest-aim", percent(brake.lowestAim()));
    values.put("practice.lowest-release", percent(brake.lowestRelease()));
    values.put("practice.stays-on-from", rate(brake.staysOnFrom()));
    values.put("practice.braked-lower-from", rate(brake.brakedLowerFrom()));
    values.put("practice.last-ease-alone", percent(brake.lastEaseAlone()));
    values.put("practice.brake-off-at-least", words.seconds(brake.offAtLeast().seconds()));
    values.put("practice.first-held-at-least", words.seconds(brake.firstHeldLeast().seconds()));
    values.put("practice.first-held-longer", words.seconds(brake.firstHeldLonger().seconds()));
    values.put("practice.gain-at-least", rate(power.gain()));
    values.put("practice.hold-at-least", rate(power.hold()));
    values.put("practice.check-at-least", rate(power.check()));
    values.put("practice.gradient-ahead", words.room(power.gradientAhead().metres()));
    values.put("practice.rise-waited-for", words.seconds(handles.riseWaitedFor().seconds()));
    values.put("practice.notch-at-least", words.seconds(handles.notchAtLeast().seconds()));
    values.put("practice.movement-saves", words.seconds(handles.movementSaves().seconds()));
    values.put("practice.longest-coast", words.seconds(power.longestCoast().seconds()));
    values.put("practice.coast-keeps", percent(power.coastKeeps()));
    values.put("practice.place-keeps", percent(coast.placeKeeps()));
    values.put("practice.spared-power-keeps", percent(power.sparedKeeps()));
    values.put("practice.power-off-at-least", words.seconds(power.offAtLeast().seconds()));
    values.put("practice.movement-worth", percent(power.movement()));
    values.put("practice.creeping-below", words.speed(power.creeping().metresPerSecond()));
    values.put("practice.creeping-share", percent(coast.creepingShare()));
    values.put("practice.creeping-at-most", words.seconds(coast.creepingLongest().seconds()));
    values.put("practice.creeping-before", words.room(coast.creepingBefore().metres()));
    warnings(values);
  }

  private void warnings(Map<String, String> values) {
    WarningPractice warning = assignment.policy().practice().warning();
    LinePractice line = assignment.policy().practice().line();
    values.put(
        "practice.junction-announced-within", words.room(warning.announcedWithin().metres()));
    CorrectionPractice correction = assignment.policy().practice().correction();
    values.put("practice.looks-every", words.seconds(correction.looksEvery().seconds()));
    values.put("practice.corrects-after", words.seconds(correction.reaction().seconds()));
    values.put("practice.late-corrected-share", tenths(correction.lateShare()));
    values.put(
        "practice.leaves-next-brake",
        words.text(correction.leavesNextBrake() ? "assumption.yes" : "assumption.no"));
    values.put("practice.late-share", percent(warning.late()));
    TaughtRules taught = assignment.policy().practice().taught();
    values.put("practice.applied-again-after", words.seconds(taught.appliedAgain().seconds()));
    values.put("practice.notch-gives-at-least", rate(taught.notchGives()));
    values.put("practice.dead-notch-at-most", words.seconds(taught.deadNotch().seconds()));
    values.put("practice.movements-in-a-mile", String.valueOf(taught.movements()));
    values.put("practice.rows-on-a-plate", String.valueOf(taught.rows()));
    values.put("practice.rows-at-a-terminal", String.valueOf(taught.rowsAtTerminal()));
    values.put("practice.names-alike-within", words.room(line.alikeWithin().metres()));
    values.put("practice.over-gap-at-least", words.speed(line.overGap().metresPerSecond()));
    values.put("practice.brake-test-held", words.seconds(line.testHeld().seconds()));
    values.put("practice.brake-test-within", words.speed(line.testWithin().metresPerSecond()));
    values.put("practice.cue-within", words.seconds(line.cueWithin().seconds()));
  }

  private static String rate(Acceleration rate) {
    return String.format(Locale.ROOT, "%.2f m/s²", rate.metresPerSecond2());
  }

  /** One law on all of them; the states of the rail in which it holds. */
  private String siteAdhesion(Policy policy) {
    List<AdhesionCase> such =
        policy.adhesion().stream().filter(a -> a.sites().isPresent()).toList();
    if (such.isEmpty()) {
      return "";
    }
    return words.text(
        "assumption.site-adhesion.in",
        range(such.get(0).sites().get()),
        such.stream().map(AdhesionCase::name).collect(Collectors.joining(", ")));
  }

  private String range(AdhesionLaw law) {
    String fast = mu(law, assignment.stock().maximum().metresPerSecond());
    String slow = mu(law, 0);
    return fast.equals(slow) ? slow : fast + " – " + slow;
  }

  /** To two places, downwards. */
  private static String mu(AdhesionLaw law, double mps) {
    return String.format(Locale.ROOT, "%.2f", Math.floor(law.mu(mps) * 100 + 1e-9) / 100);
  }
}
