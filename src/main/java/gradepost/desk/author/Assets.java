package gradepost.desk.author;

import gradepost.desk.page.Asked;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;

/** Scripts and styles that pages load: these, by these names, and no others. */
final class Assets {
  private static final String EDITOR = "/META-INF/resources/webjars/codemirror/5.65.18/";
  private static final String OWN = "/gradepost/templates/desk/";
  private static final Map<String, String> FILES =
      Map.of(
          "lines.js", OWN + "lines.js",
          "pace.js", OWN + "pace.js",
          "codemirror.js", EDITOR + "lib/codemirror.js",
          "codemirror.css", EDITOR + "lib/codemirror.css",
          "yaml.js", EDITOR + "mode/yaml/yaml.js",
          "show-hint.js", EDITOR + "addon/hint/show-hint.js",
          "show-hint.css", EDITOR + "addon/hint/show-hint.css");

  static void get(Context ctx) throws IOException {
    String name = ctx.pathParam("file");
    String file = Optional.ofNullable(FILES.get(name)).orElseThrow(Asked::nothing);
    try (InputStream in =
        Optional.ofNullable(Assets.class.getResourceAsStream(file))
            .orElseThrow(() -> new IOException(file))) {
      ctx.contentType(
          name.endsWith(".css") ? "text/css; charset=utf-8" : "text/javascript; charset=utf-8");
      if (file.startsWith(EDITOR)) {
        ctx.header("Cache-Control", "private, max-age=86400");
      }
      ctx.result(in.readAllBytes());
    }
  }

  private Assets() {}
}
