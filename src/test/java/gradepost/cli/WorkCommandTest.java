package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.reissue.register.PostgresServer;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Work that is shared, command by command, as the README begins it. */
@Tag("slow")
class WorkCommandTest {
  @TempDir Path folder;

  /** What a command says, behind its exit code. */
  private record Said(int code, String out, String err) {}

  private static Said run(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(Depot.NOON, new PrintWriter(out), new PrintWriter(err), words);
    return new Said(code, out.toString(), err.toString());
  }

  @Test
  void whatCannotBeSharedIsRefused() throws Exception {
    String routes = folder.toString();
    assertThat(run("work").err())
        .startsWith(
            "workers need a register in PostgreSQL that holds its archive itself; allowed: an address,"
                + " such as --register jdbc:postgresql://server/register?user=clerk, and no folder");
    assertThat(run("reissue", routes, "--queue").code()).isEqualTo(2);
    assertThat(run("reissue", routes, "--detach").err())
        .startsWith("--detach goes with --queue; allowed: both, or neither");
    assertThat(run("reissue", routes, "--archive", "register").err())
        .startsWith(
            "--archive register needs a register in PostgreSQL; allowed: with any other register, a"
                + " folder");
  }

  @Test
  @EnabledOnOs(value = OS.LINUX, architectures = "amd64")
  void anEditedPolicyIsMadeByWorkersAndPutInPlaceByWhoeverComesBack() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 1).packs(1, 1);
    String url = PostgresServer.fresh();
    String out = folder.resolve("out").toString();
    Said entered = run("register", "enter", routes.toString(), "--register", url, "--out", out);
    assertThat(entered.out()).contains("0000/1 registered");
    Path policy = routes.resolve("policy/km-bar.yaml");
    String text = Files.readString(policy);
    Files.writeString(policy, text.replace("reaction: {value: 500 ms", "reaction: {value: 600 ms"));
    String[] reissue = {
      "reissue",
      routes.toString(),
      "--queue",
      "--reason",
      "policy of December",
      "--register",
      url,
      "--out",
      out,
      "--by",
      "a clerk",
      "--detach"
    };
    assertThat(run(reissue).out())
        .contains("0000: the files are not those of 0000/1: ../policy/km-bar.yaml was edited");
    assertThat(run("reissue", routes.toString(), "--register", url).err())
        .startsWith(
            "error: workers have not yet made what a clerk asked for: 1 in all, such as 0000/2; allowed: nothing else");
    Said worked = run("work", "--register", url, "--threads", "1", "--until-done");
    assertThat(worked.err()).isEmpty();
    assertThat(worked.out()).contains("0000: issue 2 takes the place of 1");
    Said back = run(java.util.Arrays.copyOf(reissue, reissue.length - 1));
    assertThat(back.out())
        .contains("0000/2 papers and files written: an earlier run had not finished");
    assertThat(folder.resolve("out/0000-issue-2/0000-out-3-car.pdf")).exists();
    assertThat(run("register", "log", "--register", url).out())
        .contains("issued: policy of December");
  }
}
