package gradepost.app.issue;

import gradepost.motion.NoEnd;
import gradepost.route.LineHoles;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.LineHoles.Place;
import gradepost.task.Target;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.Gradient;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.Speed;
import java.util.Optional;

/**
 * Every sentence that says why a plan is not fit for issue. They stand in {@code
 * failures.properties}.
 */
final class FailureText {
  private static final Mistakes MISTAKES =
      Mistakes.beside(FailureText.class, "failures.properties");

  /** What the train is to be braked for, with its place and speed as the lineside has them. */
  record Aim(Target target, Place place, InUnits<Speed> speed) {}

  private static final Hole<Aim> NAME = Hole.word("name").of(aim -> aim.target().name());
  private static final Hole<Aim> AIM_PLACE = LineHoles.place("place").of(Aim::place);
  private static final Hole<Aim> AIM_SPEED = LineHoles.speedDown("speed").of(Aim::speed);
  private static final Phrase<Aim> LOWER_SPEED =
      MISTAKES.phrase("target.lower-speed", AIM_SPEED.and(AIM_PLACE).and(NAME));
  private static final Phrase<Aim> TERMINAL =
      MISTAKES.phrase("target.terminal", AIM_SPEED.and(AIM_PLACE));
  private static final Phrase<Aim> SIGNAL = MISTAKES.phrase("target.signal", NAME.and(AIM_PLACE));
  private static final Phrase<Aim> STOP =
      MISTAKES.phrase(
          "target.stop",
          NAME.and(AIM_PLACE)
              .and(
                  Hole.word("platform")
                      .of(aim -> aim.target().stop().orElseThrow().call().platform().number())));

  private static final Hole<Aim> TARGET =
      new Hole<>(
          "target",
          aim ->
              aim.target()
                  .match(
                      stop -> STOP.of(aim),
                      lower -> LOWER_SPEED.of(aim),
                      step -> TERMINAL.of(aim),
                      signal -> SIGNAL.of(aim)));
  private static final Hole<Place> PLACE = LineHoles.place("place");
  private static final Hole<InUnits<Pressure>> MAIN = LineHoles.pressure("main");

  static final Two<String, Mistake> PAPER =
      MISTAKES.declare("paper", Hole.word("paper"), Hole.mistake("failure"));
  static final Two<InUnits<Length>, InUnits<Length>> STOP_SHORT =
      MISTAKES.declare(
          "stop-outside.short", LineHoles.lengthUp("off"), LineHoles.lengthDown("tolerance"));
  static final Two<InUnits<Length>, InUnits<Length>> STOP_PAST =
      MISTAKES.declare(
          "stop-outside.past", LineHoles.lengthUp("off"), LineHoles.lengthDown("tolerance"));
  static final One<Place> STALLS = MISTAKES.declare("stalls", PLACE);
  static final Three<InUnits<Speed>, Place, InUnits<Speed>> OVER_CEILING =
      MISTAKES.declare(
          "over-ceiling", LineHoles.speedUp("speed"), PLACE, LineHoles.speedDown("permissible"));
  static final One<Place> FORBIDDEN_MOVEMENT = MISTAKES.declare("forbidden-movement", PLACE);
  static final One<Place> NEVER_COMES = MISTAKES.declare("never-comes", PLACE);
  static final One<Place> RULE_UNTOLD = MISTAKES.declare("rule-untold", PLACE);
  static final One<Place> TEST_UNTOLD = MISTAKES.declare("test-untold", PLACE);
  static final Three<Place, InUnits<Pressure>, InUnits<Pressure>> NOT_RECHARGED =
      MISTAKES.declare(
          "not-recharged", PLACE, LineHoles.pressure("asked"), LineHoles.pressure("gives"));
  static final Three<Place, InUnits<Speed>, InUnits<Speed>> HELD_TOO_FAST =
      MISTAKES.declare(
          "held-too-fast", PLACE, LineHoles.speedDown("upper"), LineHoles.speedDown("most"));
  static final Three<Place, InUnits<Speed>, InUnits<Speed>> HELD_LEFT =
      MISTAKES.declare("held-left", PLACE, LineHoles.speedUp("speed"), LineHoles.speedDown("edge"));
  static final One<Place> HELD_FULL_RELEASE = MISTAKES.declare("held-full-release", PLACE);
  static final Two<Place, InUnits<Speed>> HELD_EDGE =
      MISTAKES.declare("held-edge", PLACE, LineHoles.speedUp("speed"));
  static final Four<Aim, InUnits<Pressure>, InUnits<Gradient>, Place> CANNOT_BRAKE_FALL =
      MISTAKES.declare("cannot-brake.fall", TARGET, MAIN, LineHoles.gradient("gradient"), PLACE);
  static final Four<Aim, InUnits<Pressure>, InUnits<Gradient>, Place>
      CANNOT_BRAKE_FALL_FULL_SERVICE =
          MISTAKES.declare(
              "cannot-brake.fall.full-service",
              TARGET,
              MAIN,
              LineHoles.gradient("gradient"),
              PLACE);
  static final Four<Aim, Place, InUnits<Speed>, InUnits<Pressure>> CANNOT_BRAKE_TOO_NEAR =
      MISTAKES.declare("cannot-brake.too-near", TARGET, PLACE, LineHoles.speedDown("speed"), MAIN);
  static final Four<Aim, Place, InUnits<Speed>, InUnits<Pressure>>
      CANNOT_BRAKE_TOO_NEAR_FULL_SERVICE =
          MISTAKES.declare(
              "cannot-brake.too-near.full-service",
              TARGET,
              PLACE,
              LineHoles.speedDown("speed"),
              MAIN);

  /** The failure that follows from it stays away where there is none. */
  static final Two<Aim, Optional<Mistake>> CANNOT_BRAKE_UNKNOWN =
      MISTAKES.declare(
          "cannot-brake.unknown",
          TARGET,
          new Hole<>("failure", failure -> failure.map(Mistake::what).orElse("")));

  static final One<NoEnd> NO_END =
      MISTAKES.declare("no-end", new Hole<>("why", e -> String.valueOf(e.getMessage())));

  private FailureText() {}
}
