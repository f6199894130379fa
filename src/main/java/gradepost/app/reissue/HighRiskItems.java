package gradepost.app.reissue;

import gradepost.briefing.Messages;
import gradepost.pack.FormationRisk;
import gradepost.pack.TemporaryRestriction;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What the depot wants to be said first is in its own words. Where such an item names a restriction
 * that is not what it was when the item was written, it says so until somebody writes it anew.
 */
final class HighRiskItems {
  private final Messages messages;

  HighRiskItems(Messages messages) {
    this.messages = messages;
  }

  /** The items that may no longer be true, each with the words that are to stand in its place. */
  Map<String, String> stale(PackFile before, PackFile now) {
    Set<String> old = new LinkedHashSet<>(items(before));
    List<String> changed = changed(before, now);
    Map<String, String> out = new LinkedHashMap<>();
    for (String item : items(now)) {
      StringBuilder words = new StringBuilder(item);
      for (String reference : changed) {
        if (old.contains(item) && names(item, reference) && !marked(item, reference, now)) {
          words.append(' ').append(mark(now.issue().number(), reference));
        }
      }
      if (words.length() > item.length()) {
        out.put(item, words.toString());
      }
    }
    return out;
  }

  private static List<String> items(PackFile pack) {
    List<String> out = new ArrayList<>();
    List<FormationRisk> risks = new ArrayList<>(pack.formationRisks());
    for (DirectionPart direction : pack.directions()) {
      out.addAll(direction.highRisk());
      risks.addAll(direction.formationRisks());
    }
    out.addAll(pack.highRisk());
    risks.forEach(r -> out.add(r.item()));
    return out;
  }

  /** References of what is added, changed or gone. */
  private static List<String> changed(PackFile before, PackFile now) {
    Map<String, TemporaryRestriction> old = standing(before);
    Map<String, TemporaryRestriction> all = standing(now);
    Set<String> references = new LinkedHashSet<>(all.keySet());
    references.addAll(old.keySet());
    references.removeIf(r -> old.containsKey(r) && old.get(r).equals(all.get(r)));
    return List.copyOf(references);
  }

  private static Map<String, TemporaryRestriction> standing(PackFile pack) {
    return pack.standing().stream()
        .collect(
            Collectors.toMap(
                TemporaryRestriction::reference,
                Function.identity(),
                (first, again) -> again,
                LinkedHashMap::new));
  }

  /** The reference as a word of its own: T 1 is not in T 12. */
  private static boolean names(String item, String reference) {
    String word = "(?<![\\p{L}\\p{N}])" + Pattern.quote(reference) + "(?![\\p{L}\\p{N}])";
    return Pattern.compile(word).matcher(item).find();
  }

  private boolean marked(String item, String reference, PackFile now) {
    for (int issue = 1; issue <= now.issue().number(); issue++) {
      if (item.contains(mark(issue, reference))) {
        return true;
      }
    }
    return false;
  }

  private String mark(int issue, String reference) {
    return messages.text("cover.high-risk.stale", issue, reference);
  }
}
