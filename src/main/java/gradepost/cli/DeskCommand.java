package gradepost.cli;

import gradepost.desk.DemoFolder;
import gradepost.desk.DeskServer;
import gradepost.desk.entry.DeskFault;
import gradepost.desk.entry.Door;
import java.awt.AWTError;
import java.awt.Desktop;
import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost desk}. */
@Command(
    name = "desk",
    mixinStandardHelpOptions = true,
    description = "Serves packs, papers and register to browsers, until stopped.")
final class DeskCommand implements Callable<Integer> {
  @Parameters(
      arity = "0..1",
      paramLabel = "FOLDER",
      description = "Where the packs lie (default: a copy of the demo lines).")
  private @Nullable Path folder;

  @Option(
      names = "--listen",
      paramLabel = "ADDRESS",
      defaultValue = "127.0.0.1:8384",
      description =
          "Where it listens: address and port (default: ${DEFAULT-VALUE}). Another address than"
              + " this machine's own needs accounts, and TLS here or at a proxy.")
  private String listen = "";

  @Option(
      names = "--accounts",
      description = "People sign in by their accounts, on this machine too.")
  private boolean accounts;

  @Option(
      names = "--tls",
      paramLabel = "KEYSTORE",
      description = "A PKCS12 file with the certificate and its key.")
  private @Nullable Path tls;

  @Option(
      names = "--tls-password-file",
      paramLabel = "FILE",
      description =
          "Its first line is the password of the key store (default: GRADEPOST_TLS_PASSWORD in the"
              + " environment).")
  private @Nullable Path tlsPassword;

  @Option(
      names = "--behind-proxy",
      description = "A proxy on which TLS ends passes requests on. Nobody else may reach the port.")
  private boolean behindProxy;

  @Option(
      names = "--name",
      paramLabel = "HOST",
      description = "A name by which browsers ask for it, such as desk.example. May be repeated.")
  private List<String> names = List.of();

  @Option(names = "--open", description = "Opens the page in the browser of this machine.")
  private boolean open;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = "papers",
      description = "Where the papers of new issues go (default: ${DEFAULT-VALUE}).")
  private Path out = Path.of("papers");

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    PrintWriter say = spec.commandLine().getOut();
    try {
      Door door = Door.of(new Door.Wish(listen, accounts, keyStore(), behindProxy, names));
      Path served = folder == null ? DemoFolder.copied() : folder;
      try (DeskServer desk =
          DeskServer.start(
              new DeskServer.Served(served, register.store(), out, Main.clock(spec)), door)) {
        say.println("desk: " + desk.address());
        say.println("packs: " + served);
        say.println("Open the first line in a browser. Stop with Ctrl+C.");
        say.flush();
        if (open && !opened(desk.address())) {
          say.println("This machine has no browser that could be opened from here.");
        }
        say.flush();
        Thread.currentThread().join();
      }
      return 0;
    } catch (DeskFault e) {
      spec.commandLine().getErr().println("error: " + e.getMessage());
      return 1;
    }
  }

  private Optional<Door.KeyStoreFile> keyStore() throws DeskFault {
    return tls == null
        ? Optional.empty()
        : Optional.of(Door.KeyStoreFile.of(tls, Optional.ofNullable(tlsPassword), System.getenv()));
  }

  private static boolean opened(String address) {
    try {
      if (!GraphicsEnvironment.isHeadless()
          && Desktop.isDesktopSupported()
          && Desktop.getDesktop().isSupported(Desktop.Action.BROWSE)) {
        Desktop.getDesktop().browse(URI.create(address));
        return true;
      }
    } catch (IOException | RuntimeException | AWTError | LinkageError e) {
      // A screen that is named but not there is an error to Java, and none to who serves others.
      return false;
    }
    return false;
  }
}
