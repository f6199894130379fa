package gradepost.drive;

import org.junit.jupiter.api.Test;

class SeedTest {
  @Test
  void seeds() {
    for (String s :
        System.getProperty("seeds", "16,25,41,59,63,112,37,46,109,177,68,95").split(",")) {
      System.out.println("SEED " + s);
      PlannerTest.show(Planner.plan(RandomLines.of(Integer.parseInt(s)).assignment()));
    }
  }
}
