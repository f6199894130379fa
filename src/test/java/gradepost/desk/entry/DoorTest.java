package gradepost.desk.entry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Property: where the desk may listen, and which names it answers to. */
class DoorTest {
  private static final Optional<Door.KeyStoreFile> STORE =
      Optional.of(new Door.KeyStoreFile(Path.of("desk.p12"), "secret"));

  @TempDir private Path folder = Path.of("");

  private static Door door(String listen, boolean tls, boolean proxy, String... names)
      throws DeskFault {
    return Door.of(
        new Door.Wish(listen, false, tls ? STORE : Optional.empty(), proxy, List.of(names)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.0.0.0:8384 | false | false | '' | without TLS",
        "192.168.1.4:80 | false | false | desk.example | without TLS",
        "[::]:8384 | false | false | '' | without TLS",
        "desk.example:443 | true | true | desk.example | both given",
        "0.0.0.0:443 | true | false | '' | nobody said by which names",
        "127.0.0.1:8384 | false | true | '' | nobody said by which names",
        "0.0.0.0:443 | true | false | https://desk.example | is not a name",
        "0.0.0.0:443 | true | false | '*' | is not a name",
        "8384 | false | false | '' | not an address",
        "127.0.0.1:65536 | false | false | '' | not an address"
      })
  void whatCannotBeAnsweredForIsRefused(
      String listen, boolean tls, boolean proxy, String name, String why) {
    assertThatThrownBy(
            () -> door(listen, tls, proxy, name.isEmpty() ? new String[0] : name.split(" ")))
        .isInstanceOf(DeskFault.class)
        .hasMessageContaining(why);
  }

  @Test
  void elsewhereThanHerePeopleSignIn() throws DeskFault {
    assertThat(door("127.0.0.1:8384", false, false).accounts()).isFalse();
    assertThat(door("localhost:0", false, false).accounts()).isFalse();
    assertThat(door("0.0.0.0:443", true, false, "desk.example").accounts()).isTrue();
    assertThat(door("127.0.0.1:8384", false, true, "desk.example").accounts()).isTrue();
  }

  @Test
  void itAnswersToItsOwnNamesAlone() throws DeskFault {
    Door here = door("127.0.0.1:8384", false, false);
    assertThat(here.isOurs("LOCALHOST:8384", 8384)).isTrue();
    assertThat(here.isOurs("localhost", 8384)).isFalse();
    assertThat(here.isOurs("desk.example:8384", 8384)).isFalse();
    Door tls = door("0.0.0.0:8443", true, false, "Desk.Example", "10.0.0.4");
    assertThat(tls.isOurs("desk.example:8443", 8443)).isTrue();
    assertThat(tls.isOurs("10.0.0.4:8443", 8443)).isTrue();
    assertThat(tls.isOurs("desk.example", 8443)).isFalse();
    assertThat(tls.isOurs("127.0.0.1:8443", 8443)).isFalse();
    assertThat(door("[2001:db8::4]:443", true, false).isOurs("[2001:db8::4]", 443)).isTrue();
    Door proxy = door("127.0.0.1:8384", false, true, "desk.example");
    assertThat(proxy.isOurs("desk.example", 8384)).isTrue();
    assertThat(proxy.isOurs("desk.example:443", 8384)).isTrue();
    assertThat(proxy.isOurs("127.0.0.1:8384", 8384)).isFalse();
    assertThat(proxy.isOurs("desk.example.evil.example", 8384)).isFalse();
  }

  @Test
  void thePasswordOfTheKeysStandsInAFileOrTheEnvironment() throws Exception {
    Path file = folder.resolve("password");
    Files.writeString(file, "secret\n");
    Path keys = Path.of("desk.p12");
    assertThat(Door.KeyStoreFile.of(keys, Optional.of(file), Map.of()).password())
        .isEqualTo("secret");
    Map<String, String> environment = Map.of("GRADEPOST_TLS_PASSWORD", "other");
    assertThat(Door.KeyStoreFile.of(keys, Optional.empty(), environment).password())
        .isEqualTo("other");
    assertThat(Door.KeyStoreFile.of(keys, Optional.of(file), environment).toString())
        .doesNotContain("secret");
    assertThatThrownBy(() -> Door.KeyStoreFile.of(keys, Optional.empty(), Map.of()))
        .hasMessageContaining("its password is missing");
    assertThatThrownBy(
            () -> Door.KeyStoreFile.of(keys, Optional.of(folder.resolve("no")), Map.of()))
        .isInstanceOf(DeskFault.class);
  }
}
