package gradepost.briefing.compose;

import gradepost.drive.Action;
import gradepost.drive.Approach;
import gradepost.drive.Command;
import java.util.List;

/** What the brake does where a lower speed begins for which no application is made. */
enum BrakeThere {
  /** It is off. */
  OFF,
  /** It checks the speed, and no more. */
  CHECKS,
  /** It is still on for what was before. */
  STILL_ON;

  static BrakeThere of(Approach approach, List<Action> actions) {
    return actions.stream()
        .filter(a -> a.atM() <= approach.target().atM())
        .reduce((a, next) -> next)
        .map(Action::command)
        .filter(Command.Brake.class::isInstance)
        .map(c -> ((Command.Brake) c).stage() == Command.Stage.CHECK ? CHECKS : STILL_ON)
        .orElse(OFF);
  }

  /** The key of the text for it. */
  String key(String key) {
    return switch (this) {
      case OFF -> key;
      case CHECKS -> key + "-checked";
      case STILL_ON -> key + "-still-on";
    };
  }
}
