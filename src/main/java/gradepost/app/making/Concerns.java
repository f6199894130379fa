package gradepost.app.making;

import gradepost.app.issue.Concern;
import gradepost.app.issue.Layout;
import gradepost.briefing.reissue.ReissuePapers.Concerned;
import gradepost.briefing.reissue.ReissuePapers.Out;
import gradepost.reissue.register.Names;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.ToBrief;
import gradepost.units.PrintedText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Whom a new issue of a pack concerns: whoever holds a copy, whoever signed. */
public final class Concerns {

  /** By the register as it is now. */
  public static Concern of(Register register, Layout layout, String pack) throws RegisterException {
    // Who holds a copy and has signed is told once, for both reasons.
    Map<String, String> people = new LinkedHashMap<>();
    List<Out> out = new ArrayList<>();
    // The register has one connection: one question at a time.
    synchronized (register) {
      for (List<String> row : register.list(Question.outOf(pack)).rows()) {
        out.add(new Out(row.get(0), Names.printed(row.get(1)), Names.printed(row.get(2))));
      }
      for (ToBrief person : register.concerned(pack)) {
        List<String> why = new ArrayList<>();
        person.copies().forEach(c -> why.add(words(layout, Names.printed(c.number()), c.issue())));
        person
            .known()
            .ifPresent(n -> why.add(layout.messages().text("affected.driver", String.valueOf(n))));
        people.put(person.person(), String.join("; ", why));
      }
    }
    List<Concerned> told = new ArrayList<>();
    List<String> replaced = new ArrayList<>();
    people.forEach(
        (name, why) -> {
          String printed = Names.printed(name);
          told.add(new Concerned(printed, why));
          if (!printed.equals(name)) {
            replaced.add(
                "%s: warning: the register has the name \"%s\" (%s); its papers print: %s"
                    .formatted(pack, PrintedText.seen(name), why, printed));
          }
        });
    return new Concern(told, out, replaced);
  }

  private static String words(Layout layout, String copy, String issue) {
    return layout.messages().text("affected.holder", copy, issue);
  }

  private Concerns() {}
}
