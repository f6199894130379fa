package gradepost.source.policy;

import static gradepost.source.policy.PolicyTables.difference;
import static gradepost.source.policy.PolicyTables.usual;
import static gradepost.yaml.Common.length;

import gradepost.policy.BrakePractice;
import gradepost.policy.CoastPractice;
import gradepost.policy.CorrectionPractice;
import gradepost.policy.HandlePractice;
import gradepost.policy.LinePractice;
import gradepost.policy.PowerPractice;
import gradepost.policy.Practice;
import gradepost.policy.TaughtRules;
import gradepost.policy.WarningPractice;
import gradepost.source.policy.PolicyTables.Said;
import gradepost.units.Acceleration;
import gradepost.units.Length;
import gradepost.units.QuantityKind;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.yaml.Key;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import java.util.List;

/** The keys of driving practice: whatever is left out has its usual value. */
final class PracticeTable {
  private static final Scalar.Quantity<Acceleration> RATE =
      Scalar.Quantity.of(QuantityKind.ACCELERATION, "0.01 m/s2", "0.5 m/s2");
  private static final Scalar.Quantity<Double> SHARE = percent("10 %", "100 %");
  private static final Scalar.Quantity<Span> TIME = time("5 min");

  static final Key<Said<Acceleration>> EASED =
      usual(
          "eased-deceleration",
          RATE,
          BrakePractice.USUAL.eased(),
          "0.12 m/s2",
          "An eased brake still slows the train by this at least.");
  static final Key<Said<Speed>> FELT_ABOVE =
      usual(
          "first-felt-above",
          difference(),
          BrakePractice.USUAL.feltAbove(),
          "18 km/h",
          "The first application is felt this much above the speed aimed for.");
  static final Key<Said<Double>> LOWEST_AIM =
      usual(
          "lowest-aim",
          SHARE,
          BrakePractice.USUAL.lowestAim(),
          "70 %",
          "A brake aims no lower than this share of a lower speed.");
  static final Key<Said<Double>> LOWEST_RELEASE =
      usual(
          "lowest-release",
          SHARE,
          BrakePractice.USUAL.lowestRelease(),
          "50 %",
          "No brake is kept on to below this share of a lower speed, to spare another braking.");
  static final Key<Said<Acceleration>> STAYS_ON =
      usual(
          "stays-on-from",
          RATE,
          BrakePractice.USUAL.staysOnFrom(),
          "0.06 m/s2",
          "The brake stays on past a board where the train would gather speed by more than this.");
  static final Key<Said<Acceleration>> BRAKED_LOWER =
      usual(
          "braked-lower-from",
          RATE,
          BrakePractice.USUAL.brakedLowerFrom(),
          "0.02 m/s2",
          "A train that would gather speed by more than this behind a board is braked as far under the lower speed as a check goes.");
  static final Key<Said<Double>> LAST_EASE =
      usual(
          "last-ease-alone",
          percent("100 %", "200 %"),
          BrakePractice.USUAL.lastEaseAlone(),
          "130 %",
          "Up to this share of the speed of the last ease, a train is stopped with the pressure of that ease alone.");
  static final Key<Said<Span>> BRAKE_OFF =
      usual(
          "brake-off-at-least",
          TIME,
          BrakePractice.USUAL.offAtLeast(),
          "8 s",
          "A brake is not let go for less than this.");
  static final Key<Said<Span>> HELD_LEAST =
      usual(
          "first-held-at-least",
          TIME,
          BrakePractice.USUAL.firstHeldLeast(),
          "2 s",
          "The first application is held this long at least, where its time is changed to stop at the mark.");
  static final Key<Said<Span>> HELD_LONGER =
      usual(
          "first-held-longer",
          time("60 s"),
          BrakePractice.USUAL.firstHeldLonger(),
          "25 s",
          "The first application is held this much longer than the technique says at most.");
  static final Key<Said<Acceleration>> GAIN =
      usual(
          "gain-at-least",
          RATE,
          PowerPractice.USUAL.gain(),
          "0.12 m/s2",
          "A notch gains speed where it gives this against the rise ahead.");
  static final Key<Said<Acceleration>> HOLD =
      usual(
          "hold-at-least",
          RATE,
          PowerPractice.USUAL.hold(),
          "0.04 m/s2",
          "A notch holds speed where it gives this against the rise ahead.");
  static final Key<Said<Acceleration>> CHECK =
      usual(
          "check-at-least",
          RATE,
          PowerPractice.USUAL.check(),
          "0.08 m/s2",
          "A checking application slows the train by this at least.");
  static final Key<Said<Length>> GRADIENT_AHEAD =
      usual(
          "gradient-ahead",
          length("0 m", "2 km"),
          PowerPractice.USUAL.gradientAhead(),
          "400 m",
          "A notch and a checking application are chosen for the gradients of so much line ahead.");
  static final Key<Said<Span>> RISE_WAITED =
      usual(
          "rise-waited-for",
          TIME,
          HandlePractice.USUAL.riseWaitedFor(),
          "8 s",
          "No brake checks a train that reaches a higher permissible speed within this.");
  static final Key<Said<Span>> NOTCH_LEAST =
      usual(
          "notch-at-least",
          TIME,
          HandlePractice.USUAL.notchAtLeast(),
          "5 s",
          "A higher notch is used for at least this before power is shut off.");
  static final Key<Said<Span>> LONGEST_COAST =
      usual(
          "longest-coast",
          TIME,
          PowerPractice.USUAL.longestCoast(),
          "45 s",
          "Coasting stands in for a brake before a lower speed for no longer than this.");
  static final Key<Said<Double>> COAST_KEEPS =
      usual(
          "coast-keeps",
          SHARE,
          PowerPractice.USUAL.coastKeeps(),
          "75 %",
          "Coasting before a braking point ends where the speed has fallen to this share.");
  static final Key<Said<Double>> PLACE_KEEPS =
      usual(
          "place-keeps",
          SHARE,
          CoastPractice.USUAL.placeKeeps(),
          "80 %",
          "Power is shut off early for a place that is easily found only where the train keeps this share of its speed.");
  static final Key<Said<Double>> SPARED_KEEPS =
      usual(
          "spared-power-keeps",
          SHARE,
          PowerPractice.USUAL.sparedKeeps(),
          "60 %",
          "Power is spared only where the train keeps this share of its speed.");
  static final Key<Said<Span>> POWER_OFF =
      usual(
          "power-off-at-least",
          TIME,
          PowerPractice.USUAL.offAtLeast(),
          "5 s",
          "Power that is shut off stays off for at least this.");
  static final Key<Said<Double>> MOVEMENT =
      usual(
          "movement-worth",
          percent("0 %", "50 %"),
          PowerPractice.USUAL.movement(),
          "3 %",
          "What an instruction is worth, as a share of the energy of a leg."
              + " Power taken through several notches in one go is one.");
  static final Key<Said<Span>> MOVEMENT_SAVES =
      usual(
          "movement-saves",
          TIME,
          HandlePractice.USUAL.movementSaves(),
          "8 s",
          "A fastest run does without a movement for a moment that saves no more than this.");
  static final Key<Said<Speed>> CREEPING =
      usual(
          "creeping-below",
          difference(),
          PowerPractice.USUAL.creeping(),
          "19.44 km/h",
          "No train coasts slower than this for long.");
  static final Key<Said<Double>> CREEPING_SHARE =
      usual(
          "creeping-share",
          SHARE,
          CoastPractice.USUAL.creepingShare(),
          "50 %",
          "A train creeps only below this share of what is permissible.");
  static final Key<Said<Span>> CREEPING_LONGEST =
      usual(
          "creeping-at-most",
          TIME,
          CoastPractice.USUAL.creepingLongest(),
          "8 s",
          "A train creeps for no longer than this.");
  static final Key<Said<Length>> CREEPING_BEFORE =
      usual(
          "creeping-before",
          length("0 m", "2 km"),
          CoastPractice.USUAL.creepingBefore(),
          "200 m",
          "A lower permissible speed no further ahead than this may be waited for.");
  static final Key<Said<Length>> ANNOUNCED =
      usual(
          "junction-announced-within",
          length("0 m", "5 km"),
          WarningPractice.USUAL.announcedWithin(),
          "1 km",
          "A junction signal announces pointwork that lies no further behind it.");
  static final Key<Said<Double>> LATE =
      usual(
          "late-share",
          percent("0 %", "100 %"),
          WarningPractice.USUAL.late(),
          "16 %",
          "Of runs in which nothing is corrected no more than this share should be late at a board.");
  static final Key<Said<Span>> APPLIED_AGAIN =
      usual(
          "applied-again-after",
          TIME,
          TaughtRules.USUAL.appliedAgain(),
          "20 s",
          "A brake that is released is not applied again before this; where it must be, the sheet says so.");
  static final Key<Said<Acceleration>> NOTCH_GIVES =
      usual(
          "notch-gives-at-least",
          Scalar.Quantity.of(QuantityKind.ACCELERATION, "0 m/s2", "0.1 m/s2"),
          TaughtRules.USUAL.notchGives(),
          "0.01 m/s2",
          "A notch that gives less than this at the speed of the train is a dead notch.");
  static final Key<Said<Span>> DEAD_NOTCH =
      usual(
          "dead-notch-at-most",
          TIME,
          TaughtRules.USUAL.deadNotch(),
          "5 s",
          "Power stays in a dead notch for at most this; where it must stay longer, the sheet says so.");
  static final Key<Said<Double>> MOVEMENTS =
      usual(
          "movements-in-a-mile",
          new Scalar.PlainNumber("number", true, 1, 100),
          (double) TaughtRules.USUAL.movements(),
          "12",
          "So often the handles are moved in a mile at most; notching up counts as once; where it must be more, the sheet says so.");
  static final Key<Said<Double>> ROWS =
      usual(
          "rows-on-a-plate",
          new Scalar.PlainNumber("number", true, 3, 20),
          (double) TaughtRules.USUAL.rows(),
          "7",
          "The most instructions up to one target, to stand not counted; where there must be more, the sheet says so.");
  static final Key<Said<Double>> ROWS_AT_TERMINAL =
      usual(
          "rows-at-a-terminal",
          new Scalar.PlainNumber("number", true, 3, 20),
          (double) TaughtRules.USUAL.rowsAtTerminal(),
          "10",
          "The same for a stop before buffer stops.");
  static final Key<Said<Length>> ALIKE =
      usual(
          "names-alike-within",
          length("0 m", "5 km"),
          LinePractice.USUAL.alikeWithin(),
          "800 m",
          "Landmarks of the same name no further apart than this are easily mistaken.");
  static final Key<Said<Speed>> OVER_GAP =
      usual(
          "over-gap-at-least",
          difference(),
          LinePractice.USUAL.overGap(),
          "15 mph",
          "Slower than this over a gap that the train does not span, it may stop in it.");
  static final Key<Said<Span>> TEST_HELD =
      usual(
          "brake-test-held",
          time("60 s"),
          LinePractice.USUAL.testHeld(),
          "5 s",
          "How long the brake is held in a running brake test. It is the first application of the technique for a stop, and is then released fully.");
  static final Key<Said<Speed>> TEST_WITHIN =
      usual(
          "brake-test-within",
          difference(),
          LinePractice.USUAL.testWithin(),
          "5 mph",
          "A running brake test is made if the train is as near as this to the speed of the test; else there is no room for it, and the sheet says so.");
  static final Key<Said<Span>> CUE_WITHIN =
      usual(
          "cue-within",
          time("60 s"),
          LinePractice.USUAL.cueWithin(),
          "15 s",
          "A driver counts no longer than this from a cue to a braking point.");

