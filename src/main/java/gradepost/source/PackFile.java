package gradepost.source;

import gradepost.drive.Assignment;
import gradepost.drive.Policy;
import gradepost.route.Direction;
import gradepost.route.Route;
import gradepost.route.TemporaryRestriction;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A pack and all that it names, read and resolved.
 *
 * @param notices every notice read, withdrawn ones too, in the order of the files
 * @param noneStated what the files of restrictions state where they have no notice
 * @param inputs the pack file first, then each file once in the order in which it is named
 */
public record PackFile(
    Optional<String> title,
    Route route,
    Stock stock,
    Policy policy,
    List<TemporaryRestriction> notices,
    List<String> noneStated,
    List<DirectionPart> directions,
    List<Formation> formations,
    LoadCase load,
    IssueDetails issue,
    List<String> highRisk,
    List<Input> inputs) {
  public PackFile {
    notices = List.copyOf(notices);
    noneStated = List.copyOf(noneStated);
    directions = List.copyOf(directions);
    formations = List.copyOf(formations);
    highRisk = List.copyOf(highRisk);
    inputs = List.copyOf(inputs);
  }

  /** The notices that stand at some time within the validity of the issue. */
  public List<TemporaryRestriction> standing() {
    return notices.stream()
        .filter(n -> n.standsBetween(issue.validFrom(), issue.validTo()))
        .toList();
  }

  /** What one plan is made for; {@code formation} as the stock file lists it. */
  public Assignment assignment(DirectionPart part, Formation formation) {
    return new Assignment(
        route,
        part.direction(),
        Set.copyOf(part.lines()),
        part.junctionRoutes(),
        part.calls(),
        stock,
        part.direction() == Direction.FORWARD ? formation : formation.reversed(),
        load,
        policy,
        standing());
  }
}
