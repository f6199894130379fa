package gradepost.drive.brake;

import java.util.List;

/**
 * How hard and how finely a plan is searched for: step sizes, tolerances and limits of effort, all
 * of the program's own choice. A driver or a depot has no say in them; what they may doubt is in
 * the policy, under practice. Every train model carries one of these, so that a plan can be made
 * with others.
 *
 * @param choice how many ways of driving a leg are tried
 * @param grid the grid over place and speed in which the cheapest way is found
 * @param way the steps over that grid, and what is made of them
 * @param leg the run between stops: what bounds it, and where a braking is looked for
 * @param run what such a run does by itself, between the policy's rules
 * @param brake where a braking begins, and how it is made to end at the mark
 * @param fallback what is worked out beside the plan
 * @param check how a run is watched
 */
public record PlannerSettings(
    Choice choice,
    Grid grid,
    Way way,
    Leg leg,
    Run run,
    Brake brake,
    Fallback fallback,
    Check check) {
  /** So much a stop may shift when its leg is a part of the whole run, m; and some more. */
  private static final double SURELY_M = 0.2;

  /**
   * How many ways of driving a leg are tried.
   *
   * @param seeds from so many ways a better one is looked for near by
   * @param late a way that is 1 % too slow promises as much as one in time that takes so many per
   *     cent more energy
   * @param momentary a movement for a moment takes as much from what a way promises as this share
   *     of its energy
   * @param behind a way promises nothing that lies behind the best one by more than this share of
   *     the energy for each of its instructions
   * @param rounds so often the ways near the one taken are looked at
   * @param looksM a way is left as it is where changes were looked at along so much road, m
   * @param looksAgain and along the whole leg so often
   * @param timePricesW what a second is worth, W for each kg, rising: from a run that saves all it
   *     can to the fastest
   * @param halvings so often the price of time is halved between one that is too slow and one in
   *     time
   * @param movePricesJ what a handle movement is worth, J for each kg
   * @param slowerS so much of the time allowed is left over, s
   * @param longerCoastS coasting before a braking is tried longer and shorter by so much, s
   * @param alone where several changes together are no gain, so many are tried one by one
   * @param leastGain a share of the energy: no more than this is not worth another look near by
   * @param sameM two ways that are so near each other are one again, m
   * @param sameMps and so near in speed, m/s
   * @param reachM a change is not looked at that makes a difference so far behind it, m
   * @param holds on a leg the speed is held along so many stretches at most
   * @param holdTries for each of them so many are tried, the longest first
   * @param holdEnergy where a speed is held, the leg takes no more than this share of the energy
   * @param runHoldEnergy and the whole run no more than this
   */
  public record Choice(
      int seeds,
      double late,
      double momentary,
      double behind,
      int rounds,
      double looksM,
      double looksAgain,
      List<Double> timePricesW,
      int halvings,
      List<Double> movePricesJ,
      double slowerS,
      double longerCoastS,
      int alone,
      double leastGain,
      double sameM,
      double sameMps,
      double reachM,
      int holds,
      int holdTries,
      double holdEnergy,
      double runHoldEnergy) {

    /** Keeps the lists as they are. */
    public Choice {
      timePricesW = List.copyOf(timePricesW);
      movePricesJ = List.copyOf(movePricesJ);
    }

    /** The same with speeds held along so many stretches of a leg at most. */
    Choice holding(int most) {
      return with(seeds, behind, most);
    }

    /** The same from more ways, also such that lie further behind. */
    Choice wider() {
      return with(3 * seeds, 6 * behind, holds);
    }

    private Choice with(int otherSeeds, double otherBehind, int otherHolds) {
      return new Choice(
          otherSeeds,
          late,
          momentary,
          otherBehind,
          rounds,
          looksM,
          looksAgain,
          timePricesW,
          halvings,
          movePricesJ,
          slowerS,
          longerCoastS,
          alone,
          leastGain,
          sameM,
          sameMps,
          reachM,
          otherHolds,
          holdTries,
          holdEnergy,
          runHoldEnergy);
    }
  }

  /**
   * The grid over place and speed.
   *
   * @param stepM places are no further apart than this, m
   * @param stepMps speeds are so far apart, m/s
   * @param lowerReleasesMps a lower speed may also be braked for further than need be: by so much,
   *     m/s
   * @param slackMps a speed so near one that a rule names may be the same: the steps hide it, m/s
   * @param sameAimM a target is told from one so near behind it that it is braked for instead, m
   * @param nearM a train may be so far from a place of the grid at which it is to do something, and
   *     such a place is tried so much earlier and later, m; more than a step
   * @param brakings from one place there is a choice of so many brakings at most
   */
  public record Grid(
      double stepM,
      double stepMps,
      List<Double> lowerReleasesMps,
      double slackMps,
      double sameAimM,
      double nearM,
      int brakings) {

    /** Keeps the list as it is. */
    public Grid {
      lowerReleasesMps = List.copyOf(lowerReleasesMps);
    }
  }

  /**
   * Steps over the grid, and the way that is made of them.
   *
   * @param lateM further past where the brake should have gone on than this is too late, m
   * @param lowestChecked a checking application is on down to this share of the speed for its
   *     release
   * @param standsMps slower than this and not gaining speed, a train is taken to come to a stand,
   *     m/s
   * @param notchUpSteps the most steps of taking power from a stand; a step is a notch, a place or
   *     two seconds
   * @param tries so often a way that leads nowhere goes back before it comes further than ever
   * @param soon after every so many times it goes back one step further at once
   * @param gainsMps a way that gains more than this over {@code gainsInM} has power off at a speed,
   *     any other at a place, m/s
   * @param gainsInM over so many metres
   * @param behind a train at less than this share of the speed of such a way takes power by the
   *     rules alone
   */
  public record Way(
      double lateM,
      double lowestChecked,
      double standsMps,
      int notchUpSteps,
      int tries,
      int soon,
      double gainsMps,
      double gainsInM,
      double behind) {}

  /**
   * The run between stops under the driver's rules.
   *
   * @param movements the most handle movements up to a braking; more is no end
   * @param looks the most looks at what to do next; the longest leg needs a tenth of them
   * @param idleLooks so many decisions in one moment bring the run no further: it is given up
   * @param lookS so often it is looked at again whether something is to be done, s
   * @param emptyingLookS the same while the brake cylinders are emptying, s
   * @param closeMps so close under the ceiling any gain of speed is checked; further below, a
   *     slight one is not, m/s
   * @param toleranceM how much earlier than the last place a braking may be found, m
   * @param jumpM a jump of the margin by more than this is a power-on that had better not been
   *     made, m
   * @param jumpNearM and if power came on no further behind than this, m
   * @param attempts so often the run is made again without power that is taken for nothing
   * @param lookAheadM the run is made in stretches of so much, m, until something is to be braked
   *     for
   * @param gentleMps2 a deceleration that is less than any technique aims at, m/s²
   * @param gentleBrakings a target that so many times such a braking does not reach is not looked
   *     at yet
   * @param beginsM and so much for its beginning, m
   * @param coastShare coasting in place of a brake is aimed at no less than this share of a lower
   *     speed
   * @param coastMps no faster train is looked for that could coast to a lower speed, m/s
   */
  public record Leg(
      int movements,
      int looks,
      int idleLooks,
      double lookS,
      double emptyingLookS,
      double closeMps,
      double toleranceM,
      double jumpM,
      double jumpNearM,
      int attempts,
      double lookAheadM,
      double gentleMps2,
      double gentleBrakings,
      double beginsM,
      double coastShare,
      double coastMps) {}

  /**
   * What a run between stops does by itself, between the policy's rules.
   *
   * @param weakMps2 a train that gains less than this hardly gains, and tries a higher notch, m/s²
   * @param helpsMps2 such a notch helps if it gives so much more, m/s²
   * @param slowMps a train that is slower than this waits for no higher ceiling, m/s
   * @param slowShare nor one that is slower than this share of the speed at which power is taken
   * @param gapKeeps the share of its energy that a train keeps at least which takes no power before
   *     a gap
   * @param checkedS a checking application that does not slow the train is made heavier after this,
   *     s
   * @param heavierSteps by so many steps of the gauge
   * @param aheadStepM gradients ahead are looked at so often, m
   * @param closeToTestMps so near the speed from which the train coasts to a running brake test,
   *     power comes off at the next place that can be printed, and is not taken, m/s
   */
  public record Run(
      double weakMps2,
      double helpsMps2,
      double slowMps,
      double slowShare,
      double gapKeeps,
      double checkedS,
      int heavierSteps,
      double aheadStepM,
      double closeToTestMps) {}

  /**
   * Where a braking begins, and how it is made to end at the mark.
   *
   * @param curveStepMps speeds between which a curve of braking points is straight, m/s
   * @param curveRounds so often a point of such a curve is moved by what it ends wrong
   * @param curveNearM a point of such a curve that ends so near its aim will do, m
   * @param easeSteps an ease is moved by so many steps of speed or pressure at most
   * @param fewPressures with fewer pressures to choose from than this the time of the first
   *     application is solved too
   * @param looksBack so often a last place further back is looked for by the slope alone
   * @param leastPerM what begins a metre later ends at least this much later, m
   * @param greatestPerM and at most this much, m
   * @param adhesionParts parts of a stage between whose ends friction and adhesion are compared
   */
  public record Brake(
      double curveStepMps,
      int curveRounds,
      double curveNearM,
      int easeSteps,
      int fewPressures,
      int looksBack,
      double leastPerM,
      double greatestPerM,
      int adhesionParts) {}

  /**
   * What is worked out beside the plan: other rails, last places, signals, runs by scatter.
   *
   * @param toleranceM how much earlier than the last place may be found, m; well under what is
   *     printed
   * @param signalToleranceM the same before a signal, m
   * @param rounds so often a point on another rail is moved; each round takes in what an earlier
   *     point passes more, and the sites of a leg are few
   * @param places how many printed places are tried, each before the last; then as many to the yard
   *     or metre
   * @param samePa pressures no further apart than this are the same, Pa
   * @param permittedStepM the fastest run that is permitted is held under its ceiling so often, m
   * @param seed of the scatter, to which the place of the target is added
   * @param draws the most draws for one normal value; three of four are taken
   * @param adhesionClasses the rail of a run by scatter is one of so many, from three deviations
   *     below to three above
   * @param earlierPlaces a point that keeps a share of late runs is looked for at so many places
   * @param moves so often a run is made again with points moved towards the train
   */
  public record Fallback(
      double toleranceM,
      double signalToleranceM,
      int rounds,
      int places,
      double samePa,
      double permittedStepM,
      long seed,
      int draws,
      int adhesionClasses,
      int earlierPlaces,
      int moves) {}

  /**
   * How a run is watched.
   *
   * @param speedSlackMps rounding of a printed speed leaves this much over the permissible one, m/s
   * @param looks how long a speed may drop before it rises again, in looks of five seconds
   * @param stopMarginM a leg by itself ends so much within the policy's tolerance, m
   */
  public record Check(double speedSlackMps, int looks, double stopMarginM) {}

  /** Those with which papers are made. */
  public static PlannerSettings usual() {
    return new PlannerSettings(
        new Choice(
            4,
            15,
            0.05,
            0.05,
            14,
            1e6,
            20,
            List.of(0.05, 0.5, 2.0, 6.0, 18.0, 100.0),
            3,
            List.of(3.0, 25.0),
            0.3,
            5,
            3,
            0.004,
            15,
            0.1,
            20_000,
            6,
            2,
            1.03,
            1.01),
        new Grid(50, 0.3, List.of(1.4, 2.8), 0.2, 0.5, 60, 4),
        new Way(2, 0.6, 0.01, 100_000, 300, 15, 0.7, 100, 0.75),
        new Leg(2000, 100_000, 20, 5, 1, 0.1, 0.05, 3, 1, 20, 3000, 0.35, 3, 1000, 0.5, 40),
        new Run(0.02, 0.005, 2, 0.8, 0.5, 120, 5, 50, 1.5),
        new Brake(0.5, 6, 0.5, 6, 6, 6, 0.3, 3, 8),
        new Fallback(0.01, 0.05, 5, 60, 1, 10, 0x5eed_9057L, 1000, 13, 24, 3),
        new Check(0.001, 1000, 0));
  }

  /**
   * The same with legs that end well within the policy's tolerance, since as one run they shift a
   * bit, chosen from more ways.
   */
  public PlannerSettings surely() {
    Check other = new Check(check.speedSlackMps(), check.looks(), SURELY_M);
    return new PlannerSettings(choice.wider(), grid, way, leg, run, brake, fallback, other);
  }

  /** The same with speeds held along so many stretches of a leg at most; 0: none is held. */
  public PlannerSettings holding(int most) {
    return new PlannerSettings(choice.holding(most), grid, way, leg, run, brake, fallback, check);
  }
}
