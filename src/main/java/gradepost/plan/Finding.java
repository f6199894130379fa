package gradepost.plan;

import gradepost.plan.fallback.Latest;
import gradepost.stock.BrakeSystem;
import java.util.Optional;

/** Something that the driver or the clerk must know, printed where he meets it. */
public sealed interface Finding {

  /** One answer for each case. */
  interface Cases<T> {
    /** The warning comes after the braking point. */
    T boardTooLate(BoardTooLate finding);

    /** Nothing warns. */
    T noBoard(NoBoard finding);

    /** The speed drops by much. */
    T bigDrop(BigDrop finding);

    /** The train is longer than the platform. */
    T platformTooShort(PlatformTooShort finding);

    /** No mark for this train. */
    T noStopMark(NoStopMark finding);

    /** No place to brake from on some rail. */
    T noBrakingPoint(NoBrakingPoint finding);

    /** The mark is near the buffer stops. */
    T nearBuffers(NearBuffers finding);

    /** The reservoirs are not full. */
    T lessToGive(LessToGive finding);

    /** Rolling on, the train meets the buffer stops. */
    T atBuffers(AtBuffers finding);

    /** Uncorrected runs are often too fast. */
    T oftenLate(OftenLate finding);

    /** Uncorrected runs are sometimes not held. */
    T sometimesNotHeld(SometimesNotHeld finding);

    /** Corrected runs are late, wherever the brake goes on. */
    T lateThough(LateThough finding);

    /** No room for a running brake test. */
    T noRoomForTest(NoRoomForTest finding);

    /** Where such a test is made instead. */
    T testInstead(TestInstead finding);

    /** A rail on which such a test is left out, or not released. */
    T testOnRail(TestOnRail finding);

    /** A speed from which a later target is braked for before this one. */
    T nextFirst(NextFirst finding);

    /** From where the reservoirs are full again. */
    T fullAgain(FullAgain finding);

    /** The run breaks a rule of driving. */
    T ruleBroken(RuleBroken finding);
  }

  /** The answer for this case. */
  <T> T match(Cases<T> cases);

  /** What it is about. */
  About about();

  /** What a finding may be about. */
  enum About {
    /** A lower permissible speed: its size, and what warns of it. */
    LOWER_SPEED,
    /** A platform that is not as usual. */
    PLATFORM,
    /** The braking itself. */
    BRAKING,
    /** A running brake test on the way. */
    BRAKE_TEST,
    /** The handles: what an instructor would not teach without a word. */
    HANDLES
  }

