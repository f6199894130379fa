package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.Mill;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.StopReason;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: where a driver on {@link EvenLine} can be told to do something. Its
 * print grid has a place at 1.312 m and every 10 m from there. On 10 ‰ falling a train that coasts
 * gathers 0.0919 m/s².
 */
class ToldPlacesTest {
  private static final double END_M = 5000.3;
  private static final double FAR_M = 5900;

  private final Assignment falling = EvenLine.of(-10);
  private final TrainModels models = new TrainModels(falling);
  private final Stepper stepper = models.plannedStepper();
  private final ToldPlaces told =
      new ToldPlaces(falling.path(), stepper, models.plannedStepper(), END_M);

  private ToldPlaces at(double atM, double mps) {
    stepper.place(0, atM, mps);
    return told;
  }

  @Test
  void onThePrintGrid() {
    assertThat(at(1001.312, 10).printed()).isTrue();
    assertThat(at(1001.313, 10).printed()).isFalse();
    assertThat(at(1001.311, 10).printed()).isFalse();
  }

  @Test
  void toTheNextPlaceOfTheGridOrToTheEdge() {
    assertThat(at(995, 10).toNextPrinted(FAR_M)).isEqualTo(StopReason.PLACE);
    assertThat(stepper.atM()).isCloseTo(1001.312, within(1e-6));
    at(1001.312, 10).toNextPrinted(FAR_M);
    assertThat(stepper.atM()).isCloseTo(1011.312, within(1e-6));
    at(1001.312, 10).toNextPrinted(1004);
    assertThat(stepper.atM()).isEqualTo(1004);
    at(1001.312, 10).toNextPrinted(1011);
    assertThat(stepper.atM()).isEqualTo(1011);
  }

  /** Behind the last place of the grid there is the end of the line, and nothing that holds up. */
  @Test
  void atTheEndOfTheLineTheRunGoesOn() {
    at(5995, 10).toNextPrinted(FAR_M + 1000);
    assertThat(stepper.atM()).isEqualTo(6000);
    at(6000, 10).toNextPrinted(FAR_M + 1000);
    assertThat(stepper.atM()).isGreaterThan(6005);
  }

  /** 8.688 m before the place of 4951.312 m, and over those it gains 0.08 m/s. */
  @Test
  void nearTheEndASpeedMayBeReachedBeforeTheNextPlace() {
    double fromM = 4951.312 - 8.688;
    assertThat(at(fromM, 10).tooLate(FAR_M, 10.07)).isTrue();
    assertThat(at(fromM, 10).tooLate(FAR_M, 10.09)).isFalse();
    assertThat(at(fromM, 10).tooLate(FAR_M, 10)).isTrue();
    assertThat(at(fromM, 10).tooLate(FAR_M, 9.9)).isTrue();
    assertThat(at(fromM, 10).tooLate(fromM + 4, 10.07)).isFalse();
    assertThat(stepper.atM()).as("only the probe has moved").isEqualTo(fromM);
    assertThat(stepper.speedMps()).isEqualTo(10);
  }

  @Test
  void furtherOffItIsNeverTooLate() {
    assertThat(at(END_M - 100, 10).tooLate(FAR_M, 9)).isFalse();
    assertThat(at(END_M - 99.9, 10).tooLate(FAR_M, 9)).isTrue();
  }

  @Test
  void aPlaceIsToldByWholeMetresBeforeTheEnd() {
    assertThat(at(END_M - 50, 10).fromTheEnd()).isTrue();
    assertThat(at(END_M - 50.001, 10).fromTheEnd()).isFalse();
    assertThat(at(END_M - 50.5, 10).fromTheEnd()).isFalse();
    at(END_M - 50.4, 10).toNextFromTheEnd(FAR_M);
    assertThat(stepper.atM()).isCloseTo(END_M - 50, within(1e-6));
    at(END_M - 50, 10).toNextFromTheEnd(FAR_M);
    assertThat(stepper.atM()).isCloseTo(END_M - 49, within(1e-6));
    at(END_M - 50.4, 10).toNextFromTheEnd(END_M - 50.1);
    assertThat(stepper.atM()).isEqualTo(END_M - 50.1);
  }

  /** 50 yd are 45.72 m. */
  @Test
  void inMilesItIsYards() {
    Assignment miles = Mill.assignment(Direction.FORWARD, "4-car");
    Stepper train = new TrainModels(miles).plannedStepper();
    ToldPlaces yards = new ToldPlaces(miles.path(), train, train, END_M);
    train.place(0, END_M - 45.72, 10);
    assertThat(yards.fromTheEnd()).isTrue();
    yards.toNextFromTheEnd(FAR_M);
    assertThat(train.atM()).isCloseTo(END_M - 49 * 0.9144, within(1e-6));
    train.place(0, END_M - 45, 10);
    assertThat(yards.fromTheEnd()).isFalse();
  }
}
