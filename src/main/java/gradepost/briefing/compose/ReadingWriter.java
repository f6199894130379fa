package gradepost.briefing.compose;

import gradepost.briefing.Fact;
import gradepost.briefing.Reading;
import gradepost.briefing.Table;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.policy.AdhesionCase;
import gradepost.policy.Policy;
import gradepost.policy.Technique;
import gradepost.stock.law.AdhesionLaw;
import gradepost.task.Assignment;
import gradepost.units.Rounding;
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

  Reading reading() {
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
    for (String key :
        List.of("finding", "dash", "change", "pin", "lines", "hatch", "check", "beside", "later")) {
      symbols.add(new Fact(words.text("symbol." + key), words.text("symbol." + key + ".says")));
    }
    return new Reading(units, symbols, method(), assumptions());
  }

  private List<String> method() {
    Policy policy = assignment.policy();
    List<String> out = new ArrayList<>();
    out.add(words.text("method.planned"));
    out.add(
        words.text(
            "method.technique", technique(policy.stopping()), technique(policy.restriction())));
    out.add(words.text("method.adapted"));
    out.add(words.text("method.stays-on"));
    out.add(
        words.text(
            "method.latest",
            words.text("load." + TrackStripWriter.lower(policy.safeSide().load())),
            words.units().speed(policy.safeSide().overspeed().metresPerSecond(), Rounding.UP),
            percent(policy.safeSide().brakeFactor()),
            isolated()));
    out.add(
        words.text(
            "method.nothing",
            words.seconds(policy.noticing().seconds()),
            words.speedAtMost(policy.safeSide().overspeed().metresPerSecond())));
    if (policy.adhesion().size() > 1) {
      out.add(words.text("method.light"));
    }
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

  private static String percent(double share) {
    return Math.round(share * 100) + " %";
  }

  private String technique(Technique t) {
    return words.text(
        "method.pressures",
        words.pressure(t.first().pascals()),
        words.seconds(t.firstHeld().seconds()),
        words.pressure(t.main().pascals()),
        t.eases().stream()
            .map(
                e ->
                    words.text(
                        "method.ease",
                        words.pressure(e.to().pascals()),
                        words.speed(e.aboveTarget().metresPerSecond())))
            .collect(Collectors.joining(", ")));
  }

  /** Every value of the operator's policy that has a purpose, by its key. */
  private Table assumptions() {
    Policy p = assignment.policy();
    Map<String, String> values = new TreeMap<>();
    values.put("noticing-time", words.seconds(p.noticing().seconds()));
    values.put("safe-side.load", words.text("load." + TrackStripWriter.lower(p.safeSide().load())));
    values.put(
        "safe-side.overspeed",
        words.units().speed(p.safeSide().overspeed().metresPerSecond(), Rounding.UP));
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
    Map<String, String> purposes = new TreeMap<>(p.purposes());
    p.adhesion().forEach(a -> purposes.putIfAbsent("adhesion." + a.name(), a.note()));
    values.forEach(
        (key, value) -> {
          String label =
              words.messages().has("assumption." + key)
                  ? words.text("assumption." + key)
                  : key.replace('.', ' ').replace('-', ' ');
          if (!value.isBlank()) {
            table.row(label, value, purposes.getOrDefault(key, ""));
          }
        });
    return table.build();
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
