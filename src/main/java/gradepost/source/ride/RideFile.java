package gradepost.source.ride;

import gradepost.plan.Plan;
import gradepost.ride.Ride;
import gradepost.source.file.FileMistakes;
import gradepost.source.file.SourceFiles;
import gradepost.source.file.SourceFiles.Content;
import gradepost.source.route.RouteFrame;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Reading;
import gradepost.yaml.SourcePosition;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/**
 * A file with what was observed of a ride. Its rows and cells are taken apart at once, beside
 * whatever else is done until there is a plan to lay them against.
 */
public final class RideFile {
  private final String name;
  private final Problems unreadable;

  /** Empty where the file cannot be read. */
  private final Optional<CompletableFuture<RideText.Table>> table;

  private RideFile(
      String name, Problems unreadable, Optional<CompletableFuture<RideText.Table>> table) {
    this.name = name;
    this.unreadable = unreadable;
    this.table = table;
  }

  /** The file of this name. */
  public static RideFile of(SourceFiles files, String name) {
    Content content = files.recorded(name);
    return content.match(
        held ->
            new RideFile(
                name,
                Problems.NONE,
                Optional.of(
                    CompletableFuture.supplyAsync(() -> new RideText(held.bytes(), name).table()))),
        why -> {
          Reader in = new Reader(name, RouteFrame.UNKNOWN);
          in.error(new SourcePosition(name, 1, 1), FileMistakes.UNREADABLE.with(why));
          return new RideFile(name, in.problems(), Optional.empty());
        });
  }

  /** Why it cannot be read at all, if so; what stands in it is not looked at. */
  public Problems unreadable() {
    return unreadable;
  }

  /** What the lines above the headings say; nothing where it cannot be read. */
  public RideHeading heading() {
    return new RideHeading(table.map(t -> t.join().before()).orElse(List.of()));
  }

  /**
   * The ride over a plan, or what is wrong.
   *
   * @param asked what the ride is said to be
   */
  public Reading<Ride> over(Plan plan, RideAsked asked) {
    return table
        .map(t -> new RideReader(name, t.join(), plan, asked).read())
        .orElseGet(() -> new Reading.Rejected<>(unreadable));
  }
}
