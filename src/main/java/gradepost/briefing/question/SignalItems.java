package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.Subject;
import gradepost.route.JunctionRoute;
import gradepost.route.Signal;
import gradepost.route.SignalRoute;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Signals: their order, their routes, what they can show, and what is noted of them. */
final class SignalItems {
  private static final int MOST = 9;
  private final BriefingFacts taught;
  private final References references;

  SignalItems(BriefingFacts taught, References references) {
    this.taught = taught;
    this.references = references;
  }

  /** What an indication leads to and how fast, where the signal shows it for one route only. */
  List<Item> routes() {
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

  /** The signal behind another, against those about it. */
  List<Item> next() {
    List<BriefingFacts.At<Signal>> all = taught.signals();
    List<Item> out = new ArrayList<>();
    for (int i = 0; i + 1 < all.size(); i++) {
      String right = all.get(i + 1).what().id();
      Distractors near = new Distractors(right);
      double at = all.get(i + 1).atM();
      String own = all.get(i).what().id();
      all.stream()
          .filter(s -> !s.what().id().equals(own))
          .sorted(Comparator.comparingDouble(s -> Math.abs(s.atM() - at)))
          .limit(MOST)
          .forEach(s -> near.add(s.what().id()));
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

  /** Which signal never shows danger, and which one the briefing has a note of. */
  List<Item> kinds() {
    List<Item> out = new ArrayList<>(neverDanger());
    out.addAll(noted());
    return List.copyOf(out);
  }

  /** A repeater is known by its plate: what is asked for is the distant. */
  private List<Item> neverDanger() {
    return WhichOf.items(
        Subject.SIGNAL_KIND,
        taught.signals().stream()
            .filter(s -> s.what().kind() != Signal.Kind.REPEATER)
            .map(
                s ->
                    new WhichOf.Thing(
                        s.what().id(),
                        s.atM(),
                        !s.what().kind().stops(),
                        references.table("signals")))
            .toList(),
        taught.text("ask.never-danger"),
        Optional.of(taught.text("ask.shows-danger")));
  }

  /** Among signals with notes of their own: of the others nobody knows that it is not so. */
  private List<Item> noted() {
    List<BriefingFacts.At<Signal>> all =
        taught.signals().stream().filter(s -> !s.what().note().isBlank()).toList();
    List<Item> out = new ArrayList<>();
    for (BriefingFacts.At<Signal> at : all) {
      String note = at.what().note();
      boolean named = taught.signals().stream().anyMatch(s -> note.contains(s.what().id()));
      boolean alone = all.stream().filter(s -> alike(s.what().note(), note)).count() == 1;
      if (named || !alone) {
        continue;
      }
      Distractors near = new Distractors(at.what().id());
      all.stream()
          .sorted(Comparator.comparingDouble(s -> Math.abs(s.atM() - at.atM())))
          .forEach(s -> near.add(s.what().id()));
      if (near.enough()) {
        out.add(
            new Item(
                Subject.SIGNAL_KIND,
                at.what().id(),
                at.atM(),
                taught.text("ask.signal-noted", note),
                at.what().id(),
                near.all(),
                references.table("signals")));
      }
    }
    return SpeedItems.once(out);
  }

  /** Whether one note has the other in it. */
  private static boolean alike(String a, String b) {
    return a.contains(b) || b.contains(a);
  }
}
