package gradepost.cli.terminal;

import gradepost.app.store.Answer;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;

/** Says an answer on the command's streams: problems to one, what was done to the other. */
public final class Saying {
  /** Prints it, and gives the exit code of the command. */
  public static int exitCode(CommandSpec spec, Answer answer) {
    PrintWriter err = spec.commandLine().getErr();
    int problems = answer.problems().size();
    answer.problems().stream()
        .limit(Answer.PRINTED)
        .forEach(problem -> err.print(problem.stripTrailing() + "\n"));
    if (problems > Answer.PRINTED) {
      err.print("and " + (problems - Answer.PRINTED) + " more\n");
    }
    err.flush();
    PrintWriter out = spec.commandLine().getOut();
    answer.said().forEach(line -> out.print(line + "\n"));
    answer.written().forEach(file -> out.print("wrote " + file + "\n"));
    out.flush();
    return answer.good() ? 0 : 1;
  }

  private Saying() {}
}
