package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.SyntheticNetwork;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Measures a desk of two hundred packs, in a process of 256 MB, with fifty people at it who look at
 * something every two seconds. What they open was opened before.
 */
@Tag("long")
class DeskLoadIT {
  private static final int PACKS = 200;
  private static final int PEOPLE = 50;
  private static final int LOOKS = Integer.getInteger("gradepost.looks", 40);

  /** Half of them are measured: 95 of a hundred are not to be told from twenty. */
  private static final int EDITS = Integer.getInteger("gradepost.edits", 200);

  private static final int OPENED = 4;
  private static final int PAUSE_MS = 2000;
  private static final Pattern BENCH = Pattern.compile("/bench/(\\w+)/([\\w-]+)");

  @TempDir Path folder;

  @Test
  void fiftyPeople() throws Exception {
    new SyntheticNetwork(folder.resolve("routes"), 2).packs(PACKS, 3);
    long begun = System.nanoTime();
    Process desk = begun();
    try (BufferedReader said = desk.inputReader(StandardCharsets.UTF_8)) {
      String address = said.readLine().replaceFirst("^desk: ", "");
      Browser first = new Browser(address).letIn();
      assertThat(first.get("/packs").statusCode()).isEqualTo(200);
      System.out.printf("start to the first page: %.2f s%n", (System.nanoTime() - begun) / 1e9);
      List<String> papers = new ArrayList<>();
      for (int pack = 0; pack < OPENED; pack++) {
        Matcher paper = BENCH.matcher(first.get("/packs/%04d".formatted(pack)).body());
        assertThat(paper.find()).isTrue();
        papers.add(paper.group(1) + "/" + paper.group(2));
        first.get("/bench/" + papers.get(pack));
      }
      Map<String, List<Double>> took = new TreeMap<>();
      everybody(address, papers)
          .forEach((page, ms) -> took.computeIfAbsent(page, p -> new ArrayList<>()).addAll(ms));
      took.forEach(DeskLoadIT::tell);
      System.out.println("resident: " + resident(desk));
    } finally {
      desk.destroyForcibly().waitFor();
    }
  }

  /** Ten miles: a text checked as it is typed, and a paper planned again after it was saved. */
  @Test
  void anAuthor() throws Exception {
    copyOfTheDemo();
    Process desk = begun();
    try (BufferedReader said = desk.inputReader(StandardCharsets.UTF_8)) {
      Browser author = new Browser(said.readLine().replaceFirst("^desk: ", "")).letIn();
      String file = "thrumble-valley/route.yaml";
      String text = Files.readString(folder.resolve("routes").resolve(file));
      String form = "token=" + author.token("/notice") + "&by=A&name=" + Browser.coded(file);
      List<Double> typed = new ArrayList<>();
      List<Double> planned = new ArrayList<>();
      for (int i = 0; i < EDITS; i++) {
        // A gradient a little less steep each time.
        String other = text.replaceFirst("1 in 120\\b", "1 in " + (121 + i));
        assertThat(other).isNotEqualTo(text);
        long start = System.nanoTime();
        String body = form + "&base=&text=" + Browser.coded(other);
        assertThat(author.post("/lines/typed", body).statusCode()).isEqualTo(200);
        typed.add((System.nanoTime() - start) / 1e6);
        Files.writeString(folder.resolve("routes").resolve(file), other);
        start = System.nanoTime();
        assertThat(author.get("/learn/thrumble/thrumble-down-4-car").statusCode()).isEqualTo(200);
        planned.add((System.nanoTime() - start) / 1e6);
      }
      // The first ones are those of a program that has just begun.
      tell("checked as typed", typed.subList(EDITS / 2, EDITS));
      tell("planned again", planned.subList(EDITS / 2, EDITS));
    } finally {
      desk.destroyForcibly().waitFor();
    }
  }

  private void copyOfTheDemo() throws IOException {
    Path demo = Path.of("routes");
    try (Stream<Path> walk = Files.walk(demo)) {
      for (Path from : walk.sorted().toList()) {
        Files.copy(from, folder.resolve("routes").resolve(demo.relativize(from).toString()));
      }
    }
  }

  /** As the start script of a release begins it, but for the stored classes. */
  private Process begun() throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xms48m",
            "-Xmn32m",
            "-XX:SurvivorRatio=2",
            "-XX:TargetSurvivorRatio=90",
            System.getProperty("gradepost.compiler", "-XX:TieredStopAtLevel=4"),
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty(
                "surefire.test.class.path", System.getProperty("java.class.path", "")),
            "gradepost.cli.Main",
            "desk",
            folder.resolve("routes").toString(),
            "--listen",
            "127.0.0.1:0",
            "--register",
            folder.resolve("register.db").toString())
        .redirectError(folder.resolve("err").toFile())
        .start();
  }

  private static Map<String, List<Double>> everybody(String address, List<String> papers)
      throws Exception {
    Map<String, List<Double>> all = new TreeMap<>();
    ExecutorService people = Executors.newFixedThreadPool(PEOPLE);
    try {
      List<Callable<Map<String, List<Double>>>> tasks = new ArrayList<>();
      for (int i = 0; i < PEOPLE; i++) {
        Random random = new Random(i);
        tasks.add(() -> person(new Browser(address).letIn(), papers, random));
      }
      for (Future<Map<String, List<Double>>> each : people.invokeAll(tasks)) {
        each.get()
            .forEach((page, ms) -> all.computeIfAbsent(page, p -> new ArrayList<>()).addAll(ms));
      }
    } finally {
      people.shutdownNow();
    }
    return all;
  }

  private static Map<String, List<Double>> person(
      Browser browser, List<String> papers, Random random) throws Exception {
    Map<String, List<Double>> took = new TreeMap<>();
    List<String> pages =
        List.of(
            "/", "/packs", "/packs/PACK", "/learn/PAPER", "/bench/PAPER", "/register", "/notice");
    for (int look = 0; look < LOOKS; look++) {
      Thread.sleep(random.nextInt(2 * PAUSE_MS));
      String page = pages.get(random.nextInt(pages.size()));
      String paper = papers.get(random.nextInt(papers.size()));
      String path =
          page.replace("PAPER", paper).replace("PACK", "%04d".formatted(random.nextInt(PACKS)));
      String query = page.startsWith("/bench") ? "?later=" + random.nextInt(200) : "";
      long start = System.nanoTime();
      HttpResponse<String> answer = browser.get(path + query);
      took.computeIfAbsent(page, p -> new ArrayList<>()).add((System.nanoTime() - start) / 1e6);
      assertThat(answer.statusCode()).as(path + query).isEqualTo(200);
    }
    return took;
  }

  private static void tell(String page, List<Double> ms) {
    ms.sort(Double::compare);
    System.out.printf(
        "%-16s %4d times: half within %.1f ms, 95 of a hundred within %.1f ms, all within %.1f ms%n",
        page,
        ms.size(),
        ms.get(ms.size() / 2),
        ms.get(ms.size() * 95 / 100),
        ms.get(ms.size() - 1));
  }

  private static String resident(Process process) throws IOException {
    Path status = Path.of("/proc/" + process.pid() + "/status");
    if (!Files.exists(status)) {
      return "not known here";
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmRSS"))
        .findFirst()
        .orElse("not known");
  }
}
