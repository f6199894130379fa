package gradepost.app.making;

import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** Makes issues that are due. */
public interface Making {
  /**
   * What becomes of each.
   *
   * @param done is told the file of each pack when it is made
   */
  List<Outcome> of(List<Due> due, Consumer<Path> done) throws IOException, RegisterException;
}
