package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.reissue.register.Listing;
import java.util.function.Function;

/** The rows of a list, or why there are none. */
public sealed interface Found {
  /** One answer for each case. */
  <T> T match(Function<Rows, T> rows, Function<Nothing, T> nothing);

  /** The rows. */
  record Rows(Listing listing) implements Found {
    @Override
    public <T> T match(Function<Rows, T> rows, Function<Nothing, T> nothing) {
      return rows.apply(this);
    }
  }

  /** Why there are none. */
  record Nothing(Answer why) implements Found {
    @Override
    public <T> T match(Function<Rows, T> rows, Function<Nothing, T> nothing) {
      return nothing.apply(this);
    }
  }
}
