package gradepost.app.queue;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import com.zaxxer.hikari.HikariDataSource;
import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.Layout;
import gradepost.app.making.Due;
import gradepost.app.making.Making;
import gradepost.app.making.Outcome;
import gradepost.app.making.Outcome.State;
import gradepost.app.reissue.Order;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Jobs.Ended;
import gradepost.reissue.register.Jobs.Job;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.IntConsumer;

/** Has workers make the issues of one run, and waits for them unless nobody wants to. */
final class Asking implements Making {
  private final Order order;
  private final By by;
  private final Register register;
  private final boolean detached;
  private final IntConsumer waits;

  /**
   * @param detached whether nobody waits for the workers
   * @param waits is told how many issues are waited for
   */
  Asking(Order order, By by, Register register, boolean detached, IntConsumer waits) {
    this.order = order;
    this.by = by;
    this.register = register;
    this.detached = detached;
    this.waits = waits;
  }

  @Override
  public List<Outcome> of(List<Due> due, Consumer<Path> done)
      throws IOException, RegisterException {
    Map<String, Due> asked = new LinkedHashMap<>();
    due.forEach(d -> asked.put(job(d).name(), d));
    ask(due);
    return detached
        ? due.stream().map(d -> Outcome.of(d.file(), State.ASKED, d.told())).toList()
        : awaited(asked, done);
  }

  private static Job job(Due due) {
    return new Job(due.now().id(), due.now().issue().number());
  }

  /** The jobs first: a task without one would have nothing to do. */
  private void ask(List<Due> due) throws IOException, RegisterException {
    Archive archive = order.put().store().kept();
    List<Kept> templates = templates(archive);
    TaskDescriptor<IssueTask> tasks = Connections.tasks();
    List<TaskInstance<?>> all = new ArrayList<>();
    for (Due each : due) {
      IssueTask task =
          new IssueTask(
              each.now().id(),
              each.now().issue().number(),
              each.file().toString(),
              by.who(),
              by.when().toString(),
              by.depot(),
              order.tell().reason().orElse(""),
              each.because().notice(),
              each.because().urgent(),
              each.because().found(),
              ArchivedInputs.keep(archive, each.now().inputs()),
              templates);
      all.add(tasks.instance(task.job().name()).data(task).build());
    }
    register.jobs().ask(by, order.cause(), due.stream().map(Asking::job).toList());
    try (HikariDataSource connections = Connections.to(order.put().store().url(), 1)) {
      SchedulerClient.Builder.create(connections)
          .serializer(new Json())
          .build()
          .scheduleBatch(all, Instant.EPOCH);
    }
  }

  private List<Kept> templates(Archive archive) throws IOException {
    List<Kept> kept = new ArrayList<>();
    if (order.tell().templates().isPresent()) {
      for (Map.Entry<String, String> text :
          Layout.texts(order.tell().templates().get()).entrySet()) {
        byte[] bytes = text.getValue().getBytes(StandardCharsets.UTF_8);
        kept.add(new Kept(text.getKey(), archive.keep(bytes)));
      }
    }
    return kept;
  }

  private List<Outcome> awaited(Map<String, Due> asked, Consumer<Path> done)
      throws IOException, RegisterException {
    List<Outcome> outcomes = new ArrayList<>();
    if (!asked.isEmpty()) {
      waits.accept(asked.size());
    }
    while (outcomes.size() < asked.size()) {
      for (Ended ended : register.jobs().take(order.cause())) {
        Due due = asked.get(ended.job().name());
        if (due != null) {
          Answer told = due.told().and(Json.answer(ended.told()));
          outcomes.add(Outcome.of(due.file(), State.valueOf(ended.state()), told));
          done.accept(due.file());
        }
      }
      if (outcomes.size() < asked.size()) {
        Queue.pause(asked.size() - outcomes.size());
      }
    }
    return outcomes;
  }
}
