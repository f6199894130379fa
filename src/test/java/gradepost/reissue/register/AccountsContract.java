package gradepost.reissue.register;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.reissue.register.Register.By;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: what the register promises of accounts, whatever database it is in. */
abstract class AccountsContract {
  static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);
  static final By CLERK = new By("a clerk", NOON);

  /** The address of an empty database. */
  abstract String url() throws Exception;

  @Test
  void whoComesAndGoesAndWhoIsRefusedStandsInTheLog() throws Exception {
    try (Register register = Register.open(url())) {
      Accounts accounts = register.accounts();
      By desk = new By("desk", NOON);
      accounts.refused(desk, Optional.of("L Moss"), "wrong password", 4, "10.0.0.9");
      accounts.refused(desk, Optional.empty(), "no account of that name", 1, "::1");
      accounts.signedIn(new By("L Moss", NOON), "10.0.0.7", 5);
      accounts.signedIn(new By("L Moss", NOON), "10.0.0.7", 0);
      accounts.signedOut(new By("L Moss", NOON));
      List<List<String>> log = register.list(Question.acts()).rows();
      assertThat(log.stream().map(row -> row.subList(1, 4)))
          .containsExactly(
              List.of(
                  "desk", "refused L Moss from 10.0.0.9: wrong password (4 in a row)", "sign-ins"),
              List.of(
                  "desk",
                  "refused somebody from ::1: no account of that name (1 in a row)",
                  "sign-ins"),
              List.of("L Moss", "signed in from 10.0.0.7, failed tries before: 5", "sign-ins"),
              List.of("L Moss", "signed in from 10.0.0.7", "sign-ins"),
              List.of("L Moss", "signed out", "sign-ins"));
      assertThatThrownBy(
              () -> register.undoing().undo(CLERK, Long.parseLong(log.get(0).get(5)), "mistake"))
          .hasMessageContaining("cannot be taken back");
    }
  }

  @Test
  void anAccountIsKeptWithAHashAlone(@TempDir Path folder) throws Exception {
    try (Register register = Register.open(url())) {
      Accounts accounts = register.accounts();
      accounts.add(CLERK, "R Clerk", Account.Role.CLERK, "hash 1");
      assertThatThrownBy(() -> accounts.add(CLERK, "r  clerk", Account.Role.LEARNER, "hash 2"))
          .hasMessageContaining("already has an account");
      assertThat(accounts.called("R CLERK"))
          .contains(
              new Accounts.Hashed(
                  new Account("R Clerk", Account.Role.CLERK, true, NOON, false, 1), "hash 1"));
      accounts.password(new By("R Clerk", NOON.plusDays(1)), "hash 3");
      accounts.endSessions(CLERK, "R Clerk");
      accounts.shut(CLERK, "R Clerk");
      assertThat(accounts.all())
          .containsExactly(
              new Account("R Clerk", Account.Role.CLERK, false, NOON.plusDays(1), true, 4));
      accounts.reset(CLERK, "r clerk", "hash 4");
      assertThat(accounts.called("R Clerk"))
          .contains(
              new Accounts.Hashed(
                  new Account("R Clerk", Account.Role.CLERK, true, NOON, false, 5), "hash 4"));
      assertThatThrownBy(() -> accounts.shut(CLERK, "R Clark"))
          .hasMessageContaining("R Clark has no account")
          .hasMessageContaining("R Clerk");
      assertThat(register.list(Question.acts()).rows().toString())
          .contains("added the account of R Clerk, clerk", "changed the password of R Clerk")
          .contains("signed R Clerk out everywhere", "shut the account", "reset the password")
          .doesNotContain("hash");
      assertThat(register.list(Question.accounts()).rows().get(0))
          .startsWith("R Clerk", "clerk", "first password");
      try (Register restored = Register.open("jdbc:sqlite:" + folder.resolve("restored.db"))) {
        restored.dump().fill(register.dump().tables());
        assertThat(restored.accounts().called("R Clerk")).isEqualTo(accounts.called("R Clerk"));
      }
    }
  }
}
