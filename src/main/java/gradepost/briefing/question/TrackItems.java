package gradepost.briefing.question;

import gradepost.briefing.chart.TrackStrip.Bend;
import gradepost.briefing.chart.TrackStrip.Slope;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.Subject;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Gradients, curves, and the order of what stands beside the line. */
final class TrackItems {
  private static final int IN_ORDER = 4;
  private static final double CUES_APART_M = 40;
  private final BriefingFacts taught;
  private final References references;
  private final Where where;

  TrackItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
    this.where = new Where(taught);
  }

  List<Item> gradients() {
    List<Slope> slopes = taught.slopes();
    List<Item> out = new ArrayList<>();
    for (int i = 0; i < slopes.size(); i++) {
      Slope slope = slopes.get(i);
      double at = taught.path().printedAtOrBefore((slope.fromM() + slope.toM()) / 2);
      double margin = taught.units().placeStepM();
      if (at < slope.fromM() + margin || at > slope.toM() - margin) {
        continue;
      }
      // This slope and another one, each way up: all four are alike.
      Distractors near = new Distractors(taught.gradient(slope.permille()));
      near.add(taught.gradient(-slope.permille()));
      other(slopes, i)
          .ifPresent(
              o -> near.add(taught.gradient(o.permille())).add(taught.gradient(-o.permille())));
      if (near.enough()) {
        out.add(
            new Item(
                Subject.GRADIENT,
                "",
                at,
                taught.text("ask.gradient", where.of(at)),
                taught.gradient(slope.permille()),
                near.all(),
                references.table("gradients")));
      }
    }
    return out;
  }

  /** The nearest slope that is printed otherwise, either way up. */
  private Optional<Slope> other(List<Slope> slopes, int i) {
    String up = taught.gradient(slopes.get(i).permille());
    String down = taught.gradient(-slopes.get(i).permille());
    return slopes.stream()
        .filter(
            s -> {
              String text = taught.gradient(s.permille());
              return s.permille() != 0 && !text.equals(up) && !text.equals(down);
            })
        .min(Comparator.comparingDouble(s -> Math.abs(s.fromM() - slopes.get(i).fromM())));
  }

  /** Which curve has a hand, and which a check rail. */
  List<Item> curves() {
    List<Item> out = new ArrayList<>();
    for (boolean left : new boolean[] {true, false}) {
      String way = taught.text(left ? "hand.left" : "hand.right");
      out.addAll(
          WhichOf.items(
              Subject.CURVE,
              things(b -> b.left() == left),
              taught.text("ask.curve", way),
              Optional.empty()));
    }
    out.addAll(
        WhichOf.items(
            Subject.CURVE,
            things(b -> b.checkLeft() || b.checkRight()),
            taught.text("ask.check-rail"),
            Optional.of(taught.text("ask.check-rail-not"))));
    return out;
  }

  private List<WhichOf.Thing> things(Predicate<Bend> has) {
    return taught.bends().stream()
        .map(
            b ->
                new WhichOf.Thing(
                    taught.text("answer.curve", b.text(), taught.place(b.fromM())),
                    b.fromM(),
                    has.test(b),
                    references.table("curves")))
        .toList();
  }

  /** Runs of four cues that are well apart and bear names that no other cue bears. */
  List<Item> order() {
    List<BriefingFacts.At<String>> all = taught.cues();
    List<BriefingFacts.At<String>> apart = new ArrayList<>();
    for (BriefingFacts.At<String> cue : all) {
      boolean named = all.stream().filter(c -> c.what().equals(cue.what())).count() == 1;
      boolean far =
          apart.isEmpty() || cue.atM() - apart.get(apart.size() - 1).atM() >= CUES_APART_M;
      if (named && far) {
        apart.add(cue);
      }
    }
    List<Item> out = new ArrayList<>();
    for (int i = 0; i + IN_ORDER <= apart.size(); i += 2) {
      List<BriefingFacts.At<String>> cues = apart.subList(i, i + IN_ORDER);
      List<String> names = cues.stream().map(BriefingFacts.At::what).toList();
      Distractors near = new Distractors(joined(names));
      // Each of the four is as far from the others: two pairs, each in order or not.
      near.add(joined(swapped(names, 0, 1)));
      near.add(joined(swapped(names, 2, 3)));
      near.add(joined(swapped(swapped(names, 0, 1), 2, 3)));
      out.add(
          new Item(
              Subject.ORDER_OF_CUES,
              "",
              cues.get(0).atM(),
              taught.text(
                  "ask.order",
                  taught.place(cues.get(0).atM()),
                  taught.placePast(cues.get(IN_ORDER - 1).atM())),
              joined(names),
              near.all(),
              references.line(taught.place(cues.get(0).atM()))));
    }
    return out;
  }

  private String joined(List<String> names) {
    return String.join(taught.text("answer.then"), names);
  }

  private static List<String> swapped(List<String> names, int a, int b) {
    List<String> out = new ArrayList<>(names);
    Collections.swap(out, a, b);
    return out;
  }
}
