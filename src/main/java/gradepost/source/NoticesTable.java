package gradepost.source;

import gradepost.route.TemporaryRestriction;
import java.util.List;

/** The key table of a file of temporary restrictions. */
final class NoticesTable {
  static final Key<FileKind> KIND = FileHeading.key(FileKind.RESTRICTIONS);
  static final Key<List<TemporaryRestriction>> NOTICES =
      Key.required(
          "notices",
          ListOf.any(SpeedTables.NOTICE).unique("reference"),
          "The restrictions made known by notice; [] where there are none.");
  static final Key<String> NONE =
      Key.optional(
          "none",
          Common.prose("a statement with a date"),
          "What is stated where there are none, with the date on which it was checked.");
  static final Shape<Notices> NOTICES_FILE =
      Shape.of(
              "a restrictions file",
              List.of(KIND, NOTICES, NONE),
              v -> new Notices(v.get(NOTICES), v.find(NONE)))
          .checked(NoticesTable::noneSaidWhereNone);

  private static void noneSaidWhereNone(Values v) {
    v.find(NOTICES)
        .ifPresent(
            notices -> {
              if (notices.isEmpty() && !v.has(NONE)) {
                v.error(
                    NOTICES,
                    "there are no notices, and nothing says that someone looked",
                    "none: a statement with a date, such as \"none in force, checked on"
                        + " 2026-11-20\"",
                    "");
              } else if (!notices.isEmpty() && v.has(NONE)) {
                v.error(NONE, "none is stated beside notices", "one or the other", "");
              }
            });
  }

  private NoticesTable() {}
}
