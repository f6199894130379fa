package gradepost.cli;

import gradepost.app.KnownNotice;
import gradepost.app.NoticeList;
import gradepost.app.export.NoticeCalendar;
import gradepost.app.store.Answer;
import gradepost.cli.terminal.Saying;
import gradepost.pack.TemporaryRestriction;
import java.io.PrintWriter;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code gradepost register notices}. */
@Command(
    name = "notices",
    mixinStandardHelpOptions = true,
    description = "Lists the restrictions on the papers of the last issues, and when each ends.")
final class NoticesCommand implements Callable<Integer> {
  @Option(
      names = "--days",
      paramLabel = "N",
      description = "Only those that have ended, or end or begin within this number of days.")
  private @Nullable Long days;

  @Option(
      names = "--ical",
      description = "As an iCalendar file: an event for each beginning and each end to come.")
  private boolean calendar;

  @Mixin private RegisterOptions register = new RegisterOptions();
  @Mixin private ListFormat format = new ListFormat();
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Clock clock = Main.clock(spec);
    NoticeList notices = new NoticeList(register.store(), clock);
    PrintWriter out = spec.commandLine().getOut();
    if (calendar) {
      NoticeCalendar events = new NoticeCalendar(clock);
      Answer answer = notices.read(Optional.ofNullable(days), known -> add(known, notices, events));
      if (answer.good()) {
        out.print(events.text());
        out.flush();
      }
      return Saying.exitCode(spec, answer);
    }
    return notices
        .table(Optional.ofNullable(days))
        .match(
            rows -> {
              format.print(rows.listing().only(format.wish(notices.now())), out);
              return 0;
            },
            nothing -> Saying.exitCode(spec, nothing.why()));
  }

  private static void add(KnownNotice known, NoticeList notices, NoticeCalendar events) {
    TemporaryRestriction r = known.restriction();
    String what =
        "%s, %s, %s, %s".formatted(r.reference(), known.speed(), known.where(), known.route());
    String issues = String.join(", ", known.issues());
    String name = known.route() + "\n" + r.reference() + "\n";
    if (r.imposed().isAfter(notices.now())) {
      events.add(name + "begins", r.imposed(), "begins: " + what, issues);
    }
    r.until()
        .filter(end -> end.isAfter(notices.now()))
        .ifPresent(end -> events.add(name + "ends", end, "ends: " + what, issues));
  }
}
