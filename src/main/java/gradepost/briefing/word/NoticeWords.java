package gradepost.briefing.word;

import gradepost.pack.Particulars;
import gradepost.pack.TemporaryRestriction;
import gradepost.route.place.Direction;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a notice says beside the restriction itself, spelt; nothing where it does not say it. */
public final class NoticeWords {
  private final Words words;
  private final Direction direction;

  /**
   * @param direction of travel: the end that is met first is told first
   */
  public NoticeWords(Words words, Direction direction) {
    this.words = words;
    this.direction = direction;
  }

  /** Between what stations; empty where the notice does not say. */
  public Optional<String> between(TemporaryRestriction r) {
    return Optional.of(r.particulars().between())
        .filter(t -> !t.isEmpty())
        .map(t -> words.text("notice.between", t));
  }

  /** Between what, and from what to what at the lineside, a line each. */
  public List<String> where(TemporaryRestriction r) {
    List<String> out = new ArrayList<>(between(r).stream().toList());
    Particulars said = r.particulars();
    boolean forward = direction == Direction.FORWARD;
    String first = forward ? said.nearFrom() : said.nearTo();
    String last = forward ? said.nearTo() : said.nearFrom();
    if (!first.isEmpty() && !last.isEmpty()) {
      out.add(words.text("notice.near", first, last));
    } else if (!first.isEmpty()) {
      out.add(words.text("notice.near-from", first));
    } else if (!last.isEmpty()) {
      out.add(words.text("notice.near-to", last));
    }
    return out;
  }

  /** Who made it known and when, and in which issues it stands first and last, a line each. */
  public List<String> made(TemporaryRestriction r) {
    Particulars said = r.particulars();
    List<String> out = new ArrayList<>();
    if (!r.issuedBy().isEmpty()) {
      out.add(words.text("notice.by", r.issuedBy()));
    }
    said.issued().ifPresent(at -> out.add(words.text("notice.issued", words.moment(at))));
    if (!said.firstAppearance().isEmpty()) {
      out.add(words.text("notice.first", said.firstAppearance()));
    }
    if (!said.lastAppearance().isEmpty()) {
      out.add(words.text("notice.last", said.lastAppearance()));
    }
    return out;
  }

  /** What is done with the warning equipment of the track. */
  public Optional<String> aws(TemporaryRestriction r) {
    return Optional.of(r.particulars().aws())
        .filter(t -> !t.isEmpty())
        .map(t -> words.text("notice.aws", t));
  }
}
