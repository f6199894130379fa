package gradepost.task;

import gradepost.pack.DailyHours;
import gradepost.pack.TemporaryRestriction;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Finds the parts of a validity that need a paper of their own.
 *
 * <p>A paper is planned for all restrictions that stand at some time of its validity, so it is
 * right for the strictest state. Where one covers another, the other has no approach on it. When
 * the first ends, or before it begins, the train meets the other at speed: that state is planned
 * for itself. So is the state at the hours of the day at which the first does not stand.
 */
public final class PaperPeriods {
  private static final double SAME_M = 0.01;
  private static final double SAME_MPS = 1e-6;

  private final Assignment all;
  private final LocalDateTime from;
  private final LocalDateTime to;

  private PaperPeriods(Assignment all, LocalDateTime from, LocalDateTime to) {
    this.all = all;
    this.from = from;
    this.to = to;
  }

  /**
   * The periods within a validity, in their order; they do not overlap. Those of hours come last,
   * and lie within others. Most papers have none.
   */
  public static List<PaperPeriod> of(Assignment all, LocalDateTime from, LocalDateTime to) {
    return new PaperPeriods(all, from, to).found();
  }

  /** Between two moments at which a restriction begins or ends. */
  private record Span(LocalDateTime from, LocalDateTime to, List<TemporaryRestriction> standing) {}

  private List<PaperPeriod> found() {
    List<Span> spans = spans();
    List<PaperPeriod> out = new ArrayList<>();
    boolean byHours = met().anyMatch(r -> r.hours().isPresent());
    if (spans.size() < 2 && !byHours) {
      return out;
    }
    List<Target.Reduction> whole = reductions(all.restrictions());
    List<List<Target.Reduction>> printed =
        new ArrayList<>(Collections.nCopies(spans.size(), whole));
    for (int i = 0; i < spans.size(); i++) {
      Span first = spans.get(i);
      List<Target.Reduction> own = reductions(first.standing());
      List<Target.Reduction> uncovered = lacking(own, whole);
      if (uncovered.isEmpty()) {
        continue;
      }
      int last = i;
      while (last + 1 < spans.size()
          && first.standing().containsAll(spans.get(last + 1).standing())
          && lacking(reductions(spans.get(last + 1).standing()), own).isEmpty()) {
        last++;
      }
      out.add(period(first, spans.get(last).to(), uncovered));
      Collections.fill(printed.subList(i, last + 1), own);
      i = last;
    }
    if (byHours) {
      out.addAll(ofHours(spans, printed));
    }
    return out;
  }

  /**
   * The hours of the day that need a paper of their own.
   *
   * @param printed what the paper of each span brakes for
   */
  private List<PaperPeriod> ofHours(List<Span> spans, List<List<Target.Reduction>> printed) {
    List<PaperPeriod> out = new ArrayList<>();
    for (int i = 0; i < spans.size(); i++) {
      Span span = spans.get(i);
      List<Target.Reduction> paper = printed.get(i);
      StatesOfTheDay.of(span.standing())
          .forEach(
              (standing, hours) -> {
                List<Target.Reduction> own = reductions(standing);
                List<Target.Reduction> uncovered = lacking(own, paper);
                if (!uncovered.isEmpty()) {
                  add(out, ofHours(span, hours, standing, uncovered), own);
                }
              });
    }
    return out;
  }

  /** Adds a period, or lets the one before it, which brakes for all that it does, last longer. */
  private void add(List<PaperPeriod> out, PaperPeriod next, List<Target.Reduction> own) {
    for (int i = 0; i < out.size(); i++) {
      PaperPeriod before = out.get(i);
      if (before.hours().equals(next.hours())
          && before.to().equals(next.from())
          && before.restrictions().containsAll(next.restrictions())
          && lacking(own, reductions(before.restrictions())).isEmpty()) {
        out.set(i, before.upTo(next.to(), next.last()));
        return;
      }
    }
    out.add(next);
  }

  private PaperPeriod ofHours(
      Span span,
      List<DailyHours> hours,
      List<TemporaryRestriction> standing,
      List<Target.Reduction> uncovered) {
    return new PaperPeriod(
        span.from(),
        span.to(),
        hours,
        span.from().equals(from),
        span.to().equals(to),
        standing,
        references(uncovered),
        span.standing().stream()
            .filter(r -> !standing.contains(r))
            .map(TemporaryRestriction::reference)
            .toList());
  }

  private static List<String> references(List<Target.Reduction> uncovered) {
    return uncovered.stream().map(Target.Reduction::reference).distinct().toList();
  }

  private PaperPeriod period(Span first, LocalDateTime end, List<Target.Reduction> uncovered) {
    return new PaperPeriod(
        first.from(),
        end,
        List.of(),
        first.from().equals(from),
        end.equals(to),
        first.standing(),
        references(uncovered),
        met()
            .filter(r -> !first.standing().contains(r))
            .map(TemporaryRestriction::reference)
            .toList());
  }

  private Stream<TemporaryRestriction> met() {
    return all.restrictions().stream().filter(r -> Ceiling.stands(all, r.applies()));
  }

  private List<Span> spans() {
    Set<LocalDateTime> moments = new TreeSet<>(Set.of(from, to));
    met()
        .flatMap(r -> Stream.concat(Stream.of(r.imposed()), r.until().stream()))
        .filter(moment -> moment.isAfter(from) && moment.isBefore(to))
        .forEach(moments::add);
    List<Span> spans = new ArrayList<>();
    Optional<LocalDateTime> before = Optional.empty();
    for (LocalDateTime moment : moments) {
      before.ifPresent(
          start ->
              spans.add(
                  new Span(
                      start, moment, met().filter(r -> r.standsBetween(start, moment)).toList())));
      before = Optional.of(moment);
    }
    return spans;
  }

  private List<Target.Reduction> reductions(List<TemporaryRestriction> restrictions) {
    Assignment then = all.withRestrictions(restrictions);
    return Targets.of(then, Ceiling.of(then)).stream()
        .flatMap(
            target ->
                target
                    .match(
                        stop -> Optional.<Target.Reduction>empty(),
                        Optional::of,
                        step -> Optional.<Target.Reduction>empty(),
                        signal -> Optional.<Target.Reduction>empty())
                    .stream())
        .filter(r -> r.kind() == Target.Reduction.Kind.TEMPORARY)
        .toList();
  }

  /** What one state has to brake for, and another has no approach to from such a speed. */
  private static List<Target.Reduction> lacking(
      List<Target.Reduction> state, List<Target.Reduction> paper) {
    return state.stream().filter(r -> paper.stream().noneMatch(p -> covers(p, r))).toList();
  }

  private static boolean covers(Target.Reduction paper, Target.Reduction state) {
    return paper.reference().equals(state.reference())
        && Math.abs(paper.atM() - state.atM()) < SAME_M
        && paper.speedMps() < state.speedMps() + SAME_MPS
        && paper.fromMps() > state.fromMps() - SAME_MPS;
  }
}
