package gradepost.render;

import freemarker.core.Environment;
import freemarker.core.ParseException;
import freemarker.core.TemplateProcessingTracer;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateHashModel;
import freemarker.template.TemplateNotFoundException;
import gradepost.render.chart.TemplateFault;
import java.io.IOException;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Fills a template, which may be a depot's own: it ends after a time or a length, and whatever is
 * wrong with it is said in one line.
 *
 * @param most how long its thread may work: on a busy machine an ordinary one takes long by the
 *     clock
 * @param longest how many characters it may make
 */
record Filling(Duration most, int longest) {
  /** A paper takes well under a second, and a hundredth of the length. */
  static final Filling USUAL = new Filling(Duration.ofSeconds(10), 64_000_000);

  private static final Duration LOOK_AFTER = Duration.ofSeconds(1);

  /** Where a template comes from: reading it may fail as filling it may. */
  interface Source {
    Template template() throws IOException;
  }

  /** What the template makes of the model. */
  String of(String name, Source source, TemplateHashModel model) throws IOException {
    Text text = new Text(longest);
    FutureTask<String> task =
        new FutureTask<>(
            () -> {
              Environment environment = source.template().createProcessingEnvironment(model, text);
              environment.setTemplateProcessingTracer(text);
              environment.process();
              return text.toString();
            });
    Thread thread = new Thread(task, "template " + name);
    thread.setDaemon(true);
    thread.start();
    try {
      return awaited(task, thread);
    } catch (TimeoutException e) {
      text.close();
      throw new TemplateFault(
          "the template %s did not end within %d s".formatted(name, most.toSeconds()), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      text.close();
      throw new TemplateFault("the template %s was stopped".formatted(name), e);
    } catch (ExecutionException e) {
      throw fault(name, e);
    }
  }

  /** What the task makes, if its thread does not work for longer than it may. */
  private String awaited(FutureTask<String> task, Thread thread)
      throws InterruptedException, ExecutionException, TimeoutException {
    long look = Math.min(most.toMillis(), LOOK_AFTER.toMillis());
    while (true) {
      try {
        return task.get(look, TimeUnit.MILLISECONDS);
      } catch (TimeoutException e) {
        long worked = ManagementFactory.getThreadMXBean().getThreadCpuTime(thread.getId());
        if (worked >= most.toNanos()) {
          throw e;
        }
      }
    }
  }

  private static IOException fault(String name, ExecutionException e) {
    Throwable why = e.getCause();
    // A template that was read before without success is told of by its cause.
    if (why instanceof IOException && why.getCause() instanceof ParseException again) {
      why = again;
    }
    if (why instanceof TemplateException told) {
      return new TemplateFault(oneLine(told.getMessageWithoutStackTop()), told);
    } else if (why instanceof ParseException told) {
      return new TemplateFault(oneLine(String.valueOf(told.getMessage())), told);
    } else if (why instanceof TemplateNotFoundException told) {
      return new TemplateFault("there is no template " + told.getTemplateName(), told);
    } else if (why instanceof EmptyLoop told) {
      return new TemplateFault(String.valueOf(told.getMessage()), told);
    } else if (why instanceof StackOverflowError) {
      return new TemplateFault("the template %s calls itself without end".formatted(name), why);
    } else if (why instanceof OutOfMemoryError) {
      return new TemplateFault("the template %s needs too much memory".formatted(name), why);
    } else if (why instanceof IOException io) {
      return io;
    } else if (why instanceof RuntimeException unforeseen) {
      throw unforeseen;
    }
    throw new IllegalStateException("filling " + name, why);
  }

  /** Without the tips that a template engine adds below a rule. */
  static String oneLine(String message) {
    return message.replaceFirst("(?s)\\n-{3,}.*", "").replaceAll("\\s+", " ").strip();
  }

  /** A loop that makes nothing, and that nothing could stop. */
  private static final class EmptyLoop extends RuntimeException {
    private static final long serialVersionUID = 1L;

    EmptyLoop(TemplateProcessingTracer.TracedElement loop) {
      super(
          "the template %s has a loop with nothing in it in line %d"
              .formatted(loop.getTemplate().getName(), loop.getBeginLine()));
    }
  }

  /**
   * What is made so far. Closed, it takes no more, and lets the template enter no element more, so
   * that its thread ends. A loop with nothing in it enters none: it is refused at once.
   */
  private static final class Text extends StringWriter implements TemplateProcessingTracer {
    private final int longest;
    private volatile boolean closed;

    Text(int longest) {
      super(1 << 17);
      this.longest = longest;
    }

    @Override
    public void enterElement(Environment environment, TracedElement element) {
      require(0);
      String words = element.getDescription();
      if (element.isLeaf() && (words.startsWith("#list ") || words.startsWith("#items "))) {
        throw new EmptyLoop(element);
      }
    }

    @Override
    public void exitElement(Environment environment, TracedElement element) {
      require(0);
    }

    private void require(int more) {
      if (closed) {
        throw new IllegalStateException("closed");
      } else if (getBuffer().length() + more > longest) {
        throw new OutOfMemoryError("more than " + longest + " characters");
      }
    }

    @Override
    public void write(int c) {
      require(1);
      super.write(c);
    }

    @Override
    public void write(char[] text, int from, int length) {
      require(length);
      super.write(text, from, length);
    }

    @Override
    public void write(String text) {
      require(text.length());
      super.write(text);
    }

    @Override
    public void write(String text, int from, int length) {
      require(length);
      super.write(text, from, length);
    }

    @Override
    public void close() {
      closed = true;
    }
  }
}