  static final Key<Said<Span>> LOOKS_EVERY =
      usual(
          "looks-every",
          Scalar.Quantity.of(QuantityKind.TIME, "1 s", "60 s"),
          CorrectionPractice.USUAL.looksEvery(),
          "2 s",
          "A driver who brakes looks at place and speed this often, and corrects the brake.");
  static final Key<Said<Span>> CORRECTS_AFTER =
      usual(
          "corrects-after",
          time("10 s"),
          CorrectionPractice.USUAL.reaction(),
          "1 s",
          "So long after a look he moves the brake handle.");
  static final Key<Said<Double>> LATE_CORRECTED =
      usual(
          "late-corrected-share",
          percent("0.1 %", "100 %"),
          CorrectionPractice.USUAL.lateShare(),
          "0.5 %",
          "No more of the runs that the driver corrects may be late, judged by the upper 95 % limit; else the braking point is earlier. Before buffer stops, signals and check rails none of those drawn may be. 100 % moves no point.");
  static final Key<Said<Boolean>> LEAVES_NEXT =
      usual(
          "leaves-next-brake",
          Scalar.Choice.yesNo(),
          CorrectionPractice.USUAL.leavesNextBrake(),
          "yes",
          "The braking point is so early that the next brake is still enough if this one fails.");

