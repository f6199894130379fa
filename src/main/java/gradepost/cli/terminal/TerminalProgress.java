package gradepost.cli.terminal;

import gradepost.app.store.Progress;
import java.io.Console;
import java.time.Duration;
import java.util.Optional;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** A bar on the terminal, once the work has taken a second; nothing where there is no terminal. */
public final class TerminalProgress implements Progress, AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(1);

  private final boolean terminal;
  private final long startedNs = System.nanoTime();
  private int papers;
  private int ready;
  private Optional<ProgressBar> bar = Optional.empty();

  private TerminalProgress(boolean terminal) {
    this.terminal = terminal;
  }

  /** One for the terminal that the process has, if it has one. */
  public static TerminalProgress forThisTerminal() {
    return new TerminalProgress(isTerminal());
  }

  /** From Java 22 on there may be a console without a terminal, and a method that says so. */
  @SuppressWarnings("SystemConsoleNull") // answered: the method is asked where there is one
  private static boolean isTerminal() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException olderJava) {
      return true;
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void expect(int count) {
    papers = count;
  }

  @Override
  public void done(String paper) {
    ready++;
    if (terminal && bar.isEmpty() && System.nanoTime() - startedNs > PATIENCE.toNanos()) {
      bar = Optional.of(open());
    }
    bar.ifPresent(b -> b.stepTo(ready).setExtraMessage(" " + paper));
  }

  private ProgressBar open() {
    return new ProgressBarBuilder()
        .setTaskName("papers")
        .setInitialMax(papers)
        .setStyle(ProgressBarStyle.ASCII)
        .setConsumer(new ConsoleProgressBarConsumer(System.err))
        .build();
  }

  @Override
  public void close() {
    bar.ifPresent(ProgressBar::close);
  }
}
