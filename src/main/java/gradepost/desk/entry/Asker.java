package gradepost.desk.entry;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What is known of the machine that asks. Behind a proxy that is what the proxy saw, which it adds
 * behind whatever the request said of itself: the last value counts, and no other.
 */
final class Asker {
  /** An address, in brackets or with a port behind it. */
  private static final Pattern ADDRESS =
      Pattern.compile(
          "(?<four>\\d{1,3}(?:\\.\\d{1,3}){3})(?::\\d{1,5})?"
              + "|\\[?(?<six>[0-9a-fA-F]*:[0-9a-fA-F:.]{1,40})(?:%\\w+)?(?:](?::\\d{1,5})?)?");

  private static final String UNKNOWN = "an unknown address";

  /** Its address. All that cannot be told apart are one. */
  static String address(Door door, Context ctx) {
    String told =
        door.behindProxy() ? last(ctx, "X-Forwarded-For").orElse("") : String.valueOf(ctx.ip());
    Matcher address = ADDRESS.matcher(told);
    return address.matches()
        ? Optional.ofNullable(address.group("four")).orElseGet(() -> address.group("six"))
        : UNKNOWN;
  }

  /** Whether the proxy says that the browser came to it by TLS, or says nothing. */
  static boolean cameByTls(Context ctx) {
    return last(ctx, "X-Forwarded-Proto").orElse("https").equalsIgnoreCase("https");
  }

  /** The last value of the last field that is called so. */
  private static Optional<String> last(Context ctx, String name) {
    List<String> fields = new ArrayList<>(Collections.list(ctx.req().getHeaders(name)));
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    String field = fields.get(fields.size() - 1);
    return Optional.of(field.substring(field.lastIndexOf(',') + 1).strip());
  }

  private Asker() {}
}
