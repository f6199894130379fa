package gradepost.app;

import gradepost.app.issue.Issue;
import gradepost.app.issue.Task;
import gradepost.app.store.Disk;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.compose.Composer;
import gradepost.drive.Planner;
import gradepost.plan.Plan;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The five small lines of the test resources, on which a paper is easily wrong. */
final class SmallLines {
  static final Path FOLDER = Path.of("src/test/resources/gradepost/lines");

  /** Those that can be briefed. */
  static final List<String> PACKS =
      List.of(
          "steep-terminal/pack.yaml",
          "falling-kilometres/pack.yaml",
          "overlapping/pack.yaml",
          "long-train/pack.yaml",
          "unbrakeable/pack-stronger.yaml");

  /** One paper: what was planned, and what is printed of it. */
  record Paper(String name, PackFile pack, Plan plan, Briefing briefing) {
    Part part() {
      return briefing.parts().get(0);
    }
  }

  private static final Map<String, List<Paper>> MADE = new ConcurrentHashMap<>();

  /** The papers of all of them, each planned once. */
  static List<Paper> papers() {
    return PACKS.stream().flatMap(p -> papers(p).stream()).toList();
  }

  static List<Paper> papers(String pack) {
    return MADE.computeIfAbsent(pack, SmallLines::made);
  }

  static PackFile read(String pack) {
    Reading<PackFile> reading = Disk.sources().pack(Disk.name(FOLDER.resolve(pack)));
    if (reading instanceof Reading.Good<PackFile> good) {
      return good.value();
    }
    throw new AssertionError(reading.problems().toString());
  }

  private static List<Paper> made(String name) {
    PackFile pack = read(name);
    List<Paper> papers = new ArrayList<>();
    for (Task task : Task.of(pack)) {
      Plan plan = Planner.plan(task.assignment());
      Briefing briefing =
          new Composer(Messages.english())
              .compose(
                  task.title(),
                  List.of(plan),
                  Issue.of(pack, task.assignment()),
                  List.of(),
                  pack.accepted(),
                  pack.withdrawn(),
                  pack.pictures());
      papers.add(new Paper(task.title(), pack, plan, briefing));
    }
    return List.copyOf(papers);
  }

  private SmallLines() {}
}
