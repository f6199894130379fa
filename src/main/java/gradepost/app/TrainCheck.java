package gradepost.app;

import gradepost.drive.Plan;
import gradepost.drive.PlanFailure;
import gradepost.drive.TrainAudit;
import gradepost.route.audit.AuditFinding;
import gradepost.source.PackFile;
import gradepost.source.Problems;
import java.util.ArrayList;
import java.util.List;

/** What the trains of a pack are at odds with: one plan after the other, then all at once. */
final class TrainCheck {
  private final List<AuditFinding> findings = new ArrayList<>();

  /** If the train cannot be braked, only that is said: every other finding would follow from it. */
  void add(Plan plan) {
    if (plan.failures().stream().noneMatch(PlanFailure::isCause)) {
      findings.addAll(TrainAudit.of(plan));
    }
  }

  /** Less what the pack accepts. */
  Problems problems(PackFile pack) {
    return pack.problems(findings);
  }
}
