package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Plan;
import gradepost.policy.PaperRules;
import gradepost.policy.Subject;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * Everything that can be asked of one plan, and papers drawn from it.
 *
 * <p>Each paper asks the same number of questions of each subject, one point each, four answers to
 * each question, which are the same to whoever does not know the road: papers of equal weight. What
 * a seed chooses is stated by {@link Random}, whose sequence is part of its own description.
 */
public final class QuestionBank {
  private final Map<Subject, List<Item>> items = new EnumMap<>(Subject.class);
  private final Map<Subject, Integer> counts;
  private final PaperRules rules;

  /**
   * @param part prefix of the anchors of the briefing's part that teaches this plan
   * @param others plans of the same direction with other formations: whose points are mistaken
   */
  public QuestionBank(
      BriefingFacts taught, String part, Issued issued, PaperRules rules, List<Plan> others) {
    References references = new References(taught, part);
    SpeedItems speeds = new SpeedItems(taught, references);
    TrackItems track = new TrackItems(taught, references);
    ApproachItems approaches = new ApproachItems(taught, references, others);
    StationItems stations = new StationItems(taught, references);
    TrainItems train = new TrainItems(taught, references);
    HeldItems held = new HeldItems(taught, references);
    SignalItems signals = new SignalItems(taught, references);
    BeforeItems before = new BeforeItems(taught, references);
    IssueItems issue = new IssueItems(taught, references, issued);
    for (Subject subject : Subject.values()) {
      List<Item> all =
          switch (subject) {
            case PERMISSIBLE_SPEED -> speeds.permissible();
            case REAR_CLEAR -> speeds.rearClear();
            case ORDER_OF_CUES -> track.order();
            case GRADIENT -> track.gradients();
            case CURVE -> track.curves();
            case STOP_MARK -> stations.stopMarks();
            case BRAKING_POINT -> approaches.brakingPoints();
            case LANDMARK -> approaches.landmarks();
            case FIRST_PRESSURE -> approaches.firstPressures();
            case FAILURE_ANSWER -> approaches.failureAnswers();
            case LAST_PLACE -> approaches.lastPlaces();
            case SIGNAL_ROUTE -> signals.routes();
            case BOARD -> speeds.boards();
            case CHANGED -> issue.changed();
            case BRAKE_TEST -> train.brakeTests();
            case HANDLES -> train.handles();
            case PLATFORM_SIDE -> stations.platformSides();
            case NEXT_SIGNAL -> signals.next();
            case SHORT_PLATFORM -> stations.shortPlatforms();
            case CHECKED -> approaches.checked();
            case POOR_RAIL -> approaches.poorRail();
            case HELD_SPEED -> held.all();
            case PROTECTING_SIGNAL -> before.protectingSignals();
            case PASSED_BEFORE -> before.passed();
            case SIGNAL_KIND -> signals.kinds();
            case OTHER_FORMATION -> new FormationItems(taught, references, others).earlier();
          };
      items.put(subject, all);
    }
    this.rules = rules;
    this.counts = counts();
  }

  /** One of each subject, then those that have to be passed again, then all of them again. */
  private Map<Subject, Integer> counts() {
    List<Subject> order = new ArrayList<>(List.of(Subject.values()));
    order.addAll(rules.mustPass());
    Map<Subject, Integer> out = new EnumMap<>(Subject.class);
    int left = rules.questions();
    int before;
    do {
      before = left;
      for (Subject subject : order) {
        int asked = out.getOrDefault(subject, 0);
        if (left > 0 && asked < questions(subject)) {
          out.put(subject, asked + 1);
          left--;
        }
      }
    } while (left > 0 && left < before);
    return out;
  }

  /** In how many ways a subject can be asked about: the same words once, but for the handles. */
  private long questions(Subject subject) {
    return subject == Subject.HANDLES
        ? of(subject).size()
        : of(subject).stream().map(Item::ask).distinct().count();
  }

  /** Everything that can be asked of a subject; empty where the data has nothing to ask. */
  public List<Item> of(Subject subject) {
    return items.getOrDefault(subject, List.of());
  }

  /** Subjects of which the data has nothing to ask. */
  public List<Subject> notAsked() {
    return List.of(Subject.values()).stream().filter(s -> of(s).isEmpty()).toList();
  }

  /** The questions of one paper; the same seed always draws the same paper. */
  public List<Asked> paper(long seed) {
    // Seeds that follow each other would begin alike: spread them over all 64 bits first.
    Random random = new Random(seed * 0x9E3779B97F4A7C15L);
    List<Asked> out = new ArrayList<>();
    counts.forEach(
        (subject, count) -> {
          List<Item> all = new ArrayList<>(of(subject));
          Collections.shuffle(all, random);
          // What gives another one away comes last: it is asked only where too few are left.
          all.sort(Comparator.comparing(i -> Told.another(i, out)));
          Set<String> asks = new HashSet<>();
          all.stream()
              .filter(i -> asks.add(i.ask()) || subject == Subject.HANDLES)
              .limit(count)
              .forEach(item -> out.add(asked(item, random)));
        });
    return List.copyOf(out);
  }

  private Asked asked(Item item, Random random) {
    List<String> choices = new ArrayList<>(Choices.wrong(item, random));
    choices.add(item.right());
    Collections.shuffle(choices, random);
    return new Asked(
        item, choices, choices.indexOf(item.right()), rules.mustPass().contains(item.subject()));
  }
}
