package gradepost.app.account;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Property: which passwords are taken, and what is kept of them. */
class PasswordsTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "short one",
        "fourteen chars",
        "passwordpassword",
        "Password Password 1!",
        "qwertyuiop123456789",
        "aaaaaaaaaaaaaaaaaaaa",
        "ababababababababab",
        "rowena clerk 2026",
        "Rowena-Fairweather-1",
        "gradepost gradepost",
        "letmein letmein letmein"
      })
  void whatIsGuessedFirstIsNotTaken(String password) {
    assertThat(Passwords.obstacle("Rowena Fairweather", password)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a kettle beside the harbour",
        "            nine moles",
        "żółw i kot przy piecu",
        "\uD83D\uDE82\uD83D\uDC34\uD83C\uDF3B\uD83E\uDDED\uD83E\uDE91\uD83C\uDFA9 six pictures"
      })
  void anyCharactersAreTakenAndNoneIsRequired(String password) {
    assertThat(Passwords.obstacle("Rowena Fairweather", password)).isEmpty();
  }

  @Test
  void lengthIsCountedInCharactersUpToTheMost() {
    String most = "0 kettles, ".repeat(40).substring(0, Passwords.LONGEST - 8) + "harbours";
    assertThat(Passwords.obstacle("R", most)).isEmpty();
    assertThat(Passwords.obstacle("R", most + "x")).isNotEmpty();
  }

  @Test
  void whatIsMadeIsTakenAndNeverTheSame() {
    String one = Passwords.made();
    assertThat(one).matches("([a-z2-9]{5}-){3}[a-z2-9]{5}").isNotEqualTo(Passwords.made());
    assertThat(Passwords.obstacle("R Clerk", one)).isEmpty();
  }

  @Test
  void ofAPasswordAHashIsKept() {
    String hash = Passwords.hash("a kettle beside the harbour");
    assertThat(hash).startsWith("$argon2id$v=19$m=19456,t=2,p=1$").doesNotContain("kettle");
    assertThat(Passwords.hash("a kettle beside the harbour")).isNotEqualTo(hash);
    assertThat(Passwords.is("a kettle beside the harbour", hash)).isTrue();
    assertThat(Passwords.is("a kettle beside the harbor", hash)).isFalse();
    String composed = Passwords.hash("caf\u00e9 beside the harbour");
    assertThat(Passwords.is("cafe\u0301 beside the harbour", composed)).isTrue();
  }
}
