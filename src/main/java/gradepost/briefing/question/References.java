package gradepost.briefing.question;

import gradepost.briefing.compose.Taught;
import gradepost.drive.Approach;

/** Names the sheet of the briefing where something is taught. */
final class References {
  private final Taught taught;
  private final String part;

  References(Taught taught, String part) {
    this.taught = taught;
    this.part = part;
  }

  Item.Reference table(String titleKey) {
    return new Item.Reference(part + "-tables", taught.text(titleKey));
  }

  Item.Reference story() {
    return new Item.Reference(part + "-story", taught.text("story.title"));
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
    return new Item.Reference("changes", taught.text("changes.title"));
  }
}
