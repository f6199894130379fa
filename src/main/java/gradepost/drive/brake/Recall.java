package gradepost.drive.brake;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Answers that were worked out before, each by all on which it depends: whoever finds one here has
 * what he would have worked out. So many are kept; the one that was asked for longest ago goes
 * first. May be asked by many threads at once.
 *
 * @param <Q> what was asked
 * @param <A> what came of it
 */
public final class Recall<Q, A> {
  private final Map<Q, A> kept;

  /**
   * @param most so many are kept
   */
  public Recall(int most) {
    kept =
        new LinkedHashMap<>(16, 0.75f, true) {
          @Override
          protected boolean removeEldestEntry(Map.Entry<Q, A> eldest) {
            return size() > most;
          }
        };
  }

  /** What came of a question, if that is still known. */
  public Optional<A> of(Q question) {
    synchronized (kept) {
      return Optional.ofNullable(kept.get(question));
    }
  }

  /** Keeps what came of a question. */
  public void keep(Q question, A answer) {
    synchronized (kept) {
      kept.put(question, answer);
    }
  }

  /** How many are kept. */
  public int size() {
    synchronized (kept) {
      return kept.size();
    }
  }
}
