package gradepost.desk.entry;

import gradepost.desk.page.DeskText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Where the desk listens, and who is let in there.
 *
 * @param host at which it listens, such as {@code 127.0.0.1}
 * @param port 0 for any that is free
 * @param accounts whether people come in by their accounts, not by the key of this machine
 * @param tls the key store of its certificate, where it serves TLS itself
 * @param behindProxy whether a proxy on which TLS ends stands before it
 * @param names by which browsers know it, without a port or with one; none where it listens on this
 *     machine alone
 */
public record Door(
    String host,
    int port,
    boolean accounts,
    Optional<KeyStoreFile> tls,
    boolean behindProxy,
    Set<String> names) {
  private static final int LAST_PORT = 65_535;
  private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "[::1]", "::1");
  private static final Set<String> ANY = Set.of("0.0.0.0", "[::]");

  /** A PKCS12 key store and its password. */
  public record KeyStoreFile(Path file, String password) {
    /**
     * A key store whose password stands in a file, or in the environment: never on the command
     * line, where other users of the machine see it.
     *
     * @throws DeskFault where there is no password
     */
    public static KeyStoreFile of(
        Path file, Optional<Path> passwordFile, Map<String, String> environment) throws DeskFault {
      try {
        String password =
            passwordFile.isPresent()
                ? Files.readString(passwordFile.get()).lines().findFirst().orElse("")
                : environment.getOrDefault("GRADEPOST_TLS_PASSWORD", "");
        if (password.isEmpty()) {
          throw new DeskFault(DeskText.KEY_STORE.with(file.toString(), "its password is missing"));
        }
        return new KeyStoreFile(file, password);
      } catch (IOException e) {
        throw new DeskFault(
            DeskText.KEY_STORE.with(file.toString(), String.valueOf(e.getMessage())));
      }
    }

    @Override
    public String toString() {
      return file.toString();
    }
  }

  /** Copies the set; names are in small letters. */
  public Door {
    Set<String> small = new TreeSet<>();
    names.forEach(name -> small.add(name.toLowerCase(Locale.ROOT)));
    names = Set.copyOf(small);
  }

  /**
   * What was asked for at the command line.
   *
   * @param listen address and port
   * @param names by which browsers know it
   */
  public record Wish(
      String listen,
      boolean accounts,
      Optional<KeyStoreFile> tls,
      boolean behindProxy,
      List<String> names) {
    /** Copies the list. */
    public Wish {
      names = List.copyOf(names);
    }
  }

  /** On this machine alone, by its key. */
  public static Door here(int port) {
    return new Door("127.0.0.1", port, false, Optional.empty(), false, Set.of());
  }

  /**
   * What was asked for, if it can be answered for: another address than this machine's own only by
   * TLS, and with accounts.
   *
   * @throws DeskFault that says what is missing
   */
  public static Door of(Wish wish) throws DeskFault {
    int cut = wish.listen().lastIndexOf(':');
    String host = cut < 0 ? "" : wish.listen().substring(0, cut);
    String digits = wish.listen().substring(cut + 1);
    boolean right =
        host.matches("[\\w.-]+|\\[[0-9a-fA-F:.]+]")
            && digits.matches("\\d{1,5}")
            && Integer.parseInt(digits) <= LAST_PORT;
    if (!right) {
      throw new DeskFault(DeskText.LISTEN.with(wish.listen()));
    }
    boolean here = LOOPBACK.contains(host.toLowerCase(Locale.ROOT));
    if (!here && wish.tls().isEmpty() && !wish.behindProxy()) {
      throw new DeskFault(DeskText.PLAIN.with(wish.listen()));
    }
    if (wish.tls().isPresent() && wish.behindProxy()) {
      throw new DeskFault(DeskText.TLS_TWICE);
    }
    for (String name : wish.names()) {
      if (!name.matches("[\\w.-]+(:\\d{1,5})?|\\[[0-9a-fA-F:.]+](:\\d{1,5})?")) {
        throw new DeskFault(DeskText.NAME.with(name));
      }
    }
    Set<String> names = new TreeSet<>(wish.names());
    if (names.isEmpty() && !here && !wish.behindProxy() && !ANY.contains(host)) {
      names.add(host);
    }
    if (names.isEmpty() && (wish.behindProxy() || !here)) {
      throw new DeskFault(DeskText.NO_NAMES.with(wish.listen()));
    }
    return new Door(
        host,
        Integer.parseInt(digits),
        wish.accounts() || !here || wish.behindProxy(),
        wish.tls(),
        wish.behindProxy(),
        names);
  }

  /** Whether browsers come by TLS, to here or to the proxy. */
  public boolean secure() {
    return tls.isPresent() || behindProxy;
  }

  /** How the addresses of browsers begin. */
  String scheme() {
    return secure() ? "https://" : "http://";
  }

  /**
   * Whether a browser asks for a name of ours. A name of others may lead to this machine: the
   * browser then tells that name.
   *
   * @param asked the field Host
   * @param on the port on which the server listens
   */
  boolean isOurs(String asked, int on) {
    String host = asked.toLowerCase(Locale.ROOT);
    if (behindProxy) {
      return names.contains(host) || names.contains(host.replaceFirst(":443$", ""));
    }
    Set<String> own = new TreeSet<>();
    for (String name : names) {
      own.add(name.matches(".*:\\d{1,5}$") && !name.endsWith("]") ? name : name + ":" + on);
      if (on == (secure() ? 443 : 80)) {
        own.add(name);
      }
    }
    if (LOOPBACK.contains(this.host)) {
      own.addAll(Set.of("127.0.0.1:" + on, "localhost:" + on, "[::1]:" + on));
    }
    return own.contains(host);
  }

  /** The address to type. */
  String address(int on) {
    if (behindProxy) {
      return scheme() + names.stream().sorted().findFirst().orElse("");
    }
    String name =
        LOOPBACK.contains(host) ? "127.0.0.1" : names.stream().sorted().findFirst().orElse(host);
    return scheme() + (name.matches(".*[^\\]]:\\d{1,5}$") ? name : name + ":" + on);
  }
}
