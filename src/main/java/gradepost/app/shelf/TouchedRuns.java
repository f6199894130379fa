package gradepost.app.shelf;

import gradepost.app.issue.Differences;
import gradepost.app.issue.Differences.OfPaper;
import gradepost.app.making.Making;
import gradepost.app.making.MakingHere;
import gradepost.app.reissue.Order;
import gradepost.app.reissue.Workers;
import gradepost.app.store.Answer;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Looks on while a notice is tried, and keeps the runs of the approaches that it touches. */
final class TouchedRuns implements Workers {
  private static final double BEFORE_M = 500;
  private static final double BEHIND_M = 200;

  private final List<TouchedRun> runs = new ArrayList<>();

  /** By pack, paper and the order of travel. */
  synchronized List<TouchedRun> runs() {
    List<TouchedRun> out = new ArrayList<>(runs);
    // Packs come in the order in which they are done; what is within a paper stays as it is.
    out.sort(Comparator.comparing(TouchedRun::pack).thenComparing(TouchedRun::paper));
    return out;
  }

  @Override
  public Answer earlier(Order order, Register register) {
    return Answer.GOOD;
  }

  @Override
  public Making making(Order order, By by, Register register) {
    throw new IllegalStateException("nothing is made by who looks on");
  }

  @Override
  public Optional<Making> dry(Order order) {
    return Optional.of(
        new MakingHere(
            Optional.empty(), order.tell().templates(), order.pace().threads(), this::note));
  }

  private void note(Differences differences) {
    for (OfPaper paper : differences.papers()) {
      if (paper.before().isPresent()) {
        paper.comparison().approaches().stream()
            .filter(change -> !change.renumberedOnly())
            .flatMap(
                change -> run(differences.now().id(), paper, paper.before().get(), change).stream())
            .forEach(this::add);
      }
    }
  }

  private synchronized void add(TouchedRun run) {
    runs.add(run);
  }

  private static Optional<TouchedRun> run(
      String pack, OfPaper paper, Plan before, ApproachChange change) {
    Optional<Approach> then = change.before().flatMap(s -> approach(before, s.number()));
    Optional<Approach> now = change.after().flatMap(s -> approach(paper.plan(), s.number()));
    return now.or(() -> then)
        .map(
            shown ->
                new TouchedRun(
                    pack,
                    paper.task().stem(),
                    shown.target().name(),
                    then.isEmpty() ? "new" : now.isEmpty() ? "removed" : "differs",
                    drawn(before, paper.plan(), shown, then, now)));
  }

  private static Optional<Approach> approach(Plan plan, int number) {
    return plan.approaches().stream().filter(a -> a.number() == number).findFirst();
  }

  private static BenchShown drawn(
      Plan before, Plan plan, Approach shown, Optional<Approach> then, Optional<Approach> now) {
    UnitStyle units = plan.assignment().route().units();
    double pointM =
        Math.min(
            then.flatMap(Approach::brakingPointM).orElse(shown.endM()),
            now.flatMap(Approach::brakingPointM).orElse(shown.endM()));
    double fromM = Math.max(0, pointM - BEFORE_M);
    double toM = shown.target().atM() + BEHIND_M;
    return new BenchShown(
        List.of(),
        "",
        List.of(),
        List.of(),
        List.of(
            line("as it was", "before", before, fromM, toM, units),
            line("as it would be", "now", plan, fromM, toM, units)),
        shown.target().atM() - fromM,
        units.lengthUnit(),
        units.lengthUnitM(),
        units.speedUnit());
  }

  private static BenchShown.Line line(
      String label, String kind, Plan plan, double fromM, double toM, UnitStyle units) {
    return new BenchShown.Line(
        label,
        kind,
        plan.trace().between(fromM, toM).points().stream()
            .map(p -> new double[] {p.atM() - fromM, p.speedMps() / units.speedUnitMps()})
            .toList());
  }
}
