package gradepost.app.issue;

import gradepost.drive.TrainAudit;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.route.audit.AuditFinding;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Problems;
import java.util.ArrayList;
import java.util.List;

/** What the trains of a pack are at odds with: one plan after the other, then all at once. */
public final class TrainCheck {
  private final List<AuditFinding> findings = new ArrayList<>();

  /** If the train cannot be braked, only that is said: every other finding would follow from it. */
  public void add(Plan plan) {
    if (plan.failures().stream().noneMatch(PlanFailure::isCause)) {
      findings.addAll(TrainAudit.of(plan));
    }
  }

  /** Less what the pack accepts. */
  public Problems problems(PackFile pack) {
    return pack.problems(findings);
  }
}
