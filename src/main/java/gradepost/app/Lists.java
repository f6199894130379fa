package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.pack.PersonName;
import gradepost.reissue.register.Listing;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.units.Nearest;
import java.util.List;

/** What the register is asked. */
public final class Lists {
  private final Store store;

  public Lists(Store store) {
    this.store = store;
  }

  /** Asks the register a question; where there is no register yet, says so. */
  public Found list(Question question) {
    return list(question, Listing.Wish.ALL);
  }

  /** The same, of the rows that are wanted; a pack or person that nobody knows is a mistake. */
  public Found list(Question question, Listing.Wish wish) {
    if (!store.exists()) {
      return new Found.Nothing(store.missing());
    }
    try (Register register = store.open()) {
      requireKnown(register, wish);
      return new Found.Rows(register.list(question).only(wish));
    } catch (RegisterException e) {
      return new Found.Nothing(Answer.refused("error: " + e.getMessage()));
    }
  }

  private static void requireKnown(Register register, Listing.Wish wish) throws RegisterException {
    if (wish.pack().isPresent() && !register.knows(wish.pack().get())) {
      List<String> packs =
          register.list(Question.packs()).rows().stream().map(row -> row.get(0)).toList();
      throw new RegisterException(
          AppText.UNKNOWN_PACK.with(wish.pack().get(), Nearest.to(wish.pack().get(), packs)));
    }
    if (wish.person().isPresent()) {
      String person = wish.person().get();
      List<String> known = register.staff().known();
      if (known.stream().noneMatch(name -> PersonName.same(name, person))) {
        throw new RegisterException(AppText.UNKNOWN_PERSON.with(person, Nearest.to(person, known)));
      }
    }
  }
}
