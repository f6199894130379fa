package gradepost.app.store;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Papers of an issue that name people: the slips to sign, and the list of whom it concerns. They
 * may be gone from the archive when what is kept of those people was removed; no other paper may.
 */
public final class OfficePaper {
  /** How the slips are called after the paper that they are for. */
  public static final String SLIPS = "-slips";

  /** How the list of people and copies is called. */
  public static final String AFFECTED = "-affected";

  /** Whether a paper of this name is one. */
  public static boolean is(String name) {
    return name.endsWith(SLIPS + ".pdf") || name.endsWith(AFFECTED + ".pdf");
  }

  /** Those of an issue that the archive has. */
  public static List<Kept> there(Entry issue, Archive archive) throws IOException {
    List<Kept> there = new ArrayList<>();
    for (Kept paper : issue.papers()) {
      if (is(paper.name()) && archive.read(paper.digest()).isPresent()) {
        there.add(paper);
      }
    }
    return there;
  }

  /** The papers of an issue that the archive has to have: without those that were removed. */
  public static List<Kept> wanted(Entry issue, Archive archive) throws IOException {
    List<String> held = archive.digests();
    return issue.papers().stream()
        .filter(paper -> !is(paper.name()) || held.contains(paper.digest()))
        .toList();
  }

  private OfficePaper() {}
}
