package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.Subject;
import gradepost.route.JunctionRoute;
import gradepost.route.Signal;
import gradepost.route.SignalRoute;
import gradepost.route.station.StopMark;
import gradepost.task.Call;
import java.util.ArrayList;
import java.util.List;

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
        signal.routes().forEach(r -> near.add(leads(r)));
        signal.routes().stream()
            .filter(r -> !r.equals(route))
            .forEach(r -> near.add(leads(new SignalRoute(route.leadsTo(), "", r.speed()))));
        signals.stream().flatMap(s -> s.routes().stream()).forEach(r -> near.add(leads(r)));
        taught.assignment().route().junctions().stream()
            .filter(j -> taught.applies(j.applies()))
            .flatMap(j -> j.routes().stream())
            .filter(JunctionRoute::diverging)
            .forEach(
                j ->
                    near.add(
                        leads(
                            new SignalRoute(
                                route.leadsTo(), "", java.util.Optional.of(j.speed())))));
        if (near.enough()) {
          out.add(
              new Item(
                  Subject.SIGNAL_ROUTE,
                  signal.id() + "/" + route.indication(),
                  at.atM(),
                  taught.text("ask.signal-route", signal.id(), route.indication()),
                  leads(route),
                  near.all(),
                  references.table("signals")));
        }
      }
    }
    return SpeedItems.once(out);
  }

  private String leads(SignalRoute route) {
    return route
        .speed()
        .map(s -> taught.text("answer.leads", route.leadsTo(), taught.speed(s.metresPerSecond())))
        .orElseGet(() -> taught.text("answer.leads-plain", route.leadsTo()));
  }
}