  static final ObjectSchema<Practice> PRACTICE_SHAPE =
      ObjectSchema.of(
          "driving practice",
          List.of(
              EASED,
              FELT_ABOVE,
              LOWEST_AIM,
              LOWEST_RELEASE,
              STAYS_ON,
              BRAKED_LOWER,
              LAST_EASE,
              BRAKE_OFF,
              HELD_LEAST,
              HELD_LONGER,
              GAIN,
              HOLD,
              CHECK,
              GRADIENT_AHEAD,
              RISE_WAITED,
              NOTCH_LEAST,
              LONGEST_COAST,
              COAST_KEEPS,
              PLACE_KEEPS,
              SPARED_KEEPS,
              POWER_OFF,
              MOVEMENT,
              MOVEMENT_SAVES,
              CREEPING,
              CREEPING_SHARE,
              CREEPING_LONGEST,
              CREEPING_BEFORE,
              ANNOUNCED,
              LATE,
              APPLIED_AGAIN,
              NOTCH_GIVES,
              DEAD_NOTCH,
              MOVEMENTS,
              ROWS,
              ROWS_AT_TERMINAL,
              ALIKE,
              OVER_GAP,
              TEST_HELD,
              TEST_WITHIN,
              CUE_WITHIN,
              LOOKS_EVERY,
              CORRECTS_AFTER,
              LATE_CORRECTED,
              LEAVES_NEXT),
          PracticeTable::build);

