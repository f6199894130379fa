package gradepost.cli;

import gradepost.app.queue.Queue;
import gradepost.app.reissue.Order;
import gradepost.app.reissue.Reissue;
import gradepost.app.reissue.Workers;
import gradepost.app.store.Disk;
import gradepost.app.store.Store;
import gradepost.cli.terminal.Saying;
import gradepost.cli.terminal.TerminalProgress;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost reissue}. */
@Command(
    name = "reissue",
    mixinStandardHelpOptions = true,
    description = {
      "Takes a notice into packs and reissues those that it touches.",
      "Makes the full pack with the changes marked, a supplement of changed sheets, slips and"
          + " lists.",
      "Brings the files of a touched pack up to date; the archive keeps the old issue."
    })
final class ReissueCommand implements Callable<Integer> {
  @Parameters(
      arity = "1..*",
      paramLabel = "PACK|FOLDER",
      description = "A pack, or a folder for every pack-….yaml below it.")
  private List<Path> packs = List.of();

  @Option(
      names = "--notice",
      paramLabel = "FILE",
      description =
          "The notice, YAML or CSV. Without it, the files are compared with those of the last"
              + " issue.")
  private @Nullable Path notice;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = ".",
      description = "Where the papers go, a folder for each issue (default: the current folder).")
  private Path out = Path.of(".");

  @Option(
      names = "--as-of",
      paramLabel = "DATE",
      description =
          "Without a notice: take out what has ended and bring in what has begun by this date."
              + " An hour may follow, such as '2026-11-30 04:00'. Today means now.")
  private @Nullable String asOf;

  @Option(
      names = "--valid-from",
      paramLabel = "'DATE HOUR'",
      description = "From when the issue is valid, such as '2026-11-30 04:00' (default: from now).")
  private @Nullable LocalDateTime validFrom;

  @Option(
      names = "--checked-by",
      paramLabel = "NAME",
      description =
          "Who has checked the data with the notice. Without it, the cover has a line to sign.")
  private @Nullable String checkedBy;

  @Option(
      names = "--emergency",
      description = "Also make an emergency addendum, on half a page if it fits.")
  private boolean emergency;

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      description =
          "Why there are these issues, for the register: one reason for all of them, such as"
              + " 'policy of December'.")
  private @Nullable String reason;

  @Option(
      names = "--queue",
      description =
          "Have the issues made by workers, through a register in PostgreSQL: see gradepost work."
              + " Wait for them.")
  private boolean queue;

  @Option(
      names = "--detach",
      description =
          "Do not wait for the workers. The same command without it writes what they made.")
  private boolean detach;

  @Option(names = "--dry-run", description = "Only say what would happen.")
  private boolean dryRun;

  @Option(
      names = "--jobs",
      paramLabel = "N",
      description = "How many packs to work on at once (default: one for each processor).")
  private int jobs = Runtime.getRuntime().availableProcessors();

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      defaultValue = "10",
      description = "How long to wait for another run to end (default: ${DEFAULT-VALUE}).")
  private long wait = 10;

  @Option(
      names = "--templates",
      paramLabel = "DIR",
      description = "Lay out with the depot's own templates instead of those in the jar.")
  private @Nullable Path templates;

  @Option(
      names = "--from-archive",
      description =
          "Restore the files of the last issue first. The archive keeps the files that they replace.")
  private boolean fromArchive;

  @Option(
      names = "--confirm",
      paramLabel = "REFERENCE|FILE",
      description =
          "Confirm that an edit by hand removes or eases this restriction, or uses this older file."
              + " Or that a notice that may be a mistake is right. Repeat for each.")
  private List<String> confirmed = List.of();

  @Mixin private RegisterOptions register = new RegisterOptions();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Clock clock = Main.clock(spec);
    Optional<LocalDateTime> day =
        Optional.ofNullable(asOf).map(text -> TypedValues.dayOrMoment(text, clock, spec));
    if (day.isPresent() && (notice != null || validFrom != null)) {
      throw new ParameterException(spec.commandLine(), CliText.AS_OF_ALONE.inWords());
    }
    if (detach && !queue) {
      throw new ParameterException(spec.commandLine(), CliText.DETACH_ALONE.inWords());
    }
    Store store = queue ? register.storeOfWorkers() : register.store();
    Optional<Workers> workers = queue ? Optional.of(workers()) : Optional.empty();
    try (TerminalProgress progress = TerminalProgress.forThisTerminal()) {
      Order order =
          new Order(
              new Order.Read(
                  packs,
                  Optional.ofNullable(notice),
                  new Order.Edits(fromArchive, new HashSet<>(confirmed))),
              new Order.Tell(
                  Optional.ofNullable(validFrom),
                  day,
                  Optional.ofNullable(reason),
                  Optional.ofNullable(checkedBy),
                  emergency,
                  Optional.ofNullable(templates)),
              new Order.Put(out, store, dryRun),
              new Order.Pace(jobs, Duration.ofSeconds(wait)));
      Reissue reissue = new Reissue(clock, register.who(), progress, Disk.sources(), workers);
      return Saying.exitCode(spec, reissue.of(order));
    }
  }

  private Workers workers() {
    PrintWriter err = spec.commandLine().getErr();
    return detach
        ? Queue.detached()
        : Queue.awaited(
            left -> {
              err.print(CliText.WAITS.of(left) + "\n");
              err.flush();
            });
  }
}
