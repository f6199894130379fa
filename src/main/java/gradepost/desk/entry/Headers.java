package gradepost.desk.entry;

import io.javalin.http.Context;

/** What every answer tells the browser to hold to. */
public final class Headers {
  /** What a page may load and do: all of it from here, no script and no style within the page. */
  private static final String OWN_PAGES =
      "default-src 'none'; style-src 'self'; script-src 'self'; connect-src 'self';"
          + " img-src 'self' data:; frame-src 'self'; form-action 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  /** Papers carry their style within; scripts they have none. */
  private static final String PAPERS =
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:;"
          + " base-uri 'none'; form-action 'none'; frame-ancestors 'self'";

  /** For a page of the desk. */
  static void ownPage(Context ctx, boolean secure) {
    all(ctx, OWN_PAGES);
    if (secure) {
      ctx.header("Strict-Transport-Security", "max-age=31536000");
    }
  }

  /** For a paper, which has its style within. */
  public static void paper(Context ctx) {
    all(ctx, PAPERS);
  }

  private static void all(Context ctx, String policy) {
    ctx.header("Content-Security-Policy", policy);
    ctx.header("X-Content-Type-Options", "nosniff");
    // With "no-referrer" a browser sends its own forms as from nowhere, and all were turned away.
    ctx.header("Referrer-Policy", "same-origin");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    ctx.header("Cross-Origin-Resource-Policy", "same-origin");
    ctx.header("Cache-Control", "no-store");
  }

  private Headers() {}
}