  private static Practice build(Values v) {
    return new Practice(
        new BrakePractice(
            v.get(EASED).value(),
            v.get(FELT_ABOVE).value(),
            v.get(LOWEST_AIM).value(),
            v.get(LOWEST_RELEASE).value(),
            v.get(STAYS_ON).value(),
            v.get(BRAKED_LOWER).value(),
            v.get(LAST_EASE).value(),
            v.get(BRAKE_OFF).value(),
            v.get(HELD_LEAST).value(),
            v.get(HELD_LONGER).value()),
        new PowerPractice(
            v.get(GAIN).value(),
            v.get(HOLD).value(),
            v.get(CHECK).value(),
            v.get(LONGEST_COAST).value(),
            v.get(COAST_KEEPS).value(),
            v.get(SPARED_KEEPS).value(),
            v.get(POWER_OFF).value(),
            v.get(MOVEMENT).value(),
            v.get(CREEPING).value(),
            v.get(GRADIENT_AHEAD).value()),
        new CoastPractice(
            v.get(PLACE_KEEPS).value(),
            v.get(CREEPING_SHARE).value(),
            v.get(CREEPING_LONGEST).value(),
            v.get(CREEPING_BEFORE).value()),
        new HandlePractice(
            v.get(RISE_WAITED).value(), v.get(NOTCH_LEAST).value(), v.get(MOVEMENT_SAVES).value()),
        new WarningPractice(v.get(ANNOUNCED).value(), v.get(LATE).value()),
        new TaughtRules(
            v.get(APPLIED_AGAIN).value(),
            v.get(NOTCH_GIVES).value(),
            v.get(DEAD_NOTCH).value(),
            v.get(MOVEMENTS).value().intValue(),
            v.get(ROWS).value().intValue(),
            v.get(ROWS_AT_TERMINAL).value().intValue()),
        new LinePractice(
            v.get(ALIKE).value(),
            v.get(OVER_GAP).value(),
            v.get(TEST_HELD).value(),
            v.get(TEST_WITHIN).value(),
            v.get(CUE_WITHIN).value()),
        new CorrectionPractice(
            v.get(LOOKS_EVERY).value(),
            v.get(CORRECTS_AFTER).value(),
            v.get(LATE_CORRECTED).value(),
            v.get(LEAVES_NEXT).value()));
  }

  private static Scalar.Quantity<Double> percent(String least, String most) {
    return Scalar.Quantity.of(QuantityKind.PERCENT, least, most);
  }

  private static Scalar.Quantity<Span> time(String most) {
    return Scalar.Quantity.of(QuantityKind.TIME, "0 s", most);
  }

  private PracticeTable() {}
}
