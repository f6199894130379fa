package gradepost.cli;

import gradepost.desk.DemoFolder;
import gradepost.desk.DeskFault;
import gradepost.desk.DeskServer;
import java.io.PrintWriter;
import java.nio.file.Path;
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
    description = "Serves packs, papers and register to a browser on this machine, until stopped.")
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
      description = "Where it listens: 127.0.0.1 and a port (default: ${DEFAULT-VALUE}).")
  private String listen = "";

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
      int port = DeskServer.port(listen);
      Path served = folder == null ? DemoFolder.copied() : folder;
      try (DeskServer desk =
          DeskServer.start(
              new DeskServer.Served(served, register.store(), out, Main.clock(spec)), port)) {
        say.println("desk: " + desk.address());
        say.println("packs: " + served);
        say.println("Open the first line in a browser. Stop with Ctrl+C.");
        say.flush();
        Thread.currentThread().join();
      }
      return 0;
    } catch (DeskFault e) {
      spec.commandLine().getErr().println("error: " + e.getMessage());
      return 1;
    }
  }
}
