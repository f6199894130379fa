package gradepost.app.issue;

import gradepost.app.export.HandOver;
import gradepost.app.issue.Differences.OfPaper;
import gradepost.app.issue.Differences.OfReference;
import gradepost.app.store.OfficePaper;
import gradepost.app.store.Paper;
import gradepost.briefing.Briefing;
import gradepost.briefing.Reference;
import gradepost.briefing.reissue.AddendumWriter;
import gradepost.briefing.reissue.ChangeWriter;
import gradepost.briefing.reissue.ReissuePapers;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Lays out all papers of one issue of a pack, from what is different in it. They depend on that, on
 * the templates and, those for the office, on the register: nothing else, so that they can be made
 * again.
 */
public final class IssuePapers {
  private final Layout layout;
  private final boolean urgent;
  private final Concern concern;

  /**
   * @param urgent whether an addendum goes out at once
   * @param concern whom the papers of the office name
   */
  public IssuePapers(Layout layout, boolean urgent, Concern concern) {
    this.layout = layout;
    this.urgent = urgent;
    this.concern = concern;
  }

  /**
   * The papers of an issue.
   *
   * @param papers that depend on the inputs alone
   * @param office papers that depend on the register too
   */
  public record Laid(List<Paper> papers, List<Paper> office) {
    public Laid {
      papers = List.copyOf(papers);
      office = List.copyOf(office);
    }

    /** The papers for drivers, then those for the office. */
    public List<Paper> all() {
      List<Paper> all = new ArrayList<>(papers);
      all.addAll(office);
      return all;
    }
  }

  /**
   * Lays out the papers of an issue.
   *
   * @param done is told the name of each paper that is ready
   */
  public Laid of(Differences differences, Consumer<String> done) throws IOException {
    List<Paper> papers = new ArrayList<>();
    List<Paper> office = new ArrayList<>();
    OfReference reference = differences.reference();
    Reference looked = reference.reference();
    for (OfPaper paper : differences.papers()) {
      String stem = paper.task().stem();
      Briefing briefing = paper.briefing().filed(new Reference.Files(stem, looked.file()));
      papers.addAll(layout.papers(stem, briefing));
      String fingerprint = paper.briefing().issue().fingerprint();
      papers.add(new Paper(stem + ".json", HandOver.of(paper.plan(), fingerprint)));
      if (paper.before().isPresent() && paper.differs()) {
        beside(paper, differences.now(), papers, office);
      }
      done.accept(stem);
    }
    papers.addAll(layout.papers(looked.file(), looked));
    if (reference.known() && reference.sheetsDiffer()) {
      var path = differences.papers().get(0).plan().assignment().path();
      ReissuePapers beside = new ReissuePapers(layout.messages(), path);
      papers.addAll(
          layout.papers(
              looked.file() + "-supplement",
              beside.supplement(looked, reference.sheets(), reference.sheetsBefore())));
    }
    return new Laid(papers, office);
  }

  /** What goes out beside a paper that is different. */
  private void beside(OfPaper paper, PackFile now, List<Paper> papers, List<Paper> office)
      throws IOException {
    String stem = paper.task().stem();
    var path = paper.plan().assignment().path();
    ReissuePapers beside = new ReissuePapers(layout.messages(), path);
    ChangeWriter writer = DifferenceFinder.writer(paper.plan(), now, layout.messages());
    papers.addAll(
        layout.papers(
            stem + "-supplement",
            beside.supplement(paper.briefing(), paper.sheets(), paper.sheetsBefore())));
    if (urgent && !paper.comparison().restrictions().isEmpty()) {
      papers.add(
          layout.pdf(
              stem + "-addendum",
              new AddendumWriter(layout.messages(), path, writer)
                  .addendum(paper.briefing(), paper.comparison())));
    }
    if (!paper.comparison().isEmpty()) {
      office.add(
          layout.pdf(
              stem + OfficePaper.SLIPS,
              beside.slips(
                  paper.briefing(),
                  concern.people(),
                  paper.changes(),
                  writer.questions(paper.comparison()))));
      office.add(
          layout.pdf(
              stem + OfficePaper.AFFECTED,
              beside.affected(paper.briefing(), concern.people(), concern.out())));
    }
  }
}
