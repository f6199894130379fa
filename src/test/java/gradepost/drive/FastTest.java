package gradepost.drive;

import org.junit.jupiter.api.Test;

class FastTest {
  @Test
  void fast() {
    Assignment a = DemoPlans.assignments().get(2);
    PlannerTest.show(Planner.plan(a.with(a.policy().fastest())));
    a = DemoPlans.assignments().get(0);
    PlannerTest.show(Planner.plan(a.with(a.policy().fastest())));
  }
}
