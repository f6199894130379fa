package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.app.Depot;
import gradepost.app.store.Store;
import gradepost.desk.entry.DeskFault;
import gradepost.desk.entry.Door;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.Optional;
import java.util.Set;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The desk serves TLS by a certificate of its own. */
class TlsTest {
  private static final String PASSWORD = "of the keys";

  @TempDir private Path folder = Path.of("");

  private Path keys() throws Exception {
    Path keys = folder.resolve("desk.p12");
    Process made =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair",
                "-keystore",
                keys.toString(),
                "-storetype",
                "PKCS12",
                "-storepass",
                PASSWORD,
                "-keyalg",
                "EC",
                "-dname",
                "CN=desk.example",
                "-ext",
                "SAN=ip:127.0.0.1",
                "-alias",
                "desk")
            .redirectErrorStream(true)
            .start();
    assertThat(made.waitFor()).isZero();
    return keys;
  }

  private static Door door(Path keys, String password) {
    return new Door(
        "127.0.0.1",
        0,
        true,
        Optional.of(new Door.KeyStoreFile(keys, password)),
        false,
        Set.of("desk.example"));
  }

  private static HttpClient trusting(Path file) throws Exception {
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(file)) {
      store.load(in, PASSWORD.toCharArray());
    }
    KeyStore trusted = KeyStore.getInstance("PKCS12");
    trusted.load(null, null);
    trusted.setCertificateEntry("desk", store.getCertificate("desk"));
    TrustManagerFactory trust = TrustManagerFactory.getInstance("PKIX");
    trust.init(trusted);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, trust.getTrustManagers(), null);
    return HttpClient.newBuilder().sslContext(context).build();
  }

  @Test
  void aBrowserComesByTlsAndNotOtherwise() throws Exception {
    Path keys = keys();
    Store store = People.with(folder, Depot.NOON);
    DeskServer.Served served = new DeskServer.Served(folder, store, folder, Depot.NOON);
    try (DeskServer desk = DeskServer.start(served, door(keys, PASSWORD))) {
      assertThat(desk.address()).startsWith("https://").endsWith(":" + desk.port() + "/");
      HttpRequest request =
          HttpRequest.newBuilder(URI.create("https://127.0.0.1:%d/sign-in".formatted(desk.port())))
              .build();
      HttpResponse<String> answer = trusting(keys).send(request, BodyHandlers.ofString());
      assertThat(answer.statusCode()).isEqualTo(200);
      assertThat(answer.headers().firstValue("Set-Cookie").orElse(""))
          .startsWith("__Host-gradepost-guest=")
          .contains("Secure");
      assertThat(answer.headers().firstValue("Strict-Transport-Security")).isPresent();
      try (Socket plain = new Socket(InetAddress.getLoopbackAddress(), desk.port())) {
        plain
            .getOutputStream()
            .write("GET /sign-in HTTP/1.1\r\nHost: x\r\n\r\n".getBytes(StandardCharsets.UTF_8));
        assertThat(new String(plain.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1))
            .doesNotContain("200 OK", "<html");
      }
    }
    assertThatThrownBy(() -> DeskServer.start(served, door(keys, "wrong")))
        .isInstanceOf(DeskFault.class)
        .hasMessageContaining("the key store");
    assertThatThrownBy(() -> DeskServer.start(served, door(folder.resolve("no.p12"), "x")))
        .isInstanceOf(DeskFault.class);
  }
}
