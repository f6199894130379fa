package gradepost.cli;

import gradepost.app.Brief;
import gradepost.app.store.FailOn;
import gradepost.app.store.Store;
import gradepost.cli.terminal.Saying;
import gradepost.cli.terminal.TerminalProgress;
import gradepost.pack.PaperKind;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code gradepost brief}. */
@Command(
    name = "brief",
    mixinStandardHelpOptions = true,
    description =
        "Makes the papers of one or more packs: PDF and HTML, one for each direction and formation.")
final class BriefCommand implements Callable<Integer> {
  @Parameters(
      arity = "1..*",
      paramLabel = "PACK|FOLDER",
      description = "A pack, or a folder for every pack-….yaml below it.")
  private List<Path> packs = List.of();

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = ".",
      description = "Where the papers go (default: the current folder).")
  private Path out = Path.of(".");

  @Option(
      names = "--json",
      description = "Also write what the papers were made from: track, train, plan, approaches.")
  private boolean json;

  @Option(
      names = "--templates",
      paramLabel = "DIR",
      description = "Lay out with the depot's own templates instead of those in the jar.")
  private @Nullable Path templates;

  @Option(
      names = "--with",
      split = ",",
      paramLabel = "PAPERS",
      converter = PaperWord.class,
      description = "More papers than the pack asks for: sign-off, practice, cards, wall.")
  private List<PaperKind> with = List.of();

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "A number that chooses the questions of the first knowledge paper.")
  private @Nullable Long seed;

  @Option(names = "--expired", description = "Make papers of an expired pack too.")
  private boolean expired;

  @Option(
      names = "--register",
      paramLabel = "FILE|URL",
      description =
          "The register (default: register/register.db, if there is one). What was edited since an"
              + " issue is printed as a DRAFT.")
  private @Nullable String register;

  @Option(
      names = "--fail-on",
      paramLabel = "LEVEL",
      defaultValue = "errors",
      description =
          "End with 1 from errors or from warnings on (default: errors). For build servers.")
  private FailOn failOn = FailOn.ERRORS;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    try (TerminalProgress progress = TerminalProgress.forThisTerminal()) {
      Store store =
          Store.of(Optional.ofNullable(register).orElse("register/register.db"), Optional.empty());
      if (register != null && !store.exists()) {
        return Saying.exitCode(spec, store.missing());
      }
      Brief.Wish wish =
          new Brief.Wish(
              json,
              Set.copyOf(with),
              seed == null ? OptionalLong.empty() : OptionalLong.of(seed),
              Optional.of(LocalDateTime.now(Main.clock(spec))),
              expired,
              failOn);
      Brief brief = new Brief(Optional.ofNullable(templates), wish, progress, Optional.of(store));
      return Saying.exitCode(spec, brief.of(packs, out));
    }
  }
}
