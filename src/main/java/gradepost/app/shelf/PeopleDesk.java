package gradepost.app.shelf;

import gradepost.app.Batch;
import gradepost.app.BatchAct;
import gradepost.app.Entries;
import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What is done with issues and people, for many people at once: all of it, or nothing. */
public final class PeopleDesk {
  private static final Pattern AT_A_LINE = Pattern.compile("(?s):(\\d+):\\d+: (.*)");

  private final Store store;
  private final Clock clock;

  /** Over this register. */
  public PeopleDesk(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /**
   * Enters one act for each of these people.
   *
   * @param issue by its name, or that of a pack for its latest issue; not used for the list of
   *     staff
   * @param people their names
   * @param by who enters it
   * @param confirmed whether the clerk knows that the issue is not in use, or that people have
   *     copies of it
   */
  public Answer enter(BatchAct act, String issue, List<String> people, String by, boolean confirmed)
      throws IOException {
    StringBuilder table = new StringBuilder("issue,person\n");
    if (act == BatchAct.STAFF) {
      table = new StringBuilder("person\n");
    }
    for (String person : people) {
      table
          .append(act == BatchAct.STAFF ? "" : cell(issue) + ",")
          .append(cell(person))
          .append('\n');
    }
    Path work = Files.createTempDirectory("people");
    Path file = work.resolve("people.csv");
    try {
      Files.writeString(file, table, StandardCharsets.UTF_8);
      Answer answer = new Batch(store, clock, by, confirmed).of(act, file);
      return new Answer(
          answer.said(),
          answer.written(),
          answer.problems().stream().map(p -> byLine(p, file)).toList(),
          answer.good());
    } finally {
      Files.deleteIfExists(file);
      Files.delete(work);
    }
  }

  /** Who typed people, one a line, knows of no file: the first line of it is that of headings. */
  private static String byLine(String problem, Path file) {
    String bare = problem.replace(file.toString(), "");
    Matcher at = AT_A_LINE.matcher(bare);
    if (!at.matches()) {
      return bare;
    }
    int line = Integer.parseInt(at.group(1)) - 1;
    return line == 0 ? at.group(2) : "line " + line + ": " + at.group(2);
  }

  /**
   * Takes an entry back by another one, which says why.
   *
   * @param entry its number in the list of acts
   */
  public Answer undo(long entry, String reason, String by) {
    return new Entries(store, clock, by).undo(entry, reason);
  }

  private static String cell(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }
}
