package gradepost.drive;

import org.junit.jupiter.api.Test;

class SeedTest {
  @Test
  void seeds() {
    for (String s : System.getProperty("seeds", "37,68,88,95,120,155,156,162,164,184").split(",")) {
      System.out.println("SEED " + s);
      PlannerTest.show(Planner.plan(RandomLines.of(Integer.parseInt(s)).assignment()));
    }
  }
}
