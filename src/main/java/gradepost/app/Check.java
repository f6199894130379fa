package gradepost.app;

import gradepost.source.Sources;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Reads files of data and says what is wrong with them. */
public final class Check {

  /** Checks these files, or every YAML file below these folders. */
  public Answer of(List<Path> named) {
    try {
      List<Path> files = PackFiles.all(named);
      if (files.isEmpty()) {
        return Answer.refused(named.get(0) + ": error: no YAML file below this folder");
      }
      Sources sources = Disk.sources();
      Answer answer = Answer.GOOD;
      for (Path file : files) {
        answer = answer.and(Answer.of(sources.check(Disk.name(file))));
      }
      return answer.good()
          ? answer.and(Answer.said(files.size() + " files checked, nothing found"))
          : answer;
    } catch (IOException e) {
      return Answer.refused(Trouble.inWords(e));
    }
  }
}