  /** The warning board stands after the planned braking point, or nothing warns at all. */
  record BoardTooLate(double boardM, double plannedM) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.boardTooLate(this);
    }

    @Override
    public About about() {
      return About.LOWER_SPEED;
    }
  }

  /** Nothing at the lineside announces the reduction. */
  record NoBoard() implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.noBoard(this);
    }

    @Override
    public About about() {
      return About.LOWER_SPEED;
    }
  }

  /** The permissible speed falls far: {@link gradepost.route.BigDrop}. */
  record BigDrop(double fromMps, double toMps) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.bigDrop(this);
    }

    @Override
    public About about() {
      return About.LOWER_SPEED;
    }
  }

  /** The platform is shorter than the train. */
  record PlatformTooShort(double platformM, double trainM, String doorInstruction)
      implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.platformTooShort(this);
    }

    @Override
    public About about() {
      return About.PLATFORM;
    }
  }

  /** No stop mark is supplied for this number of cars: the platform end stands in for it. */
  record NoStopMark(int cars) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.noStopMark(this);
    }

    @Override
    public About about() {
      return About.PLATFORM;
    }
  }

  /**
   * No planned braking point exists.
   *
   * @param service where full service holds at the latest, or why nowhere
   */
  record NoBrakingPoint(String adhesion, Latest service) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.noBrakingPoint(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /** The stop mark is nearer to the buffer stops than the policy's margin. */
  record NearBuffers(double distanceM, double marginM) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.nearBuffers(this);
    }

    @Override
    public About about() {
      return About.PLATFORM;
    }
  }

  /**
   * At the braking point the reservoirs have not filled again since the last release.
   *
   * @param planned whether planned braking uses this brake; else it is the fallback, and the
   *     figures are for a train that needed it in full the last time too
   * @param afterS since that release
   * @param givesPa the most that it then has
   */
  record LessToGive(BrakeSystem brake, boolean planned, double afterS, double givesPa)
      implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.lessToGive(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /**
   * A brake that is released for a lower speed has its reservoirs to fill again, and nothing brakes
   * before it has.
   *
   * @param releasedM where it comes off
   * @param afterS how long they take from there
   * @param fullM where the train then is
   */
  record FullAgain(BrakeSystem brake, double releasedM, double afterS, double fullM)
      implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.fullAgain(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /** Rolling on from the planned braking point with no brake, the train meets the buffer stops. */
  record AtBuffers(double speedMps) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.atBuffers(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /**
   * Many runs in which nothing is corrected are still too fast at the board.
   *
   * @param share of them
   * @param earlierM how much earlier the braking would have to begin for one in ten to be too fast;
   *     empty if one in ten never comes to the speed of the board
   */
  record OftenLate(double share, Optional<Double> earlierM) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.oftenLate(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /** This share of the uncorrected runs is still too fast where the route data end. */
  record SometimesNotHeld(double share) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.sometimesNotHeld(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /**
   * Runs are too often late though the driver corrects them, and from no earlier point half as many
   * are.
   *
   * @param share what their share is at most
   */
  record LateThough(double share) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.lateThough(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /**
   * The run has no room for a running brake test at its place, and does not make it.
   *
   * @param testM its place, distance run
   * @param testMps the least speed at which it counts; where the train is too fast, the most
   */
  record NoRoomForTest(double testM, double testMps, BrakeTest.NoRoom why) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.noRoomForTest(this);
    }

    @Override
    public About about() {
      return About.BRAKE_TEST;
    }
  }

  /**
   * Where a running brake test is made for which there is no room at its place.
   *
   * @param where the next place of the leg with room; empty where none was found
   */
  record TestInstead(Optional<BrakeTest.Instead> where) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.testInstead(this);
    }

    @Override
    public About about() {
      return About.BRAKE_TEST;
    }
  }

  /**
   * On a poorer rail than the planned one the brake for the target goes on before a running brake
   * test, or before it is over.
   *
   * @param testM its place, distance run
   * @param brakingM where the brake goes on on that rail
   */
  record TestOnRail(String adhesion, double testM, double brakingM) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.testOnRail(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /**
   * A train that is faster than planned has to brake for a later target before it would brake for
   * this one: to brake for this one alone would be too late for that.
   *
   * @param adhesion name of the state of the rail
   * @param fromMps the least of the tabulated speeds for which that is so
   * @param next name of the later target
   */
  record NextFirst(String adhesion, double fromMps, String next) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.nextFirst(this);
    }

    @Override
    public About about() {
      return About.BRAKING;
    }
  }

  /**
   * The run breaks a rule of driving of the policy, since none that keeps it was found.
   *
   * @param atM where it does
   * @param is what the run has: seconds, or a number of movements
   * @param rule what the policy wants
   */
  record RuleBroken(Rule broken, double atM, double is, double rule) implements Finding {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.ruleBroken(this);
    }

    @Override
    public About about() {
      return About.HANDLES;
    }
  }

  /** The rules of driving that a run can break. */
  enum Rule {
    /** Power comes off after a shorter time. */
    POWER_SHORT,
    /** Power stays for longer in a notch that gives nothing. */
    DEAD_NOTCH,
    /** Power stays for longer in a notch that is no running notch. */
    NOTCH_KEPT,
    /** Power goes on again after a shorter time. */
    POWER_AGAIN,
    /** The brake goes on a shorter time after power came off. */
    BRAKE_AT_ONCE,
    /** The brake goes on again after a shorter time. */
    BRAKE_AGAIN,
    /** The brake comes off before the first application is held. */
    BRAKE_SHORT,
    /** More movements in a mile. */
    MOVEMENTS,
    /** More instructions on a plate. */
    ROWS
  }
}
