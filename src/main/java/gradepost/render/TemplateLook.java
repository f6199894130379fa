package gradepost.render;

import gradepost.render.chart.TemplateFault;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a template or a style sheet would load, seen from its text alone: before there is a plan to
 * be printed. What only shows when the template is filled is refused then, by {@link Loads}.
 */
final class TemplateLook {
  private static final Pattern COMMENT = Pattern.compile("(?s)<#--.*?-->");
  private static final Pattern FILLED = Pattern.compile("[$#]\\{[^}]*}");
  private static final Pattern DIRECTIVE = Pattern.compile("</?[#@][^>]*>");
  private static final Pattern TAG =
      Pattern.compile("<([A-Za-z][\\w:-]*)((?:\"[^\"]*\"|'[^']*'|[^'\">])*)>");
  private static final Pattern ATTRIBUTE =
      Pattern.compile("([\\w:-]+)\\s*=\\s*(?:\"([^\"]*)\"|'([^']*)'|([^\\s\"'>]+))");
  private static final Pattern STYLES = Pattern.compile("(?is)<style\\b[^>]*>(.*?)</style");

  /** Refuses a file that loads from outside the paper. */
  static void at(String name, String text) throws TemplateFault {
    try {
      if (name.endsWith(".css")) {
        Loads.refuse(text);
      } else {
        markup(text);
      }
    } catch (TemplateFault e) {
      throw new TemplateFault(name + ": " + e.getMessage(), e);
    }
  }

  private static void markup(String text) throws TemplateFault {
    String plain = COMMENT.matcher(text).replaceAll("");
    // What is filled in is a place of the page until it is known.
    plain = DIRECTIVE.matcher(FILLED.matcher(plain).replaceAll("#")).replaceAll("");
    for (Matcher tag = TAG.matcher(plain); tag.find(); ) {
      Map<String, String> attributes = new LinkedHashMap<>();
      for (Matcher each = ATTRIBUTE.matcher(tag.group(2)); each.find(); ) {
        String value = each.group(2) != null ? each.group(2) : each.group(3);
        attributes.put(
            each.group(1).toLowerCase(Locale.ROOT), value != null ? value : each.group(4));
      }
      Loads.refuse(tag.group(1).toLowerCase(Locale.ROOT), attributes);
    }
    for (Matcher style = STYLES.matcher(plain); style.find(); ) {
      Loads.refuse(style.group(1));
    }
  }

  private TemplateLook() {}
}
