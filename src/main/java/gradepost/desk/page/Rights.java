package gradepost.desk.page;

import gradepost.reissue.register.Account.Role;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Which role may do what: one row for each way of the desk. What has no row is refused to
 * everybody.
 */
public final class Rights {
  private static final Set<Role> ALL = Set.of(Role.values());
  private static final Set<Role> STAFF = Set.of(Role.CLERK, Role.INSTRUCTOR);
  private static final Set<Role> CLERK = Set.of(Role.CLERK);
  private static final Set<Role> INSTRUCTOR = Set.of(Role.INSTRUCTOR);

  /**
   * One row.
   *
   * @param path whose parts in braces stand for any one part, and whose last part {@code **} stands
   *     for anything, or nothing, that follows
   */
  private record Row(String method, String path, Set<Role> roles) {
    boolean fits(String asked, String at) {
      String[] own = path.split("/", -1);
      String[] parts = at.split("/", -1);
      if (!asked.equals(method)) {
        return false;
      }
      for (int i = 0; i < own.length; i++) {
        if (own[i].equals("**")) {
          return true;
        }
        if (i >= parts.length || !(own[i].startsWith("{") || own[i].equals(parts[i]))) {
          return false;
        }
      }
      return own.length == parts.length;
    }
  }

  private static final List<Row> TABLE =
      List.of(
          new Row("GET", "/", STAFF),
          new Row("GET", "/packs", ALL),
          new Row("GET", "/packs/{pack}", ALL),
          new Row("GET", "/packs/{pack}/papers/{paper}", ALL),
          new Row("GET", "/packs/{pack}/papers/{paper}/{face}", ALL),
          new Row("GET", "/packs/{pack}/issues/{issue}/{file}", ALL),
          new Row("POST", "/packs/{pack}/enter", CLERK),
          new Row("POST", "/packs/{pack}/checked", STAFF),
          new Row("POST", "/packs/{pack}/recall", CLERK),
          new Row("POST", "/packs/{pack}/sign-off", INSTRUCTOR),
          new Row("GET", "/learn", ALL),
          new Row("GET", "/learn/{pack}/{paper}", ALL),
          new Row("GET", "/learn/{pack}/{paper}/pace", ALL),
          new Row("GET", "/learn/{pack}/{paper}/practice", ALL),
          new Row("POST", "/learn/{pack}/{paper}/practice", ALL),
          new Row("GET", "/bench", INSTRUCTOR),
          new Row("GET", "/bench/{pack}/{paper}", INSTRUCTOR),
          new Row("GET", "/bench/{pack}/{paper}/**", INSTRUCTOR),
          new Row("GET", "/notice", CLERK),
          new Row("POST", "/notice", CLERK),
          new Row("GET", "/notice/**", CLERK),
          new Row("POST", "/notice/**", CLERK),
          new Row("GET", "/register", STAFF),
          new Row("GET", "/register.csv", STAFF),
          new Row("POST", "/register", CLERK),
          new Row("POST", "/register/undo", CLERK),
          new Row("GET", "/lines", STAFF),
          new Row("GET", "/lines/**", STAFF),
          new Row("POST", "/lines", CLERK),
          new Row("POST", "/lines/**", CLERK),
          new Row("GET", "/rides", INSTRUCTOR),
          new Row("GET", "/rides/**", INSTRUCTOR),
          new Row("POST", "/rides", INSTRUCTOR),
          new Row("POST", "/rides/**", INSTRUCTOR),
          new Row("GET", "/assets/{file}", ALL),
          new Row("GET", "/account", ALL),
          new Row("POST", "/account", ALL),
          new Row("POST", "/sign-out", ALL));

  /** The roles that may do it; empty where there is no such way. */
  public static Optional<Set<Role>> roles(String method, String path) {
    String as = method.equals("HEAD") ? "GET" : method;
    return TABLE.stream().filter(row -> row.fits(as, path)).findFirst().map(Row::roles);
  }

  /** Whether somebody with one of these roles may do it. */
  public static boolean may(Set<Role> mine, String method, String path) {
    return roles(method, path).filter(roles -> roles.stream().anyMatch(mine::contains)).isPresent();
  }

  /**
   * For a page, which shows no button that leads to a refusal.
   *
   * @param roles of whoever looks at it
   */
  public record For(Set<Role> roles) {
    /** Copies the set. */
    public For {
      roles = Set.copyOf(roles);
    }

    /** Whether a page may be seen. */
    public boolean see(String path) {
      return may(roles, "GET", path);
    }

    /** Whether a form may be sent. */
    public boolean send(String path) {
      return may(roles, "POST", path);
    }
  }

  private Rights() {}
}
