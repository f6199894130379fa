package gradepost.app.issue;

import gradepost.briefing.reissue.ReissuePapers.Concerned;
import gradepost.briefing.reissue.ReissuePapers.Out;
import java.util.List;

/**
 * Whom a new issue concerns, as the register has it.
 *
 * @param people who has to be told, each with the reason
 * @param out copies that have to come back
 * @param replaced warnings, one for each name that cannot be printed as it was entered
 */
public record Concern(List<Concerned> people, List<Out> out, List<String> replaced) {
  public static final Concern NOBODY = new Concern(List.of(), List.of(), List.of());

  public Concern {
    people = List.copyOf(people);
    out = List.copyOf(out);
    replaced = List.copyOf(replaced);
  }
}
