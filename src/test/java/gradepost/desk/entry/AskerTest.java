package gradepost.desk.entry;

import static org.assertj.core.api.Assertions.assertThat;

import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletRequest;
import java.lang.reflect.Proxy;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Property: behind a proxy the last value is the proxy's, however it is added. */
class AskerTest {
  private static final Door BEHIND =
      new Door("127.0.0.1", 0, true, Optional.empty(), true, Set.of("desk.example"));

  /** A request that has these values of the field in question, and comes from the loopback. */
  private static Context with(List<String> values) {
    HttpServletRequest request =
        (HttpServletRequest)
            Proxy.newProxyInstance(
                AskerTest.class.getClassLoader(),
                new Class<?>[] {HttpServletRequest.class},
                (self, method, arguments) -> Collections.enumeration(values));
    return (Context)
        Proxy.newProxyInstance(
            AskerTest.class.getClassLoader(),
            new Class<?>[] {Context.class},
            (self, method, arguments) -> method.getName().equals("req") ? request : "127.0.0.1");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "192.0.2.9 | 192.0.2.9",
        "10.0.0.1, 192.0.2.9 | 192.0.2.9",
        "10.0.0.1; 192.0.2.9 | 192.0.2.9",
        "10.0.0.1, 10.0.0.2; 10.0.0.3,192.0.2.9:4001 | 192.0.2.9",
        "2001:db8:7:1::9 | 2001:db8:7:1::9",
        "10.0.0.1, [2001:db8:7:1::9]:443 | 2001:db8:7:1::9",
        "fe80::9%eth0 | fe80::9",
        "10.0.0.1, nonsense | an unknown address",
        "10.0.0.1, | an unknown address",
        "'' | an unknown address"
      })
  void theLastAddressCounts(String fields, String address) {
    Context ctx = with(fields.isEmpty() ? List.of() : List.of(fields.split("; ")));
    assertThat(Asker.address(BEHIND, ctx)).isEqualTo(address);
    assertThat(Asker.address(Door.here(0), ctx)).isEqualTo("127.0.0.1");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "https | true",
        "http, https | true",
        "http | false",
        "https, http | false",
        "https; http | false",
        "HTTPS | true"
      })
  void theLastSchemeCounts(String fields, boolean tls) {
    assertThat(Asker.cameByTls(with(List.of(fields.split("; "))))).isEqualTo(tls);
  }

  /** A proxy that has TLS alone need not say so. */
  @Test
  void whereNothingIsSaidItIsTls() {
    assertThat(Asker.cameByTls(with(List.of()))).isTrue();
  }
}
