package gradepost.app;

import gradepost.briefing.Briefing;
import gradepost.briefing.compose.Composer;
import gradepost.drive.Plan;
import gradepost.drive.Planner;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import gradepost.source.Sources;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes the papers of packs: read, assign, plan, compose, lay out, put in place. */
public final class Brief {
  private final Optional<Path> templates;
  private final boolean json;
  private final boolean cards;
  private final Progress progress;

  /**
   * @param templates folder of a depot's own templates
   * @param json whether the hand-overs are written too
   * @param cards whether cab cards are made too
   */
  public Brief(Optional<Path> templates, boolean json, boolean cards, Progress progress) {
    this.cards = cards;
    this.templates = templates;
    this.json = json;
    this.progress = progress;
  }

  /** Makes the papers of these packs, or of every pack below these folders. */
  public Answer of(List<Path> named, Path out) {
    try {
      List<Path> packs = PackFiles.packs(named);
      Optional<String> obstacle = PackFiles.obstacle(named, packs);
      if (obstacle.isPresent()) {
        return Answer.refused(obstacle.get());
      }
      return briefAll(packs, new Layout(templates), new Delivery(out));
    } catch (IOException e) {
      return Answer.refused(Trouble.inWords(e));
    }
  }

  private Answer briefAll(List<Path> packs, Layout layout, Delivery delivery) throws IOException {
    Sources sources = Disk.sources();
    List<Reading<PackFile>> readings =
        packs.stream().map(pack -> sources.pack(Disk.name(pack))).toList();
    progress.expect(readings.stream().mapToInt(Brief::papers).sum());
    Answer answer = Answer.GOOD;
    for (int i = 0; i < packs.size(); i++) {
      Reading<PackFile> reading = readings.get(i);
      answer = answer.and(Answer.of(reading.problems()));
      if (reading instanceof Reading.Good<PackFile> good) {
        answer = answer.and(brief(packs.get(i), good.value(), layout, delivery));
      }
    }
    return answer;
  }

  /** The way of one pack. */
  private Answer brief(Path file, PackFile pack, Layout layout, Delivery delivery)
      throws IOException {
    List<Paper> papers = new ArrayList<>();
    List<String> failures = new ArrayList<>();
    TrainCheck trains = new TrainCheck();
    for (Task task : Task.of(file, pack)) {
      Plan plan = Planner.plan(task.assignment());
      trains.add(plan);
      failures.addAll(Failures.inWords(file, task, plan));
      Briefing briefing =
          new Composer(layout.messages())
              .compose(task.title(), List.of(plan), Issue.of(pack), List.of(), pack.accepted());
      papers.addAll(layout.papers(task.stem(), briefing));
      if (cards) {
        papers.addAll(Cards.papers(task.stem(), briefing, pack.cards(), layout));
      }
      if (json) {
        papers.add(
            new Paper(task.stem() + ".json", HandOver.of(plan, Issue.fingerprint(pack.inputs()))));
      }
      progress.done(task.stem());
    }
    Answer found = Answer.of(trains.problems(pack));
    return failures.isEmpty()
        ? found.and(Answer.wrote(delivery.put(papers)))
        : found.and(Answer.refused(String.join("\n", failures)));
  }

  private static int papers(Reading<PackFile> reading) {
    return reading instanceof Reading.Good<PackFile> good
        ? good.value().directions().size() * good.value().formations().size()
        : 0;
  }
}
