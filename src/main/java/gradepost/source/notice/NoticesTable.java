package gradepost.source.notice;

import gradepost.pack.TemporaryRestriction;
import gradepost.source.file.FileHeading;
import gradepost.source.file.FileKind;
import gradepost.source.route.SpeedTables;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Values;
import java.util.List;

/** The key table of a file of temporary restrictions. */
public final class NoticesTable {
  static final Key<FileKind> KIND = FileHeading.key(FileKind.RESTRICTIONS);
  public static final Key<List<TemporaryRestriction>> NOTICES =
      Key.required(
          "notices",
          ListOf.any(SpeedTables.NOTICE).unique("reference"),
          "The restrictions made known by notice; [] where there are none.");
  public static final Key<String> NONE =
      Key.optional(
          "none",
          Common.prose("a statement with a date"),
          "What is stated where there are none, with the date on which it was checked.");
  public static final ObjectSchema<Notices> NOTICES_FILE =
      ObjectSchema.of(
              "a restrictions file",
              List.of(KIND, NOTICES, NONE),
              v -> new Notices(v.get(NOTICES), v.find(NONE)))
          .checked(NoticesTable::noneSaidWhereNone);

  private static void noneSaidWhereNone(Values v) {
    v.find(NOTICES)
        .ifPresent(
            notices -> {
              if (notices.isEmpty() && !v.has(NONE)) {
                v.error(NOTICES, NoticeMistakes.NOBODY_LOOKED);
              } else if (!notices.isEmpty() && v.has(NONE)) {
                v.error(NONE, NoticeMistakes.NONE_BESIDE_NOTICES);
              }
            });
  }

  private NoticesTable() {}
}
