package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.Subject;
import gradepost.route.JunctionRoute;
import gradepost.route.Signal;
import gradepost.route.SignalRoute;
import gradepost.route.place.Hand;
import gradepost.route.station.StopMark;
import gradepost.task.Call;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Stop marks, and the signals that lead to them. */
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
      near.placesAbout(taught, at);
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

  /** What an indication leads to and how fast, where the signal shows it for one route only. */
  List<Item> signalRoutes() {
    List<Item> out = new ArrayList<>();
    List<Signal> signals = taught.signals().stream().map(BriefingFacts.At::what).toList();
    for (BriefingFacts.At<Signal> at : taught.signals()) {
      Signal signal = at.what();
      for (SignalRoute route : signal.routes()) {
        boolean alone =
            signal.routes().stream().filter(r -> r.indication().equals(route.indication())).count()
                == 1;
        if (!alone || route.indication().isBlank()) {
          continue;
        }
        Distractors near = new Distractors(leads(route));
        if (route.speed().isPresent()) {
          // This way and another, each at two speeds: all four are alike.
          Optional<String> way = otherWay(signals, route);
          Optional<Speed> speed = otherSpeed(signals, route);
          way.ifPresent(w -> near.add(leads(new SignalRoute(w, "", route.speed()))));
          speed.ifPresent(s -> near.add(leads(new SignalRoute(route.leadsTo(), "", speed))));
          way.ifPresent(w -> speed.ifPresent(s -> near.add(leads(new SignalRoute(w, "", speed)))));
        } else {
          signals.stream()
              .flatMap(s -> s.routes().stream())
              .forEach(r -> near.add(leads(new SignalRoute(r.leadsTo(), "", Optional.empty()))));
        }
        if (near.enough()) {
          out.add(
              new Item(
                  Subject.SIGNAL_ROUTE,
                  signal.id() + "/" + route.indication(),
                  at.atM(),
                  taught.text(
                      route.speed().isPresent() ? "ask.signal-route" : "ask.signal-way",
                      signal.id(),
                      route.indication()),
                  leads(route),
                  near.all(),
                  references.table("signals")));
        }
      }
    }
    return SpeedItems.once(out);
  }

  private Optional<String> otherWay(List<Signal> signals, SignalRoute route) {
    return signals.stream()
        .flatMap(s -> s.routes().stream())
        .map(SignalRoute::leadsTo)
        .filter(w -> !w.equals(route.leadsTo()))
        .findFirst();
  }

  /** Of another route, or of a junction. */
  private Optional<Speed> otherSpeed(List<Signal> signals, SignalRoute route) {
    Stream<Speed> ofRoutes =
        signals.stream().flatMap(s -> s.routes().stream()).flatMap(r -> r.speed().stream());
    Stream<Speed> ofJunctions =
        taught.assignment().route().junctions().stream()
            .filter(j -> taught.applies(j.applies()))
            .flatMap(j -> j.routes().stream())
            .map(JunctionRoute::speed);
    return Stream.concat(ofRoutes, ofJunctions)
        .filter(s -> !Optional.of(s).equals(route.speed()))
        .findFirst();
  }

  /** The way alone where the signal tells no speed of its own. */
  private String leads(SignalRoute route) {
    return route
        .speed()
        .map(s -> taught.text("answer.leads", route.leadsTo(), taught.speed(s.metresPerSecond())))
        .orElse(route.leadsTo());
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

  /** The signal behind another, against those about it. */
  List<Item> nextSignals() {
    List<BriefingFacts.At<Signal>> all = taught.signals();
    List<Item> out = new ArrayList<>();
    for (int i = 0; i + 1 < all.size(); i++) {
      String right = all.get(i + 1).what().id();
      Distractors near = new Distractors(right);
      for (int by : new int[] {2, -1, 3, -2, 4, -3}) {
        if (i + by >= 0 && i + by < all.size()) {
          near.add(all.get(i + by).what().id());
        }
      }
      if (near.enough()) {
        out.add(
            new Item(
                Subject.NEXT_SIGNAL,
                all.get(i).what().id(),
                all.get(i).atM(),
                taught.text("ask.next-signal", all.get(i).what().id()),
                right,
                near.all(),
                references.table("signals")));
      }
    }
    return SpeedItems.once(out);
  }
}
