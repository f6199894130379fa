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

  /** The line of the route story for a place. */
  Item.Reference story(String place) {
    return new Item.Reference(
        Item.Reference.line(part + "-story", place), taught.text("story.title"));
  }

  Item.Reference train() {
    return new Item.Reference(part + "-train-page", taught.text("train.title"));
  }

  Item.Reference approach(Approach approach) {
    return new Item.Reference(
        part + "-a" + approach.number(),
        taught.text("approach.heading", approach.number(), taught.title(approach)));
  }

  Item.Reference changes() {
    return new Item.Reference(Item.Reference.CHANGES, taught.text("changes.title"));
  }
}
