package gradepost.drive.leg;

import gradepost.drive.check.TestRoom;
import gradepost.drive.grid.RunningTest;
import java.util.ArrayList;
import java.util.List;

/** The running brake tests of a leg: those that it makes, and those without room. */
public record LegTests(List<RunningTest> made, List<TestRoom.Missing> without) {
  public LegTests {
    made = List.copyOf(made);
    without = List.copyOf(without);
  }

  /** One of them is not made. */
  LegTests without(TestRoom.Missing one) {
    List<RunningTest> others = made.stream().filter(t -> t != one.test()).toList();
    List<TestRoom.Missing> more = new ArrayList<>(without);
    more.add(one);
    return new LegTests(others, more);
  }
}
