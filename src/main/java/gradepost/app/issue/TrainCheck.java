package gradepost.app.issue;

import gradepost.drive.TrainAudit;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.route.audit.AuditFinding;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Problems;
import gradepost.yaml.Severity;
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

  /** The same without notes, which ask for data that would help and hold no paper up. */
  public Problems warnings(PackFile pack) {
    return new Problems(
        problems(pack).all().stream().filter(p -> p.severity() != Severity.NOTE).toList());
  }

  /** Less what the pack accepts. */
  public Problems problems(PackFile pack) {
    return pack.problems(findings);
  }
}
