package gradepost.briefing.page;

import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.Words;
import gradepost.told.PrintedFinding;
import gradepost.told.PrintedValue;

/** Bad news, spelt. */
public final class FindingWords implements PrintedValue.Cases<String> {
  private final Words words;

  public FindingWords(Words words) {
    this.words = words;
  }

  /** The sentence for one finding. */
  public String of(PrintedFinding finding) {
    return words.text(
        finding.key(), finding.values().stream().<Object>map(v -> v.match(this)).toArray());
  }

  @Override
  public String place(PrintedValue.Place place) {
    return words.spelt(place.at(), "");
  }

  @Override
  public String speed(PrintedValue.Speed speed) {
    return speed.speed().text();
  }

  @Override
  public String pressure(PrintedValue.Pressure pressure) {
    return pressure.pressure().text();
  }

  @Override
  public String length(PrintedValue.Length length) {
    return length.length().text();
  }

  @Override
  public String time(PrintedValue.Time time) {
    return words.time(time.time());
  }

  @Override
  public String reason(PrintedValue.Why why) {
    return words.text(Reasons.key(why.reason()));
  }

  @Override
  public String number(PrintedValue.Count number) {
    return Long.toString(number.number());
  }

  @Override
  public String name(PrintedValue.Name name) {
    return name.text();
  }
}
