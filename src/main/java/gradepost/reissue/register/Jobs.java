package gradepost.reissue.register;

import gradepost.reissue.register.Register.By;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Issues that workers are asked to make. A job is asked for, begun by any worker, perhaps more than
 * once, and ended once; whoever asked takes what is ended. Beside each that is not ended lies a
 * task in the table of the scheduler, under the same name, "valley/4".
 */
public final class Jobs {
  private static final String TASK =
      "(SELECT 1 FROM scheduled_tasks WHERE task_instance = job.pack || '/' || job.number)";
  private final Ledger ledger;

  Jobs(Ledger ledger) {
    this.ledger = ledger;
  }

  /** An issue that is to be made. */
  public record Job(String pack, int number) {
    /** As its task is called, and as the issue will be. */
    public String name() {
      return pack + "/" + number;
    }
  }

  /**
   * A job that was begun.
   *
   * @param times how often, this time included
   */
  public record Begun(int times) {}

  /**
   * A job that was ended.
   *
   * @param state what became of it, in the word of whoever ended it
   * @param told what is to be told of it, in his notation
   */
  public record Ended(Job job, String state, String told) {}

  /**
   * A job that is not ended.
   *
   * @param cause for which it was asked
   * @param who asked for it
   */
  public record Open(Job job, String cause, String who) {}

  /** Asks for these, all or none; what was ended before under such a name is forgotten. */
  public void ask(By by, String cause, List<Job> jobs) throws RegisterException {
    List<List<Object>> old = new ArrayList<>();
    List<List<Object>> rows = new ArrayList<>();
    for (Job job : jobs) {
      old.add(List.of(job.pack(), job.number()));
      rows.add(List.of(job.pack(), job.number(), cause, by.who()));
    }
    changed(
        db -> {
          db.changeAll("DELETE FROM job WHERE pack = ? AND number = ? AND state <> ''", old);
          db.changeAll(
              "INSERT INTO job (pack, number, asked, who, state) VALUES (?, ?, ?, ?, '')"
                  + " ON CONFLICT (pack, number) DO NOTHING",
              rows);
          return true;
        });
  }

  /** Notes that a job is begun; empty where it is ended already. */
  public Optional<Begun> begin(Job job) throws RegisterException {
    return changed(
        db ->
            db
                .rows(
                    "UPDATE job SET begun = begun + 1 WHERE pack = ? AND number = ?"
                        + " AND state = '' RETURNING begun",
                    job.pack(),
                    job.number())
                .stream()
                .findFirst()
                .map(row -> new Begun(Integer.parseInt(row.get(0)))));
  }

  /** Notes that a worker failed at a job through no fault of its data, and says how often. */
  public int failed(Job job) throws RegisterException {
    return changed(
        db ->
            db
                .rows(
                    "UPDATE job SET failed = failed + 1 WHERE pack = ? AND number = ?"
                        + " RETURNING failed",
                    job.pack(),
                    job.number())
                .stream()
                .findFirst()
                .map(row -> Integer.parseInt(row.get(0)))
                .orElse(0));
  }

  /**
   * Ends a job, by an act of its own or as one of {@link Register#together several}.
   *
   * @return whether it was not ended before; if it was, nothing is changed
   */
  public boolean end(Ended ended) throws RegisterException {
    return ledger.reading(
        db ->
            db.change(
                    "UPDATE job SET state = ?, told = ? WHERE pack = ? AND number = ? AND state = ''",
                    ended.state(),
                    ended.told(),
                    ended.job().pack(),
                    ended.job().number())
                == 1);
  }

  /** What is ended of a cause, taken away so that it is told once. */
  public List<Ended> take(String cause) throws RegisterException {
    return changed(
        db ->
            db
                .rows(
                    "DELETE FROM job WHERE asked = ? AND state <> ''"
                        + " RETURNING pack, number, state, told",
                    cause)
                .stream()
                .map(r -> new Ended(job(r), r.get(2), r.get(3)))
                .toList());
  }

  /** Forgets jobs that have no task: whoever asked for them ended before he had made it. */
  public void dropHalfAsked() throws RegisterException {
    changed(db -> db.change("DELETE FROM job WHERE state = '' AND NOT EXISTS " + TASK));
  }

  /** What is not ended, by name. */
  public List<Open> open() throws RegisterException {
    return ledger.reading(
        db ->
            db
                .rows(
                    "SELECT pack, number, asked, who FROM job WHERE state = ''"
                        + " ORDER BY pack, number")
                .stream()
                .map(r -> new Open(job(r), r.get(2), r.get(3)))
                .toList());
  }

  /** How many are not ended. */
  public int waiting() throws RegisterException {
    return ledger.reading(
        db -> Integer.parseInt(db.rows("SELECT COUNT(*) FROM job WHERE state = ''").get(0).get(0)));
  }

  private static Job job(List<String> row) {
    return new Job(row.get(0), Integer.parseInt(row.get(1)));
  }

  private <T> T changed(Ledger.Work<T> work) throws RegisterException {
    List<T> out = new ArrayList<>();
    ledger.together(() -> out.add(ledger.reading(work)));
    return out.get(0);
  }
}
