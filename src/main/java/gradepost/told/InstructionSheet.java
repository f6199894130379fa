package gradepost.told;

import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.List;
import java.util.Optional;

/**
 * What a driver is told about one approach, as it is printed: two sheets are equal exactly where
 * they are the same on paper.
 *
 * @param number in order of travel, from 1
 * @param from where the figures of its headline begin
 * @param speed at which the first brake goes on; empty without a brake
 * @param steps the numbered instructions
 * @param applications of the brake, in order
 * @param passing how the target is met without a brake
 * @param faster what a faster train does there
 * @param spread of runs that the driver corrects
 */
public record InstructionSheet(
    int number,
    PrintedTarget target,
    PrintedPlace from,
    Optional<PrintedSpeed> speed,
    List<PrintedStep> steps,
    List<PrintedApplication> applications,
    Optional<PrintedPassing> passing,
    Optional<PrintedFaster> faster,
    Optional<PrintedSpread> spread,
    List<PrintedFinding> findings) {
  public InstructionSheet {
    steps = List.copyOf(steps);
    applications = List.copyOf(applications);
    findings = List.copyOf(findings);
  }

  /** The same sheet with another number. */
  public InstructionSheet numbered(int other) {
    return new InstructionSheet(
        other, target, from, speed, steps, applications, passing, faster, spread, findings);
  }

  /** The first application of the brake, which a driver has to find. */
  public Optional<PrintedApplication> first() {
    return applications.stream().findFirst();
  }

  /** Those of which this sheet tells the instruction that begins them. */
  public List<PrintedApplication> begun() {
    return applications.stream().filter(a -> a.line() > 0).toList();
  }

  /** The one that the instruction with this number begins. */
  public Optional<PrintedApplication> begunBy(int line) {
    return begun().stream().filter(a -> a.line() == line).findFirst();
  }

  /** Whether there is more than one, so that each is called by what it is for. */
  public boolean named() {
    return applications.size() > 1;
  }

  /** Whether an application is for a step of the speed on the way to the stop. */
  public boolean forStep(PrintedApplication application) {
    return target.isStop() && application.forSpeed().isPresent();
  }

  /** Where the brake goes on first. */
  public Optional<PrintedPlace> brakingPoint() {
    return first().map(PrintedApplication::point);
  }

  /** Where power is taken off on this sheet. */
  public List<PrintedPlace> shutOff() {
    return steps.stream()
        .filter(s -> s.order().does().equals(new PrintedCommand.ShutOff()))
        .map(PrintedStep::where)
        .toList();
  }
}
