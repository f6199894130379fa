package gradepost.briefing.question;

import gradepost.briefing.chart.TrackStrip.Bend;
import gradepost.briefing.chart.TrackStrip.Slope;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.Subject;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Gradients, curves, and the order of what stands beside the line. */
final class TrackItems {
  private static final int IN_ORDER = 4;
  private static final double CUES_APART_M = 40;
  private final BriefingFacts taught;
  private final References references;

  TrackItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
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
      Distractors near = new Distractors(taught.gradient(slope.permille()));
      near.add(taught.gradient(-slope.permille()));
      for (int by : new int[] {1, -1, 2, -2, 3}) {
        if (i + by >= 0 && i + by < slopes.size()) {
          near.add(taught.gradient(slopes.get(i + by).permille()));
          near.add(taught.gradient(-slopes.get(i + by).permille()));
        }
      }
      if (near.enough()) {
        out.add(
            new Item(
                Subject.GRADIENT,
                "",
                at,
                taught.text("ask.gradient", taught.place(at)),
                taught.gradient(slope.permille()),
                near.all(),
                references.table("gradients")));
      }
    }
    return out;
  }

  List<Item> curves() {
    List<Item> out = new ArrayList<>();
    for (Bend bend : taught.bends()) {
      double at = taught.path().printedAtOrBefore((bend.fromM() + bend.toM()) / 2);
      if (at < bend.fromM() || (bend.checkLeft() && bend.checkRight())) {
        continue;
      }
      Distractors near = new Distractors(hand(bend.left(), bend.checkLeft(), bend.checkRight()));
      near.add(hand(bend.left(), bend.checkRight(), bend.checkLeft()));
      near.add(hand(!bend.left(), bend.checkRight(), bend.checkLeft()));
      for (boolean left : new boolean[] {bend.left(), !bend.left()}) {
        near.add(hand(left, left, false));
        near.add(hand(left, false, !left));
        near.add(hand(left, false, false));
      }
      out.add(
          new Item(
              Subject.CURVE,
              "",
              at,
              taught.text("ask.curve", bend.text(), taught.place(at)),
              hand(bend.left(), bend.checkLeft(), bend.checkRight()),
              near.all(),
              references.table("curves")));
    }
    return out;
  }

  private String hand(boolean left, boolean checkLeft, boolean checkRight) {
    String way = taught.text(left ? "hand.left" : "hand.right");
    if (!checkLeft && !checkRight) {
      return taught.text("answer.curve", way);
    }
    return taught.text(
        "answer.curve-checked", way, taught.text(checkLeft ? "hand.left" : "hand.right"));
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
      near.add(joined(swapped(names, 1, 2)));
      near.add(joined(swapped(names, 0, 1)));
      near.add(joined(swapped(names, 2, 3)));
      List<String> other = new ArrayList<>(names);
      Collections.reverse(other);
      near.add(joined(other));
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
