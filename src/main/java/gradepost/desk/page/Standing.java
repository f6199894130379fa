package gradepost.desk.page;

import gradepost.app.Lists;
import gradepost.app.shelf.Shelf;
import gradepost.app.shelf.ShelfPack;
import gradepost.app.store.Store;
import gradepost.reissue.register.Listing;
import gradepost.reissue.register.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Why a paper is not one to drive by: marks for every page that shows anything of it. */
public final class Standing {
  private static final int RECALLED = 5;
  private static final int FINGERPRINT = 6;
  private static final int CHECKED = 7;

  private final Shelf shelf;
  private final Store store;

  public Standing(Shelf shelf, Store store) {
    this.shelf = shelf;
    this.store = store;
  }

  /** The rows of the register's list of issues that are of a pack, the first issue first. */
  public List<List<String>> issues(ShelfPack pack) {
    if (!store.exists()) {
      return List.of();
    }
    return new Lists(store)
            .list(Question.issues())
            .match(found -> found.listing().rows(), nothing -> List.<List<String>>of())
            .stream()
            .filter(row -> row.get(0).startsWith(pack.id() + "/"))
            .toList();
  }

  /** What is said above the papers of a pack as its files are; none where they are in use. */
  public List<String> marks(ShelfPack pack) {
    if (pack.whole().isEmpty()) {
      return List.of();
    }
    ShelfPack.Whole whole = pack.whole().get();
    List<String> marks = new ArrayList<>();
    if (!whole.validTo().isAfter(shelf.now())) {
      marks.add("EXPIRED");
    }
    if (whole.validFrom().isAfter(shelf.now())) {
      marks.add("NOT IN FORCE before " + Listing.moment(whole.validFrom().toString()));
    }
    List<List<String>> issues = issues(pack);
    if (issues.isEmpty()) {
      return marks;
    }
    List<String> last = issues.get(issues.size() - 1);
    String name = pack.id() + "/" + whole.number();
    List<List<String>> same = issues.stream().filter(row -> row.get(0).equals(name)).toList();
    List<String> over =
        same.stream().map(row -> row.get(RECALLED)).filter(why -> !why.isEmpty()).toList();
    over.forEach(why -> marks.add(loud(why)));
    if (over.isEmpty() && !last.get(0).equals(name)) {
      marks.add("SUPERSEDED by " + last.get(0));
    }
    if (edited(same, whole)) {
      marks.add("NOT ISSUED: the files were changed since " + last.get(0));
    } else if (same.stream().anyMatch(row -> row.get(CHECKED).equals("DRAFT"))) {
      marks.add("DRAFT: nobody has checked it yet");
    }
    return marks;
  }

  /** Whether its files are other ones than those of the issue whose number they have. */
  public boolean edited(ShelfPack pack) {
    String name = pack.id() + "/" + pack.whole().map(ShelfPack.Whole::number).orElse(0);
    List<List<String>> issues = issues(pack);
    List<List<String>> same = issues.stream().filter(row -> row.get(0).equals(name)).toList();
    return !issues.isEmpty() && pack.whole().filter(whole -> edited(same, whole)).isPresent();
  }

  private static boolean edited(List<List<String>> same, ShelfPack.Whole whole) {
    return same.stream().noneMatch(row -> row.get(FINGERPRINT).equals(whole.fingerprint()));
  }

  /** With its first word in capitals: superseded, or recalled. */
  private static String loud(String why) {
    int word = why.split("\\W", 2)[0].length();
    return why.substring(0, word).toUpperCase(Locale.ROOT) + why.substring(word);
  }
}
