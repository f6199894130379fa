package gradepost.source.pack;

import gradepost.policy.Policy;
import gradepost.route.Route;
import gradepost.route.audit.CantLimits;
import gradepost.source.notice.Notices;
import gradepost.stock.Stock;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;

/** What packs have in common. May be asked by many threads at once, whatever files they see. */
public final class Shelves {
  final Files<Route> routes;
  final Files<Stock> stocks;
  final Files<Policy> policies;
  final Files<Notices> notices;
  final ReadCache<Audited, Problems> audits;

  /** Files of one kind. */
  static final class Files<T> {
    final ReadCache<ReadCache.Key, ReadCache.Read<T>> read;

    private Files(int most) {
      read = new ReadCache<>(most);
    }
  }

  /** A route as it was read, and the limits of cant by which it was looked at. */
  record Audited(Reader in, CantLimits limits) {}

  /** For one reading of many packs: all that is read is kept. */
  public Shelves() {
    this(Integer.MAX_VALUE);
  }

  /**
   * For packs that are read again and again while one of their files is edited.
   *
   * @param most so many files of each kind are kept, those that were last asked for
   */
  public Shelves(int most) {
    routes = new Files<>(most);
    stocks = new Files<>(most);
    policies = new Files<>(most);
    notices = new Files<>(most);
    audits = new ReadCache<>(most);
  }
}
