package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.Subject;
import gradepost.route.place.Hand;
import gradepost.route.station.StopMark;
import gradepost.task.Call;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Stop marks, platform sides, and platforms that are too short. */
final class StationItems {
  private final BriefingFacts taught;
  private final References references;

  StationItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
  }

  /** The mark of this train's number of cars, against the other marks of the platform. */
  List<Item> stopMarks() {
    List<Item> out = new ArrayList<>();
    int cars = taught.assignment().formation().cars();
    for (Call call : taught.assignment().calls()) {
      List<StopMark> marks = call.platform().stopMarks();
      List<StopMark> own =
          marks.stream()
              .filter(m -> m.direction() == taught.assignment().direction() && m.cars() == cars)
              .toList();
      if (own.size() != 1) {
        continue;
      }
      double at = taught.path().metresAt(own.get(0).location());
      Distractors near = new Distractors(taught.place(at));
      marks.forEach(m -> near.place(taught, at, taught.path().metresAt(m.location())));
      near.place(taught, at, taught.path().metresAt(call.platform().extent().to()));
      near.place(taught, at, taught.path().metresAt(call.platform().extent().from()));
      near.marksAbout(taught, at);
      if (near.enough()) {
        out.add(
            new Item(
                Subject.STOP_MARK,
                call.station().name(),
                at,
                taught.text("ask.stop-mark", cars, call.station().name(), call.platform().number()),
                taught.place(at),
                near.all(),
                references.table("stations")));
      }
    }
    return SpeedItems.once(out);
  }

  /** On which side the platform is. */
  List<Item> platformSides() {
    List<Item> out = new ArrayList<>();
    for (Hand side : Hand.values()) {
      List<WhichOf.Thing> things = calls(c -> lineside(c) == side);
      out.addAll(
          WhichOf.items(
              Subject.PLATFORM_SIDE,
              things,
              taught.text(
                  "ask.platform-side", taught.text(side == Hand.LEFT ? "hand.left" : "hand.right")),
              Optional.empty()));
    }
    return out;
  }

  private Hand lineside(Call call) {
    return taught.seen(call.platform().side());
  }

  /** Where some of the train stands beyond the platform. */
  List<Item> shortPlatforms() {
    double train = taught.assignment().formation().lengthM();
    return WhichOf.items(
        Subject.SHORT_PLATFORM,
        calls(c -> taught.length(c.platform().extent()) < train),
        taught.text("ask.short-platform"),
        Optional.of(taught.text("ask.short-platform-not")));
  }

  private List<WhichOf.Thing> calls(Predicate<Call> has) {
    return taught.assignment().calls().stream()
        .map(
            c ->
                new WhichOf.Thing(
                    c.station().name(),
                    taught.path().metresAt(c.platform().extent().from()),
                    has.test(c),
                    references.table("stations")))
        .toList();
  }
}
