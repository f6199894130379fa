package gradepost.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** How we write, as far as a machine can see it: what is wrong with a text. */
public final class WordRules {
  /** The most words of a sentence on a plate, a card, or a sheet of the line or the road. */
  public static final int SHORT = 15;

  /** The most words of a sentence anywhere else. */
  public static final int LONG = 20;

  /** What fills a hole: "2m 54ch", "15 psi", "Weir Lane". */
  private static final int HOLE = 2;

  private static final Pattern HOLES = Pattern.compile("\\{[\\w-]+}");
  private static final Pattern SENTENCE_END = Pattern.compile("(?<=[.?!][”\")]?)\\s+|[|\n]");
  private static final Pattern WORD = Pattern.compile("\\S*[\\p{L}\\p{N}]\\S*");

  /** Phrases that are not written, and what is. */
  private static final Map<Pattern, String> INSTEAD = new TreeMap<>(WordRules::byText);

  static {
    instead("gives? nothing", "fails here");
    instead("(?:is|was|are|be|brake) asked for", "applied");
    instead("latest (?:for|places?)", "last place for");
    instead("fallback ladder", "if it fails");
    instead("does it", "stops so far short");
    instead("Emgy", "Emergency");
    instead("evened out", "equal spacing");
    instead("first state of the rail", "dry rail");
    instead("light and long", "brake early and lightly");
    instead("(?:post count|by the clock)", "count from");
    instead("say this first", "brief these first");
    instead("gains no more", "balancing speed");
    instead("(?:last )?recourse", "the last resort");
    instead("(?:what|which|those that|the row that) stands?", "in force");
    instead("stands? no more", "withdrawn");
    instead("anew", "reissued, again");
    instead("may be doing", "fastest possible and permitted");
    instead("no brake is on", "not braking");
    instead("counts as MU", "speed class");
    instead("no file with contents", "not a regular file");
    instead("of which (?:the|a)", "a sentence of its own");
    instead("answers for", "is responsible for");
    instead("hangs on", "depends on");
    instead("(?:comes?|came|coming) to", "is, reaches, adds up to");
    instead("so many", "a number of");
    instead("who(?:ever|soever)", "the person who");
    instead("(?:there|here|where)(?:of|upon|to|with)", "of it, on it");
    instead("(?:comes?|came) off", "is released, is shut off");
    instead("goes on(?! (?:the|a|to)\\b)", "is applied, begins");
    instead("the most that", "at most");
    instead("by itself", "alone, separately");
    instead("for good", "for the rest of the run");
    instead("worked out with", "computed from");
    instead("falls? away", "removed");
    instead("it (?:runs|does) (?:past|it)", "stops so far past");
  }

  /** Words with one sense, by what has to stand in the sentence or before them. */
  private static final Map<Pattern, Sense> GLOSSARY = new TreeMap<>(WordRules::byText);

  static {
    sense(
        "fall(?:s|ing|en)?",
        "gradients?|slopes?|ris(?:es?|ing)|steep(?:er|est)?|level|1 in",
        "gradients");
    sense("dropping|drops?", "speed|mph|km|trains|board|\\{\\w+}", "speeds");
    sense("stands|stood", "train|front|formation", "trains");
  }

  private record Sense(Pattern beside, String of) {}

  private static int byText(Pattern a, Pattern b) {
    return a.pattern().compareTo(b.pattern());
  }

  private static void instead(String not, String but) {
    INSTEAD.put(word(not), but);
  }

  private static void sense(String word, String beside, String of) {
    GLOSSARY.put(word(word), new Sense(word(beside), of));
  }

  private static Pattern word(String words) {
    return Pattern.compile("(?<![\\w-])(?:" + words + ")(?![\\w-])", Pattern.CASE_INSENSITIVE);
  }

  /**
   * What is wrong with a text.
   *
   * @param most words of a sentence
   */
  public static List<String> wrong(String text, int most) {
    List<String> out = new ArrayList<>(instead(text));
    for (String sentence : sentences(text).toList()) {
      long words = words(sentence);
      if (words > most) {
        out.add(words + " words, at most " + most + ": " + sentence);
      }
      if (sentence.chars().filter(c -> c == ';').count() > 1) {
        out.add("more than one semicolon: " + sentence);
      }
      GLOSSARY.forEach(
          (word, sense) -> {
            Matcher found = word.matcher(sentence);
            if (found.find() && !sense.beside().matcher(sentence).find()) {
              out.add("\"" + found.group() + "\" is for " + sense.of() + ": " + sentence);
            }
          });
    }
    return out;
  }

  /** Phrases that are not written anywhere. */
  public static List<String> instead(String text) {
    List<String> out = new ArrayList<>();
    INSTEAD.forEach(
        (not, but) -> {
          Matcher found = not.matcher(text);
          if (found.find()) {
            out.add("\"" + found.group() + "\", write: " + but);
          }
        });
    return out;
  }

  private static Stream<String> sentences(String text) {
    return SENTENCE_END.splitAsStream(text).filter(s -> !s.isBlank());
  }

  private static long words(String sentence) {
    String filled = HOLES.matcher(sentence).replaceAll("hole ".repeat(HOLE).strip());
    return WORD.matcher(filled).results().count();
  }

  private WordRules() {}
}
