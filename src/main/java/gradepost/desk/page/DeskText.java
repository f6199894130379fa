package gradepost.desk.page;

import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Two;
import gradepost.units.PrintedText;
import java.util.Collection;

/** What the desk refuses. Its sentences stand in {@code mistakes.properties}. */
public final class DeskText {
  private static final Mistakes MISTAKES = Mistakes.beside(DeskText.class);

  public static final Mistake HOST = MISTAKES.declare("host");
  public static final Mistake KEY = MISTAKES.declare("key");
  public static final Mistake FORM = MISTAKES.declare("form");
  public static final Mistake SIGNED_OUT = MISTAKES.declare("signed-out");
  public static final Mistake WRONG = MISTAKES.declare("wrong");
  public static final Mistake LAPSED = MISTAKES.declare("lapsed");
  public static final One<Integer> WAIT = MISTAKES.declare("wait", Hole.count("seconds"));
  public static final One<Collection<String>> ROLE = MISTAKES.declare("role", Hole.list("roles"));
  public static final Mistake PLAIN_PROXY = MISTAKES.declare("plain-proxy");
  public static final One<String> PLAIN = MISTAKES.declare("plain", PrintedText.quoted("address"));
  public static final Mistake TLS_TWICE = MISTAKES.declare("tls-twice");
  public static final One<String> NAME = MISTAKES.declare("name", PrintedText.quoted("name"));
  public static final One<String> NO_NAMES =
      MISTAKES.declare("no-names", PrintedText.quoted("address"));
  public static final Mistake NO_CLERK = MISTAKES.declare("no-clerk");
  public static final Two<String, String> KEY_STORE =
      MISTAKES.declare("key-store", PrintedText.quoted("file"), PrintedText.quoted("why"));
  public static final Mistake NOTHING_THERE = MISTAKES.declare("nothing-there");
  public static final Mistake TOO_LONG = MISTAKES.declare("too-long");
  public static final Mistake NO_NAME = MISTAKES.declare("no-name");
  public static final Mistake NO_PEOPLE = MISTAKES.declare("no-people");
  public static final Mistake NO_NOTICE = MISTAKES.declare("no-notice");
  public static final One<String> NO_MOMENT =
      MISTAKES.declare("no-moment", PrintedText.quoted("moment"));
  public static final One<String> NO_DAY = MISTAKES.declare("no-day", PrintedText.quoted("day"));
  public static final One<String> NO_ENTRY =
      MISTAKES.declare("no-entry", PrintedText.quoted("entry"));
  public static final One<String> WENT_WRONG =
      MISTAKES.declare("went-wrong", PrintedText.quoted("why"));
  public static final One<String> LISTEN =
      MISTAKES.declare("listen", PrintedText.quoted("address"));
  public static final Two<String, String> PORT_TAKEN =
      MISTAKES.declare("port-taken", PrintedText.quoted("address"), PrintedText.quoted("why"));
  public static final One<String> NO_FOLDER =
      MISTAKES.declare("no-folder", PrintedText.quoted("folder"));

  private DeskText() {}
}
