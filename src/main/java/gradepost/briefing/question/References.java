package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Approach;

/** Names the sheet of the briefing where something is taught. */
final class References {
  private final BriefingFacts taught;
  private final String part;

  References(BriefingFacts taught, String part) {
    this.taught = taught;
    this.part = part;
  }

  /** A table by its name. */
  Item.Reference table(String name) {
    return new Item.Reference(part + "-" + name, taught.text("table." + name + ".title"));
  }

  /** The row of the sheets of the line for a place. */
  Item.Reference line(String place) {
    return new Item.Reference(
        Item.Reference.line(Item.Reference.LINE_SHEETS.formatted(part), place),
        taught.text("line.section"));
  }

  Item.Reference train() {
    return new Item.Reference(part + "-train-page", taught.text("train.title"));
  }

  Item.Reference approach(Approach approach) {
    return taught.hasPlate(approach)
        ? new Item.Reference(part + "-a" + approach.number(), taught.title(approach))
        : new Item.Reference(part + "-lower", taught.text("others.title"));
  }

  Item.Reference changes() {
    return new Item.Reference(Item.Reference.CHANGES, taught.text("changes.title"));
  }

  /** Where the formations of the pack differ. */
  Item.Reference formations() {
    return new Item.Reference(part + "-formations", taught.text("formations.title"));
  }
}
