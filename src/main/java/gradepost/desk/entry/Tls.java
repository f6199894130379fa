package gradepost.desk.entry;

import gradepost.desk.page.DeskText;
import io.javalin.config.JettyConfig;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.Collections;
import java.util.concurrent.atomic.AtomicReference;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.ssl.SslContextFactory;

/** TLS by a certificate of the depot. */
public final class Tls {
  private final Door door;
  private final KeyStore keys;
  private final String password;
  private final AtomicReference<ServerConnector> listening = new AtomicReference<>();

  private Tls(Door door, KeyStore keys, String password) {
    this.door = door;
    this.keys = keys;
    this.password = password;
  }

  /**
   * Reads the key store of a door that has one.
   *
   * @throws DeskFault where it cannot be read, or has no key
   */
  public static Tls of(Door door) throws DeskFault {
    Door.KeyStoreFile file = door.tls().orElseThrow();
    try (InputStream in = Files.newInputStream(file.file())) {
      KeyStore keys = KeyStore.getInstance("PKCS12");
      keys.load(in, file.password().toCharArray());
      boolean key = false;
      for (String alias : Collections.list(keys.aliases())) {
        key |= keys.isKeyEntry(alias);
      }
      if (!key) {
        throw new DeskFault(DeskText.KEY_STORE.with(file.file().toString(), "it has no key"));
      }
      return new Tls(door, keys, file.password());
    } catch (IOException | GeneralSecurityException e) {
      throw new DeskFault(
          DeskText.KEY_STORE.with(file.file().toString(), String.valueOf(e.getMessage())));
    }
  }

  /** Listens at the door by TLS 1.2 or 1.3, and not otherwise. */
  public void at(JettyConfig jetty) {
    jetty.addConnector(
        (server, http) -> {
          SslContextFactory.Server context = new SslContextFactory.Server();
          context.setKeyStore(keys);
          context.setKeyStorePassword(password);
          context.setIncludeProtocols("TLSv1.3", "TLSv1.2");
          ServerConnector connector =
              new ServerConnector(
                  server,
                  new SslConnectionFactory(context, "http/1.1"),
                  new HttpConnectionFactory(http));
          connector.setHost(door.host().replaceAll("[\\[\\]]", ""));
          connector.setPort(door.port());
          listening.set(connector);
          return connector;
        });
  }

  /** The port on which it listens, once it does. */
  public int port() {
    return java.util.Objects.requireNonNull(listening.get()).getLocalPort();
  }
}
