package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.account.AccountDesk;
import gradepost.app.store.Store;
import gradepost.desk.entry.Door;
import gradepost.reissue.register.Account.Role;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Accounts for a desk: one of each role, each with a password that its bearer has set. */
final class People {
  static final String PASSWORD = "a kettle beside the harbour";
  static final Map<Role, String> NAMES =
      Map.of(Role.CLERK, "R Clerk", Role.INSTRUCTOR, "T Hale", Role.LEARNER, "L Moss");
  static final Door BY_ACCOUNT = new Door("127.0.0.1", 0, true, Optional.empty(), false, Set.of());

  static Store with(Path folder, Clock clock) {
    Store store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    NAMES.forEach(
        (role, name) -> {
          add(store, clock, name, role);
          assertThat(
                  new AccountDesk(store, clock, name)
                      .change("first of " + role + " 26187", PASSWORD, PASSWORD)
                      .problems())
              .isEmpty();
        });
    return store;
  }

  static void add(Store store, Clock clock, String name, Role role) {
    assertThat(
            new AccountDesk(store, clock, "root")
                .add(name, role, "first of " + role + " 26187")
                .problems())
        .isEmpty();
  }

  /** What stands in the log of somebody, or of all. */
  static List<String> log(Store store, String name) throws Exception {
    try (Register register = store.open()) {
      return register.list(Question.acts()).rows().stream()
          .map(row -> row.get(1) + ": " + row.get(2))
          .filter(act -> act.contains(name))
          .toList();
    }
  }

  private People() {}
}
