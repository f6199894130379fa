package gradepost.app.shelf;

import gradepost.app.store.Answer;
import gradepost.app.store.FileInPlace;
import gradepost.app.store.Progress;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Notices that are issued while nobody has to wait: one after another, each with a file that says
 * how far it is. Of one that the end of the program broke off, the file says that it was begun:
 * what it issued stands in the register, and issuing it again does the rest.
 */
public final class Works implements AutoCloseable {
  private static final String ENDING = ".work";

  /** Files of works that were done are kept for so many days. */
  private static final int KEPT_DAYS = 30;

  private static final Pattern ISSUE = Pattern.compile("(.+)-issue-(\\d{1,9})");

  private final NoticeDesk desk;
  private final Path folder;
  private final Clock clock;
  private final Map<String, Work> atWork = new HashMap<>();
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "issuing");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * @param folder where the files are kept; made when the first is written
   */
  public Works(NoticeDesk desk, Path folder, Clock clock) {
    this.desk = desk;
    this.folder = folder;
    this.clock = clock;
  }

  /** Begins one, and says by which id it is found. It is on disk before this returns. */
  public String begin(NoticeDesk.Typed typed) throws IOException {
    String id = UUID.randomUUID().toString();
    Work work =
        new Work(
            id,
            typed.by(),
            LocalDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS),
            Work.State.AT_WORK,
            0,
            0,
            List.of(),
            List.of(),
            List.of(),
            typed);
    Files.createDirectories(folder);
    tidy();
    keep(work);
    note(work);
    thread.execute(() -> issue(work));
    return id;
  }

  private void issue(Work begun) {
    Answer answer;
    try {
      answer = desk.issue(begun.typed(), new Counting(begun.id()));
    } catch (IOException | RuntimeException e) {
      answer = Answer.refused("error: " + e.getMessage());
    }
    Work last = of(begun.id()).orElse(begun);
    Work ended =
        new Work(
            last.id(),
            last.by(),
            last.begun(),
            answer.good() ? Work.State.DONE : Work.State.NOT_DONE,
            last.packs(),
            last.done(),
            answer.said(),
            answer.problems(),
            papers(answer.written()),
            last.typed());
    try {
      keep(ended);
    } catch (IOException e) {
      ended = with(ended, "error: " + e.getMessage());
    }
    note(ended);
  }

  private static Work with(Work work, String problem) {
    List<String> problems = new ArrayList<>(work.problems());
    problems.add(problem);
    return new Work(
        work.id(),
        work.by(),
        work.begun(),
        work.state(),
        work.packs(),
        work.done(),
        work.said(),
        problems,
        work.papers(),
        work.typed());
  }

  private static List<Work.Paper> papers(List<Path> written) {
    List<Work.Paper> out = new ArrayList<>();
    for (Path file : written) {
      Path parent = file.getParent();
      Path name = file.getFileName();
      if (parent != null && parent.getFileName() != null && name != null) {
        Matcher issue = ISSUE.matcher(parent.getFileName().toString());
        if (issue.matches()) {
          out.add(new Work.Paper(issue.group(1), issue.group(2), name.toString()));
        }
      }
    }
    return out;
  }

  /** Counts packs, and is asked by others meanwhile. */
  private final class Counting implements Progress {
    private final String id;

    Counting(String id) {
      this.id = id;
    }

    @Override
    public void expect(int packs) {
      change(packs, 0);
    }

    @Override
    public void done(String pack) {
      change(0, 1);
    }

    private void change(int packs, int done) {
      synchronized (atWork) {
        Work was = atWork.get(id);
        if (was != null) {
          atWork.put(
              id,
              new Work(
                  was.id(),
                  was.by(),
                  was.begun(),
                  was.state(),
                  was.packs() + packs,
                  was.done() + done,
                  was.said(),
                  was.problems(),
                  was.papers(),
                  was.typed()));
        }
      }
    }
  }

  private void note(Work work) {
    synchronized (atWork) {
      atWork.put(work.id(), work);
    }
  }

  /** One of them, by its id. */
  public Optional<Work> of(String id) {
    synchronized (atWork) {
      if (atWork.containsKey(id)) {
        return Optional.ofNullable(atWork.get(id));
      }
    }
    return all().stream().filter(work -> work.id().equals(id)).findFirst();
  }

  /** All that are kept, the latest first. */
  public List<Work> all() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.toString().endsWith(ENDING))
          .flatMap(f -> read(f).stream())
          .sorted(Comparator.comparing(Work::begun).reversed())
          .toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  /** Those that go on or were broken off, and those of the last day; the latest first. */
  public List<Work> recent() {
    LocalDateTime since = LocalDateTime.now(clock).minusDays(1);
    return all().stream()
        .filter(
            w ->
                w.state() == Work.State.AT_WORK
                    || w.state() == Work.State.BROKEN_OFF
                    || w.begun().isAfter(since))
        .toList();
  }

  private void keep(Work work) throws IOException {
    Properties file = new Properties();
    file.setProperty("by", work.by());
    file.setProperty("begun", work.begun().toString());
    file.setProperty("state", work.state().name());
    file.setProperty("packs", String.valueOf(work.packs()));
    file.setProperty("done", String.valueOf(work.done()));
    file.setProperty("said", String.join("\n", work.said()));
    file.setProperty("problems", String.join("\n", work.problems()));
    file.setProperty(
        "papers",
        work.papers().stream()
            .map(p -> p.pack() + "\t" + p.issue() + "\t" + p.name())
            .collect(Collectors.joining("\n")));
    file.setProperty("text", work.typed().text());
    file.setProperty("confirmed", String.join("\n", work.typed().confirmed()));
    file.setProperty("emergency", String.valueOf(work.typed().emergency()));
    work.typed().validFrom().ifPresent(from -> file.setProperty("valid-from", from.toString()));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    file.store(out, "A notice that is issued at the desk, and how far it is.");
    new FileInPlace(folder.resolve(work.id() + ENDING)).put(out.toByteArray());
  }

  private Optional<Work> read(Path path) {
    String id = String.valueOf(path.getFileName()).replace(ENDING, "");
    synchronized (atWork) {
      if (atWork.containsKey(id)) {
        return Optional.ofNullable(atWork.get(id));
      }
    }
    Properties file = new Properties();
    try (InputStream in = Files.newInputStream(path)) {
      file.load(in);
      Work.State state = Work.State.valueOf(file.getProperty("state", ""));
      return Optional.of(
          new Work(
              id,
              file.getProperty("by", ""),
              LocalDateTime.parse(file.getProperty("begun", "")),
              // Nobody works on what another run of the desk began.
              state == Work.State.AT_WORK ? Work.State.BROKEN_OFF : state,
              Integer.parseInt(file.getProperty("packs", "0")),
              Integer.parseInt(file.getProperty("done", "0")),
              lines(file, "said"),
              lines(file, "problems"),
              lines(file, "papers").stream()
                  .map(line -> line.split("\t", -1))
                  .map(cells -> new Work.Paper(cells[0], cells[1], cells[2]))
                  .toList(),
              new NoticeDesk.Typed(
                  file.getProperty("text", ""),
                  Set.copyOf(lines(file, "confirmed")),
                  file.getProperty("by", ""),
                  Boolean.parseBoolean(file.getProperty("emergency", "false")),
                  Optional.of(file.getProperty("valid-from", ""))
                      .filter(moment -> !moment.isEmpty())
                      .map(LocalDateTime::parse))));
    } catch (IOException | RuntimeException e) {
      return Optional.empty();
    }
  }

  private static List<String> lines(Properties file, String name) {
    return file.getProperty(name, "").lines().toList();
  }

  /** What was done long ago is told by the register alone. */
  private void tidy() throws IOException {
    LocalDateTime old = LocalDateTime.now(clock).minusDays(KEPT_DAYS);
    for (Work work : all()) {
      if (work.begun().isBefore(old)) {
        Files.deleteIfExists(folder.resolve(work.id() + ENDING));
      }
    }
  }

  /** Nothing more is begun; what is at work is broken off by the end of the program. */
  @Override
  public void close() {
    thread.shutdown();
  }
}
